"""Batteries counted and sized by what is said around them: "two brothers", "both twelve", "the same 100s"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex
from grammar.told.batteries.invoiced import invoiced

COUNT, NOMINAL, LAYOUT, BANK = "battery.count", "battery.nominal", "bank.layout", "bank.voltage"
FEW = "two|three|four|six|[2-4]|6"
KIND = r"(?:wets?|flooded|agms?|gels?|lead|lithiums?|lifepo4|lfp)"
NOW_MORE = regex(  # "he put in one battery. I'd like to put in two."
    rf"\bone (?:\w+ )?(?:battery|batt)\b[^?]{{0,90}}?\b(?:like|want|fit|put in|would have|make it|go for|plan on|use)"
    rf" (?:[\w,' ]{{0,40}}?\b(?:fit|put in|use|have|take|add up to) )?(?P<count>{FEW})\b(?=\s*[.:;,?!]|$)",
    re.IGNORECASE,
)
ONE_AND_ONE = regex(rf"\bone ({KIND})\b[^?!]{{0,60}}?\b(?:one|another) \1\b", re.IGNORECASE)
BESIDE_ONE = regex(  # "one AGM of 90 Ah beside one of 60"
    rf"\bone (?:{KIND}|battery|batt) (?:of|at|with) \d{{2,3}}(?: ?ah)?(?: {KIND})? (?:beside|and|with"
    rf"|next to|alongside|plus)"
    r" (?:one|another)(?: \w+)? (?:of|at|with) \d{2,3}\b",
    re.IGNORECASE,
)
PIECES = regex(rf"\b(?P<count>{FEW}) (?:old |new |same |equal )?(?:pieces?|pcs|stuk|pezzi)\b", re.IGNORECASE)
SIBLINGS = regex(rf"\b(?P<count>{FEW}) (?:brothers|sisters|siblings|cousins)\b(?!')", re.IGNORECASE)
TWIN = regex(
    r"\b(?:had|got|gets|has|gave (?:it|her|him)|give (?:it|her|him)|with|adding|bought) (?:it )?"
    r"(?:a|its|an identical) (?:twin|brother|sister|mate|second)\b",
    re.IGNORECASE,
)
OF_VOLTS = regex(  # "both of 12", "4 batteries of 12, 100 Ah", "four of 12 in a line"
    rf"\b(?:both|all|each|{FEW})(?: (?:{KIND}|batter(?:y|ies)|batts|accus|pieces|ones))?"
    r" of (?P<volts>6|12|six|twelve)\b"
    r"(?! ?-?(?:ah|amps?|a|kg|kilos?|months?|years?|hours?|m|mm2?|cm|ft|batteries|them|those|these|the)\b|[.,]\d|%)",
    re.IGNORECASE,
)
OF_THEM = regex(  # "three on 'em, 34 kilo apiece"
    rf"\b(?P<count>{FEW}) (?:of|on) (?:'em|em|them|these|those)\b"
    r"(?! (?:is|was|has|shows?|reads?|weak|dead|bad|good)\b)",
    re.IGNORECASE,
)
THINGS = regex(  # things counted before "them": "six weekends in a summer, one or"
    r"\b(?:two|three|four|five|six|seven|eight|nine|ten|twelve|a dozen|\d{1,2})(?: \w+)? "
    r"(?!batt|accu|cell|wet|gel|agm|lead|lithium|flood|lump|block|unit|piece|box|brother|sister|sibling|cousin|string|bank"
    r"|row|pair|volt|amp|kilo|kg|pound|lb|year|month|week\b|weeks|day|hour|minute|second|metre|meter|feet|times|this|is\b"
    r"|was\b|has\b|hundred|ninet|eight|sevent)(?:[a-z]{3,}s|\w*(?:children|people|men))\b(?!['’])(?P<between>[^.?!;]{0,200})$",
    re.IGNORECASE,
)
OF_BATTERIES = regex(rf"\b(?:{KIND}|batt\w*|accus?|ah|cca|cells?|banks?)\b|\d ?(?:ah|kg|v)\b", re.IGNORECASE)
LOTS = regex(rf"\b(?P<count>{FEW}) (?:lots|lumps|blocks) of \d", re.IGNORECASE)
PRESENT = regex(
    rf"\b(?:the|my|our|his|her) (?:present|current|old|existing|lead|other)(?: {KIND})? (?P<count>{FEW})"
    r"(?= (?:being|are|were|weigh\w*|at|have)\b)",
    re.IGNORECASE,
)
ARE_TWO = regex(  # "and if are two, plus with plus?"
    rf"\bif (?:there |they |we )?(?:are|were|have|had|use|used) (?P<count>{FEW})\b(?=\s*(?:[,;.?!]|$))", re.IGNORECASE
)
CHOICE = regex(r"^ or (?:two|three|four|six|[2-6])\b", re.IGNORECASE)
BOTH_TWELVE = regex(
    r"\b(?:both|each(?: of them| one)?|all)(?: (?:are|is|of them|of it))*(?: an?)? (?P<volts>12|twelve)(?:s|'s)?\b"
    r"(?=\s*(?:[,;.?!]|$|and\b|volts?\b(?! at| on)|v\b))(?!\.\d)",
    re.IGNORECASE,
)
IN_SERIES = regex(
    r"\b\d ?x ?(?P<times>6|12)(?: ?v(?:olts?)?)?,? in series\b"
    r"|\b(?:two|three|four|[2-4]) (?:\w+ ){1,2}of (?P<of>6|12) ?-?v(?:olts?)?\b[^.?!;]{0,30}\bseries\b",
    re.IGNORECASE,
)
CHAINED = regex(r"\bone (?:(?:after|behind) (?:the other|another|the next)|to the next)\b", re.IGNORECASE)
PARALLELING = regex(
    r"\bparallell?ing\b(?! (?:switch|relay|key|strap|solenoid|lead|cable|breaker|button)| (?:two )?chargers)",
    re.IGNORECASE,
)
IN_TURN = regex(
    r"charg|us(?:e|ing)\b|\brun|discharg|empt|die|fail|replac|check|measur|read|test|press|burst", re.IGNORECASE
)
FAR = 60  # characters
SIZE = "battery.capacity"
SORT = (
    r"(?:same|old|new|used|equal|identical|wet|agm|gel|flooded|lithium|lead|spare|tired|good|more|of|the|these|those)"
)
SIZES = regex(
    rf"\b(?:(?P<count>{FEW}) )?(?:{SORT} )*(?P<size>[4-9][05]|1\d[05]|2[0-5]0)'?s\b(?! and \d)"
    r"(?! ?(?:on|off|burst|run|each time))",
    re.IGNORECASE,
)
HUNDREDS = regex(
    rf"\b(?P<count>{FEW}|(?:a |the )?(?:pair|couple) of|both) (?:{SORT} )*"
    r"(?P<size>hundreds|nineties|eighties|seventies)\b"
    r"(?! (?:of|amps?|times|miles|quid|pounds)\b)",
    re.IGNORECASE,
)
TENS = {"hundreds": 100.0, "nineties": 90.0, "eighties": 80.0, "seventies": 70.0}
VOLTS = regex(
    rf"\b(?:(?P<count>{FEW}) |(?:from|of|with|outta|outa|using|our|my|his|her|some|have|got|only|just) )(?:{SORT} )*"
    r"(?P<volts>6|12)'?s\b"
    r"(?! ?(?:on|off|burst|run|each time))",
    re.IGNORECASE,
)
AFTER_KIND = regex(
    r"\b(?:they|these|those|both)(?:'re| are) (?:wets?|flooded|agms?|gels?|lithiums?|lead)[,;] "
    rf"(?P<count>{FEW})(?: of (?:them|those|these))?(?=\s*(?:[.;:?!,]|$))",
    re.IGNORECASE,
)
JOINED = regex(
    rf"\b(?:joined|linked|coupled|wired|strung|connected|hooked up|tied|married) (?P<count>{FEW})"
    r"(?= (?:of them|in|together|up|plus|nose|side|end|for)\b|\s*[,;])",
    re.IGNORECASE,
)
TAKEN_FOR = frozenset({"load.time", "load.burst", "storage.time", "reading.rest_time", "battery.group"})
JOINING = regex(r"\b(?:series|parallel|side by side|join|link|string|connect|wire|bank|24|nose to tail)\w*", re.I)
SECONDS = regex(r"\b(?:seconds?|secs?|bursts?|pushe?s?|press\w*)\b", re.IGNORECASE)


def counted_so(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """How many, how joined, and of how many volts each, where no closer word tells it."""
    told = {item.fact: item.value for item in stated}
    if told.get(COUNT, 1.0) == 1.0 and (count := _count(scene)):
        yield count
    if NOMINAL not in told and (volts := _volts(scene)):
        yield volts
    if LAYOUT not in told and (found := PARALLELING.search(scene.text)) and "battery" in scene.facts | scene.heads:
        yield Stated(LAYOUT, "parallel", "", found[0], found.span(), how="default")
    elif LAYOUT not in told and (found := CHAINED.search(scene.text)) and _joins(scene, found, told):
        yield Stated(LAYOUT, "series", "", found[0], found.span(), how="default")


def without_choice(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts without the "one" of "one or two", which is asked."""
    return [item for item in stated if (item.fact, item.value) != (COUNT, 1.0) or not _chosen(scene, item)]


def _chosen(scene: Scene, item: Stated) -> bool:
    typed = item.text.lower().strip()
    return typed.startswith("one or ") or CHOICE.match(scene.text[item.span[1] :][:FAR]) is not None


def _count(scene: Scene) -> Stated | None:
    if told := invoiced(scene):
        return told
    if found := NOW_MORE.search(scene.text):
        return _number(found)
    if found := ONE_AND_ONE.search(scene.text) or BESIDE_ONE.search(scene.text):
        return Stated(COUNT, 2.0, "", found[0], found.span(), how="default")
    batteries = bool({"battery"} & (scene.facts | scene.heads)) or bool(scene.quantities("WEIGHT", "AH", "CCA"))
    if batteries and (found := PIECES.search(scene.text)):
        return _number(found)
    weighed = bool(scene.quantities("WEIGHT"))
    if weighed and (found := _of_them(scene.text) or LOTS.search(scene.text) or PRESENT.search(scene.text)):
        return _number(found)
    if (batteries or scene.said) and (found := ARE_TWO.search(scene.text)):
        return _number(found)
    read = len([figure for figure in scene.figures if 11.0 <= figure <= 13.2 and figure % 1]) > 1
    if (read or "bank.layout" in scene.facts) and (found := SIBLINGS.search(scene.text)):
        return _number(found)
    known = any(old.fact.startswith("battery.") for old in scene.said)
    if known and "bank.layout" in scene.facts and (found := TWIN.search(scene.text)):
        return Stated(COUNT, 2.0, "", found[0], found.span(), how="default")
    return None


def _of_them(text: str) -> re.Match[str] | None:
    """Where "two of them" counts batteries."""
    return next((found for found in OF_THEM.finditer(text) if not of_other_things(text[: found.start()])), None)


def of_other_things(ahead: str) -> bool:
    """Whether the "them" behind this text are things of another kind: "six weekends, two of them windy"."""
    found = THINGS.search(ahead)
    return found is not None and OF_BATTERIES.search(found["between"]) is None


def _number(found: re.Match[str]) -> Stated:
    return Stated(COUNT, value(found["count"].lower()), "", found[0], found.span("count"), how="default")


def _volts(scene: Scene) -> Stated | None:
    """What each battery has: "both twelve", "2 x 12 in series", "three gels of 12 V in series"."""
    if found := IN_SERIES.search(scene.text):
        name = "times" if found["times"] else "of"
        return Stated(NOMINAL, float(found[name]), "volt", found[name], found.span(name), how="default")
    found = BOTH_TWELVE.search(scene.text) or OF_VOLTS.search(scene.text)
    if found is None or not {"battery", "bank", "bank.voltage", "bank.layout"} & (scene.facts | scene.heads):
        return None
    return Stated(NOMINAL, value(found["volts"].lower()), "volt", found["volts"], found.span("volts"), how="default")


def _joins(scene: Scene, found: re.Match[str], told: Mapping[str, object]) -> bool:
    """Whether batteries are joined so, and nothing is done to them in turn."""
    several = told.get(COUNT, 1.0) != 1.0
    return several and not IN_TURN.search(scene.text[max(0, found.start() - FAR) : found.start()])


def plurals(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with those of batteries in the plural; what "100s" was taken for is no time."""
    found = list(_found(scene, {item.fact for item in stated}))
    if not found:
        return stated
    told = {item.fact for item in found}
    spans = [item.span for item in found]
    kept = [item for item in stated if not (item.fact in TAKEN_FOR and any(a <= item.span[0] < b for a, b in spans))]
    return [*(item for item in kept if item.fact not in told), *found]


def _found(scene: Scene, told: set[str]) -> Iterator[Stated]:
    text = scene.text
    if JOINING.search(text) and not SECONDS.search(text):
        match = HUNDREDS.search(text)
        if match and not (SIZE in told and match["count"].lower().endswith(("of", "both"))):
            yield Stated(SIZE, TENS[match["size"].lower()], "ampere_hour", match[0], match.span(), how="default")
            yield from _counted(match)
            return
        if SIZE not in told and (match := SIZES.search(text)) and SIZES.search(text, match.end()) is None:
            yield Stated(SIZE, float(match["size"]), "ampere_hour", match[0], match.span(), how="default")
            if COUNT not in told:
                yield from _counted(match)
            return
        if NOMINAL not in told and (match := VOLTS.search(text)):
            yield Stated(NOMINAL, float(match["volts"]), "volt", match[0], match.span(), how="default")
            if COUNT not in told:
                yield from _counted(match)
            return
    layout = "bank.layout" in told
    if COUNT not in told and (match := AFTER_KIND.search(text) or (JOINED.search(text) if layout else None)):
        yield from _counted(match)


def _counted(match: re.Match[str]) -> Iterator[Stated]:
    if many := match["count"]:
        number = 2.0 if many.lower().endswith(("of", "both")) else value(many.lower())  # "a pair of", "both"
        yield Stated(COUNT, number, "", many, match.span("count"), how="default")
