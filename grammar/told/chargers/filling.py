"""Amps that fill a battery by what is asked of them: air for the gas they make, how long they take to make it full."""

from __future__ import annotations

import re

from grammar.scene.claims import UNSURE, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

CHARGER = Claim("charger.current", "role")
AIR = re.compile(r"\b(?:vent\w*|louvres?|louvers?|airflow|airhole\w*|air|gas|gases|gassing|hydrogen)\b", re.IGNORECASE)
TAKES = re.compile(
    r"\b(?:takes?|taking|gets?|getting|receiv\w+|accepts?|swallows?|eats?|drinks?|fed(?: with| by| at)?|given"
    r"|charg\w+(?: at| with| by)?)(?: in)?(?: only| just| about| up to| at most)? $",
    re.IGNORECASE,
)
FROM_SHORE = re.compile(
    r"\b(?:on|from|off|plugged in(?: to)?|with) (?:the |our |his |a )?(?:shore(?: ?power)?|mains|hook-?up|dock|quay"
    r"|marina(?: supply)?|pontoon|jetty|pedestal)(?: (?:power|supply|lead|charger))?,? (?:at|with|giving)"
    r"(?: only| just| about)? $",
    re.IGNORECASE,
)
WITH = re.compile(r"\b(?:on|with|from|off|by)(?: an?| the| my| our)?(?: only| just| mere| about)? $", re.IGNORECASE)
HOW_LONG = re.compile(r"\b(?:how long|how many (?:hours|hrs|days|nights)|what time|when)\b", re.IGNORECASE)
FILLED = re.compile(
    r"\b(?:from (?:dead |about |exactly )?(?:half|flat|empty|a (?:third|quarter)|\d{1,2} ?(?:%|per ?cent))"
    r"|(?:back |up )?to (?:full|the brim)|till? full|until (?:it'?s )?full|re-?fill\w*|top(?:ped)? (?:it |her )?up)\b",
    re.IGNORECASE,
)
LASTS = re.compile(r"\b(?:last|lasts|give|gives|get|run|runs|holds?|keeps?|draws?|drawing|pull\w*)\b", re.IGNORECASE)
BREAKS = re.compile(r"[.?!;](?= |$)")
OPEN = frozenset({"load.current", "reading.current", "load.peak"})
LEAST, MOST = 1.0, 120.0  # amps of a charger
SYSTEMS = frozenset({6.0, 12.0, 24.0, 36.0, 48.0})


def filling(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps that fill a battery, where no charger's were told."""
    if any(claim.fact == CHARGER.fact for claim in claims.values()) or "panel" in scene.heads:
        return {}
    found = [item for item in scene.quantities("AMP", "NUM") if _fills(scene, claims, item)]
    return {found[0].at: CHARGER} if len(found) == 1 else {}


def _fills(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    claim, value = claims.get(item.at), item.quantity.value
    if isinstance(value, str) or not LEAST <= value <= MOST or (claim is not None and claim.fact not in OPEN):
        return False
    start, end = scene.span(item.start, item.end)
    before = scene.ahead(start)
    if FROM_SHORE.search(before):
        return item.dim == "AMP" or (value not in SYSTEMS and _ends(scene, item))
    if item.dim != "AMP":
        return False
    if AIR.search(scene.text) and TAKES.search(before):
        return not scene.heads & {"load", "drain", "fuse"} and bool(scene.quantities("AH"))
    return (claim is None or claim.how in UNSURE) and WITH.search(before) is not None and _refills(scene, start, end)


def _ends(scene: Scene, item: Item) -> bool:
    after = scene.after(item)
    return after is None or after.kind == "mark" or after.name in ("and", "then", "how", "amp")


def _refills(scene: Scene, start: int, end: int) -> bool:
    """Whether the sentence asks how long it takes to fill a battery, and no word says that it is emptied."""
    before = BREAKS.split(scene.ahead(start))[-1]
    sentence = before + BREAKS.split(scene.text[end : end + 90])[0]
    return all(words.search(sentence) for words in (HOW_LONG, FILLED)) and LASTS.search(sentence) is None
