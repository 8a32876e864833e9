"""Old and new batteries counted apart: "one old and two new ones" are three."""

from __future__ import annotations

import re
from collections.abc import Sequence

from grammar.reading import Stated
from grammar.text.patterns import regex

COUNT = "battery.count"
NUMBERS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
NUMBER = rf"(?:{'|'.join(NUMBERS)}|[1-9])"
AGE = r"(?:old(?:er)?|new(?:er)?|brand[- ]new|used|fresh|tired)"
BATTERY = r"(?:batter(?:y|ies)|batts?|agms?|gels?|wets?|lithiums?|ones?|accus?)"
APART = regex(
    rf"(?<![\d.,/-])\b(?P<first>{NUMBER}) (?P<one>{AGE})(?: {BATTERY})?,? (?:and|plus|\+|&|with) "
    rf"(?P<second>{NUMBER}) (?P<other>{AGE})\b(?! (?:fuse|charger|cable|thruster|motor|panel|boat|lead\b))",
    re.IGNORECASE,
)
BATTERIES = regex(rf"\b(?:{BATTERY}|bank|parallel|series)\b|\bah\b", re.IGNORECASE)


def old_and_new(text: str, stated: Sequence[Stated]) -> list[Stated]:
    """The facts, with the number of all batteries where the old and the new ones are counted apart."""
    found = APART.search(text)
    if found is None or found["one"].lower()[:3] == found["other"].lower()[:3] or not BATTERIES.search(text):
        return list(stated)
    count = float(_number(found["first"]) + _number(found["second"]))
    kept = [item for item in stated if item.fact != COUNT]
    return [*kept, Stated(COUNT, count, "", found[0], found.span(), how="grammar")]


def _number(said: str) -> int:
    return NUMBERS.get(said.lower()) or int(said)
