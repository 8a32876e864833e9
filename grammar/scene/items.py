"""The pieces of a message in one row: quantities, names, words and marks, each with its place."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from grammar.lexicon.vocabulary import Found
from grammar.reading import Part, Quantity
from grammar.text.patterns import regex
from grammar.text.tokens import Token, ends

JOINERS = frozenset({"or", "not", "vs", "instead", "/", "than"})
MOST_VOLTS = 60.0
WEIGHED = JOINERS | {"a", "an", "of", "rather"}
UNSHARED = frozenset({"NUM", "COUNT", "PERCENT", "TIME"})
IS = frozenset({"is", "are", "was", ":", "=", "of"})
NAMED_UNITS = {"amps": ("AMP", "ampere"), "amperage": ("AMP", "ampere"), "wattage": ("WATT", "watt")}
TIMES = {"days": "day", "hours": "hour", "weeks": "week"}
DESCRIBING = frozenset(
    {"cloudy", "grey", "gray", "rainy", "wet", "dull", "dark", "overcast", "foggy", "sunless", "sunny", "long", "whole"}
    | {"full", "solid", "good", "clear", "bright", "miserable", "straight", "cold", "hot", "quiet", "more"}
)
ASKING = frozenset({"many", "much", "what", "which"})
HEADED_WITHIN = 40  # characters
MEASURE = regex(
    r"\b(?P<unit>feet|foot|ft|met(?:re|er)s)\b(?: of (?:the )?(?:cable|wire|run|lead|copper))?"
    r"(?: of cable)?[ ,:;=-]+(?:about |only )?$",
    re.IGNORECASE,
)
MEASURES = regex(r"feet|foot|ft|met(?:re|er)s|amp", re.IGNORECASE)  # words without which neither heads a number
AS_A_RUN = regex(
    r"^ ?(?:each way|one[- ]way|1 way|a way|there and back|round trip|both ways|return|in total|total)\b", re.I
)
AMPS_AS_ON_A_FORM = regex(r"(?:^|[.;!?\n] ?)amp(?:s|eres?)?[,:=] ?$", re.IGNORECASE)
FORM_ENDS = regex(r"^ ?(?:[.;!?]|$)")
SMALLEST = 5.0
FIRST = frozenset({"alike", "=charger.kind"})  # of two names for the same words: a "dc dc" is a charger's kind
NAMES = frozenset({"thing", "alike", "model", "count"})
CHARGERS = {"dc-dc": "dcdc", "alternator": "alternator", "solar": "panel"}


@dataclass(slots=True)
class Item:
    """One piece of the row. `kind`: quantity, times, series, noise, count, thing, value, model, alike, word or mark."""

    kind: str
    start: int  # in words of the message; end not included
    end: int
    name: str = ""  # a thing's concept, a value, a model's name, a word
    fact: str = ""  # of a value
    head: str = ""  # what a quantity beside it may belong to
    part: Part | None = None
    dim: str = ""
    at: int = 0  # place in the row
    clause: int = 0

    @property
    def quantity(self) -> Quantity:
        """The (first) quantity of a part. Only for items that hold one."""
        assert self.part is not None
        return self.part.quantities[0]


def items_of(text: str, tokens: Sequence[Token], found: Sequence[Found], parts: Sequence[Part]) -> list[Item]:
    """The row of a message from its words, the phrases found in them and the parts of the quantities grammar."""
    taken = _quantity_items(tokens, parts)
    names = _name_items(found, taken, tokens, text)
    items: list[Item] = []
    at = 0
    while at < len(tokens):
        item = taken.get(at) or names.get(at) or _plain(tokens, at, text)
        item.at = len(items)
        items.append(item)
        at = item.end
    _name_units(items)
    _measure_first(items, text)
    _described_times(items)
    _share_units(items)
    return items


def _name_units(items: list[Item]) -> None:
    """A bare number takes the unit that is named right before it: "amps 240", "my wattage is 2200"."""
    for item in items:
        if item.dim != "NUM" or item.part is None or not item.at:
            continue
        before = items[item.at - 1]
        if before.name in IS and item.at > 1:
            before = items[item.at - 2]
        named = NAMED_UNITS.get(before.name) if before.kind == "word" else None
        typed = item.quantity.value
        if named is None or isinstance(typed, str) or typed < SMALLEST or len(item.part.quantities) != 1:
            continue
        if before.at and items[before.at - 1].name in ASKING:
            continue
        dim, unit = named
        item.part, item.dim = replace(item.part, dim=dim, quantities=(replace(item.quantity, unit=unit),)), dim


def _measure_first(items: list[Item], text: str) -> None:
    """A bare number takes the unit that heads it as on a form: "Feet of cable, 13 each way. Amps, 90."."""
    if MEASURES.search(text) is None:  # a long text may hold thousands of numbers
        return
    for item in items:
        if item.dim not in ("NUM", "COUNT") or item.part is None or len(item.part.quantities) != 1:
            continue
        start, end = item.part.span
        ahead, after = text[max(0, start - HEADED_WITHIN) : start], text[end : end + HEADED_WITHIN]
        if (found := MEASURE.search(ahead)) and AS_A_RUN.match(after):
            dim, unit = "LENGTH", "foot" if found["unit"].lower().startswith("f") else "meter"
        elif AMPS_AS_ON_A_FORM.search(ahead) and FORM_ENDS.match(after):
            dim, unit = "AMP", "ampere"
        else:
            continue
        item.part = replace(item.part, dim=dim, quantities=(replace(item.quantity, unit=unit, kind=""),))
        item.dim = dim


def _described_times(items: list[Item]) -> None:
    """A bare number takes the unit behind the word that describes it: "three cloudy days", "six full hours"."""
    for item, described, unit in zip(items, items[1:], items[2:], strict=False):
        if item.dim != "NUM" or item.part is None or described.name not in DESCRIBING or unit.name not in TIMES:
            continue
        quantity = replace(item.quantity, unit=TIMES[unit.name])
        item.part, item.dim = replace(item.part, dim="TIME", quantities=(quantity,)), "TIME"


def _quantity_items(tokens: Sequence[Token], parts: Sequence[Part]) -> dict[int, Item]:
    items: dict[int, Item] = {}
    at = 0
    for part in parts:
        if part.kind in ("word", "mark"):
            continue
        while at < len(tokens) and tokens[at].end <= part.span[0]:
            at += 1
        end = at
        while end < len(tokens) and tokens[end].start < part.span[1]:
            end += 1
        if end > at:
            dim = part.dim if part.quantities else ""
            items[at] = Item(part.kind, at, end, part.text.lower(), part=part, dim=dim)
            at = end
    return items


def _name_items(found: Sequence[Found], taken: dict[int, Item], tokens: Sequence[Token], text: str) -> dict[int, Item]:
    """The names, longest first, one per word; a word of a quantity is no name."""
    busy = {place for item in taken.values() for place in range(item.start, item.end)}
    named = [item for item in found if item.kind in NAMES or item.kind.startswith("=")]
    things = {(item.start, item.end): item.concept for item in named if item.kind == "thing"}
    items: dict[int, Item] = {}
    for item in sorted(named, key=lambda item: (item.start, -item.end, item.kind not in FIRST)):
        places = range(item.start, item.end)
        if busy.isdisjoint(places):
            busy.update(places)
            counted = item.kind == "count"
            items[item.start] = _counted(item, tokens, text) if counted else _named(item, things)
    return items


def _named(found: Found, things: dict[tuple[int, int], str]) -> Item:
    fact = found.kind[1:] if found.kind.startswith("=") else ""
    places = range(found.start, found.end)
    inside = [things[start, end + 1] for end in places for start in places if (start, end + 1) in things]
    kind = "value" if fact else found.kind
    return Item(kind, found.start, found.end, found.concept, fact, _head(found, fact, inside))


def _head(found: Found, fact: str, inside: Sequence[str]) -> str:
    """The thing that a name is or speaks of: "starter battery" is a battery, a model is a load."""
    if found.kind in ("thing", "model"):
        return found.concept if found.kind == "thing" else "load"
    if fact == "charger.kind":
        return CHARGERS.get(found.concept, "charger")
    if fact == "load.kind":
        return "engine" if found.concept == "engine" else "load"
    return inside[-1] if fact and inside else ""


def _counted(found: Found, tokens: Sequence[Token], text: str) -> Item:
    """A word that counts: "both", "a pair of"."""
    span = tokens[found.start].start, tokens[found.end - 1].end
    typed = text[slice(*span)]
    quantity = Quantity(float(found.concept), "", "count", typed, span)
    return Item(
        "count",
        found.start,
        found.end,
        typed.lower(),
        part=Part("count", typed, span, "COUNT", (quantity,)),
        dim="COUNT",
    )


def _plain(tokens: Sequence[Token], at: int, text: str) -> Item:
    word = tokens[at].word
    if word[:1].isalnum():
        return Item("word", at, at + 1, word)
    return Item("mark", at, at + 1, "end" if ends(tokens, at, text) else word)


def _share_units(items: list[Item]) -> None:
    """A bare number takes the unit of the one it is weighed against: "350 or 400 A", "24 not 12 volts"."""
    for item in items:
        if item.dim != "NUM" or item.part is None or len(item.part.quantities) != 1:
            continue
        for place in (item.at + 2, item.at + 3, item.at - 2):
            other = items[place] if 0 <= place < len(items) else None
            between = items[min(item.at, place) + 1 : max(item.at, place)]
            if other is None or not other.dim or other.dim in UNSHARED or other.part is None:
                continue
            if other.dim == "VOLT" and float(item.quantity.value) >= MOST_VOLTS:  # "12 V/100"
                continue
            names = {word.name for word in between}
            if names & JOINERS and names <= WEIGHED:
                unit, kind = other.quantity.unit, other.quantity.kind
                quantity = replace(item.quantity, unit=unit, kind=kind)
                if isinstance(other.quantity.value, str):
                    quantity = replace(quantity, value=f"{float(item.quantity.value):g}")
                item.part, item.dim = replace(item.part, dim=other.dim, quantities=(quantity,)), other.dim
                break
