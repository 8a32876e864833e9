"""Batteries spoken of by a bare figure alone: "a 130 is half empty on what day", "the 88 in there", "90 and 90"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

SMALLEST, LARGEST = 40.0, 400.0  # amp-hours that stand without a word
ARTICLES = frozenset({"a", "the", "my", "our", "that"})
CHARGED = frozenset({"full", "charged", "fresh", "good", "healthy"})
IS = frozenset({"is", "be", "gets", "goes", "stands", "would", "will"})
EMPTIED = frozenset({"half", "flat", "empty", "dead", "down", "emptied", "drained"})
GONE = frozenset({"empty", "gone", "flat", "drained", "spent", "down", "used", "dead", "emptied", ""})
EMPTIED_WITHIN = 3  # words
THERE = (
    ("in", "there"),
    ("in", "now"),
    ("aboard", "now"),
    ("in", "it"),
    ("we", "have"),
    ("i", "have"),
    ("on", "board"),
)
OTHERS = frozenset({"charger", "dcdc", "alternator", "fuse", "cable"})
JOINED = frozenset({"and", "&", "+", "plus"})


def goes_by(scene: Scene, item: Item, value: float) -> bool:
    """Whether a bare figure is the amp-hours of a battery that is called by them."""
    if not SMALLEST <= value <= LARGEST or item.dim != "NUM" or scene.heads & OTHERS or not _runs(scene):
        return False
    before = scene.word(item.start - 1)
    if before in CHARGED and scene.word(item.start - 2) in ARTICLES:
        return True
    return before in ARTICLES and (_emptied(scene, item) or _is_there(scene, item))


def _runs(scene: Scene) -> bool:
    """Whether something is fed, so that a battery is meant."""
    return bool(scene.quantities("AMP", "WATT")) or any(old.fact.endswith(".current") for old in scene.said)


def _emptied(scene: Scene, item: Item) -> bool:
    """Whether the figure gets empty: "a 130 is half empty", "a 110 would be half gone"."""
    after = [scene.word(at) for at in range(item.end, item.end + EMPTIED_WITHIN)]
    if after[1] == "half" and after[2] not in GONE:  # "a 100 is half of what I need"
        return False
    return after[0] in IS and bool(EMPTIED & set(after[1:]))


def _is_there(scene: Scene, item: Item) -> bool:
    """Whether it is what the boat has: "the 88 in there", "the 105 aboard now"; no load goes by a figure."""
    after = (scene.word(item.end), scene.word(item.end + 1))
    return (after in THERE or after[0] == "aboard") and "battery" in scene.heads | scene.facts


def alike(scene: Scene, item: Item, value: float) -> bool:
    """Whether it is one of two equal figures behind counted batteries: "two AGMs in parallel, 90 and 90"."""
    if not SMALLEST <= value <= LARGEST or "bank.layout" not in scene.facts or scene.heads - {"battery", "cell"}:
        return False
    for step in (2, -2):
        at = item.at + step
        other = scene.items[at] if 0 <= at < len(scene.items) else None
        joined = scene.items[item.at + step // 2].name if other is not None else ""
        if other is not None and other.dim == "NUM" and joined in JOINED:
            return other.quantity.value == value and "battery" in scene.facts
    return False
