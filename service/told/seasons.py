"""The season that a conversation said last: "and over the winter?", then "150 W?" is asked of the winter still."""

from __future__ import annotations

import re
from collections.abc import Collection

from grammar.text.patterns import regex

SUMMER, WINTER = "season:summer", "season:winter"  # cues of a thread
IN_SUMMER = regex(
    r"\b(?:summers? only|only (?:in |for |the |during )*summers?|just (?:for |in )?(?:the )?summer)\b", re.IGNORECASE
)
SUMMERS = regex(r"\b(?:(?:mid)?summer(?:time)?s?|june|july|august|in season)\b", re.IGNORECASE)
WINTERS = regex(
    r"\b(?:(?:mid)?winter(?:time)?s?|lay(?:ing)?[- ]?up|laid[- ]up|off[- ]season|christmas|xmas|new year|halloween"
    r"|nov(?:ember)?|dec(?:ember)?|jan(?:uary)?|feb(?:ruary)?)\b",
    re.IGNORECASE,
)


def said(text: str) -> str:
    """The season that a message names, of both the winter, which asks more; "" for none.

    >>> said("and over the winter?"), said("middle of summer"), said("in summer only, covered in winter"), said("150 W")
    ('season:winter', 'season:summer', 'season:summer', '')
    """
    if IN_SUMMER.search(text):
        return SUMMER
    return WINTER if WINTERS.search(text) else SUMMER if SUMMERS.search(text) else ""


def kept(text: str, before: Collection[str]) -> tuple[str, ...]:
    """The season that holds after a message: its own, else the one before."""
    own = said(text)
    return (own,) if own else tuple(name for name in (SUMMER, WINTER) if name in before)
