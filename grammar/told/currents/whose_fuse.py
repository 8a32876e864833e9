"""The fuse that somebody else names: "the yard says a 300 A fuse, the shop says 400 A" are two fuses, no load."""

from __future__ import annotations

import re

from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.told.currents.fuses import RATINGS, SAYING

NAMING = SAYING | {
    *(
        "told",
        "tells",
        "recommends",
        "recommended",
        "suggests",
        "suggested",
        "insists",
        "insisted",
        "advises",
        "advised",
    ),
    *(
        "writes",
        "wrote",
        "claims",
        "claimed",
        "prefers",
        "preferred",
        "swears",
        "fits",
        "fitted",
        "sold",
        "sells",
        "gave",
    ),
}
FUSES = frozenset({"fuse", "fuses", "breaker", "breakers"})
WORDS = 6  # before a figure, in which it is told whose word it is
FOR_IT = re.compile(  # "300 amps is fine for the fuse"
    r" ?(?:amps?\b|a\b)?(?: [a-z']+){0,4} (?:for|as) (?:the|a|my|our|that|its) (?:\w+ )?(?:fuse|breaker)\b",
    re.IGNORECASE,
)
STOPS = frozenset({".", "?", "!", ";", ":"})


def said_of_fuse(scene: Scene, item: Item, value: float) -> bool:
    """Whether amps that nothing else names are a fuse's that somebody speaks for, where the load has its own."""
    if value not in RATINGS or "fuse" not in scene.heads or not _load_told(scene, item):
        return False
    if _for_the_fuse(scene, item):
        return True
    others = (other for other in scene.quantities("AMP") if other is not item)
    return _spoken_for(scene, item) and any(_of_a_fuse(scene, other) for other in others)


def _spoken_for(scene: Scene, item: Item) -> bool:
    before = [scene.word(at) for at in range(max(0, item.start - WORDS), item.start)]
    last = max((at for at, word in enumerate(before) if word in STOPS), default=-1)
    return not NAMING.isdisjoint(before[last + 1 :])


def _of_a_fuse(scene: Scene, item: Item) -> bool:
    return scene.word(item.end) in FUSES or scene.word(item.start - 1) in FUSES or _for_the_fuse(scene, item)


def _for_the_fuse(scene: Scene, item: Item) -> bool:
    end = scene.span(item.start, item.end)[1]
    return FOR_IT.match(scene.text, end) is not None


def _load_told(scene: Scene, item: Item) -> bool:
    """Whether the load's own amps stand elsewhere, or its model."""
    if any(one.kind == "model" for one in scene.items):
        return True
    for other in scene.quantities("AMP"):
        sides = scene.sides.get(other.at) if other is not item else None
        if sides and any(side is not None and side.head == "load" for side in (sides.left, sides.right)):
            return not _of_a_fuse(scene, other)
    return False
