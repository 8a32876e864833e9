"""Bare amps that go through a cable: "260 thru 6 m of 50", "230 down 20 ft of 2/0"."""

from __future__ import annotations

from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

THROUGH = frozenset({"thru", "through", "down", "along", "over", "across", "via"})
LEAST, MOST = 20.0, 900.0  # amps


def through(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of bare figures that flow through a length of cable."""
    if not scene.quantities("LENGTH") or any(claim.fact.startswith("load.current") for claim in claims.values()):
        return {}
    free = (item for item in scene.quantities("NUM") if claims.get(item.at, NOTHING).how in ("grammar", "weighed"))
    found = [item for item in free if _loose(claims, item) and _flows(scene, item)]
    if len(found) != 1:
        return {}
    run = next(other for other in scene.items[found[0].at + 2 :] if other.dim == "LENGTH")
    laid = {run.at: Claim("cable.length", "near")} if claims.get(run.at, NOTHING) == NOTHING else {}
    return laid | {found[0].at: Claim("load.current", "near")}


def _loose(claims: dict[int, Claim], item: Item) -> bool:
    claim = claims.get(item.at)
    return claim is None or claim == NOTHING or claim.how == "weighed"


def _flows(scene: Scene, item: Item) -> bool:
    """Whether a length follows over such a word, and the size of a cable is told after it."""
    value = item.quantity.value
    if isinstance(value, str) or not LEAST <= value <= MOST or scene.word(item.end) not in THROUGH:
        return False
    later = scene.items[item.at + 2 : item.at + 4]
    return any(other.dim == "LENGTH" for other in later)
