"""What two unlike batteries make together, and how far apart they are."""

from __future__ import annotations

from service.calculators.units import OutOfRange


def together(first: float, second: float, *, adds: bool) -> float:
    """A figure of two batteries joined: it adds up, or it is that of the weaker one.

    Volts add in series, amp-hours and cranking amps in parallel; the other way round the smaller one counts.

    >>> together(100, 140, adds=True), together(100, 140, adds=False)
    (240, 100)
    """
    return first + second if adds else min(first, second)


def apart(first: float, second: float) -> float:
    """How far two figures are apart, in percent of the larger. Raises OutOfRange unless both are above 0.

    >>> apart(90, 100)
    10.0
    """
    if first <= 0 or second <= 0:
        raise OutOfRange(f"{first:g} and {second:g}: both must be above 0")
    return abs(first - second) / max(first, second) * 100
