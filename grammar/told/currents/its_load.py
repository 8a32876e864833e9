"""Amps of a load by their place: "a breaker: 60 A winch", "80 for a load of 70", "300 in the first hit, 200 after"."""

from __future__ import annotations

import re

from grammar.scene.claims import UNSURE, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import stops

LOAD, PEAK, LIMIT = (Claim(fact, "role") for fact in ("load.current", "load.peak", "battery.max_current"))
FIRST = regex(
    r"^(?: ?a(?:mps?)?\b)? (?:in|at|on|for|with) (?:the |its |his )?(?:very )?(?:first|initial)"
    r" (?:hit|instant|moment|kick|second|shove|blink|push|jolt|go|jerk|bite|gulp|snatch|tug|thump)\b",
    re.IGNORECASE,
)
AFTER = regex(
    r"^(?: ?a(?:mps?)?\b)? (?:after(?:wards?)?|thereafter|then|from then on|once (?:it|he|she)|steady"
    r"|running|going on)\b",
    re.IGNORECASE,
)
LOAD_OF = regex(r"\b(?:load|draw|appetite|thirst|motor|consumer) of(?: only| just| about)? $", re.IGNORECASE)
THROUGH = regex(
    r"^(?: ?a(?:mps?)?\b)? (?:thro?ugh|thru|along|down|over) (?:an? |my |our |the )?\d+(?:\.\d+)? ?"
    r"(?:m|metres?|meters?|ft|feet)\b",
    re.IGNORECASE,
)
SCREW = regex(  # "24 V screw, 150 amps"
    r"(?:\b\d\d ?v(?:olts?)?|\b(?:bow|stern|side)) (?:screw|prop|propeller)(?:,|:)?"
    r"(?: (?:of|at|draws|takes|wants|pulls|rated))*(?: about)? $",
    re.IGNORECASE,
)
TIMED = regex(r"\b(?:minutes?|mins?|hours?|hrs?)(?: flat| straight)? at(?: about| some| only)? $", re.IGNORECASE)
OFF_IT = regex(  # "fourteen minutes at a hundred on the 140 gel"
    r"^(?: ?a(?:mps?)?\b)? (?:on|off|from|out of) (?:the|my|our|his|her|an?|this|that) "
    r"(?:\w+[ -]){0,3}?(?:\d{2,3}\b|agm|gel|wet|flooded|lead|lithium|lfp|battery|bank)",
    re.IGNORECASE,
)
ITS_LIMIT = regex(
    r"\b(?:lithium|lfp|lifepo4|bms|battery|accu|it)\b[^.?!;]{0,50}\b(?:its|his|her|the|whose)"
    r" (?:\w+ )?(?:limit|ceiling|maximum|max)"
    r" (?:is|being|of|at|=)(?: only| just)? $",
    re.IGNORECASE,
)
PEAK_ALLOWED = regex(
    r"\b(?:peak|surge|burst)(?: current| figure| amps)?(?: that| which)? (?:it|the (?:bms|battery|lithium|label|box))"
    r" (?:allows?|permits?|gives?|lets? (?:out|through)|stands?|bears?)(?: is| are| of|:|,|:? only| just)* $",
    re.IGNORECASE,
)
OF_BMS = regex(r"\bbms(?: is| of| at|:)? $", re.IGNORECASE)  # "BMS 60 A peak 180"
THEN_PEAK = regex(r"^,? ?(?:and )?(?:peak|surge|burst)(?: of| is|:)? ?\d", re.IGNORECASE)
ALLOWED_PEAK = Claim("battery.peak_current", "role")
SMALLEST, LARGEST = 1.0, 1500.0
SYSTEMS = frozenset({6.0, 12.0, 24.0, 36.0, 48.0})
SMALLEST_PEAK = 30.0
REACH = 40  # characters
NEAR = 10  # pieces from the first figure to the second
ALONG = frozenset({"on", "in", "along", "through", "thru", "down", "over"})
OPEN = frozenset({"load.current", "load.peak", "fuse.rating", "reading.current", "battery.capacity"})


def its_load(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps that a load takes, and of a battery's limit that seemed the load's."""
    found: dict[int, Claim] = {}
    for item in scene.quantities("AMP", "NUM"):
        claim, value = claims.get(item.at), item.quantity.value
        if PEAK_ALLOWED.search(_around(scene, item)[0]):
            found[item.at] = ALLOWED_PEAK
            continue
        if OF_BMS.search(_around(scene, item)[0]) and THEN_PEAK.match(_around(scene, item)[1]):
            found[item.at] = LIMIT
            continue
        if isinstance(value, str) or not SMALLEST <= value <= LARGEST or (claim and claim.fact not in OPEN):
            continue
        if mended := _first_and_after(scene, item, found) or _by_place(scene, claim, item, value):
            found[item.at] = mended
    return found


def _around(scene: Scene, item: Item) -> tuple[str, str]:
    start, end = scene.span(item.start, item.end)
    return scene.ahead(start), scene.text[end : end + REACH]


def _first_and_after(scene: Scene, item: Item, found: dict[int, Claim]) -> Claim | None:
    """The two figures of one start: "300 in the first hit and 200 after"."""
    after = _around(scene, item)[1]
    if FIRST.match(after) and float(item.quantity.value) >= SMALLEST_PEAK:
        return PEAK
    near = any(claim == PEAK and 0 < item.at - at <= NEAR for at, claim in found.items())
    return LOAD if near and AFTER.match(after) else None


def _by_place(scene: Scene, claim: Claim | None, item: Item, value: float) -> Claim | None:
    before, after = _around(scene, item)
    bare = item.dim == "NUM"
    if not bare and value >= SMALLEST_PEAK and SCREW.search(before):
        return LOAD
    if not bare and claim is not None and claim.fact == "fuse.rating" and _on_a_cable(scene, claim, item):
        return LOAD
    if not bare and _names_the_load(scene, claim, item):
        return LOAD
    if bare and value in SYSTEMS:
        return None
    if (claim is None or claim == Claim("fuse.rating", claim.how)) and bare and LOAD_OF.search(before):
        return LOAD if stops(scene, item, ("and", "is", "or", "on", "at", "for", "with", "amp")) else None
    if claim is None and (THROUGH.match(after) or (TIMED.search(before) and OFF_IT.match(after))):
        return LOAD
    limited = claim is not None and claim.fact == "load.current" and scene.lithium_known
    return LIMIT if limited and not bare and ITS_LIMIT.search(before) else None


def _on_a_cable(scene: Scene, claim: Claim, item: Item) -> bool:
    """Whether amps that seemed a fuse's flow on a cable: "260 A on 70 square, which fuse"."""
    fuses = [head for head in scene.head_items if head.head == "fuse"]
    if claim.how not in UNSURE or not fuses or any(head.start < item.start for head in fuses):
        return False
    if len(scene.quantities("AMP")) > 1:  # "300 A on 1 AWG for a 180 A thruster"
        return False
    after = scene.items[item.at + 1 : item.at + 3]
    return len(after) == 2 and after[0].name in ALONG and after[1].dim in ("AREA", "GAUGE")


def _names_the_load(scene: Scene, claim: Claim | None, item: Item) -> bool:
    """Whether amps that seemed a fuse's are those of the load right behind them: "breaker: 12 V 60 A winch"."""
    if claim is None or claim.fact != "fuse.rating" or item.end + 1 > len(scene.at_word) - 1:
        return False
    load = scene.at_word[item.end]
    follows = scene.after(load)
    return load.head == "load" and (follows is None or follows.head != "fuse")
