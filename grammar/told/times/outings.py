"""Two counts of runs in one tale are no two cases: so many outings, and so many pushes in each of them."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Stated

COUNT, BURST = "load.bursts", "load.burst"
WEIGHED = re.compile(
    r"\b(?:or|vs|versus|than|instead|rather|if|what about|later|now|sorry|no|i mean)\b|/|\?", re.IGNORECASE
)
SPLIT = re.compile(r"\b(?:in|over|split|spread|made up|by way)\b", re.IGNORECASE)  # "20 seconds in five pushes"
EACH = re.compile(
    r"\b(?:each|every|apiece|at a time|per|a (?:docking|lock|berth|landing|mooring|crossing|trip))\b", re.I
)
AFTER = 24  # characters after the second count in which its "each" stands


def outings(text: str, stated: list[Stated]) -> list[Stated]:
    """The runs of a day as one count: "six locks a day, three pushes in each" are eighteen; where nothing tells how
    the two belong together neither is taken."""
    counts = sorted((item for item in stated if item.fact == COUNT), key=lambda item: item.span)
    if len(counts) != 2 or counts[0].value == counts[1].value:
        return stated
    outer, inner = counts
    between = text[outer.span[1] : inner.span[0]]
    if WEIGHED.search(between):
        return stated
    rest = [item for item in stated if item not in counts]
    told = [item for item in stated if item.fact == BURST and outer.span[1] <= item.span[0] < inner.span[0]]
    if told and SPLIT.search(text[told[-1].span[1] : inner.span[0]]):
        return [*rest, outer]
    if EACH.search(between + text[inner.span[1] : inner.span[1] + AFTER]):
        span = outer.span[0], inner.span[1]
        return [
            *rest,
            replace(outer, value=float(outer.value) * float(inner.value), text=text[slice(*span)], span=span),
        ]
    return rest
