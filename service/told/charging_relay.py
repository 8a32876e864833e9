"""A relay that joins two batteries while one of them is charged, weighed against a DC-to-DC charger or told alone."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

RELAY = regex(
    r"\b(?:v\.?s\.?r|a\.?c\.?r)s?\b|\bsplit[- ]?charg(?:e|er|ing)s?(?: relays?)?\b|\bcombiners?\b"
    r"|\b(?:voltage[- ]?sens(?:itive|ing)|charg(?:e|ing)|combin(?:er|ing)|linking|battery|simple|plain|ordinary|cheap)"
    r" relays?\b|\brelay between\b",
    re.IGNORECASE,
)
CONVERTER = regex(r"\bdc[- ]?(?:to[- ]?)?dc\b|\bb2b\b|\bbattery[- ]to[- ]battery\b", re.IGNORECASE)
CHOICE = regex(
    r"\b(?:or|vs|versus|instead|rather|better|same|enough|waste|worth|do i need|will do|would do|do the (?:job|same)"
    r"|just|simply|only)\b|\b(?:would|could|couldn['’]?t|can|will|does|do|is|are|may|should)\b[^.?!]{0,200}\brelays?\b"
    r"|\brelays?\b[^.?!]{0,200}\b(?:would|could|can|will|does|do|may|should|charge|fill)\b"
    r"|\b(?:would|could|can|will|does|is|may|should)\b[^.?!]{0,200}\b(?:v\.?s\.?r|a\.?c\.?r|combiner|split[- ]?charge)",
    re.IGNORECASE,
)
BETWEEN = regex(r"\b(?:charg\w*|fill\w*|feed\w*|top\w* up|between|from|bow|thruster|house|bank)\b", re.IGNORECASE)
CLICKS = regex(r"\b(?:click|chatter|buzz|stick|stuck|weld|burn|hot|warm)\w*\b", re.IGNORECASE)
WHAT_IS = regex(r"\bwhat(?:'?s| is| are| does)\b[^.?!,]{0,24}$", re.IGNORECASE)
EITHER = regex(r"\b(?:or|vs|versus|which)\b|\bbetter\b", re.IGNORECASE)
AS_WELL = regex(
    r"\b(?:does|do|will|would|can|could)\b[^.?!,]{0,24}\balternator\b[^.?!,]{0,30}"
    r"\b(?:too|as well|also|do (?:it|that|this))\b",
    re.IGNORECASE,
)


def weighed(text: str) -> bool:
    """Whether it is asked if a relay does for charging one battery from another, or which of the two to fit.

    >>> weighed("VSR or DC-DC for the bow bank?"), weighed("would a split charge relay fill the bow battery?")
    (True, True)
    >>> weighed("What is a VSR?"), weighed("The relay of the thruster clicks")
    (False, False)
    """
    found = RELAY.search(text)
    if found is None or WHAT_IS.search(text[: found.start()]):
        return False
    if CONVERTER.search(text):
        return CHOICE.search(text) is not None
    return CHOICE.search(text) is not None and BETWEEN.search(text) is not None and CLICKS.search(text) is None


def which(text: str) -> bool:
    """Whether one of the two is to be chosen, so that no yes or no is asked.

    >>> which("VSR or DC-DC?"), which("is a VSR enough?")
    (True, False)
    """
    return CONVERTER.search(text) is not None and EITHER.search(text) is not None


def alternator_as_well(text: str) -> bool:
    """Whether it is asked if the alternator charges it as well as a charger.

    >>> alternator_as_well("does the alternator do it too?"), alternator_as_well("alternator 80 A, 15 A charger too")
    (True, False)
    """
    return AS_WELL.search(text) is not None
