"""Of a battery that is still to be bought: the cheapest that will do, and what its safety switch must allow."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

CHEAPEST = regex(r"\b(?:cheapest|least expensive|lowest[- ](?:cost|price)|least costly)\b", re.IGNORECASE)
BMS = regex(
    r"\b(?:what|which|how (?:many|much|big|large))\b[^.?!,;]{0,24}\bbms\b"
    r"|\bbms\b[^.?!,;]{0,16}\b(?:do (?:i|we)|should|must)\b",
    re.IGNORECASE,
)
NO_SIZE = regex(r"\bwhat(?: is|['’]s| are| does)\b[^.?!,;]{0,12}\bbms\b", re.IGNORECASE)


def cheapest(text: str) -> bool:
    """Whether the cheapest one is asked for.

    >>> cheapest("what is the cheapest kind that will do?"), cheapest("a cheap wet battery")
    (True, False)
    """
    return CHEAPEST.search(text) is not None


def its_bms(text: str) -> bool:
    """Whether it is asked what amps the battery's safety switch must allow.

    >>> its_bms("what BMS current do I need for the Pike?"), its_bms("what is a BMS?")
    (True, False)
    """
    return BMS.search(text) is not None and NO_SIZE.search(text) is None
