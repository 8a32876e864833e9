"""Of two loads the one whose amps are told: "a new fridge last winter. What cable for a thruster of 260 A?"."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import SENTENCE

THRUSTERS = regex(r"\bthruster(?:'?s)?(?= (?:batter(?:y|ies)|batts?|bank)\b)", re.IGNORECASE)
KIND = "load.kind"
AMPS = frozenset({"load.current", "load.peak", "load.power"})


def by_its_amps(scene: Scene, stated: Iterable[Stated]) -> list[Stated]:
    """The facts with the load first in whose sentence the only amps stand, where the other one stands in none."""
    told = list(stated)
    kinds = {item.of: item for item in told if item.fact == KIND}
    amps = [item for item in told if item.fact in AMPS]
    if kinds.keys() != {1, 2} or not amps or any(item.of > 1 for item in amps):
        return told
    places = {_sentence(scene, item) for item in amps}
    if _sentence(scene, kinds[1]) in places or places != {_sentence(scene, kinds[2])}:
        return told
    return [replace(item, of=3 - item.of) if item.fact == KIND else item for item in told]


def of_its_battery(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with the thruster whose battery is named, where amps are told of no other load."""
    kinds = {KIND, "load.model"}
    if not any(item.fact == "load.current" for item in stated):
        return stated
    if any(item.fact in kinds for item in (*stated, *scene.said)) or "load" in scene.heads:
        return stated
    found = THRUSTERS.search(scene.text)
    return [*stated, Stated(KIND, "thruster", "", found[0], found.span(), how="default")] if found else stated


def _sentence(scene: Scene, item: Stated) -> int:
    """The sentence of a fact, by its number."""
    return sum(1 for _ in SENTENCE.finditer(scene.text, 0, item.span[0]))
