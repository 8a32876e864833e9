"""What the batteries make together, and what the load draws."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from service.rules.bank import read_system, system
from tests.building import case


@pytest.mark.parametrize(
    ("facts", "volts", "series", "parallel"),
    [
        ({}, 12, 1, 1),
        ({"battery.count": 2}, 12, 1, 2),
        ({"battery.count": 2, "bank.layout": "series"}, 24, 2, 1),
        ({"bank.layout": "series"}, 24, 2, 1),
        ({"bank.layout": "series", "battery.nominal": 12}, 24, 2, 1),
        ({"bank.layout": "series", "battery.nominal": 6}, 12, 2, 1),
        ({"bank.layout": "parallel"}, 12, 1, 2),
        ({"battery.count": 4, "bank.layout": "series-parallel"}, 24, 2, 2),
        ({"battery.count": 4, "bank.layout": "series-parallel", "bank.voltage": 12}, 12, 2, 2),
        ({"battery.count": 4, "bank.voltage": 24}, 24, 2, 2),
        ({"battery.nominal": 6, "battery.count": 2}, 12, 2, 1),
        ({"battery.nominal": 24}, 24, 1, 1),
        ({"battery.nominal": 25.6, "battery.count": 1}, 24, 1, 1),
        ({"bank.voltage": 24, "battery.count": 1}, 24, 1, 1),
        ({"load.model": "sturgeon"}, 24, 2, 1),
        ({"load.model": "sturgeon", "reading.voltage": 12.7}, 24, 2, 1),
        ({"reading.voltage": 25.4}, 24, 2, 1),
        ({"battery.nominal": 8, "battery.count": 3, "bank.layout": "series"}, 24, 3, 1),
    ],
)
def test_volts_series_parallel(facts: dict[str, Any], volts: float, series: float, parallel: float) -> None:
    found = case(facts)
    assert (found["bank.voltage"], found["bank.in_series"], found["bank.in_parallel"]) == (volts, series, parallel)


def test_parallel_adds_amps_and_amp_hours_series_does_not() -> None:
    """Army lesson OD1002: two 12 V 100 Ah batteries in series give 24 V 100 Ah."""
    series = case({"battery.count": 2, "bank.layout": "series", "battery.capacity": 100, "battery.cca": 600})
    assert (series["bank.capacity"], series["bank.cca"]) == (100, 600)
    both = case(
        {
            "battery.count": 4,
            "bank.layout": "series-parallel",
            "battery.capacity": 100,
            "battery.cca": 600,
            "battery.chemistry": "agm",
        }
    )
    assert (both["bank.capacity"], both["bank.cca"], both["bank.energy"]) == (200, 1200, 4800)


def test_lithium_holds_12_8_v_for_each_12() -> None:
    assert case({"battery.capacity": 100, "battery.chemistry": "lfp"})["bank.energy"] == pytest.approx(1280)
    assert case({"battery.energy": 2560, "battery.chemistry": "lfp"})["battery.capacity"] == pytest.approx(200)


@pytest.mark.parametrize(("volts", "nominal"), [(12.8, 12), (13.2, 12), (25.6, 24), (38.4, 36), (51.2, 48), (6, 6)])
def test_a_batterys_own_volts_stand_for_a_system(volts: float, nominal: float) -> None:
    assert system(volts) == nominal


@pytest.mark.parametrize(
    ("reading", "nominal"), [(10.5, 12), (14.9, 12), (21, 24), (29.8, 24), (31.5, 36), (44.8, 48), (59, 48), (18, None)]
)
def test_a_resting_reading_tells_the_system(reading: float, nominal: float | None) -> None:
    assert read_system(reading) == nominal


@pytest.mark.parametrize(
    ("facts", "family"),
    [
        ({"battery.chemistry": "gel"}, "lead"),
        ({"battery.chemistry": "lfp", "battery.cca": 800}, "lithium"),
        ({"battery.cca": 800}, "lead"),
        ({"battery.max_current": 100}, "lithium"),
        ({"battery.duty": "deep-cycle"}, "lead"),
        ({"battery.capacity": 100}, None),
    ],
)
def test_lead_or_lithium(facts: dict[str, Any], family: str | None) -> None:
    assert case(facts).get("battery.family") == family


@pytest.mark.parametrize(("typed", "amps"), [("3 hp", 219.3), ("3hp", 219.3), ("2.2 kW", 186.4), ("2237 W", 186.4)])
def test_horsepower_is_at_the_shaft(typed: str, amps: float) -> None:
    found = case({"load.power": 2237.1})
    found.stated = {name: replace(item, text=typed) for name, item in found.stated.items()}
    assert found["load.current"] == pytest.approx(amps, abs=0.1)


@pytest.mark.parametrize(
    ("facts", "start"),
    [
        ({}, 12.6),
        ({"reading.voltage": 12.45}, 12.45),
        ({"reading.voltage": 13.1}, 12.8),
        ({"battery.charge": 50}, 12.24),
        ({"reading.voltage": 12.9, "reading.state": "charging"}, 12.6),
        ({"reading.voltage": 24.8}, 12.4),
        ({"battery.charge": 50, "battery.chemistry": "agm"}, 12.3),
    ],
)
def test_where_a_start_begins(facts: dict[str, Any], start: float) -> None:
    assert case(facts)["battery.start_voltage"] == pytest.approx(start)
