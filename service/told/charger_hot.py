"""Whether it is the charger that gets hot, and the battery is told to be cool."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

COOL = r"(?:cool|cold|stone cold|not (?:even )?(?:warm|hot)|at room temperature)"
BATTERY = r"(?:batter(?:y|ies)|accus?|agms?|gels?|bank|lithiums?|wets?)"
HOT = regex(r"\bcharger\b(?: \w+){0,4}? (?:hot|scalding|boiling|warm)\b(?! batter)", re.IGNORECASE)
ALL_COOL = regex(
    rf"\b{BATTERY}(?: (?:is|are|itself|themselves|stays?|remains?|feels?|keeps?|all|still|quite|nice and|both)){{0,4}}"
    rf" {COOL}\b",
    re.IGNORECASE,
)


def told(text: str) -> bool:
    """Whether the charger alone is hot.

    >>> told("my charger gets very hot, the batteries stay cold"), told("charger hot, battery is warm too")
    (True, False)
    """
    return HOT.search(text) is not None and ALL_COOL.search(text) is not None
