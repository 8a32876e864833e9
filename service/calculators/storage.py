"""How a battery that is laid up loses its charge."""

from __future__ import annotations

import math

from service.calculators.units import Celsius, Day, OutOfRange, Percent


def monthly_rate(
    rate: Percent, temperature: Celsius, usual: Celsius = 20, doubles: Celsius = 10, coldest: Celsius = 0
) -> Percent:
    """Self-discharge a month: `rate` at the usual temperature, doubling each `doubles` C, not under the coldest rate.

    Raises OutOfRange for a rate that is not above 0.

    >>> [round(monthly_rate(5, t), 2) for t in (30, 20, 10, 0, -15)]
    [10.0, 5.0, 2.5, 1.25, 1.25]
    """
    if rate <= 0:
        raise OutOfRange(f"a self-discharge of {rate:g} % a month must be above 0")
    return rate * 2 ** ((max(temperature, coldest) - usual) / doubles)


def days_between(charge: Percent, until: Percent, per_day: Percent) -> Day:
    """Days from one charge to another at so many percent a day; 0 where it is there already.

    >>> round(days_between(100, 75, 5 / 30.4))
    152
    """
    if per_day <= 0:
        raise OutOfRange(f"a loss of {per_day:g} % a day must be above 0")
    return max(0.0, charge - until) / per_day


def charge_after(charge: Percent, days: Day, per_day: Percent) -> Percent:
    """Charge that is left after so many days, 0 at the least.

    >>> charge_after(100, 40, 0.5), charge_after(10, 40, 0.5)
    (80.0, 0.0)
    """
    if days < 0 or not math.isfinite(days):
        raise OutOfRange(f"{days:g} days must be 0 or more")
    return max(0.0, charge - days * per_day)
