"""What lies between two pushes: "8 s at 190 A, a minute off, 8 s again", "ten seconds on, two minutes of quiet"."""

from __future__ import annotations

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

PAUSE = Claim("load.rest", "role")
STILL = frozenset({"off", "rest", "resting", "idle", "pause", "quiet", "breather", "break", "nothing", "cooling"})
FILLERS = frozenset({"of", "for", "a", "doing", "its", "to", "at"})
PLACES = frozenset({"the", "my", "our", "a", "of", "this", "that"})
LONGEST = 3600.0  # seconds
SECONDS = {"second": 1.0, "minute": 60.0}


def pauses(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of times after a push in which nothing runs."""
    facts = [claim.fact for claim in claims.values()]
    if "load.burst" not in facts or "load.rest" in facts:
        return {}
    return {item.at: PAUSE for item in scene.quantities("TIME") if _is_pause(scene, item, claims)}


def _is_pause(scene: Scene, item: Item, claims: dict[int, Claim]) -> bool:
    value, unit = item.quantity.value, SECONDS.get(item.quantity.unit, 0.0)
    taken = claims.get(item.at, PAUSE).fact not in ("load.time", "load.rest", "-")
    if taken or isinstance(value, str) or not 0 < value * unit <= LONGEST:
        return False
    at = item.end
    while scene.word(at) in FILLERS and at - item.end < 2:
        at += 1
    return scene.word(at) in STILL and scene.word(at + 1) not in PLACES  # "a minute off the quay"
