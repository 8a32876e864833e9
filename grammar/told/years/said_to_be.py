"""Years of a battery told on the way: "has seen six such winters", "rests at 12.7 and is five", "the elder, at six"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex
from grammar.told.years.ages import LASTS, LIFE, WORN
from grammar.told.years.served import WORDS

FACT = "battery.age"
NUMBER = (
    rf"(?P<years>{WORDS}|\d{{1,2}})(?P<half>(?:\.5| and (?:a )?half|½))?"
    r"\b(?! ?-?(?:v|volts?|ah|amps?|amperes?|a|ma|w|watts?|kg|kilos?|lbs?|pounds?|m|mm2?|cm|feet|ft|hours?|minutes?"
    r"|seconds?|weeks?|months?|days?|percent|degrees|times|per|of|or|to|in)\b|[.,]?\d| ?%)"
)
KIND = r"(?:agms?|gels?|wets?|flooded|batter(?:y|ies)|lithium|accus?|banks?)"
IT = rf"(?:{KIND}|mine|ours|hers|his|it|she)"
ENDS = r"(?=\s*(?:[,.;?!]|$))"
SEASONS = regex(  # "it is a wet one and has seen six such winters"
    r"\b(?P<who>[\w']+) (?:seen|survived|weathered|endured|stood|withstood|lived through|been through|come through)"
    rf"(?: out)? {NUMBER} (?:such|hard|cold|long|bad|of (?:them|those|these|our))\b",
    re.IGNORECASE,
)
BY_ITS_DATE = regex(  # "the date stamped on it makes it twelve"
    r"\b(?:stamp\w*|dated?|sticker|label|code|receipt|invoice|bill|serial|paperwork|log|logbook)\b[^.?!;]{0,40}"
    rf"\b(?:makes?|puts?) (?:it|her|him|them|the battery|this one|that one)"
    rf"(?: at| about| nearly| some| all of)* {NUMBER}",
    re.IGNORECASE,
)
AND_IS = regex(  # "mine rests at 12.7 and is five"
    rf"\b{IT}\b(?:[^.?!;]|\.\d){{2,40}}?\band (?:is|it'?s|it is|she'?s)(?: now| already| about)* {NUMBER}{ENDS}",
    re.IGNORECASE,
)
BRACKETED = regex(  # "the AGM (100 Ah) is three and a half"
    rf"\b{KIND} ?\([^()]{{1,24}}\),? (?:is|are|was)(?: now| already| about)* {NUMBER}(?=\s*(?:[,.;?!]|$|and\b))",
    re.IGNORECASE,
)
AND_HALF = regex(  # "our gel is four and a half"
    rf"\b{IT} (?:is|are)(?: now| already| about)* (?P<years>{WORDS}|\d{{1,2}})"
    r"(?P<half> and (?:a )?half)(?=\s*(?:[,.;?!]|$|and\b|now\b))",
    re.IGNORECASE,
)
ELDER = regex(  # "is the elder, at six and flooded, fit for marrying"
    rf"\b(?:elder|older|oldest|eldest|senior)(?: one| {KIND}| of (?:them|the two))?"
    rf"(?:, (?:at|being|which is|who is|now)| at| aged) {NUMBER}",
    re.IGNORECASE,
)
PUT_IN = regex(  # "eight years ago we launched her with a gel battery"
    rf"\b(?P<years>{WORDS}|\d{{1,2}})(?P<half>(?: and (?:a )?half)?) (?:years|yrs|summers|winters|seasons) ago,?"
    r" (?:we|i|he|she|they|the yard|my \w+|our \w+) (?:launched|bought|fitted|put|installed|started|began|replaced"
    r"|set out|treated|equipped|commissioned)\b(?:(?!\bbut\b|\bnow\b)[^.?!;]){0,50}"
    rf"\b(?:an?|the|two|new|these|this|with) (?:new )?{KIND}\b",
    re.IGNORECASE,
)
PERHAPS = regex(  # "the boat is 14. Battery perhaps 5."
    rf"\b{IT}(?: is| are|'s)?,? (?:perhaps|maybe|probably|roughly|about|say|some|possibly) {NUMBER}{ENDS}",
    re.IGNORECASE,
)
STANDS_AT = regex(  # "mine's at seven and passes for dead"
    rf"\b{IT}(?: is| are|'s| stands| now)+ at(?: about| nearly| some)? {NUMBER}"
    r"(?=\s*(?:[,.;?!]|$|and\b|now\b|already\b))",
    re.IGNORECASE,
)
CAME_WITH = regex(  # "ours came with the boat, seven"
    rf"\b{IT} (?:came|was in her|was aboard|was there)\b[^.?!;\d]{{0,24}}, (?:now |already |about )?{NUMBER}{ENDS}",
    re.IGNORECASE,
)
WHERE_WORN = frozenset({PERHAPS, STANDS_AT, CAME_WITH})  # tell years where wear or the life of batteries is spoken of
BOAT_IS = regex(
    r"\bboat(?:'?s| is| was)?(?: about| some)? (?:\d{1,2}\b(?! ?(?:m|metres?|ft|feet|foot|v|volts?)\b)|built|new|old)",
    re.I,
)
PEOPLE = frozenset({"i", "we", "i've", "we've", "you", "he"})
HAVE = regex(r"\b(?:i|we|you|he|i've|we've)(?: have| has| had)? $|\b(?:i|we)'ve $", re.IGNORECASE)
APART = regex(r" ?(?:years?|yrs) (?:older|newer|younger|apart)\b", re.IGNORECASE)
VOLTS = frozenset({12.0, 24.0})
OLDEST = 20.0
AGE = "battery.age"
IN_WORDS = r"\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen"
AND_MONTHS = regex(
    rf"\b(?P<years>{IN_WORDS}) ?(?:years?|yrs?)(?: old)?,?(?: and|,|) ?(?P<months>{IN_WORDS}) ?(?:months?|mths?)\b",
    re.IGNORECASE,
)
STAMPED = regex(
    r"\b(?:date ?stamp(?:ed)?|date ?code|stamp(?:ed)?|dated|date|sticker|made|built|fitted|bought|installed)"
    rf"(?: \w+)?(?: is| was|:|,)? (?:some |about |nearly |over )?(?P<years>{IN_WORDS}) (?:years?|yrs?|winters|seasons) "
    r"(?:back|ago|past|gone)\b",
    re.IGNORECASE,
)
WINTERS = regex(
    rf"\b(?P<years>{IN_WORDS}) (?:winters|summers|springs|seasons|christmases)(?: (?:old|of age|on her back))\b",
    re.IGNORECASE,
)


def age_said(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """The age of the battery, where no age is told but that one battery is older than the other."""
    told = [item for item in stated if item.fact == FACT]
    if any(not _is_difference(scene, item) for item in told) or not _of_battery(scene):
        return
    for pattern in (SEASONS, BY_ITS_DATE, AND_IS, BRACKETED, AND_HALF, ELDER, PUT_IN, PERHAPS, STANDS_AT, CAME_WITH):
        worn = pattern not in WHERE_WORN or not (WORN | LIFE | LASTS).isdisjoint(scene.vocabulary)
        if not (worn or (pattern is PERHAPS and BOAT_IS.search(scene.text))):
            continue
        found = pattern.search(scene.text)
        if found is None or (pattern is SEASONS and _of_people(scene, found)):
            continue
        years = value(found["years"].lower()) + (0.5 if found["half"] else 0.0)
        if 1 < years <= OLDEST and years not in VOLTS - ({12.0} if pattern is BY_ITS_DATE else set()):
            yield Stated(FACT, years, "year", found["years"], found.span("years"), how="default")
            return


def _is_difference(scene: Scene, item: Stated) -> bool:
    """Whether years part two batteries: "the one's two years older"."""
    start, end = item.span
    return APART.search(scene.text[start : end + 16]) is not None


def _of_people(scene: Scene, found: re.Match[str]) -> bool:
    """Whether somebody has seen those winters himself."""
    return found["who"].lower() in PEOPLE or HAVE.search(scene.ahead(found.start("who"))) is not None


def _of_battery(scene: Scene) -> bool:
    """Whether a battery is spoken of, here or before."""
    named = "battery" in scene.facts | scene.heads or bool(scene.quantities("CCA", "AH"))
    return named or any(old.fact.startswith("battery.") for old in scene.said)


def made_up(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with the years and months of a battery as one, and an age that no figure alone tells."""
    ages = [item for item in stated if item.fact == AGE]
    if found := AND_MONTHS.search(scene.text):
        return _with_months(stated, ages, found)
    if ages or "battery" not in scene.facts | scene.heads:
        return stated
    found = STAMPED.search(scene.text) or WINTERS.search(scene.text)
    years = value(found["years"].lower()) if found else 0.0
    if found is None or not 0 < years <= OLDEST:
        return stated
    kept = [item for item in stated if not found.start() <= item.span[0] < found.end()]
    return [*kept, Stated(AGE, years, "year", found[0], found.span(), how="default")]


def _with_months(stated: list[Stated], ages: list[Stated], found: re.Match[str]) -> list[Stated]:
    years, months = value(found["years"].lower()), value(found["months"].lower())
    start, end = found.span()
    own = next((item for item in ages if start <= item.span[0] < end), None)
    if own is None or own.value != years or months >= 12:
        return stated
    whole = replace(own, value=years + months / 12, text=found[0], span=(start, end))
    return [*(item for item in stated if not start <= item.span[0] < end), whole]
