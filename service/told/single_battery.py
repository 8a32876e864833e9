"""One battery of several that is asked of by itself: "a single 75 Ah AGM in the bow. How many amps for that alone?"."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service.case import Case, Known

KINDS = {"agm": "agm", "gel": "gel", "wet": "flooded", "flo": "flooded", "lit": "lfp", "lif": "lfp", "lfp": "lfp"}
SINGLE = regex(
    r"\b(?:an?|one) (?:single|lone|solitary|only) (?:12 ?v(?:olt)? )?(?P<size>\d{2,3}) ?-?ah,? "
    r"(?P<kind>agm|gel|wet|flooded|lithium|lifepo4|lfp)\b",
    re.IGNORECASE,
)
ALONE = regex(
    r"\b(?:by itself|on its own|alone|(?:just|only) (?:that|this|the) (?:\w+ ){0,2}(?:one|battery))\b", re.IGNORECASE
)
SIZE = regex(r"\d ?-?ah\b", re.IGNORECASE)
OF_OTHERS = ("battery.count", "bank.layout")
KIND, CAPACITY = "battery.chemistry", "battery.capacity"


def told(text: str) -> str:
    """The kind of a single battery, the only one with a size, that is asked of by itself; "" where none is.

    >>> told("two AGMs aft, a single 75 Ah gel in the bow. How many amps for the bow one by itself?")
    'gel'
    >>> told("two AGMs aft, a single 75 Ah gel in the bow. How many amps?")
    ''
    """
    found = SINGLE.search(text)
    if found is None or len(SIZE.findall(text)) > 1 or ALONE.search(text, found.end()) is None:
        return ""
    return KINDS[found["kind"].lower()[:3]]


def by_itself(case: Case) -> None:
    """Leaves the single battery alone: the number, the wiring and the kind of the others are none of its own."""
    kind, size = told(case.text), case.stated.get(CAPACITY)
    if not kind or size is None:
        return
    kept = {name: item for name, item in case.stated.items() if name not in OF_OTHERS}
    named = (item for held in (case.stated, case.second) if (item := held.get(KIND)) is not None and item.value == kind)
    own = next(named, None) or Known(KIND, kind, "message", text=size.text, span=size.span)
    case.stated = {**kept, KIND: replace(own, of=1)}
    case.second = {name: item for name, item in case.second.items() if name not in (*OF_OTHERS, KIND)}
