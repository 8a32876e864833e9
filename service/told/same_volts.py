"""One reading of two kinds of battery: "AGM 12.8 and lithium 12.8", "both read 12.7"."""

from __future__ import annotations

import re

from grammar.reading import Span
from grammar.text.patterns import regex

NEAR = 40  # characters between a kind and its reading
READ = r"(?:reads?|shows?|says?|rests?|rested|stands?|sits?|are|were|at|measure[sd]?|full|ok(?:ay)?|good|charged)"
BOTH = regex(
    rf"\bboth (?:\w+ ){{0,2}}{READ}\b|\b(?:on|of|for|from) (?:both|each)\b|\b(?:each|the two) (?:of them )?{READ}\b",
    re.IGNORECASE,
)
STOP = regex(r"[.?!;](?=\s|$)")


def told(text: str, read: Span, kinds: tuple[Span, Span]) -> bool:
    """Whether a reading is that of both kinds: told of both, or typed again beside the other one.

    >>> told("gel 12.6, wet 12.6, same then?", (4, 8), ((0, 3), (10, 13)))
    True
    >>> told("gel 12.6. Is a wet one lighter? And is 12.6 good?", (4, 8), ((0, 3), (15, 18)))
    False
    """
    number = re.match(r"\d+(?:[.,]\d+)?", text[slice(*read)])
    if number is None:
        return False
    if BOTH.search(text):
        return True
    again = [found.span() for found in re.finditer(rf"(?<![\d.,]){re.escape(number[0])}(?![.,]?\d)", text)]
    ends = zip((again[0], again[-1]), sorted(kinds), strict=True)
    return len(again) > 1 and all(_apart(text, span, kind) <= NEAR for span, kind in ends)


def _apart(text: str, one: Span, other: Span) -> int:
    """Characters between two places; out of reach where a sentence ends between them."""
    first, last = sorted((one, other))
    between = text[first[1] : last[0]]
    return NEAR + 1 if STOP.search(between) else len(between)
