"""The gravities of a battery's cells that are told, and how far they are apart."""

from __future__ import annotations

from service.calculators import gravity
from service.case import Case
from service.rules.readings import NEAR

READ, SPREAD = "reading.gravity", "reading.gravity_spread"


def cells(case: Case) -> list[float]:
    """All gravities that were told: of one or two cells, or the ends of a range."""
    read = case.known(READ)
    if read is None:
        return []
    second = case.second.get(READ)
    if case.said(SPREAD) is not None and second is None:
        return [float(read.value)]
    ends = (read.value, read.low, read.high, second.value if second else None)
    if second:
        case.used.setdefault((READ, 2), second)
    told = [float(value) for value in ends if value is not None]
    spread = float(case.said(SPREAD) or 0.0)
    if max(told) - min(told) > spread / 2 - NEAR:
        return told
    return [*told, round(max(told) - spread, 3)]  # the lowest of many, which is not among those that were taken


def spread_of(case: Case) -> float | None:
    """Highest less lowest cell, as told or from the readings; None for one reading."""
    told = case.said(SPREAD)
    if told is not None:
        return float(told)
    told_cells = cells(case)
    return gravity.spread(told_cells) if len(set(told_cells)) > 1 else None
