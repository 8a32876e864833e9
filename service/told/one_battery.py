"""Whether one battery alone is told of: "a 12 V battery", "12v battery, 24v thruster"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

VOLTS = r"(?:6|12)[ -]?v(?:olts?)?\b"
ONE = regex(rf"\b(?:an?|one|single)\b[^.,;:?!]{{0,25}}?\b{VOLTS}", re.IGNORECASE)
BARE = regex(rf"(?<![x×*\d] )(?<![x×*])\b{VOLTS} (?:\w+ ){{0,2}}(?:battery|batt)\b", re.IGNORECASE)
SEVERAL = regex(r"\b(?:batteries|batts|each|per|both|pair|second|another|banks?|series)\b", re.IGNORECASE)


def told(text: str) -> bool:
    """Whether it is one, and no word speaks of more.

    >>> told("a 12 V battery on a 24 V motor"), told("12v battery 24v thruster"), told("12 V battery each side")
    (True, True, False)
    """
    return ONE.search(text) is not None or (BARE.search(text) is not None and SEVERAL.search(text) is None)
