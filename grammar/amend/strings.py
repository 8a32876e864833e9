"""How batteries are joined, by their strings, volts or number: "two strings of two", "a 24 V bank of two"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from grammar.reading import Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import stated_at

JOINED_AGAIN = regex(  # "two in a row, then the rows side by side"
    r"\bthen (?:the |those |these |both |join the )*(?:rows|pairs|strings|two|sets|halves|lots|them)\b", re.IGNORECASE
)
THEN_THESE = regex(r"\bthen(?: (?:all|both|these|those|them|joined|put|linked|in|up))* ?$", re.IGNORECASE)
MADE_OF = regex(r" ?(?:bank|set-?up|set|system|pair) (?:made )?(?:up )?(?:of|from) (?:two|2)\b")
SYSTEM = 12.0  # volts of the usual battery
TWO_BY_TWO = regex(r"\b(?:two|2) (?:by|and) (?:two|2)\b", re.IGNORECASE)
MOST = 12  # batteries of one string
STRINGS = 4  # the fewest batteries in series and in parallel
APART = regex(r"\b(?:or|vs|versus|then|now|instead|not|was|without|to|down)\b|[?]")
FAR = 40  # characters


def in_strings(scene: Scene) -> Iterator[Stated]:
    """ "Two and two in series", "2 in series, 2 strings": the counts of a bank in strings."""
    layouts = {item.start: item for item in scene.items if item.fact == "bank.layout" and item.name == "series"}
    counts = [item for item in scene.measured if item.dim in ("NUM", "COUNT") and _small(item)] if layouts else []
    for first, second in pairwise(counts):
        if (
            first.quantity.value == SYSTEM == second.quantity.value and scene.word(first.end) == "+"
        ):  # "12+12 in series"
            yield stated_at(scene, "battery.count", 2.0, first.start, second.end)
            yield stated_at(scene, "battery.nominal", SYSTEM, first.start, second.end)
            return
        if first.quantity.value != second.quantity.value:
            continue
        value, ends = float(first.quantity.value), second.end
        if second.at - first.at == 2 and scene.word(first.end) == "and" and ends in layouts:
            count = 2 * value
        elif scene.word(ends) in ("strings", "string") and first.end in layouts:
            count = value**2
        else:
            continue
        yield stated_at(scene, "bank.layout", "series-parallel", first.start, ends)
        yield stated_at(scene, "battery.count", count, first.start, ends)
        return


def strings_of(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Four in two strings", "two strings of two", "four ..., in two pairs": series-parallel."""
    told = next((item.value for item in stated if item.fact == "battery.count"), 0.0)
    for item in scene.measured:
        word, value = scene.word(item.end), item.quantity.value
        if word not in ("strings", "pairs") or not _small(item) or isinstance(value, str):
            continue
        of = next((other for other in scene.measured if other.start == item.end + 2), None)
        if word == "strings" and scene.word(item.end + 1) == "of" and of is not None and _small(of):
            yield stated_at(scene, "battery.count", value * float(of.quantity.value), item.start, of.end)
        elif not isinstance(told, float) or told <= value or (word == "pairs" and scene.word(item.start - 1) != "in"):
            continue
        yield stated_at(scene, "bank.layout", "series-parallel", item.start, item.end + 1)
        return


def both_ways(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Four batteries, two in series and two of those in parallel": series-parallel, where no choice is put."""
    ways = {item.value: item for item in stated if item.fact == "bank.layout"}
    counts = [item for item in stated if item.fact == "battery.count" and isinstance(item.value, float)]
    most = max(counts, key=lambda item: float(item.value), default=None)  # "two in a row, ...: four golf cart wets"
    if ways.keys() != {"series", "parallel"} or most is None or float(most.value) < STRINGS or float(most.value) % 2:
        return
    first, last = sorted(item.span for item in ways.values())
    between = JOINED_AGAIN.sub(" ", scene.text[first[1] : last[0]])
    if len(counts) > 1:  # "four, two in series then in parallel"
        between = THEN_THESE.sub(" ", between)
    if not APART.search(between):
        text = scene.text[first[0] : last[1]]
        yield Stated("bank.layout", "series-parallel", "", text, (first[0], last[1]), how="default")
        if len(counts) > 1:
            yield most


def _small(item: Item) -> bool:
    value = item.quantity.value
    return not isinstance(value, str) and 2 <= value <= MOST and value == int(value)


def two_by_two(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Four of them, two by two, for 24 volts": strings side by side."""
    found = TWO_BY_TWO.search(scene.text)
    if found and any(item.fact == "battery.count" and item.value == STRINGS for item in stated):
        yield Stated("bank.layout", "series-parallel", "", found[0], found.span(), how="default")


def wired_for(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Two twelves wired for 24": in series, as the volts tell."""
    wired = scene.named("role", "wired_for")
    values = {item.fact: item.value for item in stated}
    count = values.get("battery.count", 0.0)
    volts = [item for item in stated if item.fact == "bank.voltage"]
    nominal = values.get("battery.nominal", SYSTEM if wired else 0.0)
    if any(item.fact == "bank.layout" for item in scene.items):  # told, or asked: "series or parallel?"
        return
    pair = _made_of_two(scene, volts) if "battery.nominal" not in values and "bank.layout" not in values else None
    if pair is not None:
        yield replace(pair, fact="bank.layout", value="series", unit="", how="default")
    if "bank.layout" in values or not isinstance(count, float) or not isinstance(nominal, float) or count < 2:
        return
    if (made := next((item for item in volts if item.value == count * nominal), None)) is not None:
        yield replace(made, fact="bank.layout", value="series", unit="", how="default")
        counts = [item for item in stated if item.fact == "battery.count"]
        if len({item.value for item in counts}) > 1:  # "four batteries, two of them for 24 V": these are spoken of
            yield next(item for item in counts if item.value == count)


def _made_of_two(scene: Scene, volts: list[Stated]) -> Stated | None:
    """The volts of "a 24 V bank of two": of the usual 12 V batteries, in series."""
    for item in volts:
        after = scene.text[item.span[1] : item.span[1] + FAR].lower()
        if item.value == 2 * SYSTEM and MADE_OF.match(after):
            return item
    return None
