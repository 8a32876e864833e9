"""Wet cells that bubble a little while they charge, as they should."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

LITTLE = regex(
    r"\b(?:slight|slightly|faint|faintly|gentle|gently|soft|softly|light|lightly|quiet|quietly"
    r"|a (?:little|bit|few))\b"
    r"[^.?!;]{0,24}\b(?:bubbl\w*|gass?(?:es|ing)?|fizz\w*|vent\w*)\b"
    r"|\b(?:bubbl\w*|gass?(?:es|ing)?|fizz\w*|vents?|venting)(?: \w+)? (?:slightly|faintly|gently|softly"
    r"|lightly|quietly|a (?:little|bit))\b",
    re.IGNORECASE,
)
ON_CHARGE = regex(r"\bcharg(?:e|ed|er|ing)\b", re.IGNORECASE)
MORE = regex(
    r"\b(?:hiss\w*|pop\w*|spit\w*|boil\w*|violent\w*|loud\w*|smell\w*|stink\w*|eggs?|hot|warm|swollen|bulg\w*"
    r"|smok\w*|steam\w*|leak\w*|acid|gets? (?:more|worse|louder)|even with|with the charger off"
    r"|not charging|days|weeks|sealed)\b",
    re.IGNORECASE,
)


def told(text: str) -> bool:
    """Whether it is told of a charge, is little, and nothing else is told of.

    >>> told("the cells fizz a little on charge"), told("it fizzes a little and smells on charge")
    (True, False)
    """
    return LITTLE.search(text) is not None and ON_CHARGE.search(text) is not None and MORE.search(text) is None
