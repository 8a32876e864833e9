"""A docking session: bursts of a motor with rests between, and what they take out of the battery."""

from __future__ import annotations

import math

from service.calculators.units import Ampere, AmpereHour, Hour, OutOfRange, Percent, Second


def duty_cycle(burst: Second, rest: Second) -> Percent:
    """The part of the time that the motor is on.

    Raises OutOfRange unless the burst is above 0 and the rest is not negative.

    >>> duty_cycle(5, 15)
    25.0
    """
    if burst <= 0 or rest < 0:
        raise OutOfRange(f"a burst of {burst:g} s must be above 0, and a rest of {rest:g} s not negative")
    return burst / (burst + rest) * 100


def drawn(current: Ampere, on: Second) -> AmpereHour:
    """Amp-hours that a current takes out in so many seconds.

    >>> drawn(360, 100)
    10.0
    """
    if current < 0 or on < 0:
        raise OutOfRange(f"{current:g} A and {on:g} s must not be negative")
    return current * on / 3600


def depth(on: Second, to_empty: Hour) -> Percent:
    """The part of a full battery that is used, where it would run from full to empty in so many hours.

    Raises OutOfRange unless the time to empty is above 0.

    >>> depth(180, 0.25)
    20.0
    """
    if to_empty <= 0 or on < 0:
        raise OutOfRange(f"{to_empty:g} h to empty must be above 0, and {on:g} s not negative")
    return on / (to_empty * 3600) * 100


def bursts_for(share: Percent, burst: Second, to_empty: Hour) -> int:
    """How many whole bursts use no more than a share of a full battery.

    >>> bursts_for(20, 10, 0.25)
    18
    """
    return max(0, math.floor(share / depth(burst, to_empty) + 1e-9))
