"""Amps of the box between two voltages, or from an alternator: "a box giving 12 amps", "box pushes 10", "at 20 A"."""

from __future__ import annotations

import re

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

CHARGER, ALTERNATOR = Claim("charger.current", "grammar"), "alternator.current"
BOX = r"(?<!fuse )(?<!battery )(?<!junction )(?<!chain )(?:box|gadget|gizmo|unit|brick|contraption|converter|booster)"
GIVEN_BY = re.compile(
    rf"\b{BOX},?(?: between [^.?!;]{{3,30}}?)?(?: that| which| it)?"
    r" (?:giv(?:es?|ing)|push(?:es|ing)?|puts? out|putting out|deliver(?:s|ing)?|mak(?:es?|ing)|yield(?:s|ing)?|does"
    r"|suppl(?:ies|ying)|provid(?:es|ing)|is good for|good for|(?:is )?rated(?: at| for)?|of|at)"
    r"(?: only| just| about| around| some| up to| a mere)? $",
    re.IGNORECASE,
)
AT = re.compile(r"\b(?:at|with|by)(?: only| just| about| around| some)? $", re.IGNORECASE)
ONES = frozenset({"one", "unit", "box", "job", "jobbie", "model", "version"})
ARTICLES = frozenset({"a", "an", "the", "my", "our"})
ENDS = frozenset({"and", "into", "to", "at", "for", "from", "of", "while", "when", "so", "but", "then"})
SYSTEMS = frozenset({6.0, 12.0, 24.0, 36.0, 48.0})  # volts, where no unit stands behind
LEAST, MOST = 2.0, 120.0  # amps of a converter
OPEN = frozenset({"load.current", "load.bursts", "load.peak", "battery.capacity", "reading.current", ALTERNATOR})


def of_a_box(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps that such a box gives."""
    facts = [claim.fact for claim in claims.values()]
    if CHARGER.fact in facts or not _converted(scene):
        return {}
    return {item.at: CHARGER for item in scene.quantities("AMP", "NUM", "COUNT") if _gives(scene, claims, item)}


def _converted(scene: Scene) -> bool:
    """Whether something charges one bank from another, or a bank from an alternator."""
    steps = {12.0, 24.0} <= scene.figures
    return steps or "dcdc" in scene.heads or ("alternator" in scene.heads and bool(scene.quantities("VOLT")))


def _gives(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    claim, value = claims.get(item.at), item.quantity.value
    if isinstance(value, str) or not LEAST <= value <= MOST or (claim is not None and claim.fact not in OPEN):
        return False
    before = scene.ahead(scene.span(item.start, item.end)[0])
    if item.dim != "AMP":
        return value not in SYSTEMS and _ends(scene, item) and GIVEN_BY.search(before) is not None
    if claim is not None and claim.fact == ALTERNATOR:
        return _beside_its_alternator(scene, claims, item, before)
    return GIVEN_BY.search(before) is not None


def _ends(scene: Scene, item: Item) -> bool:
    after = scene.after(item)
    return after is None or after.kind == "mark" or after.name in ENDS


def _beside_its_alternator(scene: Scene, claims: dict[int, Claim], item: Item, before: str) -> bool:
    """Whether they are the smaller of two that seemed the alternator's: "from an alternator of 120 A at 20 A"."""
    of_it = (one for one in scene.quantities("AMP") if one is not item and one.at in claims)
    others = [one for one in of_it if claims[one.at].fact == ALTERNATOR]
    larger = any(float(one.quantity.value) > float(item.quantity.value) for one in others)
    one = scene.word(item.end) in ONES and scene.word(item.start - 1) in ARTICLES
    return larger and len(others) == 1 and (one or AT.search(before) is not None)
