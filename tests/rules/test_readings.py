"""How many batteries a meter spans, the charge that other topics build on, and volts that harm."""

from __future__ import annotations

from typing import Any

import pytest

from service.judgements.harm import overvoltage
from service.rules.readings import batteries_read
from tests.building import case


@pytest.mark.parametrize(
    ("volts", "said", "six", "count"),
    [
        (12.6, None, False, 1), (10.5, None, False, 1), (14.9, None, False, 1), (25.2, None, False, 2),
        (37.4, None, False, 3), (51.2, None, False, 4),
        (16.0, None, False, 1),  # counts as 12 V for the hazard
        (10.4, None, False, None), (18.4, None, False, None), (6.2, None, False, None),
        (40.0, None, False, None),
        (9.6, 12.0, False, 1), (23.0, 24.0, False, 2),
        (6.2, None, True, 0.5), (12.4, None, True, 1), (12.4, 12.0, True, 1),
    ],
)  # fmt: skip
def test_how_many_batteries_a_reading_spans(volts: float, said: float | None, six: bool, count: float | None) -> None:
    assert batteries_read(volts, said, six) == count


@pytest.mark.parametrize(
    ("facts", "charge"),
    [
        ({"reading.voltage": 12.4}, 69.05),
        ({"reading.voltage": 25.1, "battery.chemistry": "agm"}, 70.8),
        ({"reading.voltage": 13.2, "battery.chemistry": "lfp"}, 70),
        ({"reading.voltage": 6.2, "battery.nominal": 6}, 69.05),
        ({"reading.gravity": 1.235, "ambient.temperature": 4.44}, 70.7),
        ({"reading.gravity": 1.200, "ambient.temperature": -12}, 57.1),  # that is the night, not the acid
        ({"reading.voltage": 12.7, "battery.charge": 60}, 60),  # as stated
        ({"reading.voltage": 13.4}, None),  # surface charge tells nothing
        ({"reading.voltage": 12.7, "reading.state": "charging"}, None),
        ({"reading.voltage": 18.4}, None),
        ({"reading.gravity": 1.25, "battery.chemistry": "agm"}, None),
        ({"reading.voltage": 12.7, "battery.chemistry": "lithium-other"}, None),
    ],
)
def test_charge_from_what_was_read(facts: dict[str, Any], charge: float | None) -> None:
    found = case(facts).get("battery.charge")
    assert found == (None if charge is None else pytest.approx(charge, abs=0.1))


@pytest.mark.parametrize(
    ("facts", "harms"),
    [
        ({"reading.voltage": 14.9}, False),
        ({"reading.voltage": 15.0}, True),
        ({"reading.voltage": 17.9}, True),
        ({"reading.voltage": 18.0, "battery.nominal": 12}, False),  # no battery reads that: a slip
        ({"reading.voltage": 30.0, "bank.voltage": 24}, True),
        ({"reading.voltage": 29.9, "bank.voltage": 24}, False),
        ({"reading.voltage": 14.6, "battery.chemistry": "lfp"}, False),
        ({"reading.voltage": 14.7, "battery.chemistry": "lfp"}, True),
        ({"charger.voltage": 15.2, "battery.chemistry": "agm"}, True),
        ({"reading.voltage": (12.6, 15.4)}, True),
        ({"battery.capacity": 100}, False),
    ],
)
def test_volts_that_harm(facts: dict[str, Any], harms: bool) -> None:
    assert overvoltage(case(facts)) is harms


def test_equalising_on_purpose_is_allowed_to_16_volts_for_wet_cells() -> None:
    wet = {"battery.chemistry": "flooded"}
    assert not overvoltage(case({"reading.voltage": 16.0} | wet, ["detail:equalising"]))
    assert overvoltage(case({"reading.voltage": 16.1} | wet, ["detail:equalising"]))
    assert overvoltage(case({"reading.voltage": 15.5, "battery.chemistry": "gel"}, ["detail:equalising"]))
