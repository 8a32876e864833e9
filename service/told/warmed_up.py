"""A battery that was too cold and has warmed up since, by the weather or a cabin: no heat of its own."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

WARMED = regex(
    r"\b(?:has|have|it['’]?s|they['’]?ve|is|been|got|i|we|now|it|them|everything)"
    r"(?: (?:now|all|since|been|got|slowly|i|we))* warmed(?: (?:it|them|the (?:battery|bank|cells|locker|boat|cabin)))?"
    r"(?: (?:back|slowly|right|a bit))* (?:up\b|to \d)"
    r"|^\W*(?:ok(?:ay)?|so|and|now|then|right|well)?\W*warmed (?:(?:it|them|the \w+) )?(?:back )?(?:up\b|to \d)",
    re.IGNORECASE,
)
OF_ITSELF = regex(
    r"\b(?:hot|charg(?:e|ed|er|ing)|overnight|by itself|on its own|strange\w*|odd\w*|too warm|very warm|smell\w*|load"
    r"|running|under way|quickly|suddenly|why|swollen|swell\w*|hiss\w*|smok\w*)\b",
    re.IGNORECASE,
)


def told(text: str) -> bool:
    """Whether it is only told that what was cold is so no longer.

    >>> told("warmed it up to 9 now"), told("it has warmed up"), told("the lithium warmed up on charge")
    (True, True, False)
    >>> told("it's warm"), told("it has warmed up by itself")
    (False, False)
    """
    return WARMED.search(text) is not None and OF_ITSELF.search(text) is None
