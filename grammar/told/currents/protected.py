"""A fuse by what it is for, without its name: "may I protect it with 16", "fused at 80"."""

from __future__ import annotations

import re

from grammar.scene.claims import NOTHING, UNSURE, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

PROTECTED = re.compile(
    r"\b(?:(?:protect|protects|protected|protecting|guard|guarded|secure|secured|fused|fusing)"
    r"(?: (?:it|this|that|them|him|her|all|(?:the|my|our|this|that) \w+))?|fuse (?:it|this|that|them|her|him))"
    r"(?: (?:with|by|at|on|to))(?: an?| only| just)* $",
    re.IGNORECASE,
)
LEAST, MOST = 5.0, 500.0  # amps of a fuse


def protected(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of figures with which a cable is protected."""
    if any(claim.fact == "fuse.rating" for claim in claims.values()):
        return {}
    return {
        item.at: Claim("fuse.rating", "near")
        for item in scene.quantities("NUM", "AMP")
        if _is_loose(claims.get(item.at, NOTHING)) and _protects(scene, item)
    }


def _is_loose(claim: Claim) -> bool:
    return claim == NOTHING or claim.how in UNSURE


def _protects(scene: Scene, item: Item) -> bool:
    value = item.quantity.value
    if isinstance(value, str) or not LEAST <= value <= MOST or value % 1:
        return False
    return PROTECTED.search(scene.ahead(scene.span(item.start, item.end)[0])) is not None
