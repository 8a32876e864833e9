"""Amps that were drawn as volts were read, by their words: a tester's, "with the pack pushing 150"."""

from __future__ import annotations

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

LEAST, MOST = 40.0, 1500.0  # amps of a load test or a motor
TESTERS = frozenset({"tester", "pile", "resistor", "machine", "test"})
DREW = frozenset(
    {"pulled", "pulls", "pulling", "drew", "draws", "drawing", "took", "takes", "put", "applied", "at", "of"}
)
SET = frozenset({"set", "to", "on", "up", "about", "around", "some"})
PUSHING = frozenset({"pushing", "delivering", "supplying", "giving", "shoving", "feeding", "carrying", "yielding"})
BEFORE = 5  # words from a tester to its amps
LOOSE = frozenset({"default", "near"})


def drawn_as_read(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps drawn as volts were read."""
    found = {}
    for item in scene.quantities("NUM", "AMP"):
        value, claim = item.quantity.value, claims.get(item.at)
        loose = claim is None or (claim.fact == "load.current" and claim.how in LOOSE)
        if loose and not isinstance(value, str) and LEAST <= value <= MOST and _is_drawn(scene, item):
            found[item.at] = Claim("reading.current", "role")
    return found if not any(claim.fact == "reading.current" for claim in claims.values()) else {}


def _is_drawn(scene: Scene, item: Item) -> bool:
    """Whether a tester drew it, or a battery gave it as its volts fell: "the tester pulled 300", "load of 200"."""
    before = [scene.word(at) for at in range(max(0, item.start - BEFORE), item.start)]
    if not before or (item.dim == "NUM" and not _ends(scene, item)):
        return False
    if scene.about("role:tester") and not scene.facts & {"load.kind", "load.model"}:
        named = [at for at, word in enumerate(before) if word in TESTERS]
        return bool(named) and bool(before[named[-1] + 1 :]) and set(before[named[-1] + 1 :]) <= DREW | SET
    if not scene.loaded:
        return False
    return before[-1] in PUSHING or before[-2:] == ["load", "of"]


def _ends(scene: Scene, item: Item) -> bool:
    after = scene.after(item)
    return (
        after is None or after.kind == "mark" or after.name in ("for", "and", "while", "when", "through", "then", "out")
    )
