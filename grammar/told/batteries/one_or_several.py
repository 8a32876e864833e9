"""One large battery or several smaller ones: how many there are on each side of the "or", and whose figure is whose."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import NamedTuple

from grammar.facts import facts
from grammar.reading import Span, Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

COUNT, CAPACITY, CCA = "battery.count", "battery.capacity", "battery.cca"
RATINGS = (CAPACITY, CCA)
PIVOT = regex(
    r"\b(?:or(?: else)?|than|vs\.?|versus|against|instead of|rather than|compared (?:to|with))(?= |$)", re.IGNORECASE
)
NUMBERS = {"one": 1.0, "single": 1.0, "two": 2.0, "pair": 2.0, "twin": 2.0, "couple": 2.0, "three": 3.0, "four": 4.0}
NUMBER = regex(
    rf"\b(?P<word>{'|'.join(NUMBERS)})\b"
    r"|(?<![\d.,/])(?P<digit>[1-4])(?= ?x\b| ?x ?\d| \d| (?:off|of|small|big|large|new)\b)",
    re.IGNORECASE,
)
ARTICLE = regex(r"\b(?:an?|the|my|our)\b", re.IGNORECASE)
AS_GOOD = regex(  # "one of 230 Ah ... . Would two of 110 Ah be as good?"
    r"\b(?:as good|just as well|better|instead|do as much|do the same|match (?:it|that))\b", re.IGNORECASE
)
NEXT = regex(r"[.?!;]\s+(?P<first>(?:would|could|will|can|do|does|are|is|should|or)\b)", re.IGNORECASE)
JOINS = regex(r"\b(?:and|plus|with (?:my|the)|next to|beside|alongside|to (?:my|the))\b", re.IGNORECASE)
STOPS = regex(r"[.?!;:]\s")
FAR = 60  # characters from a count to the figure of its battery
BARE = regex(  # "two 100s or one 200?", "better than a single 120?"
    r"\b(?:or|than|vs\.?|versus|against) (?:(?:an?|one) )?(?P<count>single|big|large|an?|one|two|three|[1-4] ?x) ?"
    r"(?P<size>\d{2,3})(?:'?s)?\b"
    r"(?! ?-?(?:v|volts?|a|amps?|cca|mm2?|cm|m|w|watts?|kg|years?|days?|hours?|minutes?|%|percent)\b)(?![.,]\d)",
    re.IGNORECASE,
)
SIZES = range(20, 401)  # amp-hours


class Side(NamedTuple):
    """How many, and where that stands; the figure's own place where nothing tells it."""

    number: float | None
    span: Span | None = None


def either(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, each side of "one 200 Ah or two 100 Ah" with its own count and figures."""
    if not (PIVOT.search(scene.text) or AS_GOOD.search(scene.text)):
        return stated
    stated = [*stated, *_bare(scene, stated)]
    ratings = sorted((item for item in stated if item.fact in RATINGS), key=lambda item: item.span)
    if {item.of for item in ratings} != {1, 2}:
        return _without_other_volts(scene, stated)
    parted = ((left, right, _pivot(scene.text, left.span[1], right.span[0])) for left, right in pairwise(ratings))
    right, pivot = next(((right, pivot) for _, right, pivot in parted if pivot), (ratings[0], None))
    if pivot is None or all(item.of == 1 for item in ratings if item.span >= right.span):
        return stated
    one, other = _counted(scene.text, ratings[0].span, 0), _counted(scene.text, right.span, pivot.end())
    if one.number is None and (other.number or 0.0) > 1:
        one = Side(1.0, ratings[0].span)
    if one.number is None or other.number is None or one.number == other.number == 1.0:
        return stated
    counts = _counts(scene.text, one, other, pivot)
    kept = [item for item in stated if item.fact != COUNT]
    return [*(_on_its_side(item, kept, pivot.start()) for item in kept), *counts]


def _without_other_volts(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Without the batteries of other volts that some are weighed against: "two 6 V or one 12 V"."""
    volts = sorted((item for item in stated if item.fact == "battery.nominal"), key=lambda item: item.span)
    if len(volts) != 2 or volts[0].value == volts[1].value:
        return stated
    one, other = volts
    pivot = _pivot(scene.text, one.span[1], other.span[0])
    if pivot is None:
        return stated
    counts = [item for item in stated if item.fact == COUNT]
    before = [item.value for item in counts if item.span[0] < one.span[0]]
    against = [item for item in counts if one.span[1] <= item.span[0] < other.span[0]]
    if against and not before:  # the number that was kept is that of the second side
        return [replace(item, of=1) if item is other else item for item in stated if item is not one]
    first, second = before[0] if before else 1.0, _counted(scene.text, other.span, pivot.end()).number or 1.0
    if not all(isinstance(number, float) for number in (first, one.value, other.value)):
        return stated
    alike = float(first) * float(one.value) == float(second) * float(other.value)
    return [item for item in stated if item is not other and item not in against] if alike else stated


def _bare(scene: Scene, stated: Sequence[Stated]) -> list[Stated]:
    """The amp-hours that only their place tells, where the first side has its own: the 200 of "two 100s or one 200"."""
    told = [item for item in stated if item.fact == CAPACITY]
    found = BARE.search(scene.text, told[0].span[1]) if len(told) == 1 else None
    if found is None or int(found["size"]) not in SIZES or JOINS.search(scene.text, told[0].span[1], found.start()):
        return []
    if any(item.span[0] < found.end("size") and found.start("size") < item.span[1] for item in stated):
        return []
    unit = facts()[CAPACITY].unit
    return [Stated(CAPACITY, float(found["size"]), unit, found["size"], found.span("size"), of=2, how="default")]


def _pivot(text: str, left: int, right: int) -> re.Match[str] | None:
    """The word between two figures that weighs them against each other."""
    found = PIVOT.search(text, left, right)
    if found is None and (asked := NEXT.search(text, left, right)):
        end = STOPS.search(f"{text} ", right)
        sentence = text[right : end.start() if end else len(text)]
        found = (
            re.compile(re.escape(asked["first"])).match(text, asked.start("first"))
            if AS_GOOD.search(sentence)
            else None
        )
    return None if found is None or JOINS.search(text, found.end(), right) else found


def _counted(text: str, figure: Span, since: int) -> Side:
    """How many batteries the words before a figure tell of."""
    at = figure[0]
    begin = max(since, at - FAR)
    stops = list(STOPS.finditer(text, begin, at))
    begin = stops[-1].end() if stops else begin
    numbers = [found for found in NUMBER.finditer(text, begin, at + 1) if found.end() <= at]  # it looks at the figure
    if numbers:
        last = numbers[-1]
        value = NUMBERS[last["word"].lower()] if last["word"] else float(last["digit"])
        return Side(value, last.span())
    article = ARTICLE.search(text, begin, at)
    return Side(1.0, article.span()) if article else Side(None)


def _counts(text: str, one: Side, other: Side, pivot: re.Match[str]) -> list[Stated]:
    """The two counts; the text of the second one holds the word that parts them, so that they are never added up."""
    assert one.number is not None
    assert other.number is not None
    assert one.span is not None
    assert other.span is not None
    span, first = (pivot.start(), other.span[1]), one.span
    return [
        Stated(COUNT, one.number, "", text[slice(*first)], first, how="grammar"),
        Stated(COUNT, other.number, "", text[slice(*span)], span, of=2, how="grammar"),
    ]


def _on_its_side(item: Stated, among: Sequence[Stated], pivot: int) -> Stated:
    """A figure that is told of the second side alone as that of the second."""
    alone = item.of == 1 and not any(other.fact == item.fact and other.of == 2 for other in among)
    return replace(item, of=2) if alone and item.fact in RATINGS and item.span[0] > pivot else item
