"""Whether something is a must: a second charger, a battery in the bow. A rule answers that before any figure does."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

MUST = (
    r"\b(?:must|need|needs|have to|has to|got to|necessary|required?|a must|obligatory|compulsory|essential"
    r"|can i skip|do without)\b"
)
SECOND = (
    r"\b(?:second|2nd|another|separate|extra|additional|dedicated|further)"
    r"(?: (?:mains|shore|battery|12 ?v|24 ?v))? charger\b"
)
SHORE = r"\b(?:shore(?:[- ]power)?|mains|harbour|dock) charger\b"
CONVERTER = r"\b(?:dc[- ]?(?:to[- ]?)?dc|b2b|battery[- ]to[- ]battery)\b"
CONVERTER_MUST = regex(rf"{MUST}[^.?!;]{{0,24}}{CONVERTER}", re.IGNORECASE)
SECOND_CHARGER = regex(rf"{MUST}[^.?!;]{{0,40}}(?:{SECOND}|{SHORE})|{SECOND}[^.?!;]{{0,40}}{MUST}", re.IGNORECASE)
BOW = r"\b(?:in the bow|up front|forward|at the (?:bow|front)|by the thruster|next to the thruster|near the thruster)\b"
ONE = r"(?: (?:there|be|i|we|to|have|really|always|it|an?|one|its|own|second|separate|another|extra))*"
BATTERY_THERE = regex(
    rf"{MUST}{ONE} (?:battery|bank)\b[^.?!;]{{0,20}}{BOW}"
    rf"|\b(?:battery|bank|batteries) {BOW}[^?!;]{{0,40}}{MUST}[^.?!;]{{0,30}}\bone\b"
    rf"|\b(?:an?|own|separate|another) (?:battery|bank) {BOW}[^.?!;]{{0,20}}{MUST}",
    re.IGNORECASE,
)


def second_charger(text: str) -> bool:
    """Whether it is asked if a second charger is a must.

    >>> second_charger("do I really have to have a second charger?"), second_charger("I bought a second charger")
    (True, False)
    """
    return SECOND_CHARGER.search(text) is not None


def converter(text: str) -> bool:
    """Whether it is asked if a DC-to-DC charger is a must.

    >>> converter("do I still need a dc-dc charger?"), converter("what dc-dc do I need?")
    (True, False)
    """
    return CONVERTER_MUST.search(text) is not None


def battery_there(text: str) -> bool:
    """Whether it is asked if the thruster must have a battery beside it.

    >>> battery_there("I don't fancy a battery in the bow. Is it a must to have one there?")
    True
    >>> battery_there("must the battery in the bow be an AGM?"), battery_there("I need a cable to the bow")
    (False, False)
    """
    return BATTERY_THERE.search(text) is not None
