"""Reading between the rows of a published table."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from service.calculators.units import OutOfRange

Points = Sequence[tuple[float, float]]


def between(x: float, points: Points) -> float:
    """The value at x on the straight line between the two rows around it.

    `points` are (x, value) pairs in any order. Raises OutOfRange outside the first and last row: a table is
    never stretched in silence.

    >>> round(between(12.40, [(12.45, 75), (12.24, 50)]), 1)
    69.0
    """
    rows = sorted(points)
    for (x0, y0), (x1, y1) in pairwise(rows):
        if x0 <= x <= x1:
            return y0 + (y1 - y0) * (x - x0) / (x1 - x0) if x1 > x0 else y0
    raise OutOfRange(f"{x:g} is outside the table, {rows[0][0]:g} to {rows[-1][0]:g}")


def within(x: float, points: Points) -> float:
    """As `between`, with x first brought to the nearest end of the table: only where its ends hold beyond them.

    >>> within(30, [(10, 9.4), (21, 9.6)])
    9.6
    """
    ends = sorted(key for key, _ in points)
    return between(min(max(x, ends[0]), ends[-1]), points)
