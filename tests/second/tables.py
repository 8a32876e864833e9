"""Look-up for the second implementation: straight lines between rows, ends held."""

from __future__ import annotations

import itertools
import tomllib
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

TABLES: dict[str, Any] = tomllib.loads(Path(__file__).with_name("tables.toml").read_text(encoding="utf-8"))
KINDS: dict[str, Any] = TABLES["kind"]
CHARGES = (0, 25, 50, 75, 100)
FEET = 1 / 0.3048

Facts = Mapping[str, Any]


def line(x: float, xs: Sequence[float], ys: Sequence[float]) -> float:
    """The value at x on the straight lines through the rows; beyond them the last row."""
    rows = sorted(zip(xs, ys, strict=True))
    if x <= rows[0][0]:
        return rows[0][1]
    for (left, low), (right, high) in itertools.pairwise(rows):
        if x <= right:
            return low + (high - low) * (x - left) / (right - left)
    return rows[-1][1]


def kind(facts: Facts) -> str:
    """The kind of battery; lead where it is not said."""
    return facts.get("battery.chemistry", "lead")


def of_kind(facts: Facts) -> dict[str, Any]:
    """The numbers of this kind of battery."""
    return KINDS[kind(facts)]


def lithium(facts: Facts) -> bool:
    return kind(facts) == "lfp"


def volts(facts: Facts) -> float:
    """The system's volts; 12 where nothing is said."""
    return facts.get("bank.voltage") or facts.get("battery.nominal") or 12


def in_series(facts: Facts) -> float:
    """How many 12 V batteries' worth of volts."""
    return volts(facts) / 12


def in_parallel(facts: Facts) -> int:
    return int(facts.get("battery.count", 1)) if facts.get("bank.layout") == "parallel" else 1


def bank_capacity(facts: Facts) -> float:
    return facts["battery.capacity"] * in_parallel(facts)


def resting_charge(kind_of: str, per_battery: float) -> float:
    """Charge in percent of a battery that rests at these volts."""
    if kind_of == "lfp":
        return line(per_battery, TABLES["lithium_rest"]["volts"], TABLES["lithium_rest"]["charge"])
    return line(per_battery, TABLES["rest"].get(kind_of, TABLES["rest"]["flooded"]), CHARGES)


def lowest_passing(celsius: float) -> float:
    """Lowest volts of a battery that just passes the load test at this temperature."""
    return line(celsius, TABLES["load_test"]["celsius"], TABLES["load_test"]["volts"])


def circular_mils(facts: Facts) -> float:
    if "cable.area" in facts:
        return facts["cable.area"] * 1973.5
    return TABLES["cable"]["mils"][TABLES["cable"]["gauge"].index(facts["cable.gauge"])]


def ampacity(facts: Facts, insulation: int = 105) -> float:
    """What the stated cable may carry. 105 C insulation outside engine spaces unless said otherwise."""
    if "cable.area" in facts:
        return TABLES["metric"]["amps105"][TABLES["metric"]["mm2"].index(facts["cable.area"])]
    column = "engine" if facts.get("cable.in_engine_space") else f"amps{insulation}"
    return TABLES["cable"][column][TABLES["cable"]["gauge"].index(facts["cable.gauge"])]


def drop(amps: float, metres: float, mils: float) -> float:
    """Volts lost there and back: 10.75 ohm circular mils a foot."""
    return 10.75 * amps * 2 * metres * FEET / mils
