"""What a battery is held by, where that is asked about: something elastic, or a strap that does not give."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

ELASTIC = regex(
    r"\b(?:bung(?:ee|ie|y|i)s?|shock[ -]?cords?|elastics?|elasticated|stretchy|rubber (?:straps?|bands?|cords?))\b",
    re.IGNORECASE,
)
HOW = regex(r"\b(?:how|which|what|where)\b", re.IGNORECASE)
STRAP = regex(
    r"\b(?:ratchet|webbing|cam|polyester|nylon|lashing|luggage|buckle)(?:[ -](?:straps?|belts?|buckles?|webbing))+\b",
    re.IGNORECASE,
)


def elastic(text: str) -> bool:
    """Whether something that stretches holds it, or is to.

    >>> elastic("a bungee cord over the box, ok?"), elastic("a webbing strap over the box, ok?")
    (True, False)
    """
    return bool(ELASTIC.search(text))


def strapped(text: str) -> bool:
    """Whether a strap of webbing holds it, or is to."""
    return bool(STRAP.search(text)) and not elastic(text)


def is_asked(text: str) -> bool:
    """Whether it is asked if it will do, and not how it is done.

    >>> is_asked("Do ratchet straps do?"), is_asked("How do ratchet straps go on?")
    (True, False)
    """
    return "?" in text and not HOW.search(text)
