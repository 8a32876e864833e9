"""The weather as a condition: "if it's freezing", "on a frosty morning"; "will it freeze" asks of the battery."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

TEMPERATURE, UNIT = "ambient.temperature", "degree_Celsius"
FREEZING = 0.0  # °C
IN_A_WORD = regex(r"\b(?:freez\w*|frost\w*|icy)\b", re.IGNORECASE)
WORD = r"(?P<word{}>freezing|frosty|icy|below (?:zero|freezing)|under zero|sub-?zero)\b(?! point| temp)"
PLACE = r"(?:mornings?|nights?|days?|weather|conditions|locker|cabin|shed|boat|yard|garage|bow|forepeak|weekend)"
COLD = regex(
    r"\b(?:if|when|once|while|say|suppose|whenever|as soon as) (?:it|its|it's|it is|it was|that's|thats)\s*"
    rf"(?:is |was |gets |goes |falls |drops )*{WORD.format(1)}"
    rf"|\b(?:on|in) (?:a |an |the |those )?{WORD.format(2)} {PLACE}\b",
    re.IGNORECASE,
)
THINGS = regex(r"\b(?:freezes?|frozen|burst|split|crack)\b", re.IGNORECASE)


def is_condition(text: str) -> bool:
    """Whether the cold is only what a question is asked under: no word of a battery that freezes."""
    return bool(COLD.search(text)) and not THINGS.search(text)


def at_freezing(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with 0 °C, where it is freezing and no degrees are told; degrees that are told stand alone."""
    told = [item for item in stated if item.fact == TEMPERATURE]
    typed = [item for item in told if not IN_A_WORD.search(item.text)]
    if len(told) > len(typed) > 0:  # "freezing out, minus 2"
        return [item for item in stated if item.fact != TEMPERATURE] + [replace(item, of=1) for item in typed[:1]]
    found = COLD.search(scene.text)
    if found is None or told or not is_condition(scene.text):
        return stated
    word = "word1" if found["word1"] else "word2"
    return [*stated, Stated(TEMPERATURE, FREEZING, UNIT, found[word], found.span(word), how="token")]
