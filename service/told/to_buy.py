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

FIRST = regex(
    r"^\W*(?:(?:hi|hello|hey|what|which|need|want|looking for|best|right|correct|good|new|a|the|12|24|v|volt)\W+)*"
    r"(?:battery|batteries|batt|accu) (?:size )?for\b"
    r"(?![^.?!]{0,200}\b(?:is|stands?|sits?|lives?|was|are|were|has|have|reads?|shows?|far|near)\b)",
    re.IGNORECASE,
)


def named_first(text: str) -> bool:
    """Whether a message begins with the battery that is wanted: "battery for the Pike, 8 m away".

    >>> named_first("12 V battery for a 200 A thruster"), named_first("the battery for the Pike is 100 Ah")
    (True, False)
    >>> named_first("cable from the battery for the Pike")
    False
    """
    return FIRST.search(text) is not None


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
