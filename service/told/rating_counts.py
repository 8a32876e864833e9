"""Which of the ratings on a label counts: "1000 CA, 800 CCA, RC 180: which number do I go by?"."""

from __future__ import annotations

import re
from collections.abc import Container

from grammar.text.patterns import regex

RATINGS = frozenset({"battery.cca", "battery.ca", "battery.reserve", "battery.capacity"})
CCA_OR_AH = regex(
    r"\bcca\b[^.?!;]{0,24}\b(?:than|or|vs|versus|against)\b[^.?!;]{0,24}\b(?:ah|amp[ -]?hours?)\b"
    r"|\b(?:ah|amp[ -]?hours?)\b[^.?!;]{0,24}\b(?:than|or|vs|versus|against)\b[^.?!;]{0,24}\bcca\b",
    re.IGNORECASE,
)
COUNTS = regex(
    r"\bwh?ich (?:number|figure|rating|value|one|of (?:them|these|those|the \w+))\b[^.?!;]{0,24}"
    r"\b(?:counts?|matters?|important|decides?|look (?:at|for)|go by|trust)\b",
    re.IGNORECASE,
)


def asked(text: str, told: Container[str]) -> bool:
    """Whether it is asked which of two ratings that are told counts.

    >>> asked("1000 CA 800 CCA, which number counts?", {"battery.cca", "battery.ca"})
    True
    >>> asked("800 CCA, which one is better?", {"battery.cca"})
    False
    """
    if "battery.cca" in told and "battery.capacity" in told and CCA_OR_AH.search(text):
        return True
    return sum(fact in told for fact in RATINGS) > 1 and "battery.cca" in told and COUNTS.search(text) is not None
