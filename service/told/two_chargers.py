"""Two chargers of unlike volts of which one is to be chosen: "the 12 V 20 A charger or the 24 V 10 A one"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

AMPS = r"(?:[ ,-]*(?:of |with )?\d{1,3} ?a(?:mps?)?\b)?"
NAMED = r"(?: (?:battery )?charger)?"
ONE = rf"(?<!two )(?<!both )(?P<first>12|24)[ -]?v(?:olts?)?\b{AMPS}(?P<named>{NAMED}){AMPS}(?: one| unit)?"
OTHER = rf"(?P<second>12|24)[ -]?v(?:olts?)?\b{AMPS}(?P<also_named>{NAMED})"
BOTH = regex(rf"{ONE},? (?:or|and|vs\.?|against) (?:(?:an?|the|also|my) )*{OTHER}", re.IGNORECASE)
CHOOSES = regex(r"\b(?:or|which|better|vs|more)\b", re.IGNORECASE)
CHARGER = regex(r"\bcharger\b", re.IGNORECASE)
NEAR = 40  # characters before the pair in which they are called chargers


def chosen_of(text: str) -> bool:
    """Whether it is asked which of the two is to be used.

    >>> chosen_of("12 V charger or 24 V one for my pair?"), chosen_of("which charger, the 12 V 20 A or the 24 V 10 A?")
    (True, True)
    >>> chosen_of("a 24 V charger for the bank"), chosen_of("two 12 V chargers or a 24 V one?")
    (False, False)
    """
    pair = next((found for found in BOTH.finditer(text) if found["first"] != found["second"]), None)
    if pair is None or CHOOSES.search(text) is None:
        return False
    named = pair["named"] or pair["also_named"]
    return bool(named or CHARGER.search(text, max(0, pair.start() - NEAR), pair.end()))
