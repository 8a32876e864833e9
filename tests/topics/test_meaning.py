"""What a term means, what sets two apart, and no sentence that speaks of the wrong one."""

from __future__ import annotations

import pytest

from service import reference
from service.say import NB
from tests.talks import on, plain, talk

LONGEST = 30  # words of a headline


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("What is the difference between CA and CCA?", "CCA is measured at -18 °C and MCA (or CA) at 0 °C"),
        ("how do MCA and CCA differ", "so the MCA of a battery is about a quarter higher"),
        ("CCA vs HCA?  What does each mean and how are they different", "HCA in the warm"),
        ("difference between reserve capacity and amp hours", "Reserve capacity is minutes at 25 A"),
        ("what's the difference between state of charge and state of health", "how full a battery is now"),
        ("difference between absorption and float?", "float is the low one"),
    ],
)
def test_the_difference_of_two_terms_is_the_headline(text: str, told: str) -> None:
    answer = talk(text).answers[0]
    assert answer.topic == "meaning"
    assert told in answer.headline.replace(NB, " ")


@pytest.mark.parametrize("row", reference.rows("apart"), ids=lambda row: f"{row['one'].value}-{row['other'].value}")
def test_a_difference_is_short_and_of_terms_that_are_explained(row: reference.Row) -> None:
    assert len(row["told"].value.split()) <= LONGEST
    assert all(reference.row("meanings", id=row[side].value) for side in ("one", "other"))


def test_what_is_said_of_a_term_follows_its_own_meaning() -> None:
    steps = [step.say for step in talk("What do AGM and gel mean?").answers[0].working]
    assert steps[0].startswith("It gives large currents")  # of AGM, which the headline explains
    assert steps[1].startswith("A gel battery is a sealed lead battery whose acid is held in a jelly. It is not")


def test_two_terms_of_one_headline_are_named_again() -> None:
    steps = [step.say for step in talk("what do absorption and float mean").answers[0].working]
    assert steps == [
        "Absorption: its voltage depends on the kind of battery.",
        "Float follows absorption and may stay on; its voltage depends on the kind of battery.",
    ]


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("What does CCA mean and what does EN behind the number mean?",
         "CCA (cold cranking amps) is starting power at -18 °C, by the American test; EN amps is the European test "
         "at the same -18 °C."),
        ("What do the letters RC and CCA stand for?",
         "CCA (cold cranking amps) is starting power at -18 °C, by the American test; reserve capacity (RC) is the "
         "minutes it gives 25 A."),
        ("What is the meaning of EN on a battery label?", "EN amps is the European cranking test, at -18 °C like CCA "
         "but with other times and end voltages."),
        ("what does CCA mean? mine has 720 of it", "CCA (cold cranking amps) is the current a battery gives for "
         "30 seconds at -18 °C before a 12 V battery falls to 7.2 V."),
    ],
)  # fmt: skip
def test_two_terms_too_long_for_one_sentence_are_told_in_brief(text: str, head: str) -> None:
    assert talk(text).answers[0].headline.replace(NB, " ") == head


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("What is a smart charger?", "A smart charger is one that watches the battery's volts"),
        ("What is a trickle charger?", "A trickle charger is a small one"),
        ("What does temperature compensation mean?", "Temperature compensation is a charger's change of volts"),
        ("What do the lamps bulk and absorption on my charger mean?", "Bulk is the first stage of charging, with "
         "all the current the charger has; absorption is"),
    ],
)  # fmt: skip
def test_words_of_chargers(text: str, told: str) -> None:
    assert plain(on("meaning", text).headline).startswith(told)


@pytest.mark.parametrize(
    "text", ["what's CA when it is at home?", "what does ca mean", "CA? what is that", "define CA"]
)
def test_ca_alone_is_a_term_where_it_is_asked_what_it_is(text: str) -> None:
    assert plain(on("meaning", text).headline).startswith("MCA or CA (marine cranking amps)")


def test_what_a_reading_tells_is_no_term() -> None:
    told = talk(
        "12.3 V at rest on an AGM, what is that figure telling us? Then: is rain water fine for a wet one?"
    ).answers
    assert "meaning" not in {item.topic for item in told}
    assert "meaning" in {item.topic for item in talk("12.3 V at rest on an AGM, ok? And what does SoC mean?").answers}


def test_a_letter_behind_a_case_size_is_explained() -> None:
    found = on("meaning", "what is meant by 27M on the lid?")
    assert found.headline.startswith("27M is a battery of group 27, the size of its case; the M is for its terminals")
    assert all(step.say.rstrip(".") != found.headline.rstrip(".") for step in found.working)
