"""Copper cable: what it loses, the area it needs, and the smallest standard size that will do."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from service.calculators.units import Ampere, CircularMil, Metre, OutOfRange, Volt

FOOT = 0.3048  # metres, by definition


@dataclass(frozen=True, slots=True)
class Size:
    """A standard size: its name ("2/0", 70.0), its area and the current it may carry."""

    name: str | float
    area: CircularMil
    ampacity: Ampere


def drop(current: Ampere, one_way: Metre, area: CircularMil, *, k: float) -> Volt:
    """Volts lost in both conductors of a copper pair.

    k is ohm circular mil / ft (reference/copper.toml); the length is one way. Raises OutOfRange unless current
    and length are 0 or more and the area above 0. Source: the formula of ABYC E-11.

    >>> round(drop(340, 6.096, 125_100, k=10.75), 2)
    1.17
    """
    _positive(area=area)
    return k * current * _round_trip_feet(current, one_way) / area


def area_for(current: Ampere, one_way: Metre, lost: Volt, *, k: float) -> CircularMil:
    """Circular mils that lose just so many volts there and back.

    Raises OutOfRange unless the volts are above 0. Source: the formula of ABYC E-11.

    >>> round(area_for(340, 6.096, 1.2, k=10.75))
    121833
    """
    _positive(lost=lost)
    return k * current * _round_trip_feet(current, one_way) / lost


def smallest(sizes: Iterable[Size], area: CircularMil = 0.0, current: Ampere = 0.0, share: float = 1.0) -> Size | None:
    """The first size with that area that may carry that current, None beyond the last.

    `sizes` go from thin to thick; `share` is what is left of the ampacity (0.85 in an engine space).

    >>> smallest([Size("4", 37_360, 160), Size("2", 62_450, 210)], current=180).name
    '2'
    """
    for size in sizes:
        if size.area >= area * (1 - 1e-9) and size.ampacity * share >= current * (1 - 1e-9):
            return size
    return None


def conductors(
    sizes: Iterable[Size], area: CircularMil, current: Ampere, *, share: float, most: int = 8
) -> tuple[int, Size] | None:
    """How many equal conductors for each pole, two or more, and their size: the fewest, then the thinnest.

    `sizes` holds those that may be paralleled; each counts with `share` of its ampacity. None where `most`
    will not do.

    >>> sizes = [Size("3/0", 158_600, 385), Size("4/0", 205_500, 445)]
    >>> count, size = conductors(sizes, 352_690, 600, share=0.6)
    >>> count, size.name
    (3, '3/0')
    """
    kept = list(sizes)
    for count in range(2, most + 1):
        if size := smallest(kept, area / count, current / count, share):
            return count, size
    return None


def _round_trip_feet(current: Ampere, one_way: Metre) -> float:
    for name, value in (("current", current), ("length", one_way)):
        if not (math.isfinite(value) and value >= 0):
            raise OutOfRange(f"{name} is {value}: it must be 0 or more")
    return 2 * one_way / FOOT


def _positive(**values: float) -> None:
    for name, value in values.items():
        if not (math.isfinite(value) and value > 0):
            raise OutOfRange(f"{name} is {value}: it must be above 0")
