"""A figure that is told again in the same unit, without it: "over five metres, say 5.2", "40 feet, twenty each way"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from grammar.scene.items import Item

UNITS = frozenset({"LENGTH", "AMP", "WEIGHT", "AH", "WATT"})  # figures that people put roughly and then exactly
BESIDE = frozenset({"GAUGE", "AREA"})  # may stand between: "40 feet of 1/0, that's twenty each way"
SAY = frozenset({"say", "exactly", "precisely"})
PUT = (("call", "it"), ("make", "it"), ("to", "be"))
EACH_WAY = (
    ("each", "way"),
    ("one", "way"),
    ("per", "leg"),
    ("each", "leg"),
    ("a", "side"),
    ("per", "way"),
    ("out", "and"),
)
BACK = 12  # pieces from the figure to where it is told again
NEAR, HALF, SAME = 0.2, 2.0, 0.03  # shares of the first figure


def restated(items: list[Item]) -> list[Item]:
    """The row, where the second telling has the unit of the first and the first says no more."""
    for item in items:
        if item.dim != "NUM" or item.part is None or len(item.part.quantities) != 1:
            continue
        first = _told_before(items, item)
        if first is None or isinstance(first.quantity.value, str) or isinstance(item.quantity.value, str):
            continue
        if _exactly(items, item, first) or _each_way(items, item, first):
            item.part = replace(
                item.part, dim=first.dim, quantities=(replace(item.quantity, unit=first.quantity.unit, kind=""),)
            )
            item.dim, first.dim = first.dim, ""
    return items


def _told_before(items: Sequence[Item], item: Item) -> Item | None:
    """The last figure before, where no other stands between but the size of a cable."""
    for other in reversed(items[max(0, item.at - BACK) : item.at]):
        if other.name == "end" and other.at < item.at - 2:
            return None
        if other.dim and other.dim not in BESIDE:
            return other if other.dim in UNITS and other.part and len(other.part.quantities) == 1 else None
    return None


def _exactly(items: Sequence[Item], item: Item, first: Item) -> bool:
    """Whether it is put exactly, near the first: "a bit over five metres, say 5.2."."""
    before = _names(items, item.at - 2, item.at)
    after = items[item.at + 1] if item.at + 1 < len(items) else None
    ends = after is None or after.kind == "mark"
    said = (before[-1:] and before[-1] in SAY) or tuple(before) in PUT
    typed, rough = float(item.quantity.value), float(first.quantity.value)
    return bool(said) and ends and rough > 0 and typed != rough and abs(typed - rough) <= NEAR * rough


def _each_way(items: Sequence[Item], item: Item, first: Item) -> bool:
    """Whether it is the half of a length, there or back: "forty feet, that's twenty each way"."""
    if first.dim != "LENGTH" or tuple(_names(items, item.at + 1, item.at + 3)) not in EACH_WAY:
        return False
    both, one = float(first.quantity.value), float(item.quantity.value)
    return abs(one * HALF - both) <= SAME * both


def _names(items: Sequence[Item], start: int, end: int) -> list[str]:
    return [one.name for one in items[max(0, start) : end]]
