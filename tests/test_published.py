"""Published standards, handbook tables and worked examples against what the calculators and rules give.

The values stand in data/published.toml, each under its source; here is only how each kind of value is worked out. The
tables of boat cable, cell for cell, are in tests/calculators/test_cable.py.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from grammar.files import toml
from service import reference
from service.calculators import cable, charging, convert, freezing, fuse, lithium, peukert, sag, storage, ventilation
from service.calculators.cold import share as cranking_share
from service.judgements import charge_volts, cranking, frost
from service.judgements.charging import cold_share
from service.judgements.fusing import CABLE_MARGIN, LOAD_MARGIN, RATINGS, interrupting
from service.rules import readings
from service.rules.battery import lowest_at
from service.rules.cable import K, ampacity, gauges, metric_sizes
from service.topics.bank_wiring import TOPIC as BANK
from tests.building import case

PUBLISHED = toml(Path(__file__).parent / "data" / "published.toml")
LEAST_CHECKS, LEAST_SOURCES = 120, 12


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8


def bank(layout: str, count: int, volts: float, capacity: float) -> list[float]:
    facts = {"battery.nominal": volts, "battery.capacity": capacity, "battery.count": count, "bank.layout": layout}
    found = {item.name: item.value for item in BANK.answer(case(facts)).figures}
    return [found["bank_voltage"], found["bank_capacity"]]


def area_needed(volts: float, percent: float, amps: float, round_trip_feet: float) -> float:
    return cable.area_for(amps, round_trip_feet * cable.FOOT / 2, volts * percent / 100, k=K.value)


def fitting_gauge(volts: float, percent: float, amps: float, round_trip_feet: float) -> Any:
    found = cable.smallest(gauges(), area_needed(volts, percent, amps, round_trip_feet))
    return found.name if found else None


def charger_amps(kind: str, capacity: float) -> list[float]:
    row = reference.row("charge_current", chemistry=kind)
    return [charging.current(capacity, row[end].value) for end in ("low", "high")]


def by_degree(kind: str, stage: str, cells: int) -> float:
    return float(reference.row("charge_voltage", chemistry=kind, stage=stage)["by_degree"].value) * cells / 6


def bundled(conductors: int) -> float:
    return next(row["share"].value for row in reversed(reference.rows("bundles")) if row["from"].value <= conductors)


def from_one_amp(amp_hours: float, current: float, k: float) -> float:
    """The tutorials' battery is rated at 1 A; its 20-hour capacity is what our form asks for."""
    c20 = peukert.RATED * (amp_hours / peukert.RATED) ** (1 / k)
    return peukert.run_time(c20, current, k)


def reserve_delivers(minutes: float) -> float:
    k = reference.row("peukert", chemistry="lead")["k"].value
    return peukert.run_time(peukert.capacity_from_reserve(minutes, k), 25, k) * 25


def cold_charge(at: float) -> float | None:
    found = cold_share(case({"ambient.temperature": at, "battery.chemistry": "lfp"}), "lfp")
    return None if found is None else found.value


def cold_discharge(at: float) -> float:
    return lithium.cold_share(at, *(float(reference.value("lithium", name).value) for name in COLD_LIMITS))


WARMER = (234.5 + 75) / (234.5 + 25)  # resistance of copper at 75 C over that at 25 C
COLD_LIMITS = ("freezing", "coldest", "cold")
CRANKING = [(row["temperature"].value, row["share"].value) for row in reference.rows("cranking_temperature")]

METHODS: dict[str, Callable[..., Any]] = {
    "rest_charge": lambda kind, volts: readings.charge_of(volts, kind).value,
    "rest_volts_of_gravity": lambda gravity: readings.volts_for(readings.gravity_charge(gravity), "flooded"),
    "gravity_charge": readings.gravity_charge,
    "gravity_corrected": lambda reading, fahrenheit: readings.corrected_gravity(reading, celsius(fahrenheit)),
    "gravity_correction_per_10_f": lambda: readings.corrected_gravity(1.2, celsius(90)) - 1.2,
    "cranking_share": lambda fahrenheit: cranking_share(celsius(fahrenheit), CRANKING),
    "freezing_by_charge": frost.point_at_charge,
    "freezing_by_gravity": lambda gravity: freezing.point(gravity, frost.rows("gravity")),
    "bank": bank,
    "load_test_lowest": lambda fahrenheit: lowest_at(celsius(fahrenheit)).value,
    "volts_at_half_cca": lambda cca: sag.terminal_voltage(
        cranking.limit("full"), cca / 2, sag.resistance(cca, cranking.limit("full"), lowest_at(None).value)
    ),
    "volts_at_amps": lambda cca, amps: sag.terminal_voltage(
        cranking.limit("full"), amps, sag.resistance(cca, cranking.limit("full"), lowest_at(None).value)
    ),
    "self_discharge_ratio": lambda warm, mild: (
        storage.monthly_rate(1, celsius(warm)) / storage.monthly_rate(1, celsius(mild))
    ),
    "float_compensated": lambda volts, at: charging.compensated(volts, at, by_degree("flooded", "float", 1)),
    "absorption_compensated": lambda volts, at: charging.compensated(volts, at, by_degree("flooded", "absorption", 6)),
    "charger_amps": charger_amps,
    "charge_volts": lambda kind, stage: [getattr(charge_volts.stage(kind, stage), end) for end in ("low", "high")],
    "lithium_most_volts": lambda: readings.limit("lithium-overcharge"),
    "lithium_cold_charge": cold_charge,
    "lithium_cold_discharge": cold_discharge,
    "airflow": ventilation.airflow,
    "opening": ventilation.opening_area,
    "ampacity": ampacity,
    "bundled_share": bundled,
    "fuse_most": lambda gauge: fuse.at_most(CABLE_MARGIN.value * (ampacity(gauge) or 0), RATINGS),
    "fuse_least": lambda amps: fuse.at_least(LOAD_MARGIN.value * amps, RATINGS),
    "awg_circular_mils": lambda gauge: (
        reference.row("wire_areas", gauge=gauge)["nominal"].value * reference.value("copper", "cmil_per_mm2").value
    ),
    "copper_ohms_at_75_c": lambda circular_mils: K.value * WARMER / circular_mils * 1000,
    "next_metric": lambda area: next(size.name for size in metric_sizes() if size.name >= area),
    "circular_mils": area_needed,
    "drop_gauge": fitting_gauge,
    "interrupting": lambda cca: interrupting(case({"battery.cca": cca, "bank.voltage": 12})).value,
    "to_feet": convert.feet,
    "to_pounds": convert.pounds,
    "to_fahrenheit": convert.fahrenheit,
    "horsepower": lambda: convert.HORSEPOWER,
    "case_size": lambda group: [
        reference.row("group_sizes", group=group)[side].value for side in ("length", "width", "height")
    ],
    "peukert_from_one_amp": from_one_amp,
    "reserve_delivers": reserve_delivers,
    "alternator_share": lambda name: reference.value("charging", name).value,
}


def checks() -> Iterator[Any]:
    for source, entry in PUBLISHED.items():
        for method, given, published, within in entry["checks"]:
            shown = ",".join(map(str, given))
            yield pytest.param(method, given, published, within, id=f"{source}: {method}({shown})")


@pytest.mark.parametrize(("method", "given", "published", "within"), list(checks()))
def test_a_published_value(method: str, given: list[Any], published: Any, within: float) -> None:
    found = METHODS[method](*given)
    assert found == (published if isinstance(published, str) else pytest.approx(published, abs=within))


def test_values_and_sources_are_many_and_no_source_makes_up_the_most() -> None:
    counted = Counter({source: len(entry["checks"]) for source, entry in PUBLISHED.items()})
    assert counted.total() >= LEAST_CHECKS
    assert len(counted) >= LEAST_SOURCES
    assert max(counted.values()) < counted.total() / 4


def test_every_source_is_named_in_full_and_no_value_stands_twice() -> None:
    for source, entry in PUBLISHED.items():
        assert all(entry[key].strip() for key in ("title", "publisher", "locator", "checked")), source
        told = [repr(item[:2]) for item in entry["checks"]]
        assert len(told) == len(set(told)), source


def test_every_way_of_working_out_is_used() -> None:
    assert set(METHODS) == {item[0] for entry in PUBLISHED.values() for item in entry["checks"]}
