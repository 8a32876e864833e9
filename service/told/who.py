"""Who is to do a job on a battery, where that is asked: acid and gas are for one grown-up, not for children."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

JOB = r"equali[sz]\w*|top\w*\sup|tops?\b|fills?\b|waters?\b|cleans?\b|checks?\b"
CHILD = (
    r"\b(?:kids?|child(?:ren)?|scouts|cadets|pupils|teenagers?|\d{1,2}[- ]year[- ]olds?|grandchildren"
    r"|(?:grand)?(?:son|daughter)s?)\b"
)
WHO = regex(
    rf"(?:^|[.,;:?!]\s*|\b(?:and|also|so|but)\s)who\b(?!\s(?:sells?|makes?|knows?))[^.?!;]{{0,30}}?\b(?:{JOB})",
    re.IGNORECASE,
)
MAY_THEY = regex(
    rf"\b(?:can|may|could|should|let|is)\b[^.?!;]{{0,20}}?{CHILD}[^.?!;]{{0,40}}?\b(?:{JOB}|water|acid)"
    rf"|\b(?:{JOB})[^.?!;]{{0,30}}?{CHILD} (?:can|may|could|should|are allowed)\b",
    re.IGNORECASE,
)


def is_asked(text: str) -> bool:
    """Whether it is asked who does it, or whether children may.

    >>> is_asked("who equalises and when"), is_asked("who sells distilled water")
    (True, False)
    """
    return bool(WHO.search(text) or MAY_THEY.search(text))


def children_may(text: str) -> bool:
    """Whether it is asked if children may do it.

    >>> children_may("can the kids top up the batteries"), children_may("who tops up the batteries")
    (True, False)
    """
    return MAY_THEY.search(text) is not None


def equalises(text: str) -> bool:
    """Whether it is asked who equalises."""
    found = WHO.search(text)
    return found is not None and "equali" in found[0].lower()
