"""Whether wire of a house, or aluminium, is thought of for a boat: "can I use household 240 V wire"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

ASKED = regex(
    r"\b(?:household|mains|building|extension) (?:\d+ ?v )?(?:wir(?:e|ing)|cables?|flex|leads?|cord)\b"
    r"|\btwin and earth\b|\bsolid (?:core|copper)\b|\blamp cord\b|\balumini?um (?:wir(?:e|ing)|cables?)\b",
    re.IGNORECASE,
)
SOLID = "No: cable on a boat is stranded copper, not solid wire or aluminium; the amps of the load decide its size."


def asked(text: str) -> bool:
    """Whether such wire is named.

    >>> asked("can I use household 240v wire for it?"), asked("the house bank's cable")
    (True, False)
    """
    return ASKED.search(text) is not None
