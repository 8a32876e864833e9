"""How far a name stands from a quantity, in words, with marks and other quantities counted as further away."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from itertools import accumulate
from typing import TypeVar

from grammar.lexicon.vocabulary import Found
from grammar.scene.groups import FILLERS, LINKS
from grammar.scene.items import Item
from grammar.scene.scene import Scene

WINDOW = 14  # words on either side that are looked at
WEIGHTS = {
    ",": 2.0,
    "/": 1.0,
    "(": 1.0,
    ")": 1.0,
    "+": 1.0,
    "and": 1.5,
    "or": 1.5,
    "but": 3.0,
    "for": 1.5,
    "with": 1.0,
    "to": 1.0,
    "&": 1.5,
    "n": 1.5,
    "then": 2.0,
    "also": 2.0,
    "plus": 1.5,
    "so": 1.5,
    "on": 1.0,
    "from": 1.5,
    "vs": 2.0,
    "=": 0.5,
}
OVER = 8.0  # the end of a sentence
OTHER = 1.0  # a word that says nothing here
QUANTITY = 1.5
FILLER = 0.25

Placed = TypeVar("Placed", Found, Item)


def weights(items: Sequence[Item]) -> list[float]:
    """The summed weight of the words before each place."""
    each = []
    for item in items:
        size = item.end - item.start
        if item.name == "end":
            weight = OVER
        elif item.dim or item.kind in ("times", "series"):
            weight = QUANTITY
        elif item.kind in ("word", "mark") and (item.name in FILLERS or item.name in LINKS):
            weight = WEIGHTS.get(item.name, FILLER)
        else:
            weight = WEIGHTS.get(item.name, OTHER)
        each += [weight / size] * size
    return [0.0, *accumulate(each)]


def gap(scene: Scene, item: Item, start: int, end: int) -> float:
    """The weight of the words between an item and the words from `start` to `end`; 0 where they touch."""
    if end <= item.start:
        return scene.weights[item.start] - scene.weights[end]
    if start >= item.end:
        return scene.weights[start] - scene.weights[item.end]
    return 0.0


def around(placed: Sequence[Placed], item: Item, starts: Sequence[int]) -> Iterator[Placed]:
    """Those that begin within the window about an item."""
    low = bisect_left(starts, item.start - WINDOW)
    high = bisect_right(starts, item.end + WINDOW)
    yield from placed[low:high]
