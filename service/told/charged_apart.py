"""Whether a battery is to be charged by itself: "do I need to charge it separately from the house bank?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

APART = r"(?:separate(?:ly)?|apart|by itself|on its own|independently)"
ASKED = regex(
    rf"\b(?:do|does|must|should|can|may|have to|need to)\b[^.?!;]{{0,24}}\b(?:re)?charged?\b[^.?!;]{{0,20}}\b{APART}\b"
    rf"|\b(?:need|want)s? (?:a |its own |an )?{APART}?\W?(?:its own )?charg(?:er|ing)\b[^.?!;]{{0,12}}\b{APART}\b",
    re.IGNORECASE,
)
SIZED = regex(
    r"\bhow (?:big|large|many ah|much)\b|\b(?:what|which) (?:size|battery|capacity)\b|\bcca\b"
    r"|\b(?:do|should) i (?:buy|get|fit)\b",
    re.IGNORECASE,
)


def asked(text: str) -> bool:
    """Whether it is asked if a battery wants a charge of its own.

    >>> asked("do I need to charge it separately from the house bank?"), asked("can I charge both together?")
    (True, False)
    """
    return ASKED.search(text) is not None


def sized(text: str) -> bool:
    """Whether it is asked as well how big a battery must be."""
    return SIZED.search(text) is not None
