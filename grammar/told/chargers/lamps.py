"""The kind at which a charger's lamp or display is set: "the little light says AGM", "the gel LED is lit"."""

from __future__ import annotations

import re

from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import BREAK, ahead_of

LAMP = r"(?:lights?|lamps?|leds?|diodes?|indicators?|displays?|screens?|read-?outs?|lcd|little window)"
OF_ANOTHER = r"(?!battery|monitor|meter|gauge|shunt|thruster)"  # "the light of the monitor"
AT = r"(?:at|beside|next to|by|for|on|against|under|over|opposite|behind)(?: the (?:word|letters?|name|position))?"
ON_IT = r"(?: (?:on|of) (?:it|its front|(?:the|my|our|his|her|this) charger))?"
SAYS = (
    rf"(?:(?:still |now |always |only )?(?:says?|said|reads?|shows?|showed|showing|spells?)(?: (?:as|out|up|me|us))?"
    rf"|(?:is|was|['’]s|stands|sits|glows?|burns?|shines|lit|on|lights)(?: (?:lit|on|up|still|only|red|green))*"
    rf" {AT})"
)
BEFORE = regex(rf"\b{LAMP}\b(?: {OF_ANOTHER}[\w'’]+){{0,5}}? {SAYS} ['\"‘“]?$", re.IGNORECASE)
LIT_AT = regex(rf"\b(?:lit|lit up|lights up|glows|blinks) {AT} ['\"‘“]?$", re.IGNORECASE)
AFTER = regex(
    rf"^['\"’”]? (?:(?:{LAMP}{ON_IT})?(?: ?\b(?:is|was|stays|comes|came|goes|went)|['’]s)?"
    r"(?: (?:the one|what|always|now))? ?\b(?:lit|glow\w*|shining)\b"
    rf"|{LAMP}{ON_IT} (?:is|was|stays|comes|came) on\b)",
    re.IGNORECASE,
)
CHARGE_VOLTS = (13.8, 15.2)  # "the box gives 14.7, AGM lamp lit"
NEAR = 7  # words between a lamp and the kind that it tells
KINDS = r"(?:agm|gel|wet|flooded|lithium|lifepo4|lfp|li)\b"
# then the battery is what is told of, or a choice: "the light says the AGM is full", "gel or AGM"
NO_SETTING = regex(
    r"^['\"’”]?(?: (?:is|are|was|has|needs|batter\w+|bank|full)\b"
    rf"|(?:,? (?:or|and) | ?/ ?)['\"‘“]?{KINDS})",
    re.IGNORECASE,
)
OTHERS = regex(r"\b(?:monitor|meter|gauge|shunt)\b", re.IGNORECASE)


def lit_at(scene: Scene, item: Item) -> bool:
    """Whether a charger is spoken of, and its lamp or display tells this kind."""
    charges = any(CHARGE_VOLTS[0] <= figure <= CHARGE_VOLTS[1] for figure in scene.figures)
    if not charges and "charger" not in scene.heads and not any(old.fact.startswith("charger.") for old in scene.said):
        return False
    before, after = ahead_of(scene, item), scene.text[scene.span(item.start, item.end)[1] :]
    own = before[max((cut.end() for cut in BREAK.finditer(before)), default=0) :]
    if OTHERS.search(own):
        return False
    told = BEFORE.search(own) or LIT_AT.search(own)
    return AFTER.match(after) is not None or (told is not None and NO_SETTING.match(after) is None)


def is_its_lamp(scene: Scene, item: Item) -> bool:
    """Whether a light is the charger's own, and no load: a kind stands by it that it tells."""
    kinds = (one for one in scene.items if one.fact == "battery.chemistry" and abs(one.start - item.start) <= NEAR)
    return any(lit_at(scene, one) for one in kinds)
