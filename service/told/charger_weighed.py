"""A charger that is only weighed, and none that they have: "he says a charger with two outputs is daft"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

ANY_CHARGER = regex(
    r"\b(?:an?|one|single) (?:[\w-]+ ){0,2}charger (?:with|of|having|that has|which has) ", re.IGNORECASE
)
OWN = regex(r"\b(?:my|our|have|has|i['’]ve|we['’]ve|bought|got|fitted)\b", re.IGNORECASE)
CLOSE = 12  # characters before a charger in which it is told to be theirs


def only_spoken_of(text: str) -> bool:
    """Whether a charger of some kind is spoken of that nobody is told to have.

    >>> only_spoken_of("he says a charger with two outputs is daft"), only_spoken_of("we have a charger with two")
    (True, False)
    """
    spoken = ANY_CHARGER.search(text)
    return spoken is not None and not OWN.search(text, max(0, spoken.start() - CLOSE), spoken.start())
