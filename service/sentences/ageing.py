"""What is said of a battery's years: the year it is from, what heat does to them, and how it is tested at home."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.rules.battery import lowest_at
from service.rules.readings import cite
from service.sentences import wording

TESTS = regex(
    r"\bhow (?:do|can|could|would|should|to|is|are)\b[^.?!;]{0,24}\b(?:test|check|try)\w*\b"
    r"(?! (?:the |my |our )?(?:cables?|wir\w+|charger|fuse|alternator|water|acid))",
    re.IGNORECASE,
)
SMALL_OR_WORN = (
    "Not known yet: charge it overnight and load-test it: if it fails it is worn, if it passes it is too small or was "
    "not refilled."
)
BY_HEAT = "Yes: lasting heat about halves a battery's life with each 8 °C or so; one hot day does little."


def by_year(case: Case, year: int, low: float, high: float) -> str:
    """From which year on it is in its last years and past them: nobody here knows what year it is."""
    life = say.between(low, high, "years")
    last, past = say.number(year + low).replace(",", ""), say.number(year + high).replace(",", "")
    kind = wording.a_kind(case)
    return (
        f"{kind} battery from {year} is in its last years from {last} on, and after {past} past its usual life of "
        f"{life}; test it before you replace it."
    )


def held_by_year(read: str, year: int, high: float) -> str:
    """The same of one that stayed over the lowest good reading: its years alone are no reason."""
    past = say.number(year + high).replace(",", "")
    return (
        f"Not by that reading: {read} under load holds up; but one from {year} is past its usual life after {past}, so "
        "load-test it before you spend."
    )


def note_test(case: Case) -> bool:
    """How they test it by themselves, as the reason that stands first; False where that is not asked."""
    if not TESTS.search(case.text) or case.get("battery.family") in ("lithium", "lithium-other"):
        return False
    least = say.volts(float(lowest_at(None).value))
    case.because(
        "To test a lead battery yourself: charge it full, let it rest a night and read its volts, then hold the meter "
        f"on its posts while the thruster runs; {least} or more is good",
        "load-test",
        cite("test-charged"),
    )
    return True


def to_test(case: Case, age: str, verdict: str) -> str:
    """The headline on its age where they ask how to test it as well."""
    where = {"yes": "young enough", "marginal": "in its last years", "no": "past its usual life"}[verdict]
    least = say.volts(float(lowest_at(None).value))
    return (
        f"At {age} your {wording.kind(case)} battery is {where}, so test it: charge full, rest a night, and its posts "
        f"must hold {least} with the thruster running."
    )
