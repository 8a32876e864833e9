"""A "no" that stands after its noun, as on a list that is ticked off: "eng room no", "engine room: no", "AGM - no"."""

from __future__ import annotations

from grammar.items import Item
from grammar.scene import Scene

NO = frozenset({"no", "nope", "n"})
BETWEEN = frozenset({":", "=", "-", "?", "–", "->"})  # "in the engine room? no"
ONWARD = frozenset(  # "the wet one goes to 9.9", "the AGM goes flat"
    {"of", "flat", "to", "down", "below", "under", "up", "from", "dead", "empty", "past", "as", "->", "low", "only"}
)
NEVER_AFTER = "?"  # "AGM, no?" asks whether it is


def _goes(scene: Scene, item: Item) -> bool:
    """Whether a kind of battery is to go: "wants the lead gone", "the AGM goes, which lithium"."""
    named = scene.word(item.start - 1) in ("the", "my", "our", "all")
    return named and scene.word(item.end) in ("gone", "goes", "out") and scene.word(item.end + 1) not in ONWARD


def refused_after(scene: Scene, item: Item) -> bool:
    """Whether a "no" by itself follows a value: nothing that it might deny comes after it."""
    at = item.end
    if scene.word(at) in BETWEEN:
        at += 1
    after = scene.word(at + 1)
    if item.fact == "battery.chemistry" and _goes(scene, item):
        return True
    return scene.word(at) in NO and not after[:1].isalnum() and after != NEVER_AFTER
