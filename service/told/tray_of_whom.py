"""Whose tray it is: the one aboard now, the one for another battery, one in a row."""

from __future__ import annotations

import re
from functools import lru_cache

from grammar.text.patterns import regex

PLACE = r"(?:tray|box|space|recess|hold-?down|holder|shelf|bay|slot|cradle|compartment|well|hole|spot)"

CASE = (
    r"(?:(?:bci )?(?:group|grp|gp|size|type|case)[ -]?(?:size )?)?(\d{2}[a-z]?|8d|4d|gc2)(?:'?s)?\b"
    r"(?! ?(?:mm|cm|in\b(?! (?:there|it|now|the|place|that|my|our)\b)|\"|x ?\d))"
)
A = r"(?:an? |the |my |our |old |one |only )*"
FOR = r"(?:for|takes?|holds?|fits?|of|suits?|is|was|size|made to take)"
OF_GROUP = regex(rf"\b(\d{{2}}[a-z]?|8d|4d|gc2) ?(?:'s )?{PLACE}\b", re.IGNORECASE)
MADE_FOR = regex(rf"\b{PLACE}s?\b[^.?!;\d]{{0,30}}?\b{FOR} {A}{CASE}", re.IGNORECASE)
STOOD = regex(
    rf"\b(?:where|instead of|in (?:the )?place of|in for|replac\w+|swap\w*(?: out)?) {A}{CASE}", re.IGNORECASE
)
PLACES = regex(rf"\b(?:same|old) {PLACE}", re.IGNORECASE)
THE_SAME = regex(
    rf"\b{CASE}[^?!;]{{0,60}}?\b{A}{CASE}[^.?!;]{{0,40}}?\b(?:the|that|its) (?:same|old) {PLACE}", re.IGNORECASE
)
NOW = r"(?:(?:now|currently|at present|already|just|still|only) )?"
OURS = regex(  # the case aboard: "ours is a 27 now", "my battery is a group 27"
    rf"\b(?:ours|mine|(?:my|our|the) (?:(?:old|present|current|existing|own) )?(?:batter(?:y|ies)|batt|one))"
    rf"(?:'s| is| are| was)? {NOW}{A}{CASE}",
    re.IGNORECASE,
)
HAVE = regex(
    rf"\b(?:(?:i|we|he|she|they|boat)(?:'ve| have| has|'s)|got|there(?:'s| is| sits)) (?:got )?{NOW}{A}{CASE}"
    r"(?! (?:in mind|in view))",
    re.IGNORECASE,
)
WANTED = regex(  # the case that is to go in: "would a 31 drop in", "thinking of a 31"
    r"\b(?:would|will|can|could|does|should|may|might|want|(?:love|like|prefer|fancy)(?: to (?:fit|have|use|put))?"
    r"|thinking (?:of|about)|considering"
    r"|fit(?:ting)?|put(?:ting)? in|buy(?:ing)?|get(?:ting)?"
    r"|(?:go(?:ing)?|mov(?:e|ing)|chang(?:e|ing)|upgrad(?:e|ing)|step(?:ping)? up) to)\b"
    rf"[^.?!;,\d]{{0,24}}?\b{CASE}",
    re.IGNORECASE,
)
ROW_OF = r"(?:(?:bci )?(?:group|grp|gp|size)s? )?(?:an? )?(?:\d{2}[a-z]?|[48]d|gc2)(?:'?s)?"
ROW = regex(rf"\b{ROW_OF}(?:(?:,? (?:or|and|vs) |, ?| ?/ ?){ROW_OF}){{2,}}\b(?! ?(?:v|volts?|ah|a|amps?|mm)\b)", re.I)
IN_ROW = regex(r"\b(\d{2}[a-z]?|[48]d|gc2)(?<!s)(?='?s?\b)", re.IGNORECASE)
FAR = 40  # characters
ASKED = regex(r"\b(?:will|would|can|could|does|do|did)\b", re.IGNORECASE)


def whose(text: str) -> str:
    """The case size for which the place is made, or that stood there; "" where it is not said.

    >>> whose("group 27 tray"), whose("tray was built for a 24, they sell 27s"), whose("a 31 where a 27 was")
    ('27', '24', '27')
    >>> whose("my battery is a group 27, would a group 31 drop into the same tray")
    '27'
    >>> whose("will the tray take a 27"), whose("will the tray take a 27 instead of a 24")
    ('', '24')
    """
    if found := OF_GROUP.search(text) or STOOD.search(text) or the_same(text):
        return found[1].upper()
    made = next((one for one in MADE_FOR.finditer(text) if not ASKED.search(_before(text, one.start()))), None)
    return made[1].upper() if made else ""


def aboard(text: str) -> str:
    """The case that they have, where they tell it, or hers where only the one that is to go in is told; else "".

    >>> aboard("ours is a group 27, would a 31 drop in"), aboard("I've a 31 in there, can I put in a 27")
    ('27', '31')
    >>> aboard("is a 31 better than a 27")
    ''
    """
    found = OURS.search(text) or HAVE.search(text)
    return found[1].upper() if found else ""


def to_go_in(text: str) -> str:
    """The case that is to go in: "thinking of a 31"; "" where it is not told.

    >>> to_go_in("would a 31 do instead of what is there"), to_go_in("I'd love a 27"), to_go_in("a 31 or a 27")
    ('31', '27', '')
    """
    found = WANTED.search(text)
    return found[1].upper() if found else ""


def is_choice(text: str, pair: tuple[str, str]) -> bool:
    """Whether an "or" or a "vs" stands between two cases, so that neither is told to be aboard.

    >>> is_choice("group 31 or group 27? would a 31 fit", ("31", "27")), is_choice("a 31, ours is a 27", ("31", "27"))
    (True, False)
    """
    places = sorted(found.span() for name in pair if (found := re.search(rf"\b{name}", text, re.IGNORECASE)))
    between = text[places[0][1] : places[1][0]] if len(places) > 1 else ""
    return re.search(r"\b(?:or|vs?|versus|against)\b", between) is not None


@lru_cache(maxsize=2)  # asked again for every case of the table
def row(text: str) -> tuple[str, ...]:
    """The cases of three and more that are listed: "24, 27 or 31".

    >>> row("group 24, 27 or 31, which one"), row("a 24 or a 27")
    (('24', '27', '31'), ())
    """
    found = ROW.search(text)
    return tuple(dict.fromkeys(name.upper() for name in IN_ROW.findall(found[0]))) if found else ()


def the_same(text: str) -> re.Match[str] | None:
    """The case that stands where another one is to go in: "mine is a 27, would a 31 go into the same tray"."""
    return THE_SAME.search(text) if PLACES.search(text) else None  # the words of the place first: they are found fast


def _before(text: str, at: int) -> str:
    """The words of the clause before a place."""
    return re.split("[.?!;,]", text[max(0, at - FAR) : at])[-1]
