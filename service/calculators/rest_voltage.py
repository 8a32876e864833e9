"""How full a battery is from its volts at rest. All volts are those of one 12 V battery."""

from __future__ import annotations

from collections.abc import Sequence

from service.calculators.table import Points, within
from service.calculators.units import OutOfRange, Percent, Volt

Band = Sequence[tuple[Volt, Percent, Percent, Percent]]


def charge(volts: Volt, rows: Points) -> Percent:
    """Charge of a lead battery at rest, between the (volts, percent) rows of its kind; empty and full beyond them.

    Raises OutOfRange under 0 V.

    >>> round(charge(12.40, [(12.65, 100), (12.45, 75), (12.24, 50), (12.06, 25), (11.89, 0)]))
    69
    """
    if volts < 0:
        raise OutOfRange(f"{volts:g} V at rest must be 0 or more")
    return within(volts, rows)


def band(volts: Volt, rows: Band) -> tuple[Percent, Percent, Percent]:
    """Lowest, middle and highest charge of a lithium battery at rest, between (volts, low, middle, high) rows.

    Raises OutOfRange under 0 V.

    >>> band(13.05, [(13.0, 23, 30, 40), (13.1, 29, 40, 62)])
    (26.0, 35.0, 51.0)
    """
    if volts < 0:
        raise OutOfRange(f"{volts:g} V at rest must be 0 or more")
    low, middle, high = (round(within(volts, [(row[0], row[side]) for row in rows]), 6) for side in (1, 2, 3))
    return low, middle, high


def volts_at(percent: Percent, rows: Points) -> Volt:
    """Volts at rest of a battery that is so full: the same (volts, percent) rows read the other way.

    >>> volts_at(75, [(12.65, 100), (12.45, 75), (12.24, 50)])
    12.45
    """
    if not 0 <= percent <= 100:
        raise OutOfRange(f"{percent:g} % of charge must be 0 to 100")
    return within(percent, [(share, volts) for volts, share in rows])
