"""Amps of a charger that are only asked after: "amps for a 115 gel? 12 too few?", "how many amps then, 15 ok?"."""

from __future__ import annotations

import re

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

CHARGER = Claim("charger.current", "near")
AMPS = regex(
    r"\bamps for (?:an?|my|our|the|two|\d+) (?:\d+|agm|gel|wet|flooded|lithium|battery|bank)\b"
    r"|\b(?:how many|what|which) (?:charger |charging )?amps\b"
    r"|\bcharger of (?:how many|what) amps\b|\bamps to charge\b",
    re.IGNORECASE,
)
JUDGED = regex(
    r"^ ?(?:is |be |are )?(?:too (?:few|many|little|much|small|big)|ok\b|okay\b"
    r"|enough\b|alright\b|all right\b|fine\b|plenty\b)",
    re.IGNORECASE,
)
SOURCES = frozenset({"charger", "battery"})
LEAST, MOST = 1.0, 100.0
SYSTEMS = frozenset({24.0, 36.0, 48.0})
AFTER = 24  # characters


def asked_after(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of bare numbers that are put up as a charger's amps."""
    told = any(claim.fact in (CHARGER.fact, "load.current") for claim in claims.values())
    if told or scene.heads - SOURCES or not AMPS.search(scene.text):
        return {}
    battery = "charger" in scene.heads or "battery.chemistry" in scene.facts
    found = [item for item in scene.quantities("NUM", "COUNT") if _is_put_up(scene, item)] if battery else []
    return {item.at: CHARGER for item in found[:1]}


def _is_put_up(scene: Scene, item: Item) -> bool:
    value = item.quantity.value
    if isinstance(value, str) or not LEAST <= value <= MOST or value in SYSTEMS:
        return False
    end = scene.span(item.start, item.end)[1]
    return JUDGED.match(scene.text[end : end + AFTER]) is not None
