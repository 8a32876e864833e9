"""Which kind of battery has caps or wants water: "which type has the six caps on top?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

ASKED = regex(
    r"\b(?:which|what) (?:kind|type|sort|one|battery|batteries)s?\b(?: of batter(?:y|ies))?"
    r" (?:has|have|with|comes? with|got|needs?|wants?|takes?)\b[^.?!;,]{0,20}"
    r"\b(?:caps?|water|topping up|vent plugs?)\b",
    re.IGNORECASE,
)
NONE = regex(r"\b(?:no|without|least|less|never)\b", re.IGNORECASE)
WET = "Wet-cell (flooded): caps that unscrew mean that it wants water; AGM, gel and lithium are sealed."


def asked(text: str) -> bool:
    """Whether the kind is asked for by its caps or its water.

    >>> asked("which kind has the caps on top"), asked("which kind needs no water")
    (True, False)
    """
    found = ASKED.search(text)
    return found is not None and NONE.search(found[0]) is None
