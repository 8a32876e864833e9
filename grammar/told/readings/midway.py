"""Volts read between the battery and the motor: "8.1 at the motor, 8.3 at the fuse, 11.5 at the battery"."""

from __future__ import annotations

import re

from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of

PLACE = (
    r"(?:main |battery |anl |master )?(?:fuse|isolator|switch|breaker|bus ?bar|relay|solenoid|contactor|shunt|junction)"
    r"(?: ?(?:holder|box|bolts?|studs?|posts?|terminals?))?"
)
AT = rf"(?:at|after|behind|past|across|on|before|by) (?:the |my |our |its )?{PLACE}"
LEADS = regex(rf"\b{AT}(?: (?:it'?s|is|i get|reads?|shows?|says?|just|only)|:)? ?$", re.IGNORECASE)
FOLLOWS = regex(rf"^ ?(?:v|volts?)?(?: only)? {AT}\b(?!:? ?\d)", re.IGNORECASE)
ENDS = 2
FOLLOWING = 60  # characters
MOST = 8  # readings of one circuit; a longer list is a log


def without_midway(scene: Scene, items: list[Item]) -> list[Item]:
    """The readings without those at a fuse or switch, where the two ends of the cable were read as well."""
    if len(items) > MOST:
        return items
    ends = [item for item in items if not _is_midway(scene, item)]
    return ends if len(ends) == ENDS else items


def _is_midway(scene: Scene, item: Item) -> bool:
    end = scene.span(item.start, item.end)[1]
    after = scene.text[end : end + FOLLOWING]
    return LEADS.search(ahead_of(scene, item)) is not None or FOLLOWS.match(after) is not None
