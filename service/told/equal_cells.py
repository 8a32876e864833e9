"""Cells that read alike, and whether it is asked if that is well, or whether the battery is charged or thrown out."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

ALIKE = regex(
    r"\b(?:all|every|each)\b[^.?!;]{0,20}\bcells?\b|\bcells?\b[^.?!;]{0,25}\b(?:the same|equal|alike|identical)\b"
    r"|\ball (?:six|6|twelve|12)\b|\bcells?\b[^.?!;]{0,12}\ball (?:at )?(?=1)",
    re.IGNORECASE,
)
ASKED = regex(
    r"\b(?:problem|bad|normal|ok(?:ay)?|matters?|worry|wrong|strange|odd|fine|good|alarming)\b[^.?!;]{0,30}"
    r"\b(?:same|equal|alike|none differs?|no difference|even|identical)\b",
    re.IGNORECASE,
)
CHOICE = regex(
    r"\b(?:charge|keep|save)\b[^.?!;,]{0,20}\bor\b[^.?!;]{0,20}"
    r"\b(?:bin|scrap|replace|chuck|throw|toss|skip|dump|tip|new one)\b",
    re.IGNORECASE,
)


def alike(text: str) -> bool:
    """Whether all cells are told to read the same.

    >>> alike("wet, every cell 1.265"), alike("one cell 1.265")
    (True, False)
    """
    return ALIKE.search(text) is not None


def asked(text: str) -> bool:
    """Whether it is asked if it is well that all cells read the same.

    >>> asked("1.220 in all cells. Is it a problem that all are the same?"), asked("1.220 in all cells, is it bad?")
    (True, False)
    """
    return bool(ALIKE.search(text) and ASKED.search(text))


def kept(text: str) -> bool:
    """Whether it is asked if the battery, whose cells read alike, is to be charged or thrown out.

    >>> kept("1.225 all cells. Charge or bin?"), kept("1.225 in one cell. Charge or bin?")
    (True, False)
    """
    return bool(ALIKE.search(text) and CHOICE.search(text))
