"""A "no" that stands after its noun, as on a list that is ticked off: "eng room no", "engine room: no", "AGM - no"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

NO = frozenset({"no", "nope", "n"})
BETWEEN = frozenset({":", "=", "-", "?", "–", "->"})  # "in the engine room? no"
GOES_ON = frozenset({"and", "for", "but", "so", "then", "please", "pls", "now", "this", "next"})
NEVER_AFTER = "?"  # "AGM, no?" asks whether it is


def _goes(scene: Scene, item: Item) -> bool:
    """Whether a kind of battery is to go: "wants the lead gone", "the AGM goes, which lithium"; "the lithium's gone
    soft" tells how it is."""
    if _is_out(scene, item):
        return True
    named = scene.word(item.start - 1) in ("the", "my", "our", "all")
    if not named or scene.word(item.end) not in ("gone", "goes", "out"):
        return False
    follows = scene.word(item.end + 1)
    if scene.word(item.start) == "lead":  # one that goes forward is a wire
        return follows not in ("of", "flat")
    return not follows[:1].isalnum() or follows in GOES_ON


def _is_out(scene: Scene, item: Item) -> bool:
    """Whether a kind is out of the question: "wet is out, evidently", "gel's out"; "the gel is out of the boat" is
    carried out."""
    at = item.end + (scene.word(item.end) in ("is", "are", "was"))
    first = item.at == 0 or scene.items[item.at - 1].kind == "mark"
    ruled = scene.word(at) == "ruled" and scene.word(at + 1) == "out"
    out = scene.word(at) == "out" and not scene.word(at + 1)[:1].isalnum()
    return (first and at > item.end and out) or (at > item.end and ruled)


def refused_after(scene: Scene, item: Item) -> bool:
    """Whether a "no" by itself follows a value: nothing that it might deny comes after it."""
    at = item.end
    if scene.word(at) in BETWEEN:
        at += 1
    after = scene.word(at + 1)
    if item.fact == "battery.chemistry" and _goes(scene, item):
        return True
    return scene.word(at) in NO and not after[:1].isalnum() and after != NEVER_AFTER
