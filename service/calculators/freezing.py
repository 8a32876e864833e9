"""Where the acid of a lead battery turns to ice."""

from __future__ import annotations

from service.calculators.table import Points, within
from service.calculators.units import Celsius


def point(at: float, rows: Points) -> Celsius:
    """Freezing temperature at a gravity or a charge, between the (gravity or percent, C) rows of one table.

    >>> point(50, [(25, -15.0), (50, -26.1)]), round(point(1.175, [(1.150, -15.0), (1.200, -26.7)]), 2)
    (-26.1, -20.85)
    """
    return within(at, rows)


def judged(temperature: Celsius, freezes: Celsius, margin: Celsius) -> str:
    """no at or under the freezing point, marginal up to `margin` above it, yes beyond.

    >>> [judged(t, -15, 5) for t in (-15, -14.9, -10, -9.9)]
    ['no', 'marginal', 'marginal', 'yes']
    """
    if temperature <= freezes:
        return "no"
    return "marginal" if temperature - freezes <= margin + 1e-9 else "yes"
