"""Whether cable of a welder is thought of for a boat: "can I use welding cable"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

ASKED = regex(r"\bweld(?:ing|er'?s?) (?:cables?|leads?|wires?)\b", re.IGNORECASE)
BETTER_NOT = (
    "Better not: welding cable is made for a dry workshop; take stranded copper cable made for boats, by the amps."
)
WHY = "Few of its coverings stand oil, fuel and salt damp, and its print seldom tells what a boat asks for"


def asked(text: str) -> bool:
    """Whether such cable is named.

    >>> asked("is welding cable any good for it?"), asked("I was welding beside the cable")
    (True, False)
    """
    return ASKED.search(text) is not None
