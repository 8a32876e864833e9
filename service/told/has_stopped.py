"""What ran on and has stopped: "the relay stuck once in June, turned the key off and it stopped, not since"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

TIMES = (
    r"(?:week|month|year|summer|season|winter|spring|autumn|\w+day|days?|january|february|march|april|may|june|july"
    r"|august|september|october|november|december)s?"
)
STOPPED = regex(
    r"(?<!at )\b(?:once|one time|twice)\b(?! (?:it|the|you|we|i)\b)"
    r"|\b(?:not|never|hasn'?t|nothing|ok|okay|fine)\b[^.?!;]{0,24}\bsince\b"
    rf"|\b(?:last|back in|a few|some)\b[^.?!;]{{0,12}}\b{TIMES}\b|\b(?:days?|weeks?|months?|years?) ago\b|\byesterday\b"
    r"|\b(?:then|and|until|till|before) (?:it|she|the thruster|everything) (?:\w+ )?"
    r"(?:stopped|let go|cut out|released)\b"
    r"|\bwhen we were\b|\bfine (?:now|again|ever since)\b",
    re.IGNORECASE,
)
GOES_ON = regex(r"\b(?:still|right now|keeps? (?:on|going|running|pushing)|won'?t stop|help)\b|!!", re.IGNORECASE)


def told(text: str) -> bool:
    """Whether it is told to be over, and nothing tells that it goes on.

    >>> told("stuck on once, turned the key and it stopped"), told("it is stuck on, help at once")
    (True, False)
    """
    return GOES_ON.search(text) is None and STOPPED.search(text) is not None
