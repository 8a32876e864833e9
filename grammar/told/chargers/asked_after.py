"""Amps of a charger that are only asked after: "amps for a 115 gel? 12 too few?", "how many amps then, 15 ok?"."""

from __future__ import annotations

import re

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of, stops

CHARGER = Claim("charger.current", "near")
AMPS = regex(
    r"\bamps for (?:an?|my|our|the|two|\d+) (?:\d+|agm|gel|wet|flooded|lithium|battery|bank)\b"
    r"|\b(?:how many|what|which) (?:charger |charging )?amps\b"
    r"|\bcharger of (?:how many|what) amps\b|\bamps to charge\b|\bamps of charger\b"
    r"|\b(?:how (?:big|large|strong|powerful) an?|what size(?: of)?|which(?: size)?|what) charger\b"
    r"|\bcharger,? (?:how big|what size|how many amps)\b",
    re.IGNORECASE,
)
SAID = regex(  # "how big a charger? The shop says 30"
    r"\b(?:shop|dealer|chandler|yard|engineer|electrician|mechanic|fitter|salesman|seller|neighbour|neighbor|friend|mate"
    r"|brother|father|dad|uncle|husband|wife|son|skipper|chap|man|he|she|they)"
    r" (?:says?|said|reckons?|thinks?|wants?|recommends?|suggests?|sold me|offers?(?: me)?|insists on|swears by)"
    r"(?: (?:about|only|just|at least|that|an?))* $",
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
VOLTS = frozenset({6.0, 12.0, 14.0})  # what a charger may be said to give
ENDS = frozenset({"and", "but", "is", "or"})


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
    if SAID.search(ahead_of(scene, item)) and value not in VOLTS and not value % 1 and stops(scene, item, ENDS):
        return "charger" in scene.heads
    end = scene.span(item.start, item.end)[1]
    return JUDGED.match(scene.text[end : end + AFTER]) is not None
