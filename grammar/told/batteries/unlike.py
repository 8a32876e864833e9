"""Batteries that are not alike: how many there are of each, and which figure of a later message is whose."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from grammar.facts import facts
from grammar.reading import Span, Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

COUNT, CAPACITY, KIND = "battery.count", "battery.capacity", "battery.chemistry"
OUTPUTS = "charger.outputs"  # told of, it is one of several batteries that is spoken of
RATINGS = (CAPACITY, "battery.cca")
OF_ONE = frozenset({*RATINGS, "battery.age", KIND, "battery.nominal"})
NEARLY = 3.0  # of two batteries that are joined no one is so many times the other
NUMBERS = {"two": 2.0, "three": 3.0, "four": 4.0}  # any other word before a battery is of one
MANY = r"(a|an|one|the|my|another|two|three|four|[1-4])"
DETAIL = r"(?:\W*(?:x|off|new|old|other|more|single|one|12 ?v|volts?|agms?|gels?|wets?|lithiums?|batter\w+|of))*"
JOINED_BY = regex(
    rf"\W*(?:ah\b|cca\b|each\b|agms?\b|gels?\b|wet\b|lithiums?\b|batter\w+\b|ones?\b|old\b|\W)*"
    rf"(?:and|plus|with|together with|alongside|beside|next to|to|\+|&)\W+{MANY}\b{DETAIL}\W*",
    re.IGNORECASE,
)
PLAIN = r"(?:[ -]*(?:x|off|new|old|other|12 ?v|volts?|agms?|gels?|wets?|lithiums?|batter\w+|of))*"
RIGHT_BEFORE = regex(rf"{PLAIN}[ -]*(?:from (?:my|the|our) \w+)?{PLAIN}[ -]*", re.IGNORECASE)  # no mark, no "one"
PAIR = regex(
    r"(?<![\d.,])(\d{2,4}) ?(?:ah|cca)? ?(?:and|&|\+|with|plus|beside|/) ?(?:an? |the other )?(\d{2,4})"
    r"(?: ?(?:ah|cca)\b)?(?![\d.,])"
    r"(?! ?(?:v|volts?|a|amps?|ma|m|mm2?|cm|ft|feet|w|watts?|kg|lbs?|c|f|degrees?|percent|%)\b)"
    r"(?! ?(?:years?|days?|hours?|minutes?)\b)",
    re.IGNORECASE,
)
IS = r"(?:(?:is|s|has|was|at|only|just|a|an|actually|really|turns|out|to|be|though|about|becomes|gets|were|goes)\W+)"
ONE_IS = regex(  # "one is 80", "the other one's an 80", "only one of them is gel", "the bow one becomes lithium"
    rf"\b(?:one(?: of (?:them|these|those|the two))?\W+{IS}+|(?:(?:the )?other(?: one| battery)?"
    rf"|the second(?: one| battery)?|(?:the )?(?:bow|front|stern|thruster)(?: one| battery| bank)?)\W+{IS}*)$",
    re.IGNORECASE,
)
IN_FRONT = regex(r"\W+(?:\w+\W+){0,2}?(?:in|at|for|up) (?:the )?(?:front|bow|stern|thruster)\b", re.IGNORECASE)


def unlike(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, each with its own battery where there are two sorts of them."""
    several = (COUNT, "bank.layout", "bank.count")
    if any(old.fact == OUTPUTS or (old.fact in several and old.value != 1.0) for old in scene.said):
        stated = [_of_the_other(scene, item) for item in _both(scene, stated)]
    return [*stated, *_how_many(scene, stated)]


def _both(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """ "100 and 80 then": the ratings of both batteries that were told of as alike."""
    found = PAIR.search(scene.text)
    other_things = scene.heads - {"battery", "boat", "cell", "bank"}
    if found is None or other_things or {item.of for item in stated if item.fact in RATINGS} == {1, 2}:
        return stated
    values = float(found[1]), float(found[2])
    old = next((old for old in scene.said if old.fact in RATINGS and all(_near(old, value) for value in values)), None)
    if old is None or values[0] == values[1]:
        return stated
    kept = [item for item in stated if item.span[1] <= found.start() or item.span[0] >= found.end()]
    kept = [item for item in kept if item.fact != old.fact]
    unit = facts()[old.fact].unit
    sides = enumerate(values, start=1)
    both = [Stated(old.fact, value, unit, found[of], found.span(of), of=of, how="asked") for of, value in sides]
    return [*kept, *both]


def _near(old: Stated, value: float) -> bool:
    return not isinstance(old.value, str) and old.value > 0 and 1 / NEARLY <= value / old.value <= NEARLY


def _of_the_other(scene: Scene, item: Stated) -> Stated:
    """ "One is 80 Ah" of two that were alike: the other one's figure, beside that of the first."""
    told = {old.fact: old.value for old in scene.said if old.of == 1}
    other = item.fact in OF_ONE and item.of == 1 and told.get(item.fact, item.value) != item.value
    if other and ONE_IS.search(scene.ahead(item.span[0])):
        return replace(item, of=2)
    kind = item.fact == KIND and item.of == 1 and told.get(KIND) != item.value
    in_front = kind and IN_FRONT.match(scene.text[item.span[1] :])
    beside = kind and OUTPUTS in {old.fact for old in scene.said} and ONE_IS.search(scene.ahead(item.span[0]))
    return replace(item, of=2) if in_front or beside else item


def _how_many(scene: Scene, stated: Sequence[Stated]) -> Iterator[Stated]:
    """How many there are of the second sort: the 1 of "two old 60 Ah and a new 100 Ah"."""
    count = next((item for item in stated if item.fact == COUNT), None)
    if count is None or isinstance(count.value, str) or count.value < 2:
        return
    for rating in RATINGS:
        sizes = {item.of: item.span for item in stated if item.fact == rating}
        found = _second_sort(scene.text, count.span, sizes[1], sizes[2]) if sizes.keys() == {1, 2} else None
        if found is not None:
            many = float(found[0]) if found[0].isdigit() else NUMBERS.get(found[0].lower(), 1.0)
            yield Stated(COUNT, many, "", found[0], found[1], of=2, how="grammar")
            return


def _second_sort(text: str, count: Span, first: Span, second: Span) -> tuple[str, Span] | None:
    """The word that counts the second sort and its place; None where the count is of both together."""
    if count[1] > first[0] or not RIGHT_BEFORE.fullmatch(text[count[1] : first[0]]):
        return None
    found = JOINED_BY.fullmatch(text[first[1] : second[0]])
    return (found[1], (first[1] + found.start(1), first[1] + found.end(1))) if found else None
