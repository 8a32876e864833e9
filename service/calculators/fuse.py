"""Fuses: the rating for a current, and the most that a cable allows."""

from __future__ import annotations

import math
from collections.abc import Sequence

from service.calculators.units import Ampere, OutOfRange


def at_least(amps: Ampere, ratings: Sequence[Ampere]) -> Ampere | None:
    """The smallest standard rating of at least so many amps, None beyond the list.

    `ratings` go up (NEC 240.6(A)). Raises OutOfRange unless amps is above 0.

    >>> at_least(1.25 * 340, [400, 450, 500])
    450
    """
    if not (math.isfinite(amps) and amps > 0):
        raise OutOfRange(f"current is {amps}: it must be above 0")
    return next((rating for rating in ratings if rating >= amps * (1 - 1e-9)), None)


def at_most(amps: Ampere, ratings: Sequence[Ampere]) -> Ampere | None:
    """The largest standard rating not above so many amps, None under the first.

    >>> at_most(1.5 * 445, [500, 600, 700])
    600
    """
    fitting = [rating for rating in ratings if rating <= amps * (1 + 1e-9)]
    return fitting[-1] if fitting else None
