"""One rating in another."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.topics.rating_convert import TOPIC, in_a_list
from tests.building import case
from tests.topics import asked, figures


@pytest.mark.parametrize(
    ("facts", "cues", "wanted"),
    [
        ({"battery.reserve": 180.0}, [], {"capacity": 102.891}),
        ({"battery.reserve": 100.0, "battery.chemistry": "flooded"}, [], {"capacity": 68.490}),
        ({"battery.reserve": 120.0, "battery.chemistry": "agm"}, ["detail:to_ah"], {"capacity": 67.516}),
        ({"battery.capacity": 110.0}, ["detail:to_rc"], {"reserve": 195.024}),
        ({"battery.ca": 1000.0}, [], {"cca": 800}),
        ({"battery.cca": 840.0}, [], {"ca": 1050}),
        ({"load.power": 3000.0, "bank.voltage": 24.0}, [], {"current": 125}),
        ({"load.current": 100.0, "bank.voltage": 12.0}, ["detail:to_watts"], {"power": 1200}),
        ({"battery.capacity": 100.0, "battery.nominal": 12.8}, ["detail:to_wh"], {"energy": 1280}),
        ({"battery.capacity": 100.0, "battery.nominal": 12.0}, ["detail:to_wh"], {"energy": 1200}),
        ({"battery.energy": 1280.0}, [], {"capacity": 100}),
        ({"cable.gauge": "2/0"}, [], {"area": 67.43}),
        ({"cable.area": 50.0}, [], {"gauge": "1/0"}),
        ({"cable.area": 70.0}, [], {"gauge": "2/0"}),
        ({"cable.area": 25.0}, [], {"gauge": "4"}),
        ({"cable.length": 7.62}, ["detail:to_metres"], {"length": 7.62}),
        ({"cable.length": 3.048}, ["detail:to_feet"], {"length": 10}),
        ({"battery.weight": 30.0}, ["detail:to_lb"], {"weight": 66.139}),
        ({"ambient.temperature": -10.0}, ["detail:to_celsius"], {"temperature": -10}),
        ({"ambient.temperature": -18.0}, ["detail:to_fahrenheit"], {"temperature": -0.4}),
        # a thruster's amps beside the rating are no conversion
        ({"battery.ca": 1000.0, "load.current": 300.0}, ["detail:to_cca"], {"cca": 800}),
    ],
)
def test_a_conversion(facts, cues, wanted):
    answer = TOPIC.answer(case(facts, cues))
    assert answer.verdict == "information"
    assert {name: value for name, value in figures(answer).items() if not isinstance(value, str)} == pytest.approx(
        {name: value for name, value in wanted.items() if not isinstance(value, str)}, abs=0.001
    )
    assert figures(answer).keys() == wanted.keys()
    assert all(figures(answer)[name] == value for name, value in wanted.items() if isinstance(value, str))


def test_horsepower_is_taken_at_the_shaft():
    shaft = case({"load.power": 3728.5, "bank.voltage": 12.0})
    shaft.stated = {**shaft.stated, "load.power": replace(shaft.stated["load.power"], text="5 hp")}
    assert figures(TOPIC.answer(shaft))["current"] == pytest.approx(3728.5 / (12 * 0.85))


def test_several_conversions_of_one_message_stand_together():
    answer = TOPIC.answer(case({"cable.area": 35.0, "battery.reserve": 90.0}))
    assert figures(answer).keys() == {"capacity", "gauge"}


@pytest.mark.parametrize(
    ("facts", "cues", "first"),
    [
        ({}, ["detail:to_ah", "detail:from_rc"], "battery.reserve"),
        ({}, ["detail:to_amps"], "load.power"),
        ({"battery.capacity": 100.0}, ["detail:to_cca"], "battery.cca"),
        ({}, ["detail:to_celsius"], "ambient.temperature"),
    ],
)
def test_what_the_conversion_starts_from_is_asked(facts, cues, first):
    answer = TOPIC.answer(case(facts, cues))
    assert answer.verdict == "needs-facts"
    assert asked(answer)[0] == first
    assert not answer.figures


def test_two_values_are_converted_side_by_side():
    answer = TOPIC.answer(case({"battery.reserve": (120.0, 205.0)}))
    assert [option.figures[0].value for option in answer.compare] == pytest.approx([73.390, 114.669], abs=0.001)


@pytest.mark.parametrize(
    ("text", "units"),
    [
        ("RC 140 and 850 MCA, Ah and CCA please", {"to_ah", "to_cca"}),
        ("what is that in CCA and amp hours?", {"to_ah", "to_cca"}),
        ("1000 CA, RC 190: Ah & CCA?", {"to_ah", "to_cca"}),
        ("2/0 and 15 feet, mm2 and metres please", {"to_mm2", "to_metres"}),
        ("100 Ah and 700 CCA", set()),  # told, not wanted
        ("how many Ah is it, and my boat has CCA on the label", set()),
    ],
)
def test_units_in_a_list_are_wanted(text, units):
    assert in_a_list(text) == units
