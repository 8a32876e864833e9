"""Readings that cannot be, or that contradict each other."""

from __future__ import annotations

from typing import Any

import pytest

from service.judgements import doubt
from tests.building import case

Facts = dict[str, Any]


@pytest.mark.parametrize(
    ("volts", "words"),
    [(12.4, "12.4 V"), (12.45, "12.45 V"), (12.0, "12.0 V"), (0.0, "0.0 V"), (60.0, "60.0 V"), (125.4, "125 V")],
)
def test_volts_as_they_were_read(volts: float, words: str) -> None:
    assert doubt.shown(volts).replace("\u00a0", " ") == words


@pytest.mark.parametrize(
    ("amps", "doubted"), [(10.4, False), (10.5, True), (12.8, True), (14.9, True), (15.0, False), (340, False)]
)
@pytest.mark.parametrize("fact", ["reading.current", "load.current"])
def test_amps_that_look_like_volts(fact: str, amps: float, doubted: bool) -> None:
    found = doubt.of_rest(case({fact: amps}))
    assert (found is not None) is doubted
    if found:
        assert (found.asks, found.route) == (("reading.voltage",), "needs-facts")
    assert doubt.of_rest(case({fact: amps, "reading.voltage": 12.6})) is None


@pytest.mark.parametrize(
    ("facts", "says", "asks"),
    [
        ({"reading.voltage": -12.6}, "leads are swapped: we think you mean 12.6 V", ("reading.voltage",)),
        ({"reading.voltage": -0.5}, "leads are swapped: we think you mean 0.5 V", ("reading.voltage",)),
        ({"reading.voltage": 0.0}, None, ()),
        ({"reading.voltage": 17.9, "battery.nominal": 12}, None, ()),
        (
            {"reading.voltage": 18.0, "battery.nominal": 12},
            "A 12 V battery cannot read 18.0 V",
            ("bank.voltage", "reading.voltage"),
        ),
        ({"reading.voltage": 35.8, "bank.voltage": 24}, None, ()),
        ({"reading.voltage": 35.9, "bank.voltage": 24}, "may be a 36 V bank", ("bank.voltage", "reading.voltage")),
        ({"reading.voltage": 25.2, "battery.nominal": 12}, "may be a 24 V bank", ("bank.voltage", "reading.voltage")),
        (
            {"reading.voltage": 19.0, "battery.nominal": 12},
            "its range is in doubt",
            ("bank.voltage", "reading.voltage"),
        ),
        ({"reading.voltage": 126, "battery.nominal": 12}, "so we think you mean 12.6 V; if", ("reading.voltage",)),
        ({"reading.voltage": 144, "battery.nominal": 12}, "hands off: mains may be", ("reading.voltage",)),
        ({"reading.voltage": 1265, "battery.nominal": 12}, "so we think you mean 12.65 V", ("reading.voltage",)),
        ({"reading.voltage": 252, "bank.voltage": 24}, "so we think you mean 25.2 V", ("reading.voltage",)),
    ],
)
def test_volts_that_no_battery_shows(facts: Facts, says: str | None, asks: tuple[str, ...]) -> None:
    for side in (doubt.of_rest, doubt.of_load):
        found = side(case(facts))
        assert (found is None) is (says is None)
        if found and says:
            assert says in found.say.replace("\u00a0", " ")
            assert (found.asks, found.route) == (asks, "needs-facts")


@pytest.mark.parametrize(
    ("facts", "route"),
    [
        ({"reading.voltage": 12.6, "bank.voltage": 24}, "technician"),
        ({"reading.voltage": 25.2, "bank.voltage": 24}, None),
        ({"reading.voltage": (12.6, 12.4), "bank.voltage": 24}, None),  # each battery by itself
        ({"reading.voltage": 25.2, "bank.voltage": 36}, "technician"),
        ({"reading.voltage": 17.0, "bank.voltage": 24}, None),  # of no system
    ],
)
def test_one_battery_read_in_place_of_the_bank(facts: Facts, route: str | None) -> None:
    found = doubt.of_rest(case(facts))
    assert (found and found.route) == route


@pytest.mark.parametrize(
    ("facts", "asks"),
    [
        ({"reading.voltage": 12.6, "reading.load_voltage": 12.7}, ("reading.load_voltage", "reading.voltage")),
        ({"reading.voltage": 12.6, "reading.load_voltage": 12.6}, None),
        ({"reading.voltage": 12.6, "reading.load_voltage": 10.1}, None),
        (
            {"reading.load_voltage": 9.5, "reading.load_voltage_at_load": 9.7},
            ("reading.load_voltage", "reading.load_voltage_at_load"),
        ),
        ({"reading.load_voltage": 9.7, "reading.load_voltage_at_load": 9.5}, None),
        ({"reading.load_voltage": 9.5, "reading.load_voltage_at_load": 9.5}, None),
        ({"reading.load_voltage_at_load": 9.5}, None),
    ],
)
def test_readings_that_are_swapped(facts: Facts, asks: tuple[str, ...] | None) -> None:
    found = doubt.of_load(case(facts))
    assert (found and found.asks) == asks
    if found:
        assert found.route == "technician"
        assert "swapped" in found.say


@pytest.mark.parametrize(
    ("facts", "opposed", "says"),
    [
        # 12.65 V is full and 1.155 a quarter full; 12.24 V and 1.190 both half full
        ({"reading.voltage": 12.65, "reading.gravity": 1.155}, True, "the first says full and the second about 25 %"),
        ({"reading.voltage": 11.89, "reading.gravity": 1.265}, True, "the first says empty and the second full"),
        ({"reading.voltage": 12.24, "reading.gravity": 1.190}, False, ""),
        # the table puts 12.574 V at 90.5 %, 12.566 V at 89.5 %, 11.961 V at 10.4 % and 11.955 V at 9.6 %
        ({"reading.voltage": 12.574, "reading.gravity": 1.155}, True, "the first says full and"),
        ({"reading.voltage": 12.566, "reading.gravity": 1.155}, True, "the first says about 90 % and"),
        ({"reading.voltage": 11.961, "reading.gravity": 1.225}, True, "the first says about 10 % and"),
        ({"reading.voltage": 11.955, "reading.gravity": 1.225}, True, "the first says empty and"),
        ({"reading.voltage": 25.3, "reading.gravity": 1.155}, True, "the first says full"),
        ({"reading.voltage": 12.65, "reading.gravity": 1.155, "battery.chemistry": "agm"}, False, ""),
        ({"reading.voltage": 12.65, "reading.gravity": 1.155, "reading.state": "charging"}, False, ""),
        ({"reading.voltage": 12.65}, False, ""),
    ],
)
def test_volts_against_gravity(facts: Facts, opposed: bool, says: str) -> None:
    known = case(facts)
    found = doubt.opposed(known)
    assert (found is not None) is opposed
    told = [fired.say.replace("\u00a0", " ") for fired in known.trace if "a gravity of" in fired.say]
    assert len(told) == opposed
    if found:
        assert says in found.say.replace("\u00a0", " ")
        assert found.route == "technician"


@pytest.mark.parametrize(
    ("facts", "cues", "doubted"),
    [
        ({"reading.voltage": (12.6, 13.6)}, ("detail:same_battery",), True),
        ({"reading.voltage": 12.6, "charger.voltage": 13.6}, ("detail:same_battery",), True),
        ({"reading.voltage": (12.6, 13.6)}, (), False),  # two batteries
        ({"reading.voltage": (12.6, 13.0)}, ("detail:same_battery",), False),
        ({"reading.voltage": (12.9, 13.3)}, ("detail:same_battery",), False),
        ({"reading.voltage": (12.6, 13.6), "battery.chemistry": "lfp"}, ("detail:same_battery",), False),
    ],
)
def test_two_readings_of_one_battery(facts: Facts, cues: tuple[str, ...], doubted: bool) -> None:
    known = case(facts, cues)
    found = doubt.of_rest(known)
    assert (found is not None) is doubted
    assert (("reading.voltage", 2) in known.used) is (doubted and "reading.voltage" in known.second)
    if found:
        assert "12.6 V and 13.6 V at rest" in found.say.replace("\u00a0", " ")
