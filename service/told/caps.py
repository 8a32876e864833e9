"""Whether a battery has caps: one without gets no water and is never equalised, whatever its kind."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service.case import Case

CALCIUM = regex(r"\bcalcium\b|\bca ?/ ?ca\b", re.IGNORECASE)
CAP = regex(r"\bcaps?\b", re.IGNORECASE)


def has_none(case: Case) -> bool:
    """Whether it was told to have no caps: "sealed", "maintenance free"."""
    return case.says("detail:no_caps") and not case.says("detail:has_caps")


def may_have_none(case: Case) -> bool:
    """Whether its kind is told by what many sealed batteries are made of too: calcium, with no caps named."""
    known = case.stated.get("battery.chemistry")
    calcium = known is not None and bool(CALCIUM.search(known.text)) and not CAP.search(known.text)
    return calcium and not case.says("detail:has_caps")
