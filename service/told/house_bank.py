"""A house bank: its amp-hours, which an alternator charges too, and whether a thruster is to run from it."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

HOUSE = regex(
    r"\b(?:house|domestic|service|leisure)\b(?: (?:bank|batter(?:y|ies)|side|of|is|has|with))*[:,]? ?(?P<after>\d{2,4})"
    r"(?: ?ah\b|(?=[\s,.;)]|$)(?! ?(?:v|a|w|m|amps?|watts?)\b))"
    r"|\b(?P<before>\d{2,4}) ?ah (?:of )?(?:\w+ )?(?:house|domestic|service|leisure)\b",
    re.IGNORECASE,
)


def amp_hours(text: str) -> float | None:
    """The capacity of a house bank that is told; None for none.

    >>> amp_hours("bow bank 200 Ah + house 400. DC-DC 30A"), amp_hours("house bank 12 V, bow 100 Ah")
    (400.0, None)
    >>> amp_hours("a 300 Ah house bank")
    300.0
    """
    found = HOUSE.search(text)
    return float(found["after"] or found["before"]) if found else None


FEEDS = regex(
    r"\b(?:off|from|on|with|by) (?:the |my |our )?(?:house|domestic|service|leisure) (?:bank|batter)", re.IGNORECASE
)


def feeds(text: str) -> bool:
    """Whether a load is to run from the house bank.

    >>> feeds("Can I run the thruster off the house bank?"), feeds("the house bank is full")
    (True, False)
    """
    return FEEDS.search(text) is not None
