"""A "no" that stands after its noun, as on a list that is ticked off: "eng room no", "engine room: no", "AGM - no"."""

from __future__ import annotations

from grammar.items import Item
from grammar.scene import Scene

NO = frozenset({"no", "nope", "n"})
BETWEEN = frozenset({":", "=", "-", "?", "–", "->"})  # "in the engine room? no"
NEVER_AFTER = "?"  # "AGM, no?" asks whether it is


def refused_after(scene: Scene, item: Item) -> bool:
    """Whether a "no" by itself follows a value: nothing that it might deny comes after it."""
    at = item.end
    if scene.word(at) in BETWEEN:
        at += 1
    after = scene.word(at + 1)
    return scene.word(at) in NO and not after[:1].isalnum() and after != NEVER_AFTER
