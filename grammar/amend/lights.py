"""Lights that are no load of the question: "a light little cruiser", "the lights dim when the thruster runs"."""

from __future__ import annotations

import re
from collections.abc import Iterable

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

LOADS = ("load.kind", "load.model")
BY_THE_WORD = frozenset({"light", "lights"})
WEIGHS_LITTLE = regex(  # what stands before a light that is no lamp
    r"\b(?:is|are|was|be|being|very|too|so|as|rather|quite|fairly|really|pretty|more|how|stays?|keep \w+) $",
    re.IGNORECASE,
)
OF_LITTLE_WEIGHT = regex(
    r",? ?(?:(?:little|old|small|fast|plastic|wooden|and (?:small|fast|narrow|old|short)|\d+(?:[.,]\d+)? ?-?"
    r"(?:m|met(?:re|er)s?|ft|foot|feet|footer)),? )*"
    r"(?:boats?|cruisers?|yachts?|craft|hulls?|dingh(?:y|ies)|cat(?:amaran)?|launch|sloop|displacement|weight|in weight"
    r"|enough|to (?:carry|lift|handle)|for (?:her|its) (?:size|length))\b",
    re.IGNORECASE,
)
SUFFER = regex(  # what lamps do when something else takes the current
    r" (?:\w+ ){0,2}?(?:go(?:es)? (?:very |quite )?(?:dim|low|dark|out|yellow|weak)|nearly go out"
    r"|dims?|dips?|fades?|flickers?|blinks?|get (?:dim|dimmer|weak))\b",
    re.IGNORECASE,
)


def without_lights(scene: Scene, stated: Iterable[Stated]) -> list[Stated]:
    """Without the light that tells what the boat weighs, and beside another load without lights that only dim."""
    told = list(stated)
    lights = [item for item in told if item.fact == "load.kind" and item.text.lower() in BY_THE_WORD]
    if not lights:
        return told
    others = any(item.fact in LOADS and item not in lights for item in told)
    gone = [item for item in lights if _is_of_weight(scene, item) or (others and _dims(scene, item))]
    return [item for item in told if item not in gone]


def _is_of_weight(scene: Scene, item: Stated) -> bool:
    """Whether it says that something weighs little: "the boat is light", "a light 7 metre cruiser"."""
    start, end = item.span
    if item.text.lower() != "light":
        return False
    return bool(WEIGHS_LITTLE.search(scene.ahead(start)) or OF_LITTLE_WEIGHT.match(scene.text, end))


def _dims(scene: Scene, item: Stated) -> bool:
    """Whether the lights are told of for what they do while something else runs."""
    return SUFFER.match(scene.text, item.span[1]) is not None
