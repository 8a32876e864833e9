"""The pause between two bursts without its unit: "hit for four seconds, rest for ten"."""

from __future__ import annotations

from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

RESTS = frozenset({"rest", "pause", "wait", "break", "breather", "let", "off", "rests", "pauses", "waits"})
BETWEEN = frozenset({"for", "of", "another", "about", "it", "then"})
FAR = 8  # pieces from the burst to its pause
LONGEST = 600.0  # seconds
BACK = 3  # words


def rests(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claim of a bare number that is a pause, in the seconds of the burst before it."""
    if any(claim.fact == "load.rest" for claim in claims.values()):
        return {}
    for item in scene.quantities("NUM", "COUNT"):
        if claims.get(item.at, NOTHING).how in ("grammar", "near", "default", "weighed") and _is_pause(scene, item):
            return {item.at: Claim("load.rest", "role")}
    return {}


def _is_pause(scene: Scene, item: Item) -> bool:
    value = item.quantity.value
    if isinstance(value, str) or not 0 < value <= LONGEST:
        return False
    after = scene.after(item)
    at = item.start - 1
    while at > item.start - 1 - BACK and scene.word(at) in BETWEEN:
        at -= 1
    if scene.word(at) not in RESTS or (
        after is not None and after.kind != "mark" and after.name not in ("and", "then")
    ):
        return False
    near = scene.items[max(0, item.at - FAR) : item.at]
    return any(other.dim == "TIME" and other.quantity.unit == "second" for other in near)
