"""Whether a battery must come home or may stay aboard: "need it come indoors", "may it stay on the boat"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

BATTERY = (
    r"(?:it|they|them|she|her|this|that|these|those|one|the \w+|my \w+|our \w+|(?:an? )?(?:agm|gel|lithium|battery))"
)
MUST = r"(?:must|should|shall|ought|need|needs|has|have|does|do|will|would|had|better|may|can|could|want|wants)"
WORDS = r"(?:[\w'’]+ ){0,4}?"
IN = r"(?:home|indoors|inside|ashore|off (?:the|my|our) boat|in(?=\s*(?:for|over|from|,|\.|\?|$)))"
STAY = r"(?:stay|remain|be left|be kept|sit out|winter|overwinter|live)"
ABOARD = (
    r"(?:aboard|on ?board|(?:on|in) (?:the|my|our) (?:boat|locker|cabin)|where (?:it|she) is|where they are|there|put)"
)
COMES = regex(
    rf"\b{MUST} (?:not )?(?:the |my |our )?{WORDS}(?:to )?(?:come|go) {IN}\b"
    rf"|\b{MUST} (?:i|we|you|one) {WORDS}(?:bring|take|carry|fetch|get|lug) {BATTERY} {IN}\b",
    re.IGNORECASE,
)
STAYS = regex(rf"\b(?:may|can|could|should|is|are|will) {BATTERY} {WORDS}{STAY} {ABOARD}\b", re.IGNORECASE)
I_GO = regex(r"\b(?:i|we|you) (?:[\w'’]+ ){0,2}?(?:come|go) (?:home|ashore|in|inside)\b", re.IGNORECASE)


def asked(text: str) -> bool:
    """Whether it is asked if a battery is to be taken off the boat, or may stay there.

    >>> asked("Must it come home?"), asked("Should we take the gel indoors?"), asked("may the AGM stay on the boat?")
    (True, True, True)
    >>> asked("can we go home on it?"), asked("Will it come in a box?"), asked("may it stay on charge?")
    (False, False, False)
    """
    return comes(text) or STAYS.search(text) is not None


def comes(text: str) -> bool:
    """Whether it is asked if the battery must come home.

    >>> comes("has the wet one to come indoors?"), comes("may it stay on the boat?")
    (True, False)
    """
    return COMES.search(text) is not None and I_GO.search(text) is None
