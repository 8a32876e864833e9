"""Whether a battery is asked about for use in the cold, of which no degrees are told: "enough for winter?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

COLD = regex(
    r"\b(?:in|for|during|through|all|this|every|our|hard|when it(?:['\u2019]?s| is| gets))(?: the| a| hard| deep)*"
    r" (?:winter|cold|frost|minus(?! ?\d))\b|\bbelow (?:zero|freezing)\b|\bsub-?zero\b"
    r"|\bin (?:the )?(?:cold|frosty|freezing|winter) weather\b|\bwinter (?:sailing|cruising|boating)\b",
    re.IGNORECASE,
)
LAID_UP = regex(
    r"\b(?:stor(?:e|ed|age|ing)|la(?:id|y|ying) \w* ?up|left|leav\w+|ashore|on the hard|charg\w+|last winter)\b",
    re.IGNORECASE,
)


def told(text: str) -> bool:
    """Whether the cold in which a battery is used is told without its degrees.

    >>> told("is it enough for the winter"), told("stored all winter, is it enough"), told("will it do in hot weather")
    (True, False, False)
    """
    return COLD.search(text) is not None and LAID_UP.search(text) is None
