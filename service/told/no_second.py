"""Another battery that is named only as one not to be bought: "so I could save the money for a second battery?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

SAVED = regex(
    r"\b(?:sav(?:e|es|ed|ing)|spare|skip|forgo|avoid|no need (?:for|of|to buy)"
    r"|(?:don'?t|do not|needn'?t) (?:need|buy))\b"
    r"[^.?!;]{0,30}\b(?:second|another|extra|separate) batter",
    re.IGNORECASE,
)


def saved(text: str) -> bool:
    """Whether it is not to be bought.

    >>> saved("so I could save the money for a second battery?"), saved("would a second battery save it?")
    (True, False)
    """
    return SAVED.search(text) is not None
