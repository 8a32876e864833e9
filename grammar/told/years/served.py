"""Years of a battery told by its service: "year number six", "seven years has it lived", "an AGM, 7, past it?"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex
from grammar.told.words import SENTENCE, ahead_of
from grammar.told.years.ages import LIFE, WORN

FACT = "battery.age"
WORDS = "two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen"
NUMBER = rf"(?P<years>{WORDS}|\d{{1,2}})"
IN_YEAR = regex(  # "the AGM is in year five", "season number six for this gel"
    r"\b(?:(?:in|on|into|is|now|its|entering|starting|begins|started|at) (?:year|season)"
    r"|(?:year|season) (?:number|no\.?|nr\.?)) (?:number |no\.? ?|nr\.? ?)?"
    rf"{NUMBER}\b(?![.,:]?\d| of the| of (?:my|our|a|his|her) (?:cruise|trip|loan|contract))",
    re.IGNORECASE,
)
OLD_ASIDE = regex(r"\bold ?\((?P<years>\d{1,2})\)", re.IGNORECASE)  # "or is it just old (4)"
OF_SERVICE = regex(r" ?(?:of|in|'s?) (?:\w+ )?(?:service|duty|work|toil|servitude|use)\b", re.IGNORECASE)
GIVEN = regex(
    r"\b(?:giv(?:en?|ing)|gave|did|done|put in|had|seen|after|with|rendered|for|and|of)"
    r"(?: (?:us|me|him|her|already|now|good|about|its))* $",
    re.IGNORECASE,
)
LIVED = regex(
    r"\b(?:has|have|had|'?s|'?ve) (?:now |already )?"
    r"(?:lived|worked|toiled|slaved|soldiered|laboured|labored|been working|been serving|been with us|been with me)"
    r"(?: on| here| aboard)?(?: already| now| for| some)* $",
    re.IGNORECASE,
)
FAITHFUL = regex(
    r"\b(?:servants?|faithful|faithfully|loyal|loyally|well|friends?|companions?|workers?)(?: to (?:us|me))?"
    r"(?: during| for| through| over| these| the| past| last)+ $",
    re.IGNORECASE,
)
PERSON = regex(
    r"\b(?:i|we|my (?:wife|husband|father|son|dad|mother|uncle|skipper|boss))(?:'ve|'d| have| had| has)\b"
    r"[^.?!;]{0,200}$",
    re.IGNORECASE,
)
PROMISED = regex(
    r"\b(?:expect\w*|promis\w*|guarante\w*|warrant\w*|how many|another|next|further)\b[^.?!;]{0,200}$", re.IGNORECASE
)
OF_KIND = regex(  # "does a wet of five want replacing"
    r"\b(?:a|an|the|my|our|your|this)(?: \w+)? (?:agm|gel|wet|flooded|lead|battery|accu)(?: one| battery)? of $",
    re.IGNORECASE,
)
BATTERY = regex(
    r"\b(?:batter\w*|batts?|accus?|agms?|gels?|wets?|flooded|lithiums?|lead|lfp|it|its|it's|they|she|he|mine|ours|ones?|bank)\b",
    re.IGNORECASE,
)
FOR_IT = regex(
    r" (?:for|of) (?:this|that|the|my|our|these) (?:\w+ )?(?:batter|gel|agm|wet|lithium|accu|bank)", re.IGNORECASE
)
OTHERS = regex(
    r"\b(?:boats?|yacht|engine|winch|windlass|thruster|motor|charger|fridge|panel|cable|i|we|my \w+ is|im|i'm)\b",
    re.IGNORECASE,
)
UNTIL = 3.0  # a battery of that many years and more is told by a bare number
OLDEST, SYSTEM, SIX = 20.0, 12.0, 6.0
ENDS = frozenset({"mark"})
YEARS = rf"(?P<years>\d{{1,2}}|{WORDS})"
UNIT = r"(?:years?|yrs?|winters?|summers?|seasons?)"
KINDS = r"(?:wets?|flooded|agms?|gels?|lithiums?|batter(?:y|ies)|batts?|accus?)"
ENDURED = regex(
    rf"\b(?:of|after|through|over|with) (?:the |its |their |some )?{YEARS} "
    r"(?:neglected|forgotten|wasted|idle|lonely|faithful|hard|harsh|cold|hot|bitter|rough|thankless|unloved|uncharged"
    rf"|blameless|happy|salty|wet|rainy|thirsty|dry) {UNIT}\b",
    re.IGNORECASE,
)
THATS = regex(
    rf"\b{KINDS}(?: ones?)?,? (?:that|which|what|who|as)(?:'?s| is| are|'?re| be)(?: now| already| all"
    rf"| just)? {YEARS}\b"
    r"(?=\s*(?:[,;:?!)]|\.(?!\d)|$|and\b|or\b|now\b|already\b))",
    re.IGNORECASE,
)
BACK = regex(
    rf"\b(?:{KINDS}|they|it|these|those)\b[^.?!;]{{0,18}}\b(?:from|of|since|dating|fitted|bought|put in"
    rf"|installed)(?: from)?"
    rf"(?: about| some)? {YEARS} (?:good |long )?{UNIT} (?:back|ago|since|gone|past)\b",
    re.IGNORECASE,
)
SPOKEN_OF = regex(rf"\b{KINDS}\b|\bplates?\b", re.IGNORECASE)
VOLTS = frozenset({6.0, 12.0})  # of a battery, where no word of years stands by
PEOPLE = regex(r"\b(?:i|we|he|she|they|married|sailing|sailed|retired|worked)\b[^.?!;,]{0,24}$", re.IGNORECASE)
WORN_YEARS = rf"(\d{{1,2}}|{WORDS})"
WORN_ENDS = r"(?=\s*(?:[,;:?!)]|\.(?!\d)|$|is\b|are\b|and\b|or\b|by now\b))"
KIND = r"(?:wets?|flooded|agms?|gels?|lead|lithiums?|lifepo4|lfp|batter(?:y|ies)|batts?|calcium)"
IS_WORN = (
    r"(?:worn(?: out)?|finished|done(?: for)?|past it|spent|knackered|clapped out|ready for the (?:tip|skip)|tired)"
)
BY_WORDS = regex(  # what needs no battery named beside it but one in the message
    rf"\b{IS_WORN} at (?:the age of )?{WORN_YEARS}{WORN_ENDS}"
    rf"|^at {WORN_YEARS},? (?:is|are|isn't|aren't) (?:it|he|she|they|the|my|our|this)\b"
    r"(?=[^.?!]{0,200}\b(?:last legs|past|worn|finished|done|tired|old|due|time|bin|end)\b)"
    rf"|\b(?:carries|carry|has|have|bears|with) (?:\w+ )?{WORN_YEARS} {UNIT} (?:on (?:its|his|her|their|the)? ?"
    rf"(?:back|clock|shoulders)|behind (?:it|him|her|them)|under (?:its|his|her|their) belt)"
    rf"|\b(?:a|an|the|my|our|his|this|that) {WORN_YEARS}[- ]?(?:yrs?|years?|y/?o)\.?(?:[- ]old)? {KIND}\b"
    rf"|\b(?:came aboard|came on board|joined (?:us|the boat|the ship)|arrived|moved in)(?: together| as a pair)?"
    rf" {WORN_YEARS} {UNIT} ago",
    re.IGNORECASE | re.MULTILINE,
)
ITSELF = regex(  # a bare number of years, where what follows speaks of an end
    rf"(?:^|[.?!;:)]\s*|\band |\bbut )(?:it'?s|they'?re|he'?s|she'?s|it is|they are|(?:ours|mine) (?:is|are)|"
    rf"the (?:thing|battery|old (?:girl|boy|thing))(?:'?s| is))"
    rf" (?P<years>\d{{1,2}}|{WORDS})\b(?=\s*[,.;?!]\W*(?P<after>[^.?!]{{0,200}}[.?!]?[^.?!]{{0,200}}))",
    re.IGNORECASE | re.MULTILINE,
)
END = regex(
    r"\b(?:bin|scrap|skip|tip|replace|the best of (?:it|him|her|them)|on the way out|last legs"
    r"|wants? (?:it|them) (?:out|gone|replaced|changed)"
    r"|past it|worn|new one|finished|done for|time for|retire|too old|how long (?:has|have))\b",
    re.IGNORECASE,
)
NEW_ONE = regex(  # "do I need a new battery it's three"
    r"\bnew (?:battery|batteries|one|ones|set),? (?:it'?s|they'?re|it is|they are|ours is|mine is)"
    rf" (?P<years>\d{{1,2}}|{WORDS})\b"
    r"(?=\s*(?:[,;?!.]\W|[.?!]?$|and\b|but\b|now\b))",
    re.IGNORECASE,
)
OF_AFTER = 70  # characters
WORN_SENTENCE = regex(r"(?<=[.?!;]) +")
LOWEST, HIGHEST = 1.05, 1.32  # specific gravity of acid
WORN_VOLTS = frozenset({12.0, 24.0})
NOT_YEARS = frozenset({6.0})  # volts, where volts are asked for


def years_served(scene: Scene) -> Stated | None:
    """The age of the battery that is spoken of, where its service or a bare number beside its kind tells it."""
    told = "battery" in scene.facts | scene.heads or any(old.fact.startswith("battery.") for old in scene.said)
    if not told and "battery.chemistry" not in scene.facts:
        return None
    for pattern in (IN_YEAR, OLD_ASIDE):
        if (found := pattern.search(scene.text)) and _is_its(scene, found):
            years = value(found["years"].lower())
            if 0 < years <= OLDEST:
                return Stated(FACT, years, "year", found[0], found.span(), how="default")
    for item in scene.quantities("TIME", "NUM", "COUNT"):
        figure = item.quantity.value
        if isinstance(figure, str) or not 0 < figure <= OLDEST:
            continue
        told = _served(scene, item) if item.dim == "TIME" else _bare(scene, item, float(figure))
        if told:
            span = scene.span(item.start, item.end)
            return Stated(FACT, float(figure), "year", scene.text[slice(*span)], span, how="default")
    return None


def _is_its(scene: Scene, found: re.Match[str]) -> bool:
    """Whether the battery is what is in that year: no boat or winch is named before, and nothing is only promised."""
    before = SENTENCE.split(scene.ahead(found.start()))[-1]
    named = BATTERY.search(before) or FOR_IT.match(scene.text[found.end() :])
    return bool(named) and not OTHERS.search(before) and not PROMISED.search(before)


def _served(scene: Scene, item: Item) -> bool:
    """Whether years are of a battery's service, no person's and none that are only promised."""
    if item.quantity.unit != "year":
        return False
    start, end = scene.span(item.start, item.end)
    before = scene.ahead(start)
    if PERSON.search(before) or PROMISED.search(before):
        return False
    given = OF_SERVICE.match(scene.text[end:]) and GIVEN.search(before)
    return bool(given or LIVED.search(before) or FAITHFUL.search(before))


def _bare(scene: Scene, item: Item, value: float) -> bool:
    """Whether a bare number beside a battery's kind is of years: "AGM, 7.", "eleven, lithium", "a wet of five"."""
    spelt = item.quantity.text.strip().isalpha()
    if not UNTIL <= value <= OLDEST or value == SYSTEM or (value == SIX and not spelt) or value % 1:
        return False
    after, before = scene.after(item), scene.before(item)
    ends = after is None or after.kind == "mark"
    if OF_KIND.search(ahead_of(scene, item)):
        return ends or (after is not None and after.kind == "word" and not after.dim)
    if "bank.layout" in scene.facts or not scene.vocabulary & (WORN | LIFE) or not ends or after is None:
        return False
    begins = before is None or before.name in ("end", ".", "?", "!", ";")
    row = scene.items[item.at + 1 : item.at + 4]
    if begins and len(row) == 3 and row[0].name == "," and row[1].fact == "battery.chemistry":
        return row[2].kind == "mark"
    row = scene.items[max(0, item.at - 2) : item.at]
    goes_on = scene.after(after) if scene.word(after.start) == "," else None  # "lithium, 13, still strong"
    alone = scene.word(after.start) != "," or (goes_on is not None and goes_on.kind == "word" and not goes_on.dim)
    return alone and len(row) == 2 and row[1].name == "," and row[0].fact == "battery.chemistry"


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
    for sentence in WORN_SENTENCE.split(scene.text):
        if (found := BY_WORDS.search(sentence)) is not None:
            yield _stated(scene, next(group for group in found.groups() if group), start + found.start())
        start = scene.text.find(sentence, start) + len(sentence) + 1


def _itself(scene: Scene) -> Iterator[Stated]:
    volts = scene.expected & {"battery.nominal", "bank.voltage"}
    if found := NEW_ONE.search(scene.text):
        yield _stated(scene, found["years"], found.start("years"))
    for found in ITSELF.finditer(scene.text):
        years = value(found["years"].lower())
        if END.search(found["after"][:OF_AFTER]) and years not in (WORN_VOLTS | NOT_YEARS if volts else WORN_VOLTS):
            yield _stated(scene, found["years"], found.start("years"))


def _stated(scene: Scene, said: str, at: int) -> Stated:
    start = scene.text.lower().find(said.lower(), at)
    return Stated(FACT, value(said.lower()), "year", said, (start, start + len(said)), how="default")
