"""Figures of a tale that state nothing: a journey's hours, somebody's years in a trade, what a thing cost."""

from __future__ import annotations

import re
from functools import lru_cache

from grammar.reading import Span
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import BREAK

BEFORE, AFTER = 70, 40  # characters of the sentence that are looked at
HOURS, YEARS = frozenset({"minute", "hour"}), frozenset({"year", "month"})
JOURNEY = regex(
    r"^(?:['’]s?|s['’])? ?(?:of )?(?:\w+ing )?(?:drive|walk|ride|row|flight|bus ride|ferry|crossing|journey)\b"
    r"|^ (?:away )?(?:by|in the) (?:car|train|bus|bike|bicycle|ferry|plane|road|rail|tram)\b"
    r"|^ (?:away )?from (?:home|here|us|me|our (?:house|home)|the (?:house|village|town|airport|motorway))\b",
    re.IGNORECASE,
)
HEARD = regex(  # what went on for so long, and took no current
    r"\b(?:squeal|squeak|rattl|beep|bleep|bark|argu|quarrel|rain|snow|chat|talk|search|queu|smell)\w*"
    r"\b[^.?!;,]{0,20}(?:\bfor|\bthe (?:first|last|whole)|\ball) (?:about |some |almost |nearly |a good )?$"
    r"|\b(?:under|in) (?:the )?(?:sea|salt|fresh|bilge|dirty)? ?water\b[^.?!;,]{0,12}\bfor (?:about |some |almost )?$"
    r"|\b(?:submerged|immersed|drowned)\b[^.?!;,]{0,20}\bfor (?:about |some |almost )?$",
    re.IGNORECASE,
)
ON_HOLD = regex(  # how long somebody waited at the telephone
    r"\b(?:on hold|on the (?:phone|line|telephone)|(?:phone|telephone|call|music)\b[^.?!;,]{0,16}? (?:took|lasted|for)"
    r"|(?:kept|held|left) (?:me|us|him|her)(?: (?:waiting|hanging|there))?)"
    r"(?: for)? (?:about |some |almost |a good |full )*$",
    re.IGNORECASE,
)
UNDER_WAY = regex(  # how long a way took: "it took us two hours to get out of the lock"
    r"\btook (?:us|me|him|her|them|the \w+)(?: (?:about|some|almost|nearly|over|a good|only))* $", re.IGNORECASE
)
BY_BOAT = regex(
    r"^ to (?:get|drive|sail|motor|row|walk|come|cross|find|reach|leave|go|moor|dock|park|tow|beat|pass|clear)\b",
    re.IGNORECASE,
)
HOLDING = regex(
    r"^ (?:on hold|on the (?:phone|line|telephone)|in (?:the|a|your|their) (?:\w+ )?queue|listening|to get through"
    r"|(?:with|of) (?:the|that|your|their|this )?(?: ?\w+){0,2} ?(?:music|tune|jingle|recording)\b"
    r"|before (?:anyone|anybody|someone|somebody|you|they) (?:answered|picked|came|spoke))",
    re.IGNORECASE,
)
WHO = (
    r"\b(?:he|she|i|we|they|who|father|mother|dad|mum|husband|wife|brother|sister|uncle|aunt|neighbou?r|friend|crew|mate"
    r"|skipper|captain|electrician|son|daughter|partner|boss|grandfather|i['’]ve|we['’]ve|he['’]s|she['’]s)\b"
)
TRADE = regex(
    rf"{WHO}[^.?!;]{{0,24}}?\b(?:(?:was|were|been|worked|works|working) (?:as )?(?:an?|the|in|for|with|at) "
    r"|taught|teach|sailed|sailing|married|retired|(?:served|serving) (?:in|as|with|on)|lived|raced|fished|worked as)"
    r"[^.?!;]{0,30}$",
    re.IGNORECASE,
)
OLD_PEOPLE = regex(
    r"\b(?:son|daughter|child|boy|girl|grandson|granddaughter|wife|husband|father|mother|dog|cat)"
    r" (?:is|was|turned|turns|will be) (?:now |only |already |just )?$",
    re.IGNORECASE,
)
YOUNG = (
    r"(?:lads?|lass|boy|girl|student|apprentice|kid|child|toddler|teenager|grand(?:son|daughter|child|father|mother)|nephew"
    r"|niece|son|daughter|youngest|eldest|deckhand|trainee|baby|pupil|cat|dog)"
)
OF_PERSON = regex(rf"\b{YOUNG},? ?\(?(?:who is |now |of |aged |is |only )*$", re.IGNORECASE)
PERSON_NEXT = regex(rf"^[ -]?(?:olds?|of age)?[ -]?{YOUNG}\b", re.IGNORECASE)  # "my 19 year old student"
THINGS = regex(r"\b(?:battery|batteries|agm|gel|lithium|wet|flooded|one|it|bank|fitted|installed)\b", re.IGNORECASE)
MAN = (
    r"(?:neighbou?r|friend|mate|pal|chap|bloke|guy|man|boy|fellow|brother|brother-in-law|cousin|uncle|father|dad|lady|couple"
    r"|people|lad|next door|next boat)"
)
KINDS = r"(?:batter(?:y|ies)|batts?|bank|agms?|gels?|wets?|lithiums?|ones?|set)"
THEIRS = rf"(?:his|her|their|{MAN}['’]s|{MAN}s['’]?) (?:own |old )?(?:\w+ )?{KINDS}"
NO_OTHER = r"(?:(?!\b(?:my|mine|our|ours|we|i)\b)[^.?!;]){0,30}"  # and none of one's own after it
OF_ANOTHER = regex(  # "his have lasted", "my neighbour's AGM batteries are", "the chap next door has had his gel for"
    rf"\b(?:his(?! (?:part|view|opinion|mind|book|eyes|turn|credit|side|word)\b)|hers|theirs|{THEIRS})\b{NO_OTHER}$"
    rf"|\b{MAN}\b(?:(?!\b(?:my|mine|our|ours|we|i|says?|said|thinks?|told)\b)[^.?!;]){{0,30}}"
    rf"\b(?:has|had|got|runs|kept|keeps) (?:had )?(?:his|hers|theirs|them|the same|one|it)\b{NO_OTHER}$",
    re.IGNORECASE,
)
GIVEN_US = regex(  # "a friend gives me his 4 year old AGM": it is ours now
    r"\b(?:giv(?:es?|ing|en)|gave|sells?|sold|selling|lends?|lent|offers?|offered|passes|passed|left|leaves)"
    r" (?:to )?(?:me|us)\b",
    re.IGNORECASE,
)
OWN = regex(  # ... beside the battery that is asked about
    r"\b(?:mine|ours|me|us)\b|\b(?:my|our)\b(?: [\w-]+){0,3}?"
    r" (?:batter|batts?|bank|agm|gel|wet|flooded|lithium|charger|thruster)"
    r"|\b(?:should|must|do|can|may|could|shall|will) (?:i|we)\b",
    re.IGNORECASE,
)
RATE = regex(r"^(?:an?|per|each|every|the) ", re.IGNORECASE)  # "40 races a year" is no age
OFTEN = regex(r"\b(?:times|once|twice|thrice|or so|\d+ \w+s|\w{4,}s) $", re.IGNORECASE)
A_SEASON = regex(r"^ (?:times|days|weekends|outings|trips|races) (?:a|per|each|every) (?:season|year|summer)\b", re.I)
SPENT = regex(
    r"\b(?:paid|pay|costs?|costing|price[ds]?|worth|spent|charged|asks?|asked|wants) (?:\w+ ){0,2}$"
    r"|\b(?:bought|buy|sold|got|had|offered|going|available|on sale|secondhand|new)\b[^.?!;]{0,40}"
    r"\b(?:for|at) (?:only |just |about )?$",
    re.IGNORECASE,
)
FIRST = regex(  # questions that are counted without a mark; "1 battery enough? 2 better?" counts batteries
    r"(?:^|(?<=[.?!;:\n]))\s*1(?= (?!batt|agm|gel|enough|or\b|of\b|x\b|will|would)[a-z])[^.?!;\n]{0,200}\?"
    r"\s*2 (?!batt|better|enough|or\b|of\b|x\b|will|would|then|needed|if\b)[a-z][^.?!;\n]{0,200}\?",
    re.IGNORECASE,
)
WEIGHS = regex(r"\b(?:weigh|heav|lift|carr|light)\w*", re.IGNORECASE)


def is_background(scene: Scene, item: Item) -> bool:
    """Whether a figure only belongs to the tale around the question, and states nothing."""
    if item.part is not None and item.dim and _is_label(scene.text, item.part.span):
        return True
    if item.dim not in ("TIME", "WEIGHT", "NUM", "COUNT") or item.part is None or scene.expected:
        return False
    start, end = item.part.span
    before, after = scene.text[max(0, start - BEFORE) : start], scene.text[end : end + AFTER]
    before = before[max((cut.end() for cut in BREAK.finditer(before)), default=0) :]
    if item.dim == "TIME":
        return _is_time(item, before, after) or _is_anothers(scene, item, before)
    if item.dim == "WEIGHT":
        return item.quantity.text.lower().rstrip().endswith("pounds") and _is_price(before, after)
    return A_SEASON.match(after) is not None


def _is_label(text: str, span: Span) -> bool:
    """Whether a number only counts the questions of a list: the 1 and the 2 of "1 kg saved? 2 up to it?"."""
    if not text[span[0]].isdigit():
        return False
    ahead = text[max(0, span[0] - BEFORE) : span[0]].rstrip()
    if ahead and ahead[-1] not in ".?!;:\n":
        return False
    found = _numbered(text)
    return found is not None and found[0] <= span[0] < found[1]


@lru_cache(maxsize=4)  # asked for each number of a text
def _numbered(text: str) -> Span | None:
    """Where the first questions of a list stand that are counted without a mark."""
    found = FIRST.search(text)
    return found.span() if found else None


def _is_time(item: Item, before: str, after: str) -> bool:
    unit, typed = item.quantity.unit, item.quantity.text
    if unit in HOURS:
        heard = HEARD.search(before) or ON_HOLD.search(before) or HOLDING.match(after)
        heard = heard or (UNDER_WAY.search(before) and BY_BOAT.match(after))
        return JOURNEY.search(after) is not None or heard is not None
    if unit not in YEARS:
        return False
    if OF_PERSON.search(before) or PERSON_NEXT.search(after):
        return True
    if RATE.match(typed):
        return OFTEN.search(before) is not None
    if after.lstrip().lower().startswith("ago"):
        return False  # "fitted when we married, nine years ago"
    told = TRADE.search(before) or (after.lstrip().lower().startswith("old") and OLD_PEOPLE.search(before))
    return bool(told) and THINGS.search(told[0] if told else "") is None


def _is_anothers(scene: Scene, item: Item, before: str) -> bool:
    """Whether the years are those of somebody else's batteries, told beside one's own."""
    if item.quantity.unit not in YEARS or OF_ANOTHER.search(before) is None:
        return False
    return OWN.search(scene.text) is not None and GIVEN_US.search(before) is None


def _is_price(before: str, after: str) -> bool:
    return SPENT.search(before) is not None and not WEIGHS.search(before + after)
