"""A charger of fewer volts than the bank it is put on: a 12 V charger on one battery of a 24 V pair."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service.told import one_by_one

VOLTS = r"(?P<{0}>12|24|36|48)[ -]?v(?:olts?)?\b"
CHARGER = regex(
    rf"\b{VOLTS.format('before')}[ -](?:\w+[ -]){{0,2}}?charger\b"
    rf"|\bcharger\b,?(?: (?:is|of|with|at|for|that is|which is|only|just|a))* {VOLTS.format('after')}",
    re.IGNORECASE,
)
SEVERAL = regex(
    r"\bchargers\b|\beach\b|\bevery (?:one|battery)\b|\b(?:two|2|both|isolated|second|another) (?:\w+ ){0,2}?outputs?\b"
    r"|\banother charger\b|\bone for both\b",
    re.IGNORECASE,
)
WORD = regex(r"\bchargers?\b", re.IGNORECASE)
CONVERTS = regex(
    r"\bdc[- ]?(?:to[- ]?)?dc\b|\bconverters?\b|\bb2b\b|\b12 ?v?(?: ?[/-] ?| to |-to-)24\b|\bsolar\b", re.IGNORECASE
)
ON_ONE = regex(
    r"\b(?:on|to|onto|across|over|at|of)\W+(?:just |only |merely )?(?:the )?"
    r"(?:one|1|a single|first|second|lower|upper|bottom|top|half|either)\b(?! charger)",
    re.IGNORECASE,
)


def volts(text: str) -> float | None:
    """The volts that a charger is named by: "a 12 V charger".

    >>> volts("a 12V trickle charger on it"), volts("the charger is 24 V"), volts("a 12 V battery charger")
    (12.0, 24.0, 12.0)
    """
    found = CHARGER.search(text)
    return float(found["before"] or found["after"]) if found else None


def one_only(text: str) -> bool:
    """Whether it is put on one battery of several, not on each of them, nor on one after the other.

    >>> one_only("a 12 V charger on one battery of my 24 V pair"), one_only("two 12 V chargers, one on each battery")
    (True, False)
    """
    return ON_ONE.search(text) is not None and single(text)


def put_on_one(text: str) -> bool:
    """Whether one charger that is named by its volts is put on one battery of several.

    >>> put_on_one("my 24 V charger on one of the two 12 V batteries"), put_on_one("my 24 V charger on the pair")
    (True, False)
    """
    return volts(text) is not None and one_only(text)


def named_once(text: str) -> float | None:
    """The volts of the one charger that is told of, with no converter beside it; None where none is named so."""
    one = len(WORD.findall(text)) == 1 and CONVERTS.search(text) is None and single(text)
    return volts(text) if one else None


def single(text: str) -> bool:
    """Whether one charger is told of, which stays where it is put."""
    return SEVERAL.search(text) is None and not one_by_one.asked(text)
