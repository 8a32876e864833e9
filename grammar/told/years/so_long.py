"""Years of a battery told as its past: "four neglected summers", "wets that's five", "gels from nine years back"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value

FACT = "battery.age"
WORDS = "two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen"
YEARS = rf"(?P<years>\d{{1,2}}|{WORDS})"
UNIT = r"(?:years?|yrs?|winters?|summers?|seasons?)"
KINDS = r"(?:wets?|flooded|agms?|gels?|lithiums?|batter(?:y|ies)|batts?|accus?)"
ENDURED = re.compile(
    rf"\b(?:of|after|through|over|with) (?:the |its |their |some )?{YEARS} "
    r"(?:neglected|forgotten|wasted|idle|lonely|faithful|hard|harsh|cold|hot|bitter|rough|thankless|unloved|uncharged"
    rf"|blameless|happy|salty|wet|rainy|thirsty|dry) {UNIT}\b",
    re.IGNORECASE,
)
THATS = re.compile(
    rf"\b{KINDS}(?: ones?)?,? (?:that|which|what|who|as)(?:'?s| is| are|'?re| be)(?: now| already| all"
    rf"| just)? {YEARS}\b"
    r"(?=\s*(?:[,;:?!)]|\.(?!\d)|$|and\b|or\b|now\b|already\b))",
    re.IGNORECASE,
)
BACK = re.compile(
    rf"\b(?:{KINDS}|they|it|these|those)\b[^.?!;]{{0,18}}\b(?:from|of|since|dating|fitted|bought|put in"
    rf"|installed)(?: from)?"
    rf"(?: about| some)? {YEARS} (?:good |long )?{UNIT} (?:back|ago|since|gone|past)\b",
    re.IGNORECASE,
)
SPOKEN_OF = re.compile(rf"\b{KINDS}\b|\bplates?\b", re.IGNORECASE)
VOLTS = frozenset({6.0, 12.0})  # of a battery, where no word of years stands by
PEOPLE = re.compile(r"\b(?:i|we|he|she|they|married|sailing|sailed|retired|worked)\b[^.?!;,]{0,24}$", re.IGNORECASE)


def so_long(scene: Scene) -> Stated | None:
    """The age that such words tell; None where they do not."""
    return next(_told(scene), None) if SPOKEN_OF.search(scene.text) else None


def _told(scene: Scene) -> Iterator[Stated]:
    for pattern in (BACK, THATS, ENDURED):
        found = pattern.search(scene.text)
        years = value(found["years"].lower()) if found else 0.0
        if found is None or (pattern is THATS and years in VOLTS):
            continue
        if pattern is ENDURED and PEOPLE.search(scene.ahead(found.start())):
            continue
        yield Stated(FACT, years, "year", found["years"], found.span("years"), how="default")
