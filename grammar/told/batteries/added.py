"""A battery that a later message puts beside those spoken of: "can I add a 100 Ah AGM", "the other one is 12.6"."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene

OF_A_BATTERY = frozenset(
    ["battery.chemistry", "battery.nominal", "battery.capacity", "battery.cca", "battery.ca", "battery.age"]
)
ADDS = re.compile(
    r"\b(?:add|adding|alongside"
    r"|(?:next to|beside|with|to) (?:it|them|that|those|these|this|mine|the (?:first|old|others))"
    r"|in parallel with|in series with|as well as)\b"
)
ANOTHER = re.compile(r"\b(?:an?|another|other|second|third|spare|old|new)\b[^.?!]*$")
JOINS = re.compile(r"\b(?:link|join|connect|couple|wire|parallel|series|together|combine|mix)\w*\b")
OTHER_ONE = re.compile(r"\bother (?:one|battery|batt|bank)?\b[^.?!]*$")
FAR = 60  # characters before a figure that its battery is named in


def added(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, those of a further battery as of the second: where the conversation told of others already."""
    told = {item.fact: item.value for item in scene.said if item.of == 1}
    if not any(fact in told for fact in OF_A_BATTERY | {"reading.voltage"}):
        return stated
    text = scene.text.lower()
    adds, joins = bool(ADDS.search(text)), bool(JOINS.search(text))
    second = {item.fact for item in stated if item.of > 1}
    return [replace(item, of=2) if _is_further(text, item, told, second, adds, joins) else item for item in stated]


def _is_further(text: str, item: Stated, told: Mapping[str, object], second: set[str], adds: bool, joins: bool) -> bool:
    """Whether a fact is one of the battery that is put beside those told of."""
    if item.of > 1 or item.fact in second or told.get(item.fact) == item.value:
        return False
    before = text[max(0, item.span[0] - FAR) : item.span[0]]
    if item.fact == "reading.voltage":
        return joins and item.fact in told and bool(OTHER_ONE.search(before))
    return adds and item.fact in OF_A_BATTERY and bool(ANOTHER.search(before))
