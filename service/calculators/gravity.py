"""What a hydrometer tells: gravity brought to one temperature, and the charge that belongs to it."""

from __future__ import annotations

from collections.abc import Iterable

from service.calculators.table import Points, within
from service.calculators.units import Celsius, OutOfRange, Percent


def corrected(reading: float, temperature: Celsius, per_10_fahrenheit: float, reference: Celsius) -> float:
    """Specific gravity at the reference temperature: so much more for each 10 F above it, less below it.

    To 0.0001, as no float shows more. Raises OutOfRange for a reading that is no acid, outside 0.9 to 1.4.

    >>> corrected(1.250, 4.44, 0.004, 26.67)
    1.234
    """
    if not 0.9 <= reading <= 1.4:
        raise OutOfRange(f"a gravity of {reading:g} is outside 0.900 to 1.400")
    return round(reading + per_10_fahrenheit * (temperature - reference) * 1.8 / 10, 4)


def charge(gravity: float, rows: Points) -> Percent:
    """Charge of a wet-cell battery, between the (gravity, percent) rows; empty and full beyond them.

    >>> round(charge(1.245, [(1.265, 100), (1.225, 75)]), 1)
    87.5
    """
    return within(gravity, rows)


def spread(readings: Iterable[float]) -> float:
    """Highest less lowest cell, to 0.001 as a float is read.

    >>> spread([1.265, 1.250, 1.180])
    0.085
    """
    cells = list(readings)
    return round(max(cells) - min(cells), 4)
