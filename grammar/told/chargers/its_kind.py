"""The kind that a charger is made for or stands on, told behind it: "the charger of now, made for wet"."""

from __future__ import annotations

import re

from grammar.scene.items import Item
from grammar.scene.scene import Scene

CHARGER = r"\b(?:the|my|our|his|her|their|your|old) (?:\w+ ){0,2}charger\b"
MADE_FOR = re.compile(
    rf"{CHARGER}[^.?!;]{{0,32}}?,? (?:made|meant|built|intended|designed|sold|bought|set|marked"
    rf"|labelled) (?:for|as) ['\"‘“]?$",
    re.IGNORECASE,
)
ON_QUOTED = re.compile(rf"{CHARGER}[^.?!;]{{0,32}}?,? (?:on|at|says|marked|reads) ['\"‘“]$", re.IGNORECASE)
ON_ASIDE = re.compile(rf"{CHARGER} (?:is|was)[^.?!;,]{{3,28}}, (?:still )?on $", re.IGNORECASE)


def of_its_kind(scene: Scene, item: Item) -> bool:
    """Whether a kind of battery is what the charger that they have is made for, or is set to."""
    if "charger" not in scene.heads:
        return False
    before = scene.ahead(scene.span(item.start, item.end)[0])
    return any(words.search(before) for words in (MADE_FOR, ON_QUOTED, ON_ASIDE))
