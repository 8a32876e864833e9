"""Kilos told without their unit: "two AGMs at 33, as lithium?"; a person's are none."""

from __future__ import annotations

import re

from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

WEIGHT = Claim("battery.weight", "near")
LIGHTEST, HEAVIEST = 8.0, 90.0  # kg of a battery
OWN = re.compile(
    r"\b(?:my|his|her) (?:own |body )?weight (?:is|was|being) (?:only |about |now )?$"
    r"|\bI (?:myself )?weigh (?:only |about |in at )?$|\bI(?:'m| am) (?:only |about |myself )?$",
    re.IGNORECASE,
)
OF_BATTERY = re.compile(
    r"\b(?:batter(?:y|ies)|accus?|agms?|gels?|wets?|leads?|flooded)(?: ones?)?(?: one)?"
    r" (?:is|was|are|were|at|of|weighs?|weighing|being)(?: only| about| some)? $",
    re.IGNORECASE,
)
WEIGHED = re.compile(
    r"\bweigh\w*|\blighter\b|\bheavier\b|\bkilos?\b|\bkgs?\b|\bcome to (?:as|in) lithium"
    r"|\bpounds lighter",
    re.IGNORECASE,
)
GOES_ON = frozenset({"come", "comes", "as", "in", "and", "each", "apiece", "would", "become", "becomes", "now", "or"})


def in_kilos(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of bare figures that are a battery's kilos, and of a person's, which state nothing."""
    if WEIGHED.search(scene.text) is None:
        return {}
    people = {item.at: NOTHING for item in scene.quantities("WEIGHT") if OWN.search(_before(scene, item))}
    others = [at for at, claim in claims.items() if claim.fact == WEIGHT.fact and at not in people]
    if others or scene.quantities("AH"):
        return people
    bare = (item for item in scene.quantities("NUM") if _may_weigh(scene, claims, item))
    return people | {item.at: WEIGHT for item in bare if OF_BATTERY.search(_before(scene, item))}


def _before(scene: Scene, item: Item) -> str:
    return scene.ahead(scene.span(item.start, item.end)[0])


def _may_weigh(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    value, claim, after = item.quantity.value, claims.get(item.at), scene.after(item)
    if isinstance(value, str) or not LIGHTEST <= value <= HEAVIEST or value in (12.0, 24.0):
        return False
    if claim is not None and claim.fact not in ("battery.capacity", "load.current", "battery.age"):
        return False
    return after is None or after.kind == "mark" or after.name in GOES_ON
