"""How long a battery lasts at a current: Peukert's law in the 20-hour form."""

from __future__ import annotations

from service.calculators.units import Ampere, AmpereHour, Hour, Minute, OutOfRange

RATED = 20.0  # hours: the time in which a battery gives its C20


def run_time(c20: AmpereHour, current: Ampere, k: float) -> Hour:
    """Hours from full to empty at a steady current.

    t = 20 h x (C20 / (20 h x I))^k, never longer than C20 / I, so that a current under C20 / 20 gives C20 / I.
    k is in reference/peukert.toml. Raises OutOfRange unless capacity and current are above 0 and k is 1 or more.

    >>> round(run_time(100, 10, 1.2), 2), run_time(200, 5, 1.15)
    (8.71, 40.0)
    """
    if c20 <= 0 or current <= 0 or k < 1:
        raise OutOfRange(f"{c20:g} Ah and {current:g} A must be above 0, and k {k:g} at least 1")
    return float(min(RATED * (c20 / (RATED * current)) ** k, c20 / current))


def required_capacity(hours: Hour, current: Ampere, k: float, share: float) -> AmpereHour:
    """The smallest C20 that runs `current` for `hours` while it gives no more than `share` of its time to empty.

    The other way round of `run_time`. Raises OutOfRange unless all are above 0 and share is at most 1.

    >>> round(required_capacity(0.1, 340, 1.15, 0.5), 1)
    124.0
    """
    if hours <= 0 or current <= 0 or k < 1 or not 0 < share <= 1:
        raise OutOfRange(f"{hours:g} h, {current:g} A, k {k:g}, share {share:g}: above 0, and share at most 1")
    whole = hours / share
    return float(max(current * RATED * (whole / RATED) ** (1 / k), current * whole))


def capacity_from_reserve(reserve: Minute, k: float, current: Ampere = 25.0) -> AmpereHour:
    """C20 of a battery that gives 25 A for so many reserve minutes.

    >>> round(capacity_from_reserve(180, 1.2), 1)
    102.9
    """
    if reserve <= 0 or k < 1:
        raise OutOfRange(f"reserve {reserve:g} min must be above 0, and k {k:g} at least 1")
    return required_capacity(reserve / 60, current, k, 1.0)
