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
    rf"(?:is |was |gets |goes |falls |drops |(?:really |properly )?cold,? (?:like|say|as in|so) )*{WORD.format(1)}"
    rf"|\b(?:on|in) (?:a |an |the |those )?{WORD.format(2)} {PLACE}\b",
    re.IGNORECASE,
)
THINGS = regex(r"\b(?:freezes?|frozen|burst|split|crack)\b", re.IGNORECASE)


MILD = 10.0  # °C: colder days that have been may have harmed a battery, and are told
FAR = 60  # characters
IT_WAS = regex(
    r"(?:^|[.!?;,\n] *|\b(?:and|but) )(?:it|we|there|the weather|temperatures?) "
    r"(?:was|were|had|has been|have had|got|hit|reached|went)\b[^.?!;,]{0,20}$",
    re.IGNORECASE,
)
ABOARD = (
    r"locker|box|compartment|engine|batter\w+|bank|cabin|below|bilge|forepeak|inside|aboard|on board|boat"
    r"|when|while|as|read\w*|measur\w*|took|test\w*|charg\w*"
)
GONE = regex(
    rf"^(?:(?!\b(?:{ABOARD})\b)[^.?!;]){{0,30}}?"
    r"\b(?:last (?:week(?:end)?|month|year|summer|spring|autumn|sunday|saturday)|the other (?:day|week)"
    r"|yesterday|(?:a|two|some|a few) (?:days?|weeks?|months?) ago)\b(?:(?!"
    rf"\b(?:{ABOARD})\b)[^.?!;]){{0,30}}(?:[.?!;]|$)",
    re.IGNORECASE,
)


def is_gone(scene: Scene, span: tuple[int, int], value: float) -> bool:
    """Whether warm degrees are those of days gone by, and of no place aboard: "it was 30 degrees here last week"."""
    start, end = span
    if value < MILD or not IT_WAS.search(scene.text[max(0, start - FAR) : start]):
        return False
    return GONE.match(scene.text[end : end + 2 * FAR]) is not None


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
