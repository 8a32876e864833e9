"""Which battery a load goes by, where several are told."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

LEAST_ALONE, MOST_ALONE = 40.0, 400.0  # amp-hours that stand without a word

BEFORE_ONE = frozenset({"a", "the", "my", "our", "that"})
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
NOT_RUN = frozenset({"charger", "dcdc", "alternator", "fuse", "cable"})


def goes_by(scene: Scene, item: Item, value: float) -> bool:
    """Whether a bare figure is the amp-hours of a battery that is called by them."""
    if not LEAST_ALONE <= value <= MOST_ALONE or item.dim != "NUM" or scene.heads & NOT_RUN or not _runs(scene):
        return False
    before = scene.word(item.start - 1)
    if before in CHARGED and scene.word(item.start - 2) in BEFORE_ONE:
        return True
    return before in BEFORE_ONE and (_emptied(scene, item) or _is_there(scene, item))


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
