"""A 24 V thruster where the boat has 12 V: told as it stands, or as a change from 12 V to 24 V."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

LOAD = r"\b(?:thrusters?|bow unit|stern unit|unit|windlass)\b"
BOAT = r"\b(?:boat|house|aboard|everything|everywhere|system|rest of (?:it|her)|domestics?)\b"
TWENTY_FOUR, TWELVE = r"\b24[ -]?v(?:olts?)?\b", r"\b12[ -]?v(?:olts?)?\b"
NEAR = r"[^.?!;,\d]{0,25}?"  # no other figure between
ITS = regex(rf"{LOAD}{NEAR}{TWENTY_FOUR}|{TWENTY_FOUR}{NEAR}{LOAD}", re.IGNORECASE)
BOATS = regex(rf"{BOAT}{NEAR}{TWELVE}|{TWELVE}{NEAR}{BOAT}", re.IGNORECASE)
CHANGE = regex(
    rf"\b12 ?v?(?:olts?)? (?:to|into|->|→) (?:a )?{TWENTY_FOUR}{NEAR}{LOAD}|\bold\b{NEAR}{TWELVE}", re.IGNORECASE
)


def told(text: str) -> bool:
    """Whether the thruster has 24 V and the boat 12 V.

    >>> told("The thruster is 24 V but everything aboard is 12 V."), told("A 24 V boat with a 12 V thruster")
    (True, False)
    """
    return bool(ITS.search(text) and BOATS.search(text))


def changes(text: str) -> bool:
    """Whether a 24 V thruster takes the place of one of 12 V.

    >>> changes("Going 12 to 24 V thruster"), changes("New thruster is 24 V, the old was 12 V")
    (True, True)
    """
    return bool(ITS.search(text) and CHANGE.search(text))
