"""Whether it is asked what a load draws while it runs, beside what else is asked."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

ASKED = regex(
    r"\b(?:running|working|operating) (?:current|amps?)\b(?! ?(?:is|of(?! (?:the|a|my|our)\b)|=|:|\d))"
    r"|\b(?:what|which|how much) (?:(?:running|full) )?(?:current|amps)\b[^.?!;]{0,24}\b(?:draw|pull|take|use|run)"
    r"|\bhow many amps?\b[^.?!;]{0,24}\b(?:draw|pull|take|use)"
    r"|\bhow many amps? (?:is|are|has|for) (?:the|a|my|our)\b",
    re.IGNORECASE,
)


def running(text: str) -> bool:
    """Whether the amps of a load that runs are asked for.

    >>> running("36 V, 8 kW: what is the running current, and which CCA do I need?")
    True
    >>> running("How many amps will a 3 kW windlass pull, and what battery?")
    True
    >>> running("the running current is 250 A, what CCA do I need?")
    False
    """
    return ASKED.search(text) is not None
