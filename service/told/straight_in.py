"""A converter that is to run a thruster itself, with no battery between: "could a 12 to 24 V converter run it?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

FED = regex(  # the thruster itself
    r"\b(?:feed|run|power|supply|drive|work)\w*\b (?:it|that|this|one|(?:the|a|my|your|our) [^.?!;]{0,20}?thruster)\b"
    r"[^.?!;]{0,40}\b(?:converter|step-?up|dc[- ]?dc)\b"
    r"|\b(?:converter|step-?up|dc[- ]?dc)\b[^.?!;]{0,24}\b(?:feed|run|power|supply|drive)\w*\b"
    r"[^.?!;]{0,20}\b(?:it|thruster)\b",
    re.IGNORECASE,
)
ITS_BANK = regex(r"\b(?:thruster|bow|24 ?v(?:olts?)?)(?:['’]?s)? (?:bank|batter(?:y|ies))\b", re.IGNORECASE)


def straight_in(text: str) -> bool:
    """Whether the thruster itself is to hang on a converter, and no bank that it fills.

    >>> straight_in("Could a converter run the 24 V thruster?"), straight_in("Can a converter feed the thruster bank?")
    (True, False)
    """
    return FED.search(text) is not None and ITS_BANK.search(text) is None
