"""A further battery beside those told of: "can I add a third of 70 Ah", "and a 100 Ah AGM", "the other one is 12.6"."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex
from grammar.told.words import SENTENCE

COUNT, RATINGS = "battery.count", frozenset({"battery.capacity", "battery.cca"})
ORDINALS = {"third": 3.0, "fourth": 4.0, "fifth": 5.0, "sixth": 6.0}
LAYOUT, HIGHER = "bank.layout", frozenset({36.0, 48.0})
NUMBER = "(?:one|two|three|four|[1-4])"
PAIR = "pair|couple"
MANY = f"{NUMBER}|{PAIR}"
NEAR = 12  # characters to a figure of its own
ADDS = (
    r"(?:(?:^\W*|[.;!?] +)(?:and|plus|what about|how about)"
    r"|\b(?:add(?:ing)?|put(?:ting)?|fit(?:ting)?|join(?:ing)?|connect(?:ing)?|link(?:ing)?|hang(?:ing)?|parallel"
    r"|pick(?:ed)? up|bought|was given|got hold of))\b"
)
A_BATTERY = (  # what may follow where it is a battery: no "third party", no "another fuse"
    r"(?= (?:ones?|batter\w+|batts?|accus?|identical|equal|new|old|agms?|gels?|wet|lithium|lead"
    r"|of (?:\d+|them|those|these|the same)|(?:just |exactly )?(?:like|alike|the same)"
    r"|that'?s?|which|with|in|to|for|beside|next|alongside|then|now|later|too)\b"
    r"| ?\d|\W*$|\W*[?.,;])"
)
FURTHER = regex(
    rf"{ADDS}(?: (?:in|on|up|just|even|maybe|perhaps))?(?: an?| the)? "
    rf"(?:(?P<ordinal>{'|'.join(ORDINALS)})(?! ?,(?! ?(?:brand[- ]new|new|same|identical)\b))|(?P<more>{NUMBER}) more"
    rf"|(?P<another>another)(?: (?P<many>{MANY}))?)\b"
    rf"{A_BATTERY}",
    re.IGNORECASE,
)
FOR_ONE = regex(r"\b(?:for (?:the |my |our )?(?:house|domestic|engine|starter|fridge)|only|alone|by itself)\b", re.I)
LATER = regex(
    r"\b(?:later|next (?:year|season|spring|summer|autumn|winter|month)|(?:one|some) ?day|(?:in|for) (?:the )?future"
    r"|in time|eventually|down the (?:line|road)|afterwards|in due course|in an? (?:year|month|few|couple))\b",
    re.IGNORECASE,
)
OF_A_BATTERY = frozenset(
    ["battery.chemistry", "battery.nominal", "battery.capacity", "battery.cca", "battery.ca", "battery.age"]
)
BESIDE = regex(
    r"\b(?:add|adding|alongside"
    r"|(?:next to|beside|with|to) (?:it|them|that|those|these|this|mine|the (?:first|old|others))"
    r"|in parallel with|in series with|as well as)\b"
)
ANOTHER = regex(r"\b(?:an?|another|other|second|third|spare|old|new)\b[^.?!]{0,200}$")
JOINS = regex(r"\b(?:link|join|connect|couple|wire|parallel|series|together|combine|mix)\w*\b")
OTHER_ONE = regex(r"\bother (?:one|battery|batt|bank)?\b[^.?!]{0,200}$")
FAR = 60  # characters before a figure that its battery is named in


def further(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, with how many there are once a further battery stands beside those told of: of both sorts apart, where
    it has other figures than they have."""
    told = [item for item in (*stated, *scene.said) if item.fact.startswith("battery.")]
    found = FURTHER.search(scene.text) if told else None
    if found is None or FOR_ONE.search(scene.text, found.end()):
        return stated
    before = _before(scene, stated, found)
    if before < 2:
        return stated
    more = _more(found)
    word = next(name for name in ("ordinal", "more", "many", "another") if found[name])
    here = Stated(COUNT, more, "", found[word], found.span(word), of=2, how="grammar")
    stated = [_as_its_own(scene, item, found) for item in stated]
    kept = [item for item in stated if item.fact != COUNT]
    if any(item.of > 1 and item.fact in RATINGS for item in stated):
        return [*kept, *_those_there(scene, stated, before, found), here]
    return [*_beside_a_row(scene, kept, before, more), replace(here, value=before + more, of=1)]


def _more(found: re.Match[str]) -> float:
    """How many stand beside those told of."""
    many = (found["more"] or found["many"] or "one").lower()
    return 1.0 if found["ordinal"] else 2.0 if many in PAIR.split("|") else value(many)


def to_come(text: str, at: int) -> float:
    """How many of those counted at this place are only thought of for later; 0 where they are there.

    >>> to_come("20 A for my two? And could I add a third later?", 35), to_come("my two. Can I add a third?", 20)
    (1.0, 0.0)
    """
    found = next((hit for hit in FURTHER.finditer(text) if hit.start() <= at < hit.end()), None)
    if found is None:
        return 0.0
    ends = SENTENCE.search(text, found.end())
    start = max((cut.end() for cut in SENTENCE.finditer(text, 0, found.start())), default=0)
    return _more(found) if LATER.search(text, start, ends.start() if ends else len(text)) else 0.0


def _beside_a_row(scene: Scene, stated: list[Stated], before: float, more: float) -> list[Stated]:
    """In series and parallel, where as many more stand beside batteries in series: no row of twice the volts."""
    rows = [item for item in stated if item.fact == LAYOUT]
    told = rows or [item for item in scene.said if item.fact == LAYOUT and item.of == 1]
    volts = {item.value for item in (*stated, *scene.said) if item.fact == "bank.voltage"}
    if before != more or not told or told[0].value != "series" or volts & HIGHER:
        return stated
    kept = [item for item in stated if item not in rows]
    return [*kept, replace(told[0], value="series-parallel", of=1)]


def _as_its_own(scene: Scene, item: Stated, found: re.Match[str]) -> Stated:
    """A rating told right after it, as the further one's where those there have another: "two more of 70 Ah"."""
    if item.fact not in RATINGS or item.of > 1 or not 0 <= item.span[0] - found.end() <= NEAR:
        return item
    told = next((old.value for old in scene.said if old.fact == item.fact and old.of == 1), item.value)
    return item if told == item.value else replace(item, of=2)


def _before(scene: Scene, stated: list[Stated], found: re.Match[str]) -> float:
    """How many there are before it: by the ordinal, else as told."""
    if found["ordinal"]:
        return ORDINALS[found["ordinal"].lower()] - 1.0
    here = [item for item in stated if item.fact == COUNT and item.span[1] <= found.start()]
    counts = [item.value for item in (*here, *scene.said) if item.fact == COUNT and item.of == 1]
    return next((value for value in counts if isinstance(value, float)), 1.0)


def _those_there(scene: Scene, stated: list[Stated], before: float, found: re.Match[str]) -> list[Stated]:
    """Their count, where it was told in this message or follows from "a third"."""
    here = [item for item in stated if item.fact == COUNT and item.span[1] <= found.start() and item.value == before]
    if here or any(item.fact == COUNT and item.value == before for item in scene.said):
        return here[:1]
    word = "ordinal" if found["ordinal"] else "another"
    return [Stated(COUNT, before, "", found[word], found.span(word), how="grammar")]


def added(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, those of a further battery as of the second: where the conversation told of others already."""
    told = {item.fact: item.value for item in scene.said if item.of == 1}
    if not any(fact in told for fact in OF_A_BATTERY | {"reading.voltage"}):
        return stated
    text = scene.text.lower()
    adds, joins = bool(BESIDE.search(text)), bool(JOINS.search(text))
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
