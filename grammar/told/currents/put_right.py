"""A bare figure put in place of the one before: "720 reserve? No: 72.", "640 CCA? no, 460"."""

from __future__ import annotations

from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

NO = frozenset({"no", "nope", "sorry", "correction", "nay"})
BETWEEN = frozenset({",", ":", "-"})
OF_BATTERIES = frozenset({"NUM", "CCA", "CA", "AH", "RC"})  # what is corrected without its unit
FAR = 8  # pieces from the one to the other


def put_right(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of bare figures behind a "no", which are of what the figure before was."""
    if not NO & scene.vocabulary:
        return {}
    found = {}
    for item in scene.quantities("NUM"):
        if claims.get(item.at, NOTHING) == NOTHING and _behind_no(scene, item) and (first := _before(scene, item)):
            claim = claims.get(first.at, NOTHING)
            if claim != NOTHING:
                found[item.at] = Claim(claim.fact, "near")
    return found


def _behind_no(scene: Scene, item: Item) -> bool:
    at = item.start - 1 - (scene.word(item.start - 1) in BETWEEN)
    after = scene.after(item)
    apart = scene.word(at - 1) in ("?", ".", ",", "-", "...", "..", ";", "!")
    return scene.word(at) in NO and apart and (after is None or after.kind == "mark")


def _before(scene: Scene, item: Item) -> Item | None:
    """The figure before, near enough."""
    near = [other for other in scene.items[max(0, item.at - FAR) : item.at] if other.dim]
    return near[-1] if near and near[-1].dim in OF_BATTERIES else None
