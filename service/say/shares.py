"""States of charge and shares, in whole percent or to the nearest five."""

from __future__ import annotations

import math

from service.say.numbers import HAIR, NB, number


def fives(value: float) -> int:
    """A share to the nearest five, halves up.

    >>> fives(68.6), fives(62.5), fives(67.5)
    (70, 65, 70)
    """
    return math.floor(value / 5 + 0.5) * 5


def charge(value: float) -> str:
    """A state of charge to 5 %.

    >>> charge(68.6).replace(NB, " ")
    '70 %'
    """
    return f"{fives(value)}{NB}%"


def charge_within(value: float, limits: tuple[int, ...] = (75, 50)) -> str:
    """A charge to 5 % that rounding never lifts over a limit.

    >>> [charge_within(value).replace(NB, " ") for value in (94.7, 74.1, 75.0)]
    ['95 %', 'just under 75 %', '75 %']
    """
    rounded = fives(value)
    crossed = next((limit for limit in limits if value < limit <= rounded), None)
    return f"just under {crossed}{NB}%" if crossed else charge(value)


def still_in(value: float) -> str:
    """A charge that is still there after a use: whole, rounded down.

    >>> still_in(92.9).replace(NB, " ")
    '92 %'
    """
    return f"{math.floor(value + HAIR)}{NB}%"


def share(value: float) -> str:
    """A loss in percent to 0.1, to 0.01 where that would make it just 3 or 10 %.

    >>> [share(value).replace(NB, " ") for value in (9.41, 10.0, 10.02, 13.26)]
    ['9.4 %', '10 %', '10.02 %', '13.3 %']
    """
    near = any(value != limit and number(value, 1) == number(limit, 1) for limit in (3, 10))
    return f"{number(value, 2 if near else 1).removesuffix('.0')}{NB}%"


LIMITS = (20, 40, 50, 75)  # percent of charge at which a verdict turns


def whole_percent(value: float) -> str:
    """A state of charge to a whole percent, which no reading tells nearer; it is never rounded up to a limit.

    >>> whole_percent(1.47).replace(NB, " "), whole_percent(74.8).replace(NB, " ")
    ('1 %', '74 %')
    """
    whole = round(value)
    return f"{whole - 1 if whole in LIMITS and value < whole - 1e-6 else whole}{NB}%"
