"""Amps of a charger that is not called one: "a 9 A box over a 60 Ah gel", "hours from half on a 20", "on the 4 A"."""

from __future__ import annotations

import re

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

CHARGES = Claim("charger.current", "near")
LEAST, MOST = 1.0, 100.0
VOLTS = frozenset({12.0, 13.0, 14.0})  # what a charger that "gives 14" may give
LOOSE = frozenset({"load.current", "drain.current", "reading.current"})
NUMBER_ENDS = r"(?=\W*(?:$|[.,;?!)]|\b(?:and|or|so|when|how|what|in|does|will|would|can|then)\b))"
BOX = re.compile(r"[ -]*(?:box|brick|wall wart|plug-in|gadget|gizmo)\b", re.IGNORECASE)
FED_BY = re.compile(
    r"\b(?:off|from) (?:the|my|our|his|her) (?:engine|start\w*|alternator|main|house)\b"
    r"|\b12 ?v? (?:to|into) (?:12|24)\b",
    re.IGNORECASE,
)
HOURS_ASKED = re.compile(
    r"\bhow (?:long|many hours|much hours|much time)\b|\b(?:what|number of) hours\b|^hours\b|[,.;:] hours\b"
    r"|\bwhen (?:is|will|can|may)\b",
    re.IGNORECASE,
)
LASTS = re.compile(r"\b(?:last|lasts|run|runs|running|keep|keeps|burn|burns|going|until (?:flat|dead|empty))\b", re.I)
ON_IT = re.compile(r"\b(?:be|stay|sit|left|leave it|keep it|put|is|go) on (?:the|a|my|our|his) $", re.IGNORECASE)
FROM_HALF = re.compile(
    r"\b(?:half|flat|empty|dead|quarter|third|\d{1,2} ?(?:%|percent|per cent))(?: \w+){0,2} "
    r"(?:on|with|off|using) (?:an?|the|my|our|his) $",
    re.IGNORECASE,
)
GIVING = re.compile(
    r"\bcharger(?:'?s| is| does| just| only| it)* ?(?:giving|gives?|puts? out|putting out|mak(?:es|ing)"
    r"|deliver(?:s|ing)|push(?:es|ing)|good for|pumps?(?: out)?|feed(?:s|ing))"
    r"(?: me| it| them| out| about| only| just| at most| up to)* $",
    re.IGNORECASE,
)
PULLED_AT = re.compile(
    r" at (?:12|24)(?: ?v(?:olts?)?)? (?:from|off|out of) (?:that|it|this|the (?:engine|alternator))\b", re.IGNORECASE
)
CHARGING_THING = re.compile(
    r"\b(?:thing|box|gadget|unit|device|gizmo)s? (?:that|which|to) (?:charges?|tops? up)\b[^.?!;]*$", re.IGNORECASE
)
OTHERS = frozenset({"load", "drain", "fuse", "panel", "alternator"})
FAR = 70  # characters


def of_a_box(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps and bare numbers that charge."""
    if not any(item for item in scene.quantities("AMP", "NUM")) or "fuse" in scene.heads:
        return {}
    if any(claim.fact == "charger.current" and claim.how != "default" for claim in claims.values()):
        return {}
    amps = [item for item in scene.quantities("AMP") if claims.get(item.at, CHARGES).fact in LOOSE | {CHARGES.fact}]
    bare = [item for item in scene.quantities("NUM") if item.at not in claims]
    asked = HOURS_ASKED.search(scene.text) is not None
    waits = asked and LASTS.search(scene.text) is None
    found = [item for item in amps if _likely(item) and _is_charging(scene, item, waits)]
    found += [item for item in bare if asked and _likely(item) and _bare_charging(scene, item, waits)]
    return {item.at: CHARGES for item in found}


def _likely(item: Item) -> bool:
    value = item.quantity.value
    return not isinstance(value, str) and LEAST <= value <= MOST


def _sides(scene: Scene, item: Item) -> tuple[str, str]:
    start, end = scene.span(item.start, item.end)
    return scene.text[max(0, start - FAR) : start], scene.text[end : end + FAR]


def _is_charging(scene: Scene, item: Item, waits: bool) -> bool:
    """Whether such amps charge; `waits`: hours of charging are asked about."""
    before, after = _sides(scene, item)
    if BOX.match(after):
        return FED_BY.search(after) is not None or (waits and bool(scene.quantities("AH")))
    if PULLED_AT.match(after):
        return "alternator" in scene.heads
    if CHARGING_THING.search(before):
        return True
    ends = re.match(NUMBER_ENDS, after) is not None
    return ends and waits and not scene.heads & OTHERS and ON_IT.search(before) is not None


def _bare_charging(scene: Scene, item: Item, waits: bool) -> bool:
    before, after = _sides(scene, item)
    if not re.match(NUMBER_ENDS, after) or item.quantity.value in VOLTS:
        return False
    if GIVING.search(before):
        return True
    return waits and FROM_HALF.search(before) is not None
