"""Amps of a load test, without the word for it: "750 CCA, 375 A 15 s, 9.4 V", "with the pack pushing 150"."""

from __future__ import annotations

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.told.words import stops

LEAST = 40.0  # amps of a load test
LONGEST = 30.0  # seconds
SHARE = (0.44, 0.56)  # of the CCA
OTHERS = frozenset({"load", "charger", "dcdc", "alternator", "panel", "fuse"})
LIMITS = frozenset({"peak", "max", "maximum", "continuous", "cont", "burst", "limit", "bms"})
LEAST_DRAWN, MOST_DRAWN = 40.0, 1500.0  # amps of a load test or a motor
TESTERS = frozenset({"tester", "pile", "resistor", "machine", "test"})
DREW = frozenset(
    {"pulled", "pulls", "pulling", "drew", "draws", "drawing", "took", "takes", "put", "applied", "at", "of"}
)
SET = frozenset({"set", "to", "on", "up", "about", "around", "some"})
PUSHING = frozenset({"pushing", "delivering", "supplying", "giving", "shoving", "feeding", "carrying", "yielding"})
BEFORE = 5  # words from a tester to its amps
GOES_ON = frozenset({"for", "and", "while", "when", "through", "then", "out"})
LOOSE = frozenset({"default", "near"})


def tested_amps(scene: Scene) -> Item | None:
    """The amps of such a line: half of the CCA that is told, or some seconds of them; None where there are none."""
    if scene.lithium or scene.heads & OTHERS or not LIMITS.isdisjoint(scene.vocabulary):
        return None
    rated = [float(item.quantity.value) for item in scene.quantities("CCA")]
    for item in scene.quantities("AMP"):
        amps = float(item.quantity.value)
        if amps < LEAST or item.quantity.unit != "ampere":
            continue
        half = any(SHARE[0] * cca <= amps <= SHARE[1] * cca for cca in rated)
        if half or _for_seconds(scene, item):
            return item
    return None


def _for_seconds(scene: Scene, item: Item) -> bool:
    """Whether some seconds stand beside these amps: "375 A 15 s", "15 s at 400 A", "300 amps for 15 sec"."""
    return any(
        other.quantity.unit == "second" and float(other.quantity.value) <= LONGEST and abs(other.at - item.at) <= 2
        for other in scene.quantities("TIME")
    )


def drawn_as_read(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps drawn as volts were read."""
    found = {}
    for item in scene.quantities("NUM", "AMP"):
        value, claim = item.quantity.value, claims.get(item.at)
        loose = claim is None or (claim.fact == "load.current" and claim.how in LOOSE)
        if loose and not isinstance(value, str) and LEAST_DRAWN <= value <= MOST_DRAWN and _is_drawn(scene, item):
            found[item.at] = Claim("reading.current", "role")
    return found if not any(claim.fact == "reading.current" for claim in claims.values()) else {}


def _is_drawn(scene: Scene, item: Item) -> bool:
    """Whether a tester drew it, or a battery gave it as its volts fell: "the tester pulled 300", "load of 200"."""
    before = [scene.word(at) for at in range(max(0, item.start - BEFORE), item.start)]
    if not before or (item.dim == "NUM" and not stops(scene, item, GOES_ON)):
        return False
    if scene.about("role:tester") and not scene.facts & {"load.kind", "load.model"}:
        named = [at for at, word in enumerate(before) if word in TESTERS]
        return bool(named) and bool(before[named[-1] + 1 :]) and set(before[named[-1] + 1 :]) <= DREW | SET
    if not scene.loaded:
        return False
    return before[-1] in PUSHING or before[-2:] == ["load", "of"]
