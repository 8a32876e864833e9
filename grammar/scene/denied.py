"""Figures that are denied: "24 not 12 volts", "I said 12, it's 24"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.near import around
from grammar.scene.scene import Scene

SAID = frozenset({"said", "wrote"})
ITS = frozenset({"its", "is", "meant", "actually", "should"})
DENIED_BEFORE = 3  # words between "not" and the figure it denies, less one
DENYING = frozenset({"not", "rather", "instead"})
NONE: frozenset[str] = frozenset()
BETWEEN = frozenset(["a", "an", "the", "my", "at", "of", "about", "for", "with", "really", "just"])
ABSENT = frozenset({"here", "aboard", "available", "onboard", "anywhere", "side", "supply", "fitted"})
REPLACED = {  # "lithium instead of my 34 kg gel": the gel's weight holds, and so does the case that stood there
    "WEIGHT": frozenset({"instead", "rather"}),
    "GROUP": frozenset({"instead"}),
}


def denied(scene: Scene, item: Item) -> bool:
    """Whether a figure is one that does not hold: "24 not 12 volts", "I said 12, it's 24"."""
    if item.dim == "COUNT":
        return False
    follow = {scene.word(at) for at in range(item.end, item.end + 3)}
    if scene.word(item.start - 1) in SAID and follow & ITS:
        return True
    if item.dim == "VOLT" and scene.word(item.start - 1) in ("no", "without") and scene.word(item.end) in ABSENT:
        return True  # "no 24 V here, 12 V only"
    return any(
        found.end <= item.start <= found.end + DENIED_BEFORE - 1
        and all(scene.word(at) in BETWEEN for at in range(found.end, item.start))
        for found in around(scene.denials, item, scene.denial_starts)
        if scene.word(found.start) in DENYING - REPLACED.get(item.dim, NONE)
        and scene.word(found.start - 1) not in ("or", "why")  # "why not a 500?"
    )
