"""Whether it freezes where a battery stands: by the degrees that are told, else by words."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex

TEMPERATURE = "ambient.temperature"
FREEZES = regex(
    r"\bfrost(?:y|s)?\b|\b(?:below|under|sub)[ -]?(?:zero|freezing)\b|\bfreez(?:es|ing)\b|\b(?:hard|deep) freeze\b",
    re.IGNORECASE,
)
FREE = regex(r"\b(?:frost[ -]?free|no frost|never freezes?|doesn['’]?t freeze|above freezing|heated)\b", re.IGNORECASE)


def told(message: Message) -> bool:
    """Whether the message tells of frost."""
    degrees = [float(item.value) for item in message.stated if item.fact == TEMPERATURE]
    return any(celsius <= 0.0 for celsius in degrees) if degrees else in_words(message.text)


def in_words(text: str) -> bool:
    """Whether words alone tell of frost.

    >>> in_words("through a freezing winter"), in_words("a frost-free shed"), in_words("all winter")
    (True, False, False)
    """
    return FREEZES.search(text) is not None and FREE.search(text) is None
