"""What is told and asked of a battery's years: the year it is from, and what heat does to them."""

from __future__ import annotations

import re
from collections.abc import Collection

from grammar.text.patterns import regex

YEAR = "year:"  # begins the cue of a thread
OTHERS = r"(?:boat|yacht|ship|hull|engine|motor|sloop|cruiser|ketch|barge|charger|thruster|cables?|wiring|panel)"
OF_YEAR = regex(
    r"\b(?:from|of|since|dates?(?: back)?|dated|bought|new|fitted|installed|made|year|vintage|says|stamped?|code"
    r"|put (?:in|aboard)|went (?:in|aboard)|replaced|renewed|connected)\b[^.?!;\d]{0,18}"
    r"(?:(?:\d{1,2} ?[/.-] ?){1,2}|\d{1,2}(?:st|nd|rd|th)? (?:of )?[a-z]{3,9},? )?"
    r"(?P<year>(?:19[89]|20[0-4])\d)\b(?! ?(?:a|w|wh|v|mm|rpm|cca|ah)\b)",
    re.IGNORECASE,
)
YEAR_OF = regex(  # "a 2018 wet one", "AGM, march 2017 on the sticker"
    r"\b(?:an?|the|my|our) (?P<before>(?:19[89]|20[0-4])\d) (?:wet|flooded|agm|gel|lead|lithium|batter\w*)\b"
    r"|\b(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]{0,6}\.? (?P<after>(?:19[89]|20[0-4])\d)\b",
    re.IGNORECASE,
)
NOT_ITS = regex(rf"\b{OTHERS}\b[^.?!;,]{{0,24}}$", re.IGNORECASE)
BATTERY = regex(r"\b(?:batter\w*|batts?|agms?|gels?|wets?|flooded|lithiums?|lfp|lifepo\w*)\b", re.IGNORECASE)
WARMTH = r"(?:heat|hot|warm\w*|tropic\w*|mediterranean|sun|[34]\d ?(?:°|degrees|deg\b|c\b))"
WEARS = r"(?:short\w*|sooner|bad|affect\w*|reduc\w*|cuts?|harm\w*|kill\w*|ruin\w*|wears?|ages?|ageing|aging|less)"
YEARS = r"(?:early|earlier|sooner|faster|life|live|lives|lifespan|lifetime|years|die|dies|ages?|ageing|aging|last)"
HEAT = regex(
    rf"\b{WARMTH}(?=[^.?!;]{{0,60}}\b{WEARS}\b)[^.?!;]{{0,60}}\b{YEARS}\b"
    rf"|\b{WEARS}\b(?=[^.?!;]{{0,60}}\b{YEARS}\b)[^.?!;]{{0,60}}\b{WARMTH}",
    re.IGNORECASE,
)


def of_year(text: str) -> int | None:
    """The year that a battery is from; a boat's is none.

    >>> of_year("The AGM is from 2017, is it due?"), of_year("label says 03/2018, still good?")
    (2017, 2018)
    >>> of_year("the wet one went in on 3 May 2019"), of_year("battery put aboard 07.04.2016, still fine?")
    (2019, 2016)
    >>> of_year("it is a 2018 wet one, is it done?"), of_year("an AGM, march 2017 on the sticker")
    (2018, 2017)
    >>> of_year("the boat is from 2005 and the AGM weak"), of_year("a battery of 2000 Wh")
    (None, None)
    """
    for found in OF_YEAR.finditer(text):
        before = text[: found.start()]
        named = max((one.end() for one in BATTERY.finditer(before)), default=-1)
        other = NOT_ITS.search(before)
        if other is None or other.start() < named:
            return int(found["year"])
    found_so = YEAR_OF.search(text)
    if found_so is None or (found_so["after"] and NOT_ITS.search(text[: found_so.start()])):
        return None
    return int(found_so["before"] or found_so["after"])


def kept(text: str, before: Collection[str]) -> tuple[str, ...]:
    """The cue of the year that a conversation holds after a message: its own, else the one before."""
    year = of_year(text)
    return (f"{YEAR}{year}",) if year else tuple(name for name in before if name.startswith(YEAR))


def of_before(cues: Collection[str]) -> int | None:
    """The year that was told in an earlier turn; None where none was, or two were."""
    years = {name.removeprefix(YEAR) for name in cues if name.startswith(YEAR)}
    return int(years.pop()) if len(years) == 1 else None


def asks_of_heat(text: str) -> bool:
    """Whether heat and a battery's years are what is asked about.

    >>> asks_of_heat("does the heat shorten the life of my AGM?"), asks_of_heat("a hot day, is 12.4 V good?")
    (True, False)
    """
    return HEAT.search(text) is not None
