"""Whether one kind of battery is a must for a thruster: "must I fit a gel battery?", "does it have to be lithium?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

KIND = r"(?:an? )?(?:agm|gel|lithium|lifepo4|wet[- ]cell|flooded)"
ASKED = regex(
    r"\b(?:(?:must|need) (?:i|we) (?:really )?(?:fit|have|use|buy|get|take)|must it (?:really )?be"
    r"|(?:do|does|has|have) (?:i|we|it|they|a thruster|the thruster|the battery)(?: battery)?"
    r" (?:(?:really|always) )?(?:have|got) to (?:be|fit|have|use|buy|get))"
    rf" {KIND}\b(?: battery| one)?(?=(?: (?:for|on) (?:a|the|my|our) (?:\w+ )?thruster)?\W*(?:\?|$))",
    re.IGNORECASE,
)


def asked(text: str) -> bool:
    """Whether a message asks if it must be this one kind."""
    return ASKED.search(text) is not None
