"""A second question in a short message: a part whose own words ask clearly of another thing is answered as well."""

from __future__ import annotations

import pytest

from service.routing.stands_apart import asks, of_its_own, parts
from tests.talks import talk


def topics(text: str) -> set[str]:
    return {item.topic for item in talk(text).answers}


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("12.2 on the meter ok? wot temp does that freeze", {"rest-voltage", "freeze-point"}),
        ("it goes to -6 here, battery at 12.3, will it freeze. oh and two of different age in series, bad idea?",
         {"freeze-point", "bank-wiring"}),
        ("house battery for a windlass daft? 110ah at 5a how long", {"battery-duty", "run-time"}),
        ("180 Ah wet at half 25 amps going in when do I unplug and in a shut box how many cubic metres an hour of air",
         {"charge-time", "ventilation"}),
        ("900 marine cranking amps stamped, CCA what / told it drives a 250 A bow unit, not convinced",
         {"rating-convert", "run-check"}),
    ],
)  # fmt: skip
def test_a_part_that_stands_apart_is_answered_too(text, asked):
    assert topics(text) == asked


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("May a converter be non-isolated where both sides share one negative? My other query is the hours: 12 A into "
         "80 Ah.", {"dc-dc", "charge-time"}),
        ("Can a wet and a gel share a charger of two outputs? My second worry, the box is closed tight.",
         {"charger-banks", "ventilation"}),
        ("What lugs go on conical posts? Other thing: they would stand under the bunk where I sleep.",
         {"terminals", "mounting"}),
    ],
)  # fmt: skip
def test_what_is_announced_as_another_question_is_one(text, asked):
    assert topics(text) == asked


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("does a box for two flooded 31s need vent holes and how big", {"ventilation"}),
        ("Which battery do I need for my 150 A stern thruster please? The old one was dead when we bought her.",
         {"bank-size"}),
        ("12 V 180 A thruster, 5 m each way. (1) cable in AWG? (2) fuse?", {"cable-size", "fuse-size"}),
        ("Which setting should the charger be on? We don't know what kind of battery it is.", {"charger-setting"}),
        ("How much do we lose in 8 metres of 35 mm2 at 150 A, 12 V, and is it too much?", {"voltage-drop"}),
    ],
)  # fmt: skip
def test_a_part_that_asks_of_the_one_before_is_no_second_question(text, asked):
    assert topics(text) == asked


def test_a_long_message_is_not_cut():
    assert parts("Is 12.4 fine? " * 60) == []


@pytest.mark.parametrize(
    "part", ["what fuse for 2/0", "kilos saved?", "12.1 so is it dead", ", and at 14 V, is it kind"]
)
def test_parts_that_ask(part):
    assert asks(part)


@pytest.mark.parametrize(
    "part",
    ["the day when we bought her", "so we know which one stays", "it says so", "and at -18?", "if not, what size?"],
)
def test_parts_that_tell(part):
    assert not asks(part)


def test_few_words_without_a_figure_point_back():
    assert not of_its_own("and how big")
    assert of_its_own("12.4 fresh?")
