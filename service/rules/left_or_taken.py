"""Two ways through a winter, a plain charger left on or a charge now and then: "leave it on, or take it home?"."""

from __future__ import annotations

import re

TAKEN = re.compile(  # "carry them home and charge every two months"
    r"\b(?:tak|carry|bring|fetch|lug|stor|unplug|disconnect|charg|top)\w*\b[^.?!;]{0,60}"
    r"\b(?:every|once an?|each|now and then|from time to time|(?:week|month)ly)\b",
    re.IGNORECASE,
)
STAYS = re.compile(r"\b(?:leav|keep|left|kept|stay|let|hav)\w*\b[^.?!;]{0,90}\bcharger\b", re.IGNORECASE)
OR = re.compile(r"\bor\b|\bversus\b|\bvs\b|\binstead of\b|\brather than\b|\bthan\b", re.IGNORECASE)
PLAIN = ("timer", "trickle")  # chargers that must not stay on
BESIDE = "charger-setting"  # the topic that judges the charger


def weighed(text: str) -> bool:
    """Whether a text weighs the one way against the other.

    >>> weighed("leave it on a timer charger, or take it home and charge it every month?")
    True
    >>> weighed("leave it on the charger and look every month?")
    False
    """
    stays, taken = STAYS.search(text), TAKEN.search(text)
    if stays is None or taken is None:
        return False
    first, last = sorted((stays.span(), taken.span()))
    return OR.search(text, first[0], last[1]) is not None
