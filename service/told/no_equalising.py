"""Whether equalising is told of only to be denied: "it never equalises", "I am not equalising or anything"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

DENIED = regex(
    r"\b(?:no|not|never|without|doesn'?t|does not|can'?t|cannot|isn'?t|aren'?t)\W+(?:\w+\W+){0,2}?"
    r"(?:desul|equali|recondition|repair)",
    re.IGNORECASE,
)


def denied(text: str) -> bool:
    """Whether it is.

    >>> denied("I'm not equalising or anything"), denied("it equalises every month")
    (True, False)
    """
    return DENIED.search(text) is not None
