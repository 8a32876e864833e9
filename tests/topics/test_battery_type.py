"""Which kind of battery."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.reply import Answer
from service.topics.battery_type import TOPIC
from tests.building import case
from tests.talks import on, plain


def asked(first: str, second: str, *cues: str) -> Answer:
    return TOPIC.answer(case({"battery.chemistry": (first, second)}, cues))


@pytest.mark.parametrize(
    ("first", "second", "cues", "best"),
    [
        ("agm", "gel", [], "AGM"),
        ("lfp", "agm", [], "AGM"),
        ("gel", "flooded", ["detail:sleep_beside"], "Gel"),
        ("flooded", "gel", ["detail:hold_charge"], "Gel"),
        ("agm", "lfp", ["detail:long_life"], "Lithium"),
        ("lfp", "flooded", ["detail:seldom"], "Wet-cell"),
    ],
)
def test_the_better_of_two_for_what_is_cared_about(first: str, second: str, cues: list[str], best: str) -> None:
    found = asked(first, second, *cues)
    assert (found.verdict, len(found.compare)) == ("information", 2)
    assert found.headline.startswith(best)


def test_a_third_kind_is_named_by_its_word() -> None:
    found = TOPIC.answer(case({"battery.chemistry": ("flooded", "agm")}, ["detail:kind_agm", "detail:kind_lfp"]))
    assert [option.label for option in found.compare] == ["Wet-cell", "AGM", "Lithium"]


def test_all_four_where_none_or_one_is_named() -> None:
    assert [option.label for option in TOPIC.answer(case({})).compare] == ["Wet-cell", "AGM", "Gel", "Lithium"]
    assert len(TOPIC.answer(case({"battery.chemistry": "lfp"})).compare) == 4


def test_the_figures_stand_with_their_sources() -> None:
    weighed = case({"battery.chemistry": ("agm", "lfp")})
    agm, lithium = TOPIC.answer(weighed).compare
    assert [(f.name, f.low, f.high) for f in agm.figures if f.name == "life"] == [("life", 4, 7)]
    assert [f.value for f in lithium.figures if f.name == "usable_share"] == [80]
    assert all(step.cites for step in weighed.trace)


def test_lead_carbon_is_judged_by_its_label() -> None:
    assert TOPIC.answer(case({}, ["detail:carbon"])).verdict == "needs-facts"


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("We move from gels to LiFePO4 this spring: what else needs altering aboard?", "Besides the battery"),
        ("lithium for the Sturgeon next spring. anything else I ought to upgrade?", "Besides the battery"),
        ("could I just drop in a lithium where the old AGM stands?", "Not just like that"),
        ("Swapping the wets for lithium, does it pay off?", "Lithium pays where much is used"),
        ("may we go to lithium from gel?", "You can, if its BMS"),
    ],
)
def test_a_swap_to_lithium_is_answered_as_it_is_put(text: str, begins: str) -> None:
    (found,) = default_desk().ask(text).answers
    assert (found.topic, found.headline[: len(begins)]) == ("battery-type", begins)


def test_a_swap_tells_what_the_label_must_allow_and_who_sees_to_the_wiring() -> None:
    (found,) = default_desk().ask("going lithium for the Minnow, what else must I change?").answers
    told = " ".join(step.say for step in found.working).replace("\u00a0", " ")
    assert "120 A all the time and 210 A for a few seconds" in told
    assert "electrician" in told
    assert not found.compare


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("swapping to a lithium of 200 Ah, limit 300 A peak 450: what else? can it run the Pike?", "run-check"),
        ("what cable must I change to for a 150 A lithium charger over 3 m", "cable-size"),
    ],
)
def test_another_question_with_a_swap_keeps_its_topic(text: str, topic: str) -> None:
    assert topic in [answer.topic for answer in default_desk().ask(text).answers]


def test_which_of_the_ratings_on_a_label_counts() -> None:
    label = "900 CA, 720 CCA and RC 150 on the sticker. {}"
    (found,) = default_desk().ask(label.format("Which figure matters for a thruster?")).answers
    assert (found.topic, found.headline.startswith("For a thruster the CCA decides")) == ("battery-type", True)
    (asked_else,) = default_desk().ask(label.format("How many Ah is that?")).answers
    assert asked_else.topic == "rating-convert"


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("wet cells or gel for the house batteries?", "Gel for a house bank: it stands being emptied slowly"),
        ("AGM against lithium for fridge and lights", "Lithium for a house bank: about 80 % of it may be used"),
        ("AGM or gel for house bank and thruster?", "AGM for most boats"),
        ("which is better for the cold, lithium or gel?", "Gel for the cold: a lead battery that is full"),
        ("gel or AGM, which one charges faster?", "AGM for a quick charge"),
        ("which sort lasts longest, AGM or gel", "Gel for a long life"),
    ],
)
def test_the_kind_is_chosen_for_what_it_is_to_do(text: str, start: str) -> None:
    assert plain(on("battery-type", text).headline).startswith(start)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("how do AGM and gel differ, and which for the bow?", "AGM's acid is in a glass mat, gel's is in a jelly; AGM"),
        (
            "difference between lithium and gel, which for the house bank?",
            "Gel's acid is in a jelly, lithium has none; li",
        ),
        ("AGM or gel for the bow thruster?", "AGM for most boats"),
    ],
)
def test_what_sets_two_kinds_apart_is_told_where_it_is_asked(text: str, start: str) -> None:
    assert plain(on("battery-type", text).headline).startswith(start)
