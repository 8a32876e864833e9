"""Batteries that are joined one way and are to make other volts: "two in parallel now, can I rewire them for 24?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service.case import Case
from service.judgements.unlike import LIMITS
from service.rules.bank import system

CHANGES = regex(
    r"\b(?:re-?wir|re-?connect|re-?arrang|convert(?!er)|chang|swap|mov(?:e|ing)|turn|upgrad|shift|go(?:ing)? )\w*"
    r"|\bswitch\w* (?:to|over|from|them|it|back)\b|\binstead\b",
    re.IGNORECASE,
)
WANTED = regex(  # "to 24 V", "want 24", "for a 24 V thruster"
    r"\b(?:to|into|for|want\w*|need\w*|give|make)(?: (?:a|an|the|go|run|be|make|get|back|have|new|of|at)){0,3}"
    r" (?P<volts>12|24|36|48)(?! ?(?:a|ah|amps?|cca|mm|m|ft|feet|days?|h|hours?|months?|weeks?)\b)"
    r"(?! ?(?:v|volts?)? (?:convert|charg|step)\w*)",
    re.IGNORECASE,
)
LINKS = "take the old links off first, as one left on shorts a battery"


def wanted(case: Case) -> str | None:
    """The layout that makes the volts they want of the batteries they have; None where it is not asked for."""
    told, count = case.said("bank.layout"), case.said("battery.count")
    nominal = float(case.said("battery.nominal") or 12.0)
    way = other_way(case.text, told, float(count or 0), nominal) or still_wanted(case, nominal)
    if way:
        case.because("A link left over from before joins plus to minus of one battery", LIMITS["before_joining"].cite)
    return way


def still_wanted(case: Case, nominal: float) -> str | None:
    """In series, where a turn tells nothing new of how they are joined and the volts wanted before need that."""
    told, volts, count = (case.stated.get(name) for name in ("bank.layout", "bank.voltage", "battery.count"))
    before = all(item is not None and item.origin == "thread" for item in (told, volts))
    told_now = any(item.origin == "message" for fact, item in case.stated.items() if fact.startswith("battery."))
    if not before or told_now or told is None or volts is None or count is None or "bank-wiring" not in case.before:
        return None
    made = told.value == "parallel" and float(volts.value) == system(nominal) * float(count.value)
    return "series" if made else None


def other_way(text: str, told: object, count: float, nominal: float) -> str | None:
    """The layout for the volts that are wanted, where it is not the one told.

    >>> other_way("in parallel now, want to go to 24 V", "parallel", 2, 12), other_way("for 24 V", "parallel", 2, 12)
    ('series', None)
    """
    if told not in ("series", "parallel") or count < 2 or not CHANGES.search(text):
        return None
    each = system(nominal)
    ways = {each: "parallel", each * count: "series"} | ({each * 2: "series-parallel"} if count == 4 else {})
    volts = [float(found["volts"]) for found in WANTED.finditer(text)]
    found = [ways[one] for one in volts if one in ways]
    return found[-1] if found and found[-1] != told else None
