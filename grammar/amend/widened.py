"""A bare number that a figure is widened by afterwards: "five years old, five or six", "6 m, maybe 7"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

UNSURE = frozenset({"maybe", "perhaps", "possibly", "could", "might", "nearly", "or"})
BETWEEN = UNSURE | {
    *(",", "(", "be", "old", "so", "about", "even", "well", "say", "one", "way", "each", "it", "its", "a", "more"),
    *("like",),
    *("i", "think", "probably", "at", "most", "long"),
}
AFTER = frozenset({"old", "even", "now", "i", "by", "at", "tops", "max", "so"})
FAR = 6  # pieces between
LIKE = 2.0  # times as much is another thing
SAME = 1e-9


def widened_by(scene: Scene, item: Item) -> Item | None:
    """The number that makes a range of a figure with a unit, where one follows in its sentence; else None."""
    if (
        item.part is None
        or not item.quantity.unit
        or len(item.part.quantities) > 1
        or isinstance(item.quantity.value, str)
    ):
        return None
    unsure = False
    for other in scene.items[item.at + 1 : item.at + FAR]:
        if other.dim in ("NUM", "COUNT") and other.kind == "quantity":
            return other if _is_like(scene, item.quantity.value, other, unsure) else None
        if other.name not in BETWEEN:
            return None
        unsure = unsure or other.name in UNSURE
    return None


def _is_like(scene: Scene, value: float, other: Item, unsure: bool) -> bool:
    """Whether a number that stands by itself is near a value, and told as unsure: "maybe six", "five or six"."""
    assert other.part is not None
    ends = [one.value for one in other.part.quantities if not isinstance(one.value, str)]
    after = scene.after(other)
    if after is not None and after.kind != "mark" and after.name not in AFTER:
        return False
    if len(ends) > 1:
        return any(abs(end - value) <= SAME for end in ends)
    return unsure and bool(ends) and ends[0] != value and value / LIKE <= ends[0] <= value * LIKE
