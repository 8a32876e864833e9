"""Amps of a charger that only "it" stands for: "he's sent a charger ... It's rated 80 amps"."""

from __future__ import annotations

import re

from grammar.scene.claims import UNSURE, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

IT_IS = re.compile(
    r"(?:^|[.?!;] ?|, )(?:it'?s|it is|it says|it'?s rated|it is rated|rated|says|that'?s)"
    r"(?: rated| marked| good| labelled| about| at| for| only| an?| some)* $",
    re.IGNORECASE,
)
RATED = frozenset({"rated", "rating"})  # which would be a load's by themselves
MOST = 200.0  # amps of a charger
FAR = 24  # words from the charger to its figure


def it_is_rated(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claim of amps taken for a load's, where a charger was named last and has none of its own."""
    if "charger" not in scene.heads or any(claim.fact == "charger.current" for claim in claims.values()):
        return {}
    for item in scene.quantities("AMP"):
        claim = claims.get(item.at)
        loose = claim is not None and (claim.how in UNSURE or bool(RATED & _just_before(scene, item)))
        if claim is not None and claim.fact == "load.current" and loose and _is_its(scene, item):
            return {item.at: Claim("charger.current", "near")}
    return {}


def _just_before(scene: Scene, item: Item) -> set[str]:
    return {scene.word(item.start - 1), scene.word(item.start - 2)}


def _is_its(scene: Scene, item: Item) -> bool:
    """Whether its sentence begins with "it", and a charger is the last thing named before."""
    value = item.quantity.value
    if isinstance(value, str) or value > MOST:
        return False
    start = scene.span(item.start, item.end)[0]
    before = [head for head in scene.head_items if head.end <= item.start]
    last = bool(before) and before[-1].head == "charger" and item.start - before[-1].end <= FAR
    return last and IT_IS.search(scene.ahead(start)) is not None
