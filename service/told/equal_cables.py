"""Whether the cables between batteries that stand side by side must be alike."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

ALL_ALIKE = (
    "Yes, of one length and size, with plus taken at one end of the bank and minus at the other, so that each battery "
    "gives its share."
)
WHY = "So the current finds an equally long way through each battery"
CABLES = r"(?:cables?|leads?|links?|wires?|jumpers?)"
ALIKE = r"(?:same|equal\w*|identical\w*)\b(?:[^.?!;]{0,16}\b(?:lengths?|long|thick\w*|sizes?|gauges?))"
ASKED = regex(
    rf"\b(?:should|must|do|does|need|have to|are|is it|has)\b[^.?!;]{{0,60}}\b{CABLES}\b[^.?!;]{{0,60}}\b{ALIKE}\b"
    rf"|\b{CABLES}\b[^.?!;]{{0,40}}\b(?:should|must|need|have to)\b[^.?!;]{{0,20}}\b{ALIKE}\b",
    re.IGNORECASE,
)
MINUS = regex(
    r"\b(?:negative|minus|neg|return|ground|earth|black)\b[^.?!;]{0,12}\b(?:cable|lead|wire)\b[^.?!;]{0,40}"
    r"\b(?:same|as thick|thinner|smaller|equal)\b",
    re.IGNORECASE,
)
MINUS_TOO = "Yes, of the same size: the minus cable carries the same current as the plus."
ABREAST = regex(r"\b(?:in parallel|parallel(?:ed)?|side by side|abreast)\b", re.IGNORECASE)


def asked(text: str) -> bool:
    """Whether it is asked if the cables of batteries in parallel must be alike.

    >>> asked("Two AGMs in parallel: must the cables be equally long?"), asked("must both be the same length?")
    (True, False)
    """
    return ASKED.search(text) is not None and ABREAST.search(text) is not None


def of_the_minus(text: str) -> bool:
    """Whether it is asked if the minus cable must be as thick as the plus.

    >>> of_the_minus("does the negative cable need to be the same size"), of_the_minus("the same cable for minus")
    (True, False)
    """
    return MINUS.search(text) is not None
