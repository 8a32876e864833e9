"""The limit that stands on a management system: "what does BMS mean? Mine says 100 on it"."""

from __future__ import annotations

from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

SAYS = frozenset({"says", "reads", "has", "marked", "stamped", "printed", "labelled", "shows", "is"})
ON_IT = (("on", "it"), ("written", "on"), ("printed", "on"), ("stamped", "on"), ("on", "its"), ("on", "the"))
LEAST, MOST = 20.0, 600.0  # amps
FAR = 9  # words


def on_the_bms(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claim of a bare figure that is told to stand on the thing named last, a management system."""
    if "bms" not in scene.heads or any(claim.fact == "battery.max_current" for claim in claims.values()):
        return {}
    for item in scene.quantities("NUM"):
        claim = claims.get(item.at, NOTHING)
        if (claim == NOTHING or claim.how in ("near", "default", "weighed")) and _stands_on_it(scene, item):
            return {item.at: Claim("battery.max_current", "near")}
    return {}


def _stands_on_it(scene: Scene, item: Item) -> bool:
    value = item.quantity.value
    if isinstance(value, str) or not LEAST <= value <= MOST or scene.word(item.start - 1) not in SAYS:
        return False
    before = [head for head in scene.head_items if head.end <= item.start]
    named = bool(before) and before[-1].head == "bms" and item.start - before[-1].end <= FAR
    return named and (scene.word(item.end), scene.word(item.end + 1)) in ON_IT
