"""The figures that a house may hold to a value of its own, which way is the stricter one, and whose value it is."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from service.reply import Figure


@dataclass(frozen=True, slots=True)
class Bound:
    """A figure's stricter ways ("least": more is stricter) and the sources of the value it is held against."""

    ways: tuple[str, ...]
    sources: tuple[str, ...]
    unit: str
    per_12_volts: bool = False


VOLTS = ("charge-volts-flooded", "charge-volts-agm", "charge-volts-gel", "charge-volts-lithium")
BOUNDS = {
    "required_cca": Bound(("least",), ("load-test-resistance",), "A"),
    "required_capacity": Bound(("least",), ("peukert",), "Ah"),
    "required_limit_current": Bound(("least",), ("lithium-limits",), "A"),
    "required_peak_current": Bound(("least",), ("lithium-limits",), "A"),
    "limit_current": Bound(("most",), ("lithium-limits",), "A"),
    "lowest_acceptable_voltage": Bound(("least",), ("load-test", "load-test-resistance"), "V", per_12_volts=True),
    "charger_current_low": Bound(("least",), ("charging-by-kind",), "A"),
    "charger_current_high": Bound(("most",), ("charging-by-kind",), "A"),
    "absorption_voltage": Bound(("least", "most"), VOLTS, "V", per_12_volts=True),
    "float_voltage": Bound(("least", "most"), VOLTS, "V", per_12_volts=True),
    "fuse_rating_high": Bound(("most",), ("cfr-183-455",), "A"),
    "days_to_recharge": Bound(("most",), ("charge-limits",), "d"),
    "check_interval": Bound(("most",), ("check-interval",), "d"),
}


def tightened(figure: Figure, least: Mapping[str, float], most: Mapping[str, float], volts: float) -> Figure:
    """A figure within a rule's bounds, never outside its own range: there its source is the stricter.

    `volts`: how many times 12 V the bank has, as bounds in volts are those of a 12 V battery.
    """
    if figure.name not in BOUNDS or not isinstance(figure.value, (int, float)):
        return figure
    times = volts if BOUNDS[figure.name].per_12_volts else 1.0
    low, high = least.get(figure.name, -math.inf) * times, most.get(figure.name, math.inf) * times
    if figure.low is None or figure.high is None:
        return replace(figure, value=min(max(float(figure.value), low), high))
    ends = [min(max(end, min(low, figure.high)), max(high, figure.low)) for end in (figure.low, figure.high)]
    return replace(figure, value=min(max(float(figure.value), ends[0]), ends[1]), low=ends[0], high=ends[1])
