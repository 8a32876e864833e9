"""Chargers that a shop offers, where it is asked how many outputs are needed: the number is the answer, no charger."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service.case import Case

HOW_MANY = regex(r"\bhow many (?:\w+ )?(?:outputs?|outlets?|channels?|legs?)\b", re.IGNORECASE)
OFFER = frozenset({"charger.outputs", "charger.current"})
OF_12 = regex(  # "a 12 V start battery", "the engine one is 12 V"
    r"\b12 ?v(?:olts?)? (?:\w+ )?(?:start|engine|house|domestic|cabin|leisure|cranking)"
    r"|\b(?:start|engine|house|domestic|cabin|leisure|cranking)\w*\b[^.?!;,]{0,20}\b12 ?v(?:olts?)?\b",
    re.IGNORECASE,
)


def left_out(case: Case) -> None:
    """Drops the outputs of two chargers that are only on offer, where the number of outputs is what is asked."""
    if "charger.outputs" not in case.second or not HOW_MANY.search(case.text):
        return
    case.stated = {fact: item for fact, item in case.stated.items() if fact not in OFFER}
    case.second = {fact: item for fact, item in case.second.items() if fact not in OFFER}


def one_of_12(text: str) -> bool:
    """Whether a battery of 12 V is named by its job, beside others.

    >>> one_of_12("two in series for the bow, 24 V, and a 12 V engine battery"), one_of_12("24 V engine and thruster")
    (True, False)
    """
    return OF_12.search(text) is not None
