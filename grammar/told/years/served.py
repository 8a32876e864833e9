"""Years of a battery told by its service: "year number six", "seven years has it lived", "an AGM, 7, past it?"."""

from __future__ import annotations

import re

from grammar.reading import Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.told.years.ages import LIFE, WORN

FACT = "battery.age"
NUMBERS = {
    name: float(number)
    for number, name in enumerate(
        (
            *("two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen"),
            *("fourteen", "fifteen"),
        ),
        start=2,
    )
}
NUMBER = rf"(?P<years>{'|'.join(NUMBERS)}|\d{{1,2}})"
IN_YEAR = re.compile(  # "the AGM is in year five", "season number six for this gel"
    r"\b(?:(?:in|on|into|is|now|its|entering|starting|begins|started|at) (?:year|season)"
    r"|(?:year|season) (?:number|no\.?|nr\.?)) (?:number |no\.? ?|nr\.? ?)?"
    rf"{NUMBER}\b(?![.,:]?\d| of the| of (?:my|our|a|his|her) (?:cruise|trip|loan|contract))",
    re.IGNORECASE,
)
OLD_ASIDE = re.compile(r"\bold ?\((?P<years>\d{1,2})\)", re.IGNORECASE)  # "or is it just old (4)"
OF_SERVICE = re.compile(r" ?(?:of|in|'s?) (?:\w+ )?(?:service|duty|work|toil|servitude|use)\b", re.IGNORECASE)
GIVEN = re.compile(
    r"\b(?:giv(?:en?|ing)|gave|did|done|put in|had|seen|after|with|rendered|for)"
    r"(?: (?:us|me|him|her|already|now|good|about|its))* $",
    re.IGNORECASE,
)
LIVED = re.compile(
    r"\b(?:has|have|had|'?s|'?ve) (?:now |already )?"
    r"(?:lived|worked|toiled|slaved|soldiered|laboured|labored|been working|been serving|been with us|been with me)"
    r"(?: on| here| aboard)?(?: already| now| for| some)* $",
    re.IGNORECASE,
)
FAITHFUL = re.compile(
    r"\b(?:servants?|faithful|faithfully|loyal|loyally|well|friends?|companions?|workers?)(?: to (?:us|me))?"
    r"(?: during| for| through| over| these| the| past| last)+ $",
    re.IGNORECASE,
)
PERSON = re.compile(
    r"\b(?:i|we|my (?:wife|husband|father|son|dad|mother|uncle|skipper|boss))(?:'ve|'d| have| had| has)\b[^.?!;]*$",
    re.IGNORECASE,
)
PROMISED = re.compile(
    r"\b(?:expect\w*|promis\w*|guarante\w*|warrant\w*|how many|another|next|further)\b[^.?!;]*$", re.IGNORECASE
)
OF_KIND = re.compile(  # "does a wet of five want replacing"
    r"\b(?:a|an|the|my|our|your|this)(?: \w+)? (?:agm|gel|wet|flooded|lead|battery|accu)(?: one| battery)? of $",
    re.IGNORECASE,
)
SENTENCE = re.compile(r"[.?!;](?= |$)")
BATTERY = re.compile(
    r"\b(?:batter\w*|batts?|accus?|agms?|gels?|wets?|flooded|lithiums?|lead|lfp|it|its|it's|they|she|he|mine|ours|ones?|bank)\b",
    re.IGNORECASE,
)
FOR_IT = re.compile(
    r" (?:for|of) (?:this|that|the|my|our|these) (?:\w+ )?(?:batter|gel|agm|wet|lithium|accu|bank)", re.IGNORECASE
)
OTHERS = re.compile(
    r"\b(?:boats?|yacht|engine|winch|windlass|thruster|motor|charger|fridge|panel|cable|i|we|my \w+ is|im|i'm)\b",
    re.IGNORECASE,
)
UNTIL = 3.0  # a battery of that many years and more is told by a bare number
OLDEST, SYSTEM, SIX = 20.0, 12.0, 6.0
ENDS = frozenset({"mark"})


def years_served(scene: Scene) -> Stated | None:
    """The age of the battery that is spoken of, where its service or a bare number beside its kind tells it."""
    told = "battery" in scene.facts | scene.heads or any(old.fact.startswith("battery.") for old in scene.said)
    if not told and "battery.chemistry" not in scene.facts:
        return None
    for pattern in (IN_YEAR, OLD_ASIDE):
        if (found := pattern.search(scene.text)) and _is_its(scene, found):
            years = NUMBERS.get(found["years"].lower()) or float(found["years"])
            if 0 < years <= OLDEST:
                return Stated(FACT, years, "year", found[0], found.span(), how="default")
    for item in scene.quantities("TIME", "NUM", "COUNT"):
        value = item.quantity.value
        if isinstance(value, str) or not 0 < value <= OLDEST:
            continue
        told = _served(scene, item) if item.dim == "TIME" else _bare(scene, item, float(value))
        if told:
            span = scene.span(item.start, item.end)
            return Stated(FACT, float(value), "year", scene.text[slice(*span)], span, how="default")
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
    if OF_KIND.search(scene.ahead(scene.span(item.start, item.end)[0])):
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
