"""Cranking amps told apart from their name: "CCA in the frost, of 760?", "what is the CCA? I've 620 and 105 min"."""

from __future__ import annotations

import re

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of, stops

COLD = Claim("battery.cca", "near")
LEAST, MOST = 250.0, 1500.0
NAMED = regex(r"\bcca\b|\bcold[- ]crank", re.IGNORECASE)
OWN = regex(
    r"(?:\b(?:i'?ve|i have|we have|we'?ve|ours has|mine has|it has|have got|'ve got|ours is|mine is|mine says"
    r"|ours says)(?: only| just| about)?(?: an?)?|[,:;(-] ?of|^of)"
    r" $",
    re.IGNORECASE,
)
DEMANDED = regex(r"\b(?:asks?(?: for)?|needs?|wants?|demands?|requires?|calls for)(?: at least)? $", re.IGNORECASE)
COUNTED_OF = regex(r"\b(?:two|three|four|both|pair|one|[2-4]) of (?:an? )?$", re.IGNORECASE)
GOES_ON = frozenset({"and", "with", "in", "on", "printed", "stamped", "written", "do", "will", "joined", "side"})
MINUTES = "battery.reserve"


def cranking_so(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of bare numbers that are CCA, where it is spoken of and no figure has its name."""
    asked = COLD.fact in scene.expected or "load.cca" in {old.fact for old in scene.said}
    spoken = asked or NAMED.search(scene.text)
    told = [at for at, claim in claims.items() if claim.fact == COLD.fact]
    if not spoken or any(not DEMANDED.search(ahead_of(scene, scene.items[at])) for at in told):
        return {}
    found = [item for item in scene.quantities("NUM", "TIME") if _is_cranking(scene, claims, item)]
    return {item.at: COLD for item in found}


def _is_cranking(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    value, claim = item.quantity.value, claims.get(item.at)
    if isinstance(value, str) or not LEAST <= value <= MOST:
        return False
    if item.dim == "TIME" and not item.quantity.text.strip().isdigit():
        return False
    if not stops(scene, item) and scene.word(item.end) not in GOES_ON:
        return False
    minutes = claim is not None and claim.fact == MINUTES and _other_minutes(scene, claims, item)
    if claim is not None and claim.how != "weighed" and not minutes:
        return False
    before = ahead_of(scene, item)
    demanded = any(one.fact == "load.cca" for one in scene.said) or scene.quantities("CCA")
    return OWN.search(before) is not None or (bool(demanded) and COUNTED_OF.search(before) is not None)


def _other_minutes(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    """Whether other figures, told as minutes, are the reserve that this one seemed to be."""
    times = (other for other in scene.quantities("TIME") if other.quantity.unit == "minute")
    return any(other.at in claims and claims[other.at].fact == MINUTES for other in times if other is not item)
