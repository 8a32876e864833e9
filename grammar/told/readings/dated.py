"""Volts told with the day they were read, or before and after a use: "12.7 on Friday, 11.9 on Sunday". The later one
counts."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from grammar.reading import Span, Stated
from grammar.text.patterns import regex

VOLTS, STATE = "reading.voltage", "reading.state"
OTHERS = frozenset({"reading.load_voltage", "reading.load_voltage_at_load", "charger.voltage", "battery.nominal"})
READ = regex(
    r"(?<![\d.,])(?P<volts>(?:1[0-4]|2[0-8])[.,]\d{1,2})(?![.,]?\d)(?: ?v(?:olts?)?\b)?(?! ?(?:a|ah|amps?|mm|m)\b)",
    re.I,
)
SHORT = frozenset({"mon", "tue", "tues", "wed", "thu", "thur", "thurs", "fri"})
WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
PART = r"(?: (?:early |late )?(?:morning|afternoon|evening|night|noon))?"
DAY = regex(
    rf"\b(?P<week>mon|tue|wed|thu|fri|sat|sun)(?:s|r|rs|nes|ur)?(?:day)?s?\b{PART}"
    r"|(?<=\bon )(?:the )?(?P<date>\d{1,2})(?:st|nd|rd|th)\b(?! (?:battery|one|cell|bank|of the \w+ (?:batt|cells)))"
    r"|\b(?P<ago>\d+|a|an|one|two|three|four|five|six) (?P<of>day|night|week)s? ago\b"
    rf"|\b(?P<past>yesterday|last (?:night|evening|week|weekend|month)|the (?:day|night|week) before){PART}"
    r"|\b(?:in|since|end of|early|late|mid) (?P<month>(?:jan|febr)uary|march|april|may|june|july|august"
    r"|(?:sept|nov|dec)ember|october|autumn)\b"
    r"|\b(?P<eve>(?:in the|at|the) (?:evening|night|bedtime)|before bed)\b"
    r"|\b(?P<morn>(?:in the|by|the next|next|at) (?:morning|dawn|breakfast))\b"
    r"|\b(?P<now>after (?:the |this )?winter|today|tonight|this (?:morning|afternoon|evening|week|weekend)"
    r"|now(?:adays)?|just now|at the moment)"
    rf"{PART}\b",
    re.IGNORECASE,
)
NUMBERS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
PAST = {"week": 7, "weekend": 4, "month": 30}  # days; a night or a day before is one
NEAR = 22  # characters between volts and their day
PAST_A_MARK = 10  # a comma between them counts for so many
MONTH, A_WEEK = 30, 7
FEW = 4  # batteries that "on the 3rd" may count
LATER = regex(
    r"\b(?:later|afterwards|after (?:using|running|pushing|thrusting|docking|a (?:few|couple)|\d+"
    r"|the (?:thruster|run|trip|first))|then (?:ran|used|pushed)|now (?:reads|shows|it(?:'s| is)))\b",
    re.IGNORECASE,
)
ANOTHER = regex(
    r"\b(?:others?|second|both|each|port|starboard|house|start\w*|one|pair|two|batteries|agm|gel|wet|old|new)\b", re.I
)


@dataclass(frozen=True, slots=True)
class Dated:
    """Volts and the day of them; `now` where that is the day of the message."""

    volts: float
    span: Span
    day: re.Match[str]

    @property
    def now(self) -> bool:
        """Whether it was read when the message was written."""
        return self.day["now"] is not None


def read_on_days(text: str) -> tuple[Dated, ...]:
    """The volts with their days, the earliest first; none where fewer than two have one.

    >>> [item.volts for item in read_on_days("12.7 Fri, 11.9 Sun, nothing on")]
    [12.7, 11.9]
    >>> [item.volts for item in read_on_days("it shows 12.1 V today, on Monday it was 12.7")]
    [12.7, 12.1]
    >>> read_on_days("12.7 on the port battery, 12.1 on the other, read on Sunday")
    ()
    """
    days = _days(text)
    found = list(READ.finditer(text)) if len(days) > 1 else []
    gaps = sorted(
        (gap, volts.start(), day.start(), volts, day)
        for volts in found
        for day in days
        if (gap := _gap(text, volts.span(), day.span())) is not None
    )
    paired: list[Dated] = []
    used: set[int] = set()
    for _, at, where, volts, day in gaps:
        if at not in used and where not in used:
            used |= {at, where}
            paired.append(Dated(float(volts["volts"].replace(",", ".")), volts.span(), day))
    if len(paired) < 2:
        return ()
    return tuple(sorted(paired, key=lambda item: (item.now, item.span)))


def _days(text: str) -> list[re.Match[str]]:
    """The days that are named; "sat" and "sun" are days beside "fri" or in capitals, "1st" and "2nd" batteries."""
    found = list(DAY.finditer(text))
    sure = any(day[0].lower() in SHORT for day in found)
    dated = any(int(day["date"]) > FEW for day in found if day["date"])
    named = [day for day in found if sure or day[0] not in ("sat", "sun")]
    return [day for day in named if dated or not day["date"]]


def days_between(first: Dated, last: Dated) -> int | None:
    """The days from one reading to another; None where the words do not tell.

    >>> days_between(*read_on_days("12.7 Fri, 11.9 Sun")), days_between(*read_on_days("12.7 yesterday, 12.6 today"))
    (2, 1)
    """
    one, other = first.day, last.day
    if one["week"] and other["week"]:
        return (WEEK.index(other["week"].lower()) - WEEK.index(one["week"].lower())) % A_WEEK or A_WEEK
    if one["date"] and other["date"]:
        return (int(other["date"]) - int(one["date"])) % MONTH
    if one["eve"] and other["morn"]:
        return 1
    if other["now"] and one["ago"]:
        many = one["ago"].lower()
        return (NUMBERS.get(many) or int(many)) * (A_WEEK if one["of"].lower() == "week" else 1)
    if other["now"] and one["past"]:
        return PAST.get(one["past"].lower().split()[-1], 1)
    return None


def last_counts(text: str, stated: Sequence[Stated]) -> list[Stated]:
    """The facts of a message with the volts of the last day as those at rest, where they are told of several days.

    Those of the day before stand as the second where the days between are told too.
    """
    read = read_on_days(text)
    spans = [item.span for item in read]
    inside = [item for item in stated if any(_meet(item.span, span) for span in spans)]
    if not read or any(item.fact in OTHERS for item in inside) or not any(item.fact == VOLTS for item in inside):
        return list(stated)
    if any(item.fact == "storage.time" for item in stated) and len(read) == 2:
        return list(stated)
    last = read[-1]
    kept = [item for item in stated if item not in inside]
    if any(item.fact == VOLTS and item.of == 1 for item in kept):
        return list(stated)
    typed = text[slice(*last.span)]
    return [*kept, Stated(VOLTS, last.volts, "volt", typed, last.span, how="range")]


def after_use(text: str, stated: Sequence[Stated]) -> list[Stated]:
    """The facts with the later of two volts of one battery that was used in between: "12.9, later it shows 12.4"."""
    read = sorted((item for item in stated if item.fact == VOLTS), key=lambda item: item.span)
    if len(read) != 2:
        return list(stated)
    first, then = read
    between = text[first.span[1] : then.span[0]]
    if not LATER.search(between) or ANOTHER.search(between) or ANOTHER.match(text[then.span[1] :].lstrip(" vV")):
        return list(stated)
    return [replace(item, of=1) if item is then else item for item in stated if item is not first]


def _gap(text: str, volts: Span, day: Span) -> int | None:
    """The characters between volts and a day, where no sentence ends between them."""
    start, end = (volts[1], day[0]) if volts[1] <= day[0] else (day[1], volts[0])
    between = text[start:end]
    if end < start or len(between) > NEAR or re.search(r"[?!;]|\d|\.\s", between):
        return None
    return len(between) + (PAST_A_MARK if "," in between or "." in between else 0)


def _meet(one: Span, other: Span) -> bool:
    return one[0] < other[1] and other[0] < one[1]
