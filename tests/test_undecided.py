"""What a message leaves open and its question tells: whose amps they are, the kind of battery under a float."""

from __future__ import annotations

import pytest

from grammar.reading import Message, Stated
from service.topics import topic
from service.turns.undecided import by_topic
from tests.talks import talk


def facts(*texts: str) -> dict:
    return {item.fact: item.value for answer in talk(*texts).answers for item in answer.understood}


@pytest.mark.parametrize(
    ("text", "fact", "amps"),
    [
        ("14 amps into a 90 Ah wet battery, full by morning?", "charger.current", 14.0),
        ("Is 12 A too much for 30 Ah of lithium to charge?", "charger.current", 12.0),
        ("How many minutes from a 100 Ah AGM at 90 A?", "load.current", 90.0),
        ("What cable for 90 A over 4 m?", "load.current", 90.0),
    ],
)
def test_amps_of_nobody_are_those_that_the_question_is_about(text, fact, amps):
    assert facts(text)[fact] == amps


def test_amps_whose_owner_is_named_stay_his():
    found = facts("The thruster draws 200 A. How long does a 10 A charger need to fill 100 Ah of AGM?")
    assert (found["load.current"], found["charger.current"]) == (200.0, 10.0)


def test_a_float_was_dipped_into_a_battery_with_caps():
    assert facts("gravity is 1.240 in all cells, how full is it?")["battery.chemistry"] == "flooded"


def test_a_kind_that_was_told_stands():
    assert facts("My gel battery, is it good at 12.6 V?", "gravity 1.240?")["battery.chemistry"] == "gel"


def test_amps_that_the_reader_only_guesses_are_moved_by_the_question_and_no_others():
    def moved(how: str) -> str:
        item = Stated("load.current", 12.0, "ampere", "12 A", (0, 4), how=how)
        return by_topic(Message("12 A", stated=(item,)), [topic("charge-time")]).stated[0].fact

    assert (moved("default"), moved("near")) == ("charger.current", "load.current")
