"""The length of the links between batteries: "I make the links too, for 220 A, about 20 cm each"."""

from __future__ import annotations

import re

from grammar.scene.claims import NOTHING, Claim
from grammar.scene.scene import Scene

RUN = Claim("cable.length", "near")
LINKS = re.compile(
    r"\b(?:links?|link (?:leads?|cables?|wires?)|straps?|jumpers?|bridges?|interconnects?"
    r"|bridging (?:leads?|cables?))\b"
    r"[^.?!;]{0,50}$",
    re.IGNORECASE,
)
LONG = re.compile(r" ?(?:each|apiece|long|a piece|of (?:it|cable|link|lead|wire)|link|strap|jumper)\b", re.IGNORECASE)
FAR = 70  # characters


def links(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of a length that nothing has, told of links."""
    if any(claim.fact == RUN.fact for claim in claims.values()):
        return {}
    for item in scene.quantities("LENGTH", "INCH"):
        start, end = scene.span(item.start, item.end)
        before, after = scene.text[max(0, start - FAR) : start], scene.text[end : end + FAR]
        free = claims.get(item.at, NOTHING).fact == NOTHING.fact
        if free and LINKS.search(before) and LONG.match(after):
            return {item.at: RUN}
    return {}
