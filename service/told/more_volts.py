"""A 24 V thruster that takes the place of one of 12 V."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

LOAD = r"\b(?:thrusters?|bow unit|stern unit|unit|windlass)\b"
TWENTY_FOUR, TWELVE = r"\b24[ -]?v(?:olts?)?\b", r"\b12[ -]?v(?:olts?)?\b"
NEAR = r"[^.?!;,\d]{0,25}?"  # no other figure between
ITS = regex(rf"{LOAD}{NEAR}{TWENTY_FOUR}|{TWENTY_FOUR}{NEAR}{LOAD}", re.IGNORECASE)
CHANGE = regex(
    rf"\b12 ?v?(?:olts?)? (?:to|into|->|→) (?:a )?{TWENTY_FOUR}{NEAR}{LOAD}|\bold\b{NEAR}{TWELVE}", re.IGNORECASE
)


def changes(text: str) -> bool:
    """Whether a 24 V thruster takes the place of one of 12 V.

    >>> changes("Going 12 to 24 V thruster"), changes("New thruster is 24 V, the old was 12 V")
    (True, True)
    """
    return bool(ITS.search(text) and CHANGE.search(text))
