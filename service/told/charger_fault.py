"""A lamp, a beep or a message by which a charger tells that something is wrong: "it beeps and the light is red"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

SIGN = (
    r"(?:beep\w*|bleep\w*|chirp\w*|(?:red|orange) (?:light|led|lamp)s?|(?:light|led|lamp) (?:is |goes |went |was )?red"
    r"|(?:shows?|gives?|says?|displays?) (?:an? )?(?:error|fault|e\d\d?|err\b)\w*|(?:error|fault) (?:code|light|lamp))"
)
FAULT = regex(rf"\bcharger\b[^.?!;]{{0,40}}\b{SIGN}\b|\b{SIGN}\b[^.?!;]{{0,24}}\bcharger\b", re.IGNORECASE)
SIZED = regex(r"\bhow (?:many|big|large|long)\b|\bwh?ich size\b|\bwhat size\b", re.IGNORECASE)


def told(text: str) -> bool:
    """Whether a charger is told to give such a sign, and no size or time is asked for.

    >>> told("woke with the charger beeping, red light"), told("the charger shows an error"), told("a red charger")
    (True, True, False)
    >>> told("red light on the charger, how many amps do I need?")
    False
    """
    return FAULT.search(text) is not None and SIZED.search(text) is None
