"""Amps that a plate and a clamp tell with no word for the motor, and amps counted as things: "plate says 120, yet the
clamp leaps to 190", "260 by its plate", "I know what an amp is. Forty of them down 6 mm2".
"""

from __future__ import annotations

import re

from grammar.scene.claims import NOTHING, UNSURE, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import stops

LOAD, PEAK = Claim("load.current", "near"), Claim("load.peak", "near")
ON_PLATE = regex(
    r"(?:^|[.,;:!?] |\b(?:the|its|his|her) )(?:name ?)?plate(?: on it)?(?:,|:| says| reads| is| gives| has| tells)? ?$",
    re.IGNORECASE,
)
BY_PLATE = regex(
    r"^(?: ?a(?:mps?)?\b)? (?:by|on|according to|from|off) (?:its|the|his|her|their) (?:own )?(?:name ?)?plate\b",
    re.IGNORECASE,
)
LEAPS = regex(
    r"\b(?:clamp|ammeter|tongs|meter|needle)\b[^.?!;,\d]{0,16}\b(?:leap|jump|spike|kick|peak|shoot|shot|leapt|fl(?:y|ies|ew))"
    r"(?:s|ed)?(?: up| out)? to(?: about| some)? $",
    re.IGNORECASE,
)
OF_THEM = regex(r"^ (?:amps? )?of (?:them|those|these) (?:down|through|thru|along|over|across|in|on)\b", re.IGNORECASE)
AMPS = regex(r"\bamp(?:s|eres?)?\b", re.IGNORECASE)
AN_AMP = regex(r"\bwhat an? $", re.IGNORECASE)
MEANT = regex(r"^ (?:is|means)\b", re.IGNORECASE)
GOES_ON = frozenset({"but", "yet", "and", "while", "though", "will", "with"})
SOURCES = frozenset({"charger", "dcdc", "alternator", "panel"})
OPEN = frozenset({NOTHING.fact, "load.current", "reading.current", "load.bursts", "battery.count"})
LEAST, MOST = 20.0, 1500.0
LEAST_COUNTED = 2.0
FAR = 70  # characters


def on_plates(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of such amps, and of the one amp that only is defined."""
    found = {item.at: NOTHING for item in scene.quantities("AMP") if _is_defined(scene, item)}
    for item in scene.quantities("AMP", "NUM", "COUNT"):
        claim, value = claims.get(item.at, NOTHING), item.quantity.value
        if isinstance(value, str) or item.at in found or (claim.fact not in OPEN and claim.how not in UNSURE):
            continue
        if (told := _told(scene, item, value)) is not None:
            found[item.at] = told
    return found


def _told(scene: Scene, item: Item, value: float) -> Claim | None:
    before, after = _sides(scene, item)
    cabled = scene.quantities("AREA", "GAUGE") and AMPS.search(before)
    if cabled and value >= LEAST_COUNTED and OF_THEM.match(after):
        return LOAD
    if not LEAST <= value <= MOST or SOURCES & scene.heads:
        return None
    if LEAPS.search(before):
        return PEAK
    run = "load" in scene.heads or "load.kind" in scene.facts or scene.loaded or scene.quantities("CCA")
    return LOAD if run and _of_a_plate(scene, item, before, after) else None


def _of_a_plate(scene: Scene, item: Item, before: str, after: str) -> bool:
    ends = item.dim == "AMP" or stops(scene, item, GOES_ON)
    return BY_PLATE.match(after) is not None or (ends and ON_PLATE.search(before) is not None)


def _is_defined(scene: Scene, item: Item) -> bool:
    """Whether it is the amp of "I know what an amp is"."""
    before, after = _sides(scene, item)
    article = item.quantity.text.lower().startswith("an ")
    what = before.rstrip().endswith("what") if article else AN_AMP.search(before) is not None
    return what and MEANT.match(after) is not None


def _sides(scene: Scene, item: Item) -> tuple[str, str]:
    start, end = scene.span(item.start, item.end)
    return scene.text[max(0, start - FAR) : start], scene.text[end : end + FAR]
