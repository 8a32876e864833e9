"""Which battery and how big."""

from __future__ import annotations

from typing import Any

import pytest

from service.leadsman import default_desk
from service.reply import Answer
from service.topics.bank_size import TOPIC
from tests.building import case
from tests.talks import on, plain, talk


def asked(facts: dict[str, Any]) -> Answer:
    return TOPIC.answer(case(facts))


def figures(facts: dict[str, Any]) -> dict[str, Any]:
    return {figure.name: figure.value for figure in asked(facts).figures}


@pytest.mark.parametrize(
    ("facts", "figure", "wanted"),
    [
        ({"load.current": 340}, "required_cca", 850),
        ({"load.peak": 420}, "required_cca", 700),
        ({"load.model": "pike"}, "required_cca", 650),
        ({"battery.chemistry": "agm", "load.current": 260, "load.time": 360}, "required_capacity", 94.81),
        ({"battery.chemistry": "agm", "load.current": 340, "load.time": 180}, "required_capacity", 67.86),
        ({"battery.chemistry": "lfp", "load.current": 8, "load.time": 36000}, "required_capacity", 102.3),
        ({"battery.chemistry": "lfp", "load.current": 220}, "required_limit_current", 220),
        ({"battery.chemistry": "lfp", "load.current": 220}, "required_peak_current", 330),
        ({"battery.chemistry": "lfp", "load.current": 220}, "required_capacity", 220),  # 1 A for each Ah
        ({"load.model": "pike", "battery.cca": 500}, "battery_count", 2),
        ({"load.model": "pike", "battery.cca": 300}, "battery_count", 3),
        ({"bank.voltage": 24, "load.current": 280, "battery.chemistry": "agm"}, "battery_count", 2),
        (
            {"battery.chemistry": "lfp", "battery.max_current": 100, "battery.peak_current": 300, "load.current": 250},
            "battery_count",
            4,
        ),  # three allow 240 A that are relied on
    ],
)
def test_figures(facts: dict[str, Any], figure: str, wanted: float) -> None:
    assert figures(facts)[figure] == pytest.approx(wanted, rel=0.001)


def test_a_load_without_a_motor_wants_no_cranking_amps() -> None:
    found = figures({"load.current": 6, "load.time": 43200, "load.kind": "electronics", "battery.chemistry": "agm"})
    assert set(found) == {"running_current", "required_capacity"}


def test_three_minutes_are_assumed_for_a_thruster_only() -> None:
    thruster = case({"load.current": 200})
    TOPIC.answer(thruster)
    assert thruster.used["load.time", 1].value == 180
    assert "required_capacity" not in figures({"load.current": 80, "load.kind": "windlass"})
    assert asked({"load.current": 6, "load.kind": "electronics"}).asks[0].fact == "load.time"


def test_without_amps_they_are_asked() -> None:
    assert asked({}).asks[0].fact == "load.current"


def test_lead_and_lithium_stand_side_by_side_where_neither_is_said() -> None:
    assert [option.label for option in asked({"load.current": 340}).compare] == ["lead", "lithium"]
    assert asked({"load.current": 340, "battery.chemistry": "agm"}).compare == ()


def test_a_load_of_a_few_amps_is_no_thruster():
    answer = next(item for item in talk("What size of battery for a 12 A load?").answers if item.topic == "bank-size")
    assert [item.fact for item in answer.asks] == ["load.time"]
    assert not any(figure.name == "required_cca" for figure in answer.figures)


@pytest.mark.parametrize(
    ("turns", "end"),
    [
        (("what size battery for the Minnow", "12 V and I only have 300 x 170 mm space"),
         "; into 300 x 170 mm goes group 22NF, if it is high enough."),
        (("what battery for the Pike, room only 310 x 180 x 230 mm",), "goes group 27, 24, 35 or 34 only just."),
        (("how big a battery for the Pike? the box is 250 x 150 x 200 mm inside",),
         "; no case of our table that can have it goes into 250 x 150 x 200 mm."),
        (("what battery for the Sturgeon, box 700x350x260 inside",), "each of 700 CCA and 68 Ah or more."),
        (("what size battery for the Minnow",), ": the Minnow takes 210 A in the first instant."),
        (("what size battery for the Minnow, hull is 5000 x 1800",), ": the Minnow takes 210 A in the first instant."),
    ],
)  # fmt: skip
def test_a_place_that_was_measured_is_held_against_the_cases(turns: tuple[str, ...], end: str) -> None:
    assert plain(on("bank-size", *turns).headline).endswith(end)


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        (
            "12 V stern thruster of 3 kW: what is its running current and how much CCA must the battery have?",
            "250 A run",
        ),
        (
            "24 V 4.8 kW bow thruster: running amps, min CCA of its two batteries?",
            "200 A running; ",
        ),
    ],
)
def test_the_amps_that_are_asked_beside_the_size_open_the_headline(text, opens):
    found = plain(on("bank-size", text).headline)
    assert found.startswith(opens)
    assert "CCA" in found


def test_amps_that_are_told_are_not_told_back():
    found = on("bank-size", "The running current is 250 A, 12 V bow thruster. How much CCA must the battery have?")
    assert "running;" not in found.headline


def test_each_of_two_temperatures_has_its_own_size_and_the_colder_one_stands():
    (found,) = default_desk().ask("what CCA for a Minnow at 0 C, and at minus 18 C?").answers
    sizes = {option.label[:3]: {item.name: item.value for item in option.figures} for option in found.compare}
    assert sizes["-18"]["required_cca"] > sizes["0\u00a0°"]["required_cca"]
    assert {item.name: item.value for item in found.figures}["required_cca"] == sizes["-18"]["required_cca"]
    assert "at 0\u00a0°C" in found.headline
    assert "at -18\u00a0°C" in found.headline


@pytest.mark.parametrize(
    ("text", "count", "head"),
    [
        (
            "How many lithium batteries, 120 Ah with 100 A BMS, for a 200 A thruster on 24 V?",
            6,
            "Six of your batteries",
        ),
        ("how many 90 Ah lithiums with a 90 A BMS for a 12 V thruster of 160 A", 3, "Three of your batteries"),
        ("Thruster of 350 A, 12 V. How many 700 CCA AGMs is that?", 2, "Two 700 CCA batteries"),
    ],
)
def test_how_many_batteries_asks_for_a_number_and_judges_none_that_is_there(text, count, head):
    (found,) = talk(text).answers
    assert found.topic == "bank-size"
    assert {item.name: item.value for item in found.figures}["battery_count"] == count
    assert plain(found.headline).startswith(head)


def test_whether_it_runs_and_how_many_are_two_questions():
    asked = "I have a 100 Ah lithium with a 100 A BMS. Will it run a 150 A thruster, and how many batteries are needed?"
    assert [found.topic for found in talk(asked).answers] == ["run-check", "bank-size"]
