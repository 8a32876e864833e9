"""Batteries that go by a bare size: "230 apiece", "a 3 year old 80", "till a 70's half empty", "one is 90, one 110"."""

from __future__ import annotations

import re

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of, stops

SIZE = Claim("battery.capacity", "near")
SMALLEST, LARGEST = 40.0, 400.0
KIND = r"(?:wet|flooded|agm|gel|lithium|lifepo4|lfp|lead|sealed)"
WHOSE = r"(?:an?|the|my|our|his|her|another|this|that|your|each|one)"
ENDS = (
    r"(?=\W*(?:$|[.,;?!)]|\b(?:and|or|in|by|from|with|to|on|over|within|how|what|is|are|then|so|has|shows)\b"
    r"|\bat (?:\d|an?\b)))"
)
SAYS = (  # the words before a size, those after it
    (r"", r" ?(?:apiece|a piece)\b"),
    (rf"\b{WHOSE} (?:\d+|\w+)[ -](?:year|month|yr)s?[ -]old (?:{KIND} )?", r"(?! ?(?:footer|footers|year|of)\b)"),
    (rf"\b{WHOSE} ", rf" (?:that'?s|which is|that is|and it'?s|,) ?(?:an? )?{KIND}\b"),
    (
        r"\b(?:my|our|his|her) (?:(?:new|old|poor|little|lone|single) )?",
        r" (?:must|should|has to|needs? to|ought to|is to|will have to) "
        r"(?:push|give|deliver|feed|drive|run|carry|supply|power|turn|spin|shove|pull)\b",
    ),
    (
        r"\b(?:fill|filling|refill|top up|replenish|revive|charge|charging|flatten|flattening|empty"
        r"|emptying|drain|draining|kill)(?: up)? (?:an?|the|my|our|his|her) ",
        ENDS,
    ),
    (r"\b(?:an?|the|my|our|his|her) (?:leisure|deep[- ]cycle) ", ENDS),
    (rf"\b{WHOSE} ", r" (?:dual[- ]purpose|leisure|deep[- ]cycle)\b"),
    (r"\bif (?:it|she|he|this|that)(?:'?s| is| were| was) an? ", ENDS),
    (
        r"\b(?:old|new) ",
        r",?(?: and| plus| with)?(?: an?)? (?:new|old) \d{2,3}\b(?! ?-?(?:a|amps?|v|volts?|mm2?|w|watts?)\b)",
    ),
    (r"\b(?:old|new) \d{2,3},?(?: and| plus| with)?(?: an?)? (?:new|old) ", ENDS),
    (r"\b(?:has|holds|have|with|got|says|contains|stores)(?: about| only| got)? ", r" of (?:them|those|these)\b"),
)
ONE_AND_OTHER = regex(  # the sizes of two that are told apart
    r"\bone(?:'?s| is| of them is| being| was)?(?: an?)? (?P<one>\d{2,3})\b(?: ?ah)?(?:,| and|, and| but|;) ?"
    r"(?:the other|one|the second|another|the next|t'other)"
    r"(?:'?s| one is| is| being| was)?(?: an?)? (?P<other>\d{2,3})\b"
    r"(?! ?(?:a|amps?|v|volts?|years?|yrs?|months?|kg|kilos?|lbs?|pounds|cca|mm|cm"
    r"|per ?cent|percent|degrees)\b|[.,]\d|%)",
    re.IGNORECASE,
)
ONE_OF_UNIT = regex(  # "one is 100 the other is 75 amp hours": the unit is told once
    r"\b(?:one|(?:the )?(?:left|right|old|older|first|front|port)(?: one| battery)?)(?:'?s| is| has)?(?: an?)?"
    r" (?P<one>\d{2,3})(?:,| and|, and| but|;)? ?(?:and )?"
    r"(?:(?:the )?other|one|the second|another|(?:the )?(?:right|left|new|newer|second|aft|starboard))"
    r"(?: one| battery)?(?:'?s| is| has)?(?: an?)? (?P<other>\d{2,3}) ?(?:ah|amp(?:ere)?[- ]?hours?)\b",
    re.IGNORECASE,
)
OTHERS = frozenset({"charger", "fuse", "cable", "alternator", "dcdc"})
WEIGHED = frozenset({"kg", "kilos", "kilo", "weigh", "weighs", "weight", "heavy", "lift", "lb", "lbs", "pounds", "cca"})
HOURS = regex(r"\bamp(?:ere)?[ -]?hours?\b|\bah\b", re.IGNORECASE)
PATTERNS = tuple((regex(left + r"$", re.IGNORECASE), regex(right, re.IGNORECASE)) for left, right in SAYS)
OF_THEM = len(PATTERNS) - 1  # the last of them: amp-hours must be spoken of
VOLTS_WITHIN = 6  # pieces from "four 6 V" to "at 210"
FAR = 40  # characters
CAPACITY = Claim("battery.capacity", "near")
LEAST, MOST = 30.0, 400.0  # amp-hours that go without a unit
AMPS_FOR = regex(
    r"\b(?:amps?|amperes?|charger|charging)\b(?:,? like)?,?(?: (?:do|does|would|should|will|is|are|right"
    r"|best|i|we|ye|you|need"
    r"|put|pit|want|ought|to|be))* for (?:an? |the |my |her |our |his )?$",
    re.IGNORECASE,
)
TILL = regex(r"\b(?:till?|until|before|when|afore|ere|by the time) (?:an? |the |my |our )?$", re.IGNORECASE)
HALF_GONE = regex(
    r"^ ?(?:'?s| is| be| would be| gets| goes)? ?(?:hauf|haf|'alf|half|hälf|halb)[- ]?(?:way )?(?:empty"
    r"|flat|gone|toom|done|deid|dead|down"
    r"|spent|drained|used)\b",
    re.IGNORECASE,
)
ASIDE = regex(r"\b(?:battery|batt|accumulator|accu|agm|gel|wet|lithium|lfp), $", re.IGNORECASE)
ONE_OF = regex(r"\b(?:an?|my|one) (?!fuse|breaker|charger|load|panel|cable|run|length|thruster)\w+ of $", re.IGNORECASE)
AND_ONE = regex(r"^ and (?:one|another|a second|the other|its mate) of \d{2,3}\b", re.IGNORECASE)
THE_OTHER = regex(r"\b\w+ of \d{2,3} and (?:one|another|a second|the other|its mate) of $", re.IGNORECASE)
JOINED = regex(  # "if I join the 105 to the 85"
    r"\b(?:join|connect|link|coupl|wir|parallel|pair|strap)\w*(?: up)? (?:the|an?|my|our|his|her) (?P<one>\d{2,3})"
    r"(?: up)? (?:to|with|and|onto|alongside|next to|beside) (?:the|an?|my|our|his|her) (?P<other>\d{2,3})\b"
    r"(?! ?-?(?:a|amps?|v|volts?|mm2?|awg|gauge|cables?|wires?|fuses?|breakers?|chargers?|square|cca|watts?)\b"
    r"|[.,]\d)",
    re.IGNORECASE,
)
AHEAD = 48  # characters
OTHER_THINGS = frozenset({"fuse", "charger", "alternator", "dcdc"})


RATED = regex(
    rf"\b(?:{KIND}|batter(?:y|ies)|group \w{{2,3}}|leisure|deep[- ]cycle)(?: one| type)?,?"
    r"(?: is| are|'s)? rated(?: at| for)? $",
    re.IGNORECASE,
)
LEISURE = regex(r"\b(?:leisure|deep[- ]cycle) \d{2,3}\b", re.IGNORECASE)  # no CCA, whatever else is told
ASKED_TO = regex(r"\b(?:will|would|can|could|does|do) (?:an?|the|my|our|his|her|one|this|that) $", re.IGNORECASE)
WORKS = regex(
    rf"^ (?:{KIND} )?(?:run|power|drive|feed|last|push|keep|turn|carry|work|spin)\b"
    r"(?! (?:from|to|through|along|past|cool|hot|warm|in|into|under|behind)\b)",
    re.IGNORECASE,
)
TWO_OF_THEM = regex(  # "I have a 105 and an 85, both flooded"
    r"\b(?:an?|one) (?P<one>\d{2,3}) and (?:an?|one|another) (?P<other>\d{2,3})\b"
    r"(?! ?-?(?:a|amps?|v|volts?|w|watts?|years?|yrs?|months?|kg|kilos?|lbs?|pounds|cca|mm2?|cm|m|ft|awg|square"
    r"|per ?cent|percent|degrees|hp|fuses?|breakers?|cables?|chargers?|panels?)\b|[.,]\d|%)",
    re.IGNORECASE,
)


BY_PLACE = regex(  # "two banks, start 95 + bow 130"
    r"\b(?:start(?:er|ing)?|engine|house|domestic|service|bow|stern|thruster|windlass)(?: battery| bank| one)?"
    r"[ :=]+(?P<size>\d{2,3})\b(?! ?-?(?:a|amps?|v|volts?|w|watts?|years?|yrs?|months?|kg|kilos?|lbs?|cca|mm2?|cm|m"
    r"|ft|awg|%|hp)\b|[.,]\d)",
    re.IGNORECASE,
)
OLD_AND_NEW = regex(  # "the old one was 70 Ah, the new one is 90"
    r"\bold(?:er)? (?:one|battery|agm|gel)\b[^.?!;]{0,16}\d{2,3}(?: ?ah)?,?(?: and)? (?:the |a )?"
    r"new(?:er)? (?:one|battery|agm|gel)(?:'?s| is| has| will be| of)?(?: an?)? $",
    re.IGNORECASE,
)


def called(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of bare numbers that batteries go by."""
    bare = [item for item in scene.quantities("NUM") if _free(item, claims)]
    if runs := {item.at: SIZE for item in scene.quantities("NUM") if _is_asked_to(scene, item, claims)}:
        return runs
    if rated := {item.at: SIZE for item in scene.quantities("NUM") if _is_rated(scene, item, claims)}:
        return rated
    if scene.quantities("AH"):
        one = ONE_OF_UNIT.search(scene.text)
        start = one.start("one") if one else -1
        return {item.at: SIZE for item in bare if scene.tokens[item.start].start == start}
    weighed = WEIGHED & scene.vocabulary - ({"cca"} if LEISURE.search(scene.text) else set())
    if not bare or not _of_batteries(scene, claims) or weighed:
        return {}
    found = {item.at for item in bare if _is_called(scene, item) or _of_so_many_volts(scene, item, claims)}
    apart = _told_apart(scene, bare) | _two_of_them(scene, bare) | _by_place(scene, bare)
    return dict.fromkeys(found | apart, SIZE)


def _is_rated(scene: Scene, item: Item, claims: dict[int, Claim]) -> bool:
    """Whether a bare number is what a battery is rated at, no load: "a group 29 rated 125"."""
    value, claim = item.quantity.value, claims.get(item.at)
    if isinstance(value, str) or not SMALLEST <= value <= LARGEST or scene.quantities("AH", "CCA"):
        return False
    loose = claim is None or claim.fact == "load.current"
    return (
        loose and stops(scene, item, ("and", "with", "for", "in")) and RATED.search(ahead_of(scene, item)) is not None
    )


def _is_asked_to(scene: Scene, item: Item, claims: dict[int, Claim]) -> bool:
    """Whether a battery goes by it that is to run something: "how long will a 120 run a 9 A fridge"."""
    value, claim = item.quantity.value, claims.get(item.at)
    if isinstance(value, str) or not SMALLEST <= value <= LARGEST or scene.quantities("AH") or scene.heads & OTHERS:
        return False
    after = scene.text[scene.span(item.start, item.end)[1] :][:FAR]
    loose = claim is None or claim.fact == "load.current"
    return loose and ASKED_TO.search(ahead_of(scene, item)) is not None and WORKS.match(after) is not None


def _free(item: Item, claims: dict[int, Claim]) -> bool:
    value = item.quantity.value
    sized = not isinstance(value, str) and SMALLEST <= value <= LARGEST and value % 1 == 0
    return sized and item.at not in claims


def _of_batteries(scene: Scene, claims: dict[int, Claim]) -> bool:
    if any(claim.fact in ("reading.voltage", "drain.current") for claim in claims.values()):
        return True
    known = any(old.fact.startswith(("battery.", "bank.")) for old in scene.said)
    return known or bool({"battery", "bank", "bank.layout"} & (scene.facts | scene.heads))


def _is_called(scene: Scene, item: Item) -> bool:
    """Whether the words on both sides name a battery by it."""
    start, end = scene.span(item.start, item.end)
    before, after = scene.text[max(0, start - FAR) : start], scene.text[end : end + FAR]
    for at, (left, right) in enumerate(PATTERNS):
        if right.match(after) and left.search(before):
            others = at == 0 and _of_others(scene, item)  # "two fuses, 100 apiece"
            return not others and (at != OF_THEM or bool(HOURS.search(scene.text)))
    return False


def _of_others(scene: Scene, item: Item) -> bool:
    """Whether fuses or cables are named before it in its own clause."""
    own = scene.clause(item.start)
    heads = (head for head in scene.heads_by_clause.get(own, ()) if head.start < item.start)
    return any(head.head in OTHERS for head in heads)


def _of_so_many_volts(scene: Scene, item: Item, claims: dict[int, Claim]) -> bool:
    """Whether counted batteries of so many volts have it: "four 6 volts at 220, all in a row"."""
    after = scene.after(item)
    if scene.word(item.start - 1) not in ("at", "of") or item.at < 3 or (after is not None and after.kind != "mark"):
        return False
    near = scene.items[max(1, item.at - VOLTS_WITHIN) : item.at - 1]
    volts = next((one for one in reversed(near) if claims.get(one.at, SIZE).fact == "battery.nominal"), None)
    if volts is None or any(one.kind == "mark" for one in scene.items[volts.at : item.at]):
        return False
    return scene.items[volts.at - 1].dim in ("COUNT", "NUM") and not _of_others(scene, item)


def _told_apart(scene: Scene, bare: list[Item]) -> set[int]:
    """The two sizes of "one is 90 and one is 110"."""
    found = ONE_AND_OTHER.search(scene.text)
    if found is None or scene.heads & OTHERS:
        return set()
    starts = {found.start("one"), found.start("other")}
    both = {item.at for item in bare if scene.tokens[item.start].start in starts}
    return both if len(both) == len(starts) else set()


def _two_of_them(scene: Scene, bare: list[Item]) -> set[int]:
    """The two sizes of "a 105 and an 85", where they are to be joined."""
    found = TWO_OF_THEM.search(scene.text) if {"bank.layout", "battery.chemistry"} & scene.facts else None
    starts = {found.start("one"), found.start("other")} if found else set()
    both = {item.at for item in bare if scene.tokens[item.start].start in starts and not _of_others(scene, item)}
    return both if len(both) == len(starts) else set()


def _by_place(scene: Scene, bare: list[Item]) -> set[int]:
    """The sizes of two banks and more that are told beside what they are for."""
    starts = {found.start("size") for found in BY_PLACE.finditer(scene.text)}
    found = {item.at for item in bare if scene.tokens[item.start].start in starts}
    return found if len(found) > 1 else set()


def is_joined(scene: Scene, item: Item, value: float) -> bool:
    """Whether a bare number is the size of one of two batteries that are joined: "join the 105 to the 85"."""
    batteries = bool({"bank.layout", "battery.chemistry"} & scene.facts)
    found = JOINED.search(scene.text) if batteries and LEAST <= value <= MOST else None
    return found is not None and scene.tokens[item.start].start in (found.start("one"), found.start("other"))


def by_number(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of bare figures that are a battery's amp-hours."""
    told = [at for at, claim in claims.items() if claim.fact == CAPACITY.fact]
    free = (item for item in scene.quantities("NUM") if claims.get(item.at) is None or claims[item.at].how == "weighed")
    if told:
        return {item.at: CAPACITY for item in free if len(told) == 1 and _is_other(scene, item)}
    return {item.at: CAPACITY for item in free if _goes_by(scene, item)}


def _is_other(scene: Scene, item: Item) -> bool:
    """Whether it is the second of two that are joined: "one of 100 and another of 85"."""
    value, start = item.quantity.value, scene.span(item.start, item.end)[0]
    sized = not isinstance(value, str) and LEAST <= value <= MOST and stops(scene, item)
    told = THE_OTHER.search(scene.ahead(start)) or OLD_AND_NEW.search(scene.ahead(start))
    return sized and "bank.layout" in scene.facts and told is not None


def _goes_by(scene: Scene, item: Item) -> bool:
    value = item.quantity.value
    if isinstance(value, str) or not LEAST <= value <= MOST:
        return False
    start, end = scene.span(item.start, item.end)
    before, after = scene.ahead(start), scene.text[end : end + AHEAD]
    if TILL.search(before) and HALF_GONE.match(after):
        return True
    if not stops(scene, item):
        return bool(AND_ONE.match(after)) and ONE_OF.search(before) is not None and "bank.layout" in scene.facts
    if AMPS_FOR.search(before):
        return "load" not in scene.heads and bool({"battery", "battery.chemistry"} & (scene.facts | scene.heads))
    if ASIDE.search(before):
        return value % 5 == 0 and not scene.heads & OTHER_THINGS
    return _is_other(scene, item)
