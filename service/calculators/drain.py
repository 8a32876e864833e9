"""What a small current that is always on takes out of a battery."""

from __future__ import annotations

from service.calculators.units import Ampere, AmpereHour, Day, OutOfRange, Percent


def daily_loss(current: Ampere) -> AmpereHour:
    """Amp-hours a day. Raises OutOfRange for a negative current.

    >>> daily_loss(0.5)
    12.0
    """
    if current < 0:
        raise OutOfRange(f"a drain of {current:g} A must be 0 or more")
    return current * 24


def days_between(charge: Percent, until: Percent, capacity: AmpereHour, current: Ampere) -> Day:
    """Days in which a drain takes a battery from one charge to another; 0 where it is there already.

    Raises OutOfRange unless capacity and current are above 0.

    >>> round(days_between(100, 50, 100, 0.020))
    104
    """
    if capacity <= 0 or current <= 0:
        raise OutOfRange(f"{capacity:g} Ah and {current:g} A must be above 0")
    return max(0.0, charge - until) / 100 * capacity / daily_loss(current)


def current_for(charge: Percent, until: Percent, capacity: AmpereHour, days: Day) -> Ampere:
    """The largest drain that takes so many days from one charge to another.

    >>> round(current_for(100, 50, 100, 104), 3)
    0.02
    """
    if days <= 0:
        raise OutOfRange(f"{days:g} days must be above 0")
    return max(0.0, charge - until) / 100 * capacity / 24 / days
