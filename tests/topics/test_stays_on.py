"""Whether a charger may stay on: its kind decides, never its amps."""

from __future__ import annotations

import pytest

from service.reply import Answer
from tests.talks import plain, talk

SUITS = "takes"


def first(text: str) -> Answer:
    return talk(text).answers[0]


@pytest.mark.parametrize(
    "text",
    [
        "Can the 35 A charger stay on my 200 Ah wets all week?",
        "18 A charger on 110 Ah AGM, may it stay on the whole winter?",
        "Should I leave the 25 A charger plugged in while we are away, 200 Ah gel?",
    ],
)
def test_its_kind_is_asked_where_it_is_not_told(text: str) -> None:
    found = first(text)
    assert found.verdict == "needs-facts"
    assert found.asks[0].fact == "charger.kind"


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("Is it ok to keep the 15 A smart charger on my 100 Ah AGM all week?", "yes"),
        ("My charger drops to float by itself. May I leave it on the AGM all season?", "yes"),
        ("10 A timer charger, 100 Ah wet, can I leave it on for a month?", "no"),
        ("Can the 20 A charger stay on my 100 Ah lithium all week?", "marginal"),
    ],
)
def test_a_kind_that_is_told_decides(text: str, verdict: str) -> None:
    assert first(text).verdict == verdict


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Can I swap my AGM for lithium and keep the same charger?", "lithium setting"),
        ("Which setting for my gel, and may I leave it on the gel setting?", "gel setting"),
        ("May I leave our 30 A charger on the 100 Ah LiFePO4 overnight, at 3 C?", "10\u00a0A at most"),
    ],
)
def test_another_question_is_not_taken_for_it(text: str, told: str) -> None:
    assert any(told in item.headline for item in talk(text).answers)


def test_its_size_is_judged_by_its_amps() -> None:
    found = first("40 A charger on 220 Ah of wet, is it the right size?")
    assert (found.topic, found.verdict) == ("charger-size", "yes")
    assert SUITS in found.headline


@pytest.mark.parametrize(
    "text",
    [
        "charger 25 A, flooded 110 Ah, too big? and can i leave it on over winter",
        "thruster battery goes flat every 2 weeks when not used. is it ok to leave charger on all the time then?",
        "Does it harm an AGM to leave the charger on all winter?",
    ],
)
def test_a_bad_word_beside_it_never_turns_what_a_smart_charger_may(text: str) -> None:
    heads = [plain(item.headline) for item in talk(text).answers]
    assert any(head.startswith("A smart charger may stay on") for head in heads)


@pytest.mark.parametrize(
    "told",
    [
        "It's an old one without any float stage, flooded battery",
        "It is an ancient one, no float",
        "a plain one that does not switch down, gel",
        "Ours never drops to float. AGM.",
        "it is on a timer",
    ],
)
def test_a_charger_that_never_goes_down_is_told_afterwards(told: str) -> None:
    asked, then = "Can I leave the charger on all winter?", "fine, so what would you do instead"
    (answer,) = talk(asked, told).answers
    assert (answer.topic, answer.verdict) == ("storage", "no")
    assert answer.headline.startswith("No: no ")
    (answer,) = talk(asked, told, then).answers
    assert answer.headline.startswith("Charge it full, take the cables off and look every 90")


@pytest.mark.parametrize("told", ["it's a smart one with float, AGM", "it goes to float by itself, wet battery"])
def test_a_charger_that_goes_down_is_told_afterwards(told: str) -> None:
    (answer,) = talk("Can I leave the charger on all winter?", told).answers
    assert (answer.topic, answer.verdict) == ("storage", "yes")


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("can I leave my charger on for months? it has no float stage, AGM", "no"),
        ("My old charger does not go to float. Leave it on all winter?", "no"),
        ("Will it do harm to leave an old charger on all winter? It has no float. wet battery", "no"),
        ("charger with no float stage, which setting for a flooded battery?", "information"),
        ("bilge pump has no float switch, can the smart charger stay on all winter, AGM?", "yes"),
    ],
)
def test_without_a_float_stage_it_comes_off(text: str, verdict: str) -> None:
    assert first(text).verdict == verdict


@pytest.mark.parametrize(
    ("text", "size", "stays"),
    [
        (
            "How many amps should the charger be for a 110Ah AGM battery? And can I leave it connected permanently?",
            "11 to 33 A",
            "only a charger that drops to float by itself may stay on",
        ),
        (
            "how big a charger for 70ah flooded, and can i leave it on all the time",
            "7 to 17.5 A",
            "only a charger that drops to float by itself may stay on",
        ),
        ("Which charger for 100 Ah lithium, and can it stay on?", "20 to 50 A", "lithium needs no charger"),
        (
            "Do I need a 20 A charger for 120 Ah of AGM? Is it ok to leave it connected when we are away?",
            "12 to 36 A",
            "only a charger that drops to float by itself may stay on",
        ),
        (
            "How many amps should the smart charger be for 110 Ah gel? And can I leave it connected permanently?",
            "11 to 22 A",
            "a charger that drops to float by itself may stay on",
        ),
    ],
)
def test_beside_its_size_both_are_answered(text: str, size: str, stays: str) -> None:
    told = plain(" ".join(item.headline for item in talk(text).answers))
    assert size in told
    assert stays in told


@pytest.mark.parametrize(
    "text",
    [
        "is a 10 A charger big enough to stay on a 100 Ah AGM all week",
        "40 A charger on 220 Ah of wet, is it the right size?",
        "How many amps for 110 Ah of AGM?",
    ],
)
def test_of_its_size_alone_nothing_more_is_told(text: str) -> None:
    assert "may stay on" not in first(text).headline


@pytest.mark.parametrize(
    "text",
    [
        "How long does a 10 A charger take for 100 Ah AGM from 50 percent? And can I leave it on all winter?",
        "12.2 V at rest, flooded. Can I leave the charger on all winter?",
        "gravity 1.190, flooded. Is it ok to leave it on the charger all winter?",
        "Half full, 100 Ah wet, timer charger: can it stay on all winter?",
    ],
)
def test_what_is_told_before_the_charge_is_not_the_charge_of_the_winter(text: str) -> None:
    (found,) = [item for item in talk(text).answers if item.topic == "storage"]
    assert "look every 90 days" in plain(found.headline)
    assert "charge it full first" in plain(first("AGM at 50 %. Can I lay it up like that all winter?").headline)


@pytest.mark.parametrize(
    "first", ["How long does a 15 A charger take for 90 Ah of AGM from half?", "Is a 15 A charger ok for 90 Ah of AGM?"]
)
def test_whether_it_stays_on_may_be_asked_of_the_charger_that_was_spoken_of(first: str) -> None:
    found = talk(first, "And may it stay on afterwards?").answers[-1]
    assert (found.verdict, found.asks[0].fact) == ("needs-facts", "charger.kind")
