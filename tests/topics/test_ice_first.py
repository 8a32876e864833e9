"""Nobody is sent to the charger before somebody has looked for ice, where frost is told or the cold that freezes it."""

from __future__ import annotations

import pytest

from service.judgements.ice_first import LOOK, has_it_frozen
from service.reply import Answer
from tests.talks import talk


def last(*turns: str) -> tuple[Answer, ...]:
    return talk(*turns).answers


@pytest.mark.parametrize(
    "text",
    [
        "There was snow on deck and it reads 11.8, has it frozen? It has caps",
        "Is it frozen? wet one, 11.9 V, hard frost here",
        "11.7 at rest after the frost. Could it have frozen?",
        "The float shows 1.110 after those icy nights, did it freeze?",
    ],
)
def test_has_it_frozen_is_answered_with_a_look_and_asks_how_cold_it_was(text: str) -> None:
    (answer,) = last(text)
    assert (answer.topic, answer.verdict, answer.urgency) == ("freeze-point", "needs-facts", "today")
    assert answer.headline.startswith("It may have, if it was colder than")
    assert answer.headline.endswith(f"so {LOOK}.")
    assert [item.fact for item in answer.asks] == ["ambient.temperature"]


@pytest.mark.parametrize("told", ["about -12 out there, the sides look straight", "it was minus 15", "-20 C"])
def test_the_cold_told_afterwards_is_the_frost_that_was(told: str) -> None:
    (answer,) = last("It snowed, my wet one shows 11.9, has it frozen?", told)
    assert (answer.topic, answer.verdict) == ("freeze-point", "no")
    assert answer.headline.endswith("so look for ice before charging it.")
    assert not answer.would_change


@pytest.mark.parametrize(
    "turns",
    [
        ("11.8 at rest, minus 13 outside. Is that good?",),
        ("the gravity is 1.120 at -11 C, good?",),
        ("12.1 and 11.8, both wet, minus 14 here. are they good?",),
        ("Snow all week and my AGM reads 11.6. Is that bad?",),
        ("My wet battery reads 11.9 V", "minus 12 outside, nothing looks bent"),
        ("12.0 V at rest, wet, -18 in the shed. Will it run a Minnow with 700 CCA?",),
    ],
)
def test_a_low_battery_in_the_frost_is_not_sent_to_the_charger(turns: tuple[str, ...]) -> None:
    *_, answer = last(*turns)
    assert answer.verdict == "no"
    assert answer.headline.endswith(f"{LOOK}.")
    assert "charge it" not in answer.headline


def test_leave_to_charge_in_such_a_frost_is_no_yes() -> None:
    assert last("11.8 V wet at rest, frost last night, should I charge it now?")[0].headline.startswith("Not yet: ")
    assert last("11.9 V at -12, charge it or leave it?")[0].headline.startswith("No charger yet")


@pytest.mark.parametrize(
    "text",
    [
        "11.9 V at rest in June, is that good?",
        "My wet one reads 11.9 at +4 C. Is that good?",
        "11.9 V, and the freezer is full. Is that good?",
        "12.1 V at -8 C at rest, good?",
    ],
)
def test_without_such_a_frost_it_is_charged(text: str) -> None:
    assert "so charge it today" in last(text)[0].headline


def test_lithium_holds_no_ice() -> None:
    assert LOOK not in last("lithium at 12.0 V rested, minus 12 outside, good?")[0].headline


@pytest.mark.parametrize("text", ["Will it freeze at -10 C?", "at what temperature does a flat one freeze?"])
def test_whether_it_will_freeze_is_another_question(text: str) -> None:
    assert not has_it_frozen(text)


@pytest.mark.parametrize(
    ("told", "then"),
    [
        ("Minus 15 one night in February, plus 5 today. Wet one at 11.9 V: can it have frozen?", "any charge."),
        ("Minus 15 last night. Wet one at 11.9 V: can it have frozen?", "so look for ice before charging it."),
    ],
)
def test_one_that_may_have_thawed_is_tested_before_any_charge(told, then):
    (answer,) = last(told)
    assert (answer.topic, answer.verdict) == ("freeze-point", "no")
    assert answer.headline.endswith(then)
