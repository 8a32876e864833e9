"""Days of the year in a message: "on 1 October", "from November to March". No year is known, none is said."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from grammar.text.patterns import regex

MONTHS = (
    ("january", 31),
    ("february", 28),
    ("march", 31),
    ("april", 30),
    ("may", 31),
    ("june", 30),
    ("july", 31),
    ("august", 31),
    ("september", 30),
    ("october", 31),
    ("november", 30),
    ("december", 31),
)
YEAR = 365
AHEAD = 80  # characters before a date that may tell what happens on it
NAMES = "|".join(rf"{name[:3]}(?:{name[3:]})?" if name != "may" else "may" for name, _ in MONTHS) + "|sept"
BEFORE = r"(?:from|in|to|until|till|by|since|on|between|end of|start of|beginning of|early|late|mid|-|–)"
EACH = r"(?:each|every|this|next) (?!may\b)"  # "into the barn each October", not "each may"
DAY = r"(?P<{}>\d{{1,2}})(?:st|nd|rd|th)?"
PATTERN = regex(
    rf"(?:(?<![\w.])|(?<=[a-z])(?=[-–]))"
    rf"(?:{DAY.format('first')} (?:of )?(?P<after>{NAMES})\b|(?:{BEFORE} ?|{EACH})(?P<bare>{NAMES})\b"
    rf"(?: {DAY.format('last')}(?![\w%.]))?"
    rf"|(?P<opens>{NAMES})(?=(?: ?[-–] ?| (?:to|until|till|through) )(?:{NAMES})\b))",
    re.IGNORECASE,
)
ONE_TO_OTHER = regex(rf"(?<![\w.])(?:{NAMES}) ?[-–] ?$", re.IGNORECASE)  # "Nov-Apr": both months are meant whole
TO = regex(r"\W*(?:to|till|until|til|through)?\W*", re.IGNORECASE)
LATE, MID = regex(r"\b(?:end of|late)\s*$", re.IGNORECASE), regex(r"\bmid\W*$", re.IGNORECASE)
UNTIL = regex(r"\b(?:until|till|by|before|to)(?: (?:the )?(?:early|late|mid|start of|end of|beginning of))?\s*$", re.I)
SHED = r"(?:shed|barn|garage|hall|cellar|store|storage|boathouse|hangar)"
INTO = regex(
    r"\b(?:goes?|going|went|put|taken|moved?|rolled) (?:back )?(?:in|into|inside|under)\b"
    rf"|\bin (?:the |a |his |her |my |our |their )?(?:\w+ )?{SHED}\b",
    re.IGNORECASE,
)
OUT = regex(  # the end of a stay that began with going in; a boat that comes out of the water begins one
    r"\b(?:(?:com(?:es?|ing)|came|is|are|goes?|taken|brought|rolled|wheeled) out|out again"
    rf"|out of (?:the |his |her |their |its )?{SHED}(?: again)?)\b"
    r"(?! of (?:the )?water)[^.?!;]{0,30}$",
    re.IGNORECASE,
)
AFLOAT = regex(  # what ends a lay-up by itself
    r"\b(?:back in(?:to)?(?: the water)?|(?:re)?launch(?:ed|es|ing)?|splash(?:es|ed)?|afloat(?: again)?|back home"
    r"|back on the mooring)\b[^.?!;]{0,20}$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class YearDay:
    """A day of the year; `end` where it is a time to be reached ("until April")."""

    month: int
    day: int
    end: bool = False

    @property
    def number(self) -> int:
        """Days since 1 January, of a year without 29 February."""
        return sum(days for _, days in MONTHS[: self.month - 1]) + self.day - 1

    @property
    def words(self) -> str:
        """ "1 October"."""
        return f"{self.day} {MONTHS[self.month - 1][0].capitalize()}"


def told(text: str) -> list[YearDay]:
    """The days that a message names, in its order; a month alone is its first day."""
    return list(_found(text))


def _found(text: str) -> Iterator[YearDay]:
    for match in PATTERN.finditer(text):
        name = (match["after"] or match["bare"] or match["opens"]).lower()
        month = next(number for number, (full, _) in enumerate(MONTHS, 1) if full.startswith(name[:3]))
        length = MONTHS[month - 1][1]
        before = text[max(0, match.start("bare") - AHEAD) : match.start("bare")] if match["bare"] else ""
        late = LATE.search(before) or ONE_TO_OTHER.search(before)
        day = int(match["first"] or match["last"] or (length if late else 15 if MID.search(before) else 1))
        if 1 <= day <= length:
            at = match.start("bare") if match["bare"] else match.start()
            yield YearDay(month, day, _is_end(text, at))


def _is_end(text: str, at: int) -> bool:
    """Whether the date there is a time to be reached, or the day on which a lay-up ends."""
    before = text[max(0, at - AHEAD) : at]
    out = OUT.search(before) is not None and INTO.search(text) is not None
    return out or UNTIL.search(before) is not None or AFLOAT.search(before) is not None


def spell(text: str) -> tuple[YearDay | None, YearDay | None]:
    """The days on which a lay-up begins and ends, as far as the message names them, in whatever order."""
    days = told(text)
    if len(days) > 1 and days[0].end and not days[1].end:  # "out again in April, into the shed in October"
        days[:2] = days[1], days[0]
    first, last = (*days[:2], None, None)[:2]
    return (None, first) if first is not None and first.end else (first, last)


def stretch(text: str) -> tuple[int, tuple[int, int]] | None:
    """The days from one date to another, "1 Nov to 15 Apr", and where they stand; None where no such is told."""
    found = [match for match in PATTERN.finditer(text) if match["first"] or match["last"]]
    days = told(text)
    for one, other in pairwise(found):
        start, end = one.start("first") if one["first"] else one.start("bare"), other.end()
        gap = text[one.end() : other.start("first") if other["first"] else other.start("bare")]
        if TO.fullmatch(gap) and gap.strip() and len(days) == len(found) == 2:
            return between(*days), (start, end)
    return None


def later(first: YearDay, days: float) -> YearDay:
    """The day so many whole days later."""
    left = (first.number + int(days)) % YEAR
    for month, (_, length) in enumerate(MONTHS, 1):
        if left < length:
            return YearDay(month, left + 1)
        left -= length
    raise AssertionError("a year has no such day")


def between(first: YearDay, last: YearDay) -> int:
    """Days from the one to the other, over the turn of the year where need be."""
    return (last.number - first.number) % YEAR
