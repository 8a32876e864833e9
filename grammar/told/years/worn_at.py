"""Years of a battery by what is said with them: "worn out at six", "six years on its back"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value

FACT = "battery.age"
WORDS = "two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen"
YEARS = rf"(\d{{1,2}}|{WORDS})"
UNIT = r"(?:years?|yrs?|winters?|summers?|seasons?)"
ENDS = r"(?=\s*(?:[,;:?!)]|\.(?!\d)|$|is\b|are\b|and\b|or\b|by now\b))"
KIND = r"(?:wets?|flooded|agms?|gels?|lead|lithiums?|lifepo4|lfp|batter(?:y|ies)|batts?|calcium)"
WORN = r"(?:worn(?: out)?|finished|done(?: for)?|past it|spent|knackered|clapped out|ready for the (?:tip|skip)|tired)"
BY_WORDS = re.compile(  # what needs no battery named beside it but one in the message
    rf"\b{WORN} at (?:the age of )?{YEARS}{ENDS}"
    rf"|^at {YEARS},? (?:is|are|isn't|aren't) (?:it|he|she|they|the|my|our|this)\b(?=[^.?!]*\b(?:last legs|past|worn|"
    rf"finished|done|tired|old|due|time|bin|end)\b)"
    rf"|\b(?:carries|carry|has|have|bears|with) (?:\w+ )?{YEARS} {UNIT} (?:on (?:its|his|her|their|the)? ?"
    rf"(?:back|clock|shoulders)|behind (?:it|him|her|them)|under (?:its|his|her|their) belt)"
    rf"|\b(?:a|an|the|my|our|his|this|that) {YEARS}[- ]?(?:yrs?|years?|y/?o)\.?(?:[- ]old)? {KIND}\b"
    rf"|\b(?:came aboard|came on board|joined (?:us|the boat|the ship)|arrived|moved in)(?: together| as a pair)?"
    rf" {YEARS} {UNIT} ago",
    re.IGNORECASE | re.MULTILINE,
)
ITSELF = re.compile(  # a bare number of years, where what follows speaks of an end
    rf"(?:^|[.?!;:)]\s*|\band |\bbut )(?:it'?s|they'?re|he'?s|she'?s|it is|they are|"
    rf"the (?:thing|battery|old (?:girl|boy|thing))(?:'?s| is))"
    rf" (?P<years>\d{{1,2}}|{WORDS})\b(?=\s*[,.;?!]\W*(?P<after>[^.?!]*[.?!]?[^.?!]*))",
    re.IGNORECASE | re.MULTILINE,
)
END = re.compile(
    r"\b(?:bin|scrap|skip|tip|replace|the best of (?:it|him|her|them)|on the way out|last legs"
    r"|past it|worn|new one|finished|done for|time for|retire|too old|how long (?:has|have))\b",
    re.IGNORECASE,
)
OF_AFTER = 70  # characters
SENTENCE = re.compile(r"(?<=[.?!;]) +")
LOWEST, HIGHEST = 1.05, 1.32  # specific gravity of acid
VOLTS = frozenset({12.0, 24.0})
NOT_YEARS = frozenset({6.0})  # volts, where volts are asked for


def worn_at(scene: Scene) -> Stated | None:
    """The age that such words tell of the battery spoken of; None where they do not."""
    if not _spoken(scene):
        return None
    return next(_by_words(scene), None) or next(_itself(scene), None)


def _spoken(scene: Scene) -> bool:
    told = any(old.fact.startswith(("battery.", "reading.")) for old in scene.said)
    gravity = bool(scene.quantities("GRAVITY")) or any(LOWEST <= figure <= HIGHEST for figure in scene.figures)
    return (
        told
        or gravity
        or bool({"battery", "reading"} & (scene.facts | scene.heads))
        or bool(scene.quantities("AH", "CCA"))
    )


def _by_words(scene: Scene) -> Iterator[Stated]:
    start = 0
    for sentence in SENTENCE.split(scene.text):
        if (found := BY_WORDS.search(sentence)) is not None:
            yield _stated(scene, next(group for group in found.groups() if group), start + found.start())
        start = scene.text.find(sentence, start) + len(sentence) + 1


def _itself(scene: Scene) -> Iterator[Stated]:
    volts = scene.expected & {"battery.nominal", "bank.voltage"}
    for found in ITSELF.finditer(scene.text):
        years = value(found["years"].lower())
        if END.search(found["after"][:OF_AFTER]) and years not in (VOLTS | NOT_YEARS if volts else VOLTS):
            yield _stated(scene, found["years"], found.start("years"))


def _stated(scene: Scene, said: str, at: int) -> Stated:
    start = scene.text.lower().find(said.lower(), at)
    return Stated(FACT, value(said.lower()), "year", said, (start, start + len(said)), how="default")
