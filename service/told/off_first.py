"""Which cable comes off a battery first: "the negative or the positive first?", "do I undo plus before minus?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

POLE = r"(?:neg(?:ative)?|minus|black|pos(?:itive)?|plus|red)"
ASKED = regex(
    rf"\b{POLE}\b[^.?!;]{{0,16}}\b(?:or|before|and|then)\b[^.?!;]{{0,12}}\b{POLE}\b[^.?!;]{{0,40}}\b(?:first|last)\b"
    rf"|\b{POLE}\b[^.?!;]{{0,24}}\boff (?:before|after) (?:the |my )?{POLE}\b"
    rf"|\b{POLE} (?:\w+ )?(?:first|last),? or (?:the )?{POLE}\b"
    rf"|\b(?:disconnect|remove|undo|unhook|take off|unbolt|connect)\w*\b[^.?!;]{{0,24}}\b{POLE}\b[^.?!;]{{0,16}}"
    rf"\b(?:before|first)\b",
    re.IGNORECASE,
)
JUMPED = regex(r"\bjump\b|\bjump(?:er|ing)?[- ]?(?:leads?|cables?|start)|\bboost\b", re.IGNORECASE)
LAID_UP = regex(
    r"\blay(?:ing)?[- ]?(?:it )?up\b|\blaid[- ]up\b|\bfor (?:the )?winter\b", re.IGNORECASE
)  # asked of a lay-up
OFF = regex(r"\b(?:disconnect\w*|off|remov\w*|undo\w*|unhook\w*|unbolt\w*|lay[- ]?up|winter)\b", re.IGNORECASE)
ON = regex(r"\b(?:connect\w*|(?:go|goes|put) (?:back )?on|fit\w*|hook\w*)\b", re.IGNORECASE)


def asked(text: str) -> bool:
    """Whether it is asked which of the two cables of a battery comes first.

    >>> asked("do I take off the minus or the plus first?"), asked("plus first or minus?")
    (True, True)
    >>> asked("does the black one come off before the red")
    True
    >>> asked("first the fuse on the positive"), asked("jump leads: red or black first?")
    (False, False)
    """
    return ASKED.search(text) is not None and not JUMPED.search(text) and not LAID_UP.search(text)


def goes_on(text: str) -> bool:
    """Whether the cables go on, not off.

    >>> goes_on("do I connect plus or minus first"), goes_on("do I disconnect plus or minus first")
    (True, False)
    """
    return ON.search(text) is not None and OFF.search(text) is None
