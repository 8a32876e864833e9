"""What is said of a battery's years: the year it is from, what heat does to them, and how it is tested at home."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.rules.battery import lowest_at
from service.rules.readings import cite
from service.sentences import wording

OTHERS = r"(?:boat|yacht|ship|hull|engine|motor|sloop|cruiser|ketch|barge|charger|thruster|cables?|wiring|panel)"
OF_YEAR = regex(
    r"\b(?:from|of|since|dates?(?: back)?|dated|bought|new|fitted|installed|made|year|vintage|says|stamped?|code)\b"
    r"[^.?!;\d]{0,18}(?:\d{1,2} ?[/.-] ?)?(?P<year>(?:19[89]|20[0-4])\d)\b(?! ?(?:a|w|wh|v|mm|rpm|cca|ah)\b)",
    re.IGNORECASE,
)
NOT_ITS = regex(rf"\b{OTHERS}\b[^.?!;,]{{0,24}}$", re.IGNORECASE)
BATTERY = regex(r"\b(?:batter\w*|batts?|agms?|gels?|wets?|flooded|lithiums?|lfp|lifepo\w*)\b", re.IGNORECASE)
WARMTH = r"(?:heat|hot|warm\w*|tropic\w*|mediterranean|sun|[34]\d ?(?:°|degrees|deg\b|c\b))"
WEARS = r"(?:short\w*|sooner|bad|affect\w*|reduc\w*|cuts?|harm\w*|kill\w*|ruin\w*|wears?|ages?|ageing|aging|less)"
YEARS = r"(?:early|earlier|sooner|faster|life|lives|lifespan|lifetime|years|die|dies|ages?|ageing|aging|last)"
HEAT = regex(
    rf"\b{WARMTH}(?=[^.?!;]{{0,60}}\b{WEARS}\b)[^.?!;]{{0,60}}\b{YEARS}\b"
    rf"|\b{WEARS}\b(?=[^.?!;]{{0,60}}\b{YEARS}\b)[^.?!;]{{0,60}}\b{WARMTH}",
    re.IGNORECASE,
)
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


def of_year(text: str) -> int | None:
    """The year that a battery is from; a boat's is none.

    >>> of_year("The AGM is from 2017, is it due?"), of_year("label says 03/2018, still good?")
    (2017, 2018)
    >>> of_year("the boat is from 2005 and the AGM weak"), of_year("a battery of 2000 Wh")
    (None, None)
    """
    for found in OF_YEAR.finditer(text):
        before = text[: found.start()]
        named = max((one.end() for one in BATTERY.finditer(before)), default=-1)
        other = NOT_ITS.search(before)
        if other is None or other.start() < named:
            return int(found["year"])
    return None


def by_year(case: Case, year: int, low: float, high: float) -> str:
    """From which year on it is in its last years and past them: nobody here knows what year it is."""
    life = say.between(low, high, "years")
    last, past = say.number(year + low).replace(",", ""), say.number(year + high).replace(",", "")
    kind = wording.a_kind(case)
    return (
        f"{kind} battery from {year} is in its last years from {last} on, and after {past} past its usual life of "
        f"{life}; test it before you replace it."
    )


def asks_of_heat(text: str) -> bool:
    """Whether heat and a battery's years are what is asked about.

    >>> asks_of_heat("does the heat shorten the life of my AGM?"), asks_of_heat("a hot day, is 12.4 V good?")
    (True, False)
    """
    return HEAT.search(text) is not None


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
