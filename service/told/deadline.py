"""The hours that there are for a charge: "full in four hours?", "four hours of shore current", "full by tomorrow"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

WORDS = {
    name: float(at)
    for at, name in enumerate(
        ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"), start=1
    )
} | {"an": 1.0, "a": 1.0}
NUMBER = rf"(\d+(?:[.,]\d+)?|{'|'.join(WORDS)})"
HOURS = r" ?(?:h|hrs?|hours?)\b"
SUPPLY = r"(?:shore|mains|current|power|electric\w*|charg\w+|the charger|plug\w*|hook-?up|socket|generator)"
IN = regex(rf"\b(?:in|within|inside|on|during) (?:(?:the|those|my|our|about|a|one) )?{NUMBER}-?{HOURS}", re.IGNORECASE)
FILLS = regex(
    r"\b(?:will|would|can|could|does|is)\b[^.?!;]{0,60}\b(?:fully charge|charge fully|fill|top up|get full|be full)\b",
    re.IGNORECASE,
)
THERE = regex(rf"\b{NUMBER}{HOURS}(?: of| on| with)?(?: \w+)? {SUPPLY}\b", re.IGNORECASE)
HAVE = regex(rf"\b(?:have|has|got|only|just|get) (?:about |only |just )?{NUMBER}{HOURS}", re.IGNORECASE)
NIGHT = regex(r"\b(?:by|till|until|before|for) (?:the |tomorrow )?(?:tomorrow|morning)\b|\bovernight\b", re.IGNORECASE)
FULL = regex(r"\b(?:full|fully|charged|ready|topped|fill\w*|enough|done)\b", re.IGNORECASE)
ON_POWER = r"(?:shore[- ]?power|mains|plugged in|hook(?:ed)?[- ]?up|on charge|on (?:the |its |a )?charger|charger on)"
FOR_DAYS = (
    rf"(?:(?:all|the whole|whole|the entire|every|each|during the|mid|a|for a) ?week|weekdays|"
    rf"(?:(?:[2-9]|{'|'.join(list(WORDS)[1:8])}|several|many) )days|days on end|between (?:the )?weekends"
    r"|mon(?:day)? (?:to|till|until|-) ?fri(?:day)?)"
)
LEFT_ON = regex(
    rf"\b{ON_POWER}\b[^.?!;]{{0,30}}\b{FOR_DAYS}\b|\b{FOR_DAYS}\b[^.?!;]{{0,30}}\b{ON_POWER}\b", re.IGNORECASE
)
OF_A_NIGHT = 10.0  # hours: whatever is done in fewer is done by the morning


def hours(text: str) -> float | None:
    """Hours that are there for a charge to full; None where none are told.

    >>> hours("Will they be full in four hours?"), hours("I have 3 hours of shore power, is it full then?")
    (4.0, 3.0)
    >>> hours("how many hours until it is full?"), hours("full by tomorrow morning?")
    (None, 10.0)
    """
    if not FULL.search(text):
        return None
    if found := IN.search(text) or THERE.search(text) or HAVE.search(text):
        typed = found[1].lower()
        return WORDS.get(typed) or float(typed.replace(",", "."))
    return OF_A_NIGHT if NIGHT.search(text) else None


def fills(text: str) -> bool:
    """Whether it is asked if a charge is done in hours that are told.

    >>> fills("will the alternator fully charge it in a 2 hour trip?"), fills("will 14.4 V fully charge it?")
    (True, False)
    """
    return FILLS.search(text) is not None and IN.search(text) is not None and hours(text) is not None


def for_days(text: str) -> bool:
    """Whether the battery stands on its charger for days together.

    >>> for_days("it's on shore power the whole week"), for_days("I charge it once a week"), for_days("a week away")
    (True, False, False)
    """
    return LEFT_ON.search(text) is not None


def is_a_night(text: str) -> bool:
    """Whether only a night is told, which may be longer than it is taken for."""
    return not (IN.search(text) or THERE.search(text) or HAVE.search(text)) and NIGHT.search(text) is not None
