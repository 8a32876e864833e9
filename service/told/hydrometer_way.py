"""Whether it is asked how a hydrometer is used, and no reading of it is told."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

TOOL = r"(?:hydrometer|acid tester|battery tester with (?:a )?float|gravity tester)s?"
DEED = (
    r"(?:check|test|measur|us|read|tak|do|work|go about|operat|handl|sampl|try|tell)\w*"
    r"(?: (?:out|with|a|an|the|my|each|every|all|one|cells?))*"
)
WAY = regex(
    r"\b(?:how|what(?:['’]?s| is) the (?:right |best |proper )?way)\b"
    r"(?! (?:often|full|many|much|good|accurate|old|long))"
    rf"[^.?!;]{{0,30}}?\b{DEED}\b[^.?!;]{{0,40}}?\b{TOOL}\b"
    rf"|\bhow (?:is|are|does|do) (?:a |an |the |my |your )?{TOOL}\b[^.?!;]{{0,20}}\b(?:used|work|read)\w*\b"
    rf"|\b{TOOL}\b[^.?!;]{{0,40}}[,;:.?-]? ?\bhow (?:do|does|should|must|to|is|are)\b"
    r"[^.?!;]{0,20}\b(?:us|work|check|test|read|tak|go about|do (?:it|this|that))\w*\b",
    re.IGNORECASE,
)
READ = regex(r"\b1[.,]?[0-3]\d\d?\b")  # a gravity as it is written


def asked(text: str) -> bool:
    """Whether it is asked how the cells are tested with one.

    >>> asked("how do you use a hydrometer on a battery"), asked("I bought a hydrometer. How does it work?")
    (True, True)
    >>> asked("how full is it by the hydrometer, 1.225?"), asked("how often do I use the hydrometer?")
    (False, False)
    """
    return READ.search(text) is None and WAY.search(text) is not None
