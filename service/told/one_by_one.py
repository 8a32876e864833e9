"""Batteries of a series that are charged one after the other with a charger for one of them."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

IN_TURN = regex(
    r"\bone (?:at a time|after (?:the other|another)|by one|(?:and )?then the other)\b|\b(?:in turn|separately)\b",
    re.IGNORECASE,
)
CHARGER = regex(r"\bcharg\w+\b", re.IGNORECASE)
UNDONE = regex(r"\bwithout (?:undoing|taking|breaking|removing|unhooking|opening)\b", re.IGNORECASE)
LINK = regex(r"\b(?:with|leaving|keeping)\b[^.?!;]{0,20}\b(?:link|strap|jumper|bridge)\b", re.IGNORECASE)


def asked(text: str) -> bool:
    """Whether they are to be charged one at a time.

    >>> asked("I've only a 12 V charger, can I do one at a time?"), asked("one charger for the pair at a time")
    (True, False)
    """
    return IN_TURN.search(text) is not None and CHARGER.search(text) is not None


def linked(text: str) -> bool:
    """Whether the link between them is to stay on meanwhile.

    >>> linked("one at a time with the link on?"), linked("one at a time, the link off?")
    (True, False)
    >>> linked("one after the other, without undoing the strap")
    True
    """
    if UNDONE.search(text):
        return True
    found = LINK.search(text)
    return found is not None and re.match(r"\W*off\b", text[found.end() :]) is None
