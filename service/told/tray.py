"""The place for a battery as the customer measured it: the inside of a tray, what is spare, whose tray it is."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass, field
from functools import lru_cache

from grammar.text.patterns import regex

HOLD_DOWN = 10.0  # mm more than the case, along and across, for the hold-down
LUGS = 20.0  # mm above the case
TOLERANCE = 2.0  # mm that a case may be larger than its size says
UNITS = {"m": 1.0, "c": 10.0}  # by the first letter: mm, millimetres, cm, centimetres
INCH = 25.4  # mm
NUMBER = r"(\d+ \d/\d|\d/\d|\d+(?:[.,]\d+)?(?: ?1/2)?|half an?|quarter)"
UNIT = r" ?-?(mm|cm|(?:milli|centi)met(?:re|er)s?|in(?:ch(?:es)?)?\b|\"|'')"
BY = rf"(?:{UNIT})? ?(?:x|by|\*|×) ?"
INSIDE = regex(rf"{NUMBER}{BY}{NUMBER}(?:{BY}{NUMBER})?{UNIT}", re.IGNORECASE)
BARE_BY = r"(?: ?mm)? ?(?:x|by|\*|×) ?"
BARE = regex(  # no unit: a hundred and more each way are millimetres, as no place for a battery is metres long
    rf"\b(\d{{3,4}}){BARE_BY}(\d{{3,4}})(?:{BARE_BY}(\d{{3,4}}))?\b(?!{UNIT}|{BARE_BY}\d)", re.IGNORECASE
)
IN_MILLIMETRES = 100.0
HEIGHT = regex(rf"\b(?:height|headroom|high|tall|depth)(?: is| of|:)? {NUMBER}(?:{UNIT})?", re.IGNORECASE)
HIGH = regex(rf"\s*(?:x|by|and|,)\s*{NUMBER}(?:{UNIT})?\s*(?:high|tall|height|deep|inside height)\b", re.IGNORECASE)
BAY = regex(
    r"\b(?:bay|inside|inner|internal(?:ly)?|recess|compartment|cubby)\b"
    r"|\b(?:space|room|place|gap|hole|well)\b[^.?!;\d]{0,16}\d+(?:[.,]\d+)?[^.?!;\d]{0,8}(?:x|by|\*|×) ?\d"
    r"|(?:x|by|\*|×) ?\d+(?:[.,]\d+)?[^.?!;\d]{0,14}\b(?:of )?(?:space|room)\b",
    re.IGNORECASE,
)
FREE = r"(?: \w+)? (?:spare|free|room|gap|clearance|play)\b(.{0,25})"
SPARE = regex(rf"{NUMBER}{UNIT}{FREE}", re.IGNORECASE)
NAMED = {  # "13 inch length, 7 wide, 9.5 high", "length 13 in"
    "length": r"(?:long|length|in length|of length)",
    "width": r"(?:wide|width|in width|of width|across)",
    "height": r"(?:high|height|tall|in height|headroom)",
}
OF_SIDE = rf"{NUMBER}(?:{UNIT})?(?: of| in)? {{name}}\b"
SIDED = regex(f"{NAMED['width']}|deep", re.IGNORECASE)
EACH_END = regex(r"\b(?:each|either|both) (?:ends?|sides?)\b", re.IGNORECASE)
CASE = (
    r"(?:(?:bci )?(?:group|grp|gp|size|type|case)[ -]?(?:size )?)?(\d{2}[a-z]?|8d|4d|gc2)(?:'?s)?\b"
    r"(?! ?(?:mm|cm|in\b(?! (?:there|it|now|the|place|that|my|our)\b)|\"|x ?\d))"
)
A = r"(?:an? |the |my |our |old |one |only )*"
PLACE = r"(?:tray|box|space|recess|hold-?down|holder|shelf|bay|slot|cradle|compartment|well|hole|spot)"
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
    r"\b(?:would|will|can|could|does|should|may|might|want|thinking (?:of|about)|considering"
    r"|fit(?:ting)?|put(?:ting)? in|buy(?:ing)?|get(?:ting)?"
    r"|(?:go(?:ing)?|mov(?:e|ing)|chang(?:e|ing)|upgrad(?:e|ing)|step(?:ping)? up) to)\b"
    rf"[^.?!;,\d]{{0,24}}?\b{CASE}",
    re.IGNORECASE,
)
ROW_OF = r"(?:(?:bci )?(?:group|grp|gp|size)s? )?(?:an? )?(?:\d{2}[a-z]?|[48]d|gc2)(?:'?s)?"
ROW = regex(rf"\b{ROW_OF}(?:(?:,? (?:or|and|vs) |, ?| ?/ ?){ROW_OF}){{2,}}\b(?! ?(?:v|volts?|ah|a|amps?|mm)\b)", re.I)
IN_ROW = regex(r"\b(\d{2}[a-z]?|[48]d|gc2)(?<!s)(?='?s?\b)", re.IGNORECASE)
ASKED_IN_CM = regex(r"(?<![\d½] )(?<!\d)\b(?:cm|centimet(?:re|er)s?)\b(?!2|²)", re.IGNORECASE)
METRES = r"mm|cm|in(?:ch(?:es)?)?\b"
HEADROOM = regex(
    rf"\b(?:height|headroom|clearance)\b[^.?!;\d]{{0,25}}(?P<after>\d+(?:[.,]\d+)?)\s?(?P<unit>{METRES})"
    rf"|(?P<before>\d+(?:[.,]\d+)?)\s?(?P<unit_>{METRES})\s(?:of\s|in\s)?(?:height|headroom|high|clearance)\b",
    re.IGNORECASE,
)
LONG = regex(
    rf"\b{PLACE}\b(?:[^.?!;\d]{{0,24}},)?(?: (?:is|has|of|measures|it's|inside|only|just|about|that is))*"
    rf" {NUMBER}{UNIT}(?: inside)?,? (?:long|in length|lengthwise|lengthways|end to end)\b",
    re.IGNORECASE,
)
KEPT = "place:"  # begins the cue of a place that was measured in an earlier message
FAR = 40  # characters
ASKED = regex(r"\b(?:will|would|can|could|does|do|did)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Place:
    """Millimetres inside: long, wide, and high where that was measured."""

    length: float
    width: float
    height: float | None = None
    inches: bool = field(default=False, repr=False, compare=False)  # told in inches, so answered in them


@lru_cache(maxsize=2)  # asked again for every case of the table
def inside(text: str) -> Place | None:
    """The inside of a tray or box.

    >>> inside("tray inside is 13 x 7 in")
    Place(length=330.2, width=177.8, height=None)
    >>> inside("bay is 530 x 210 mm by 240 high")
    Place(length=530.0, width=210.0, height=240.0)
    """
    found = INSIDE.search(text)
    if not found:
        return by_name(text) or without_unit(text)
    one, _, two, _, three, unit = found.groups()
    if three is None and (high := HIGH.match(text, found.end())):  # "530 x 210 mm by 240 high"
        three = high.group(1)
    sides = sorted((_millimetres(one, unit), _millimetres(two, unit)), reverse=True)
    return Place(sides[0], sides[1], _millimetres(three, unit) if three else None, _inches(unit))


def without_unit(text: str) -> Place | None:
    """The inside in numbers alone, each of a hundred and more, so in millimetres.

    >>> without_unit("box 330x175 inner? height 240"), without_unit("a tray 320 x 180, 250 high")
    (Place(length=330.0, width=175.0, height=240.0), Place(length=320.0, width=180.0, height=250.0))
    >>> without_unit("a tray 32 x 18")
    """
    found = BARE.search(text)
    if not found:
        return None
    one, two, three = found.groups()[:3]
    high = HIGH.match(text, found.end()) or HEIGHT.search(text)
    height = float(three) if three else _millimetres(high[1], high[2] or "mm") if high else None
    if height is not None and height < IN_MILLIMETRES:
        return None
    sides = sorted((float(one), float(two)), reverse=True)
    return Place(sides[0], sides[1], height)


def by_name(text: str) -> Place | None:
    """The inside told side by side; a unit that is told once holds for all, and hundreds alone are millimetres.

    >>> by_name("have 13 inch length, 7 wide, 9.5 high")
    Place(length=330.2, width=177.8, height=241.3)
    >>> by_name("a shelf 50 centimetres long and 24 deep")
    Place(length=500.0, width=240.0, height=None)
    """
    if not SIDED.search(text):  # most texts name no side, and the search for a number before one is slow
        return None
    found = {side: re.search(OF_SIDE.format(name=name), text, re.IGNORECASE) for side, name in NAMED.items()}
    if not found["width"]:  # of a shelf, from its front to its back
        found["width"] = re.search(OF_SIDE.format(name="deep"), text, re.IGNORECASE)
    told = {side: match.groups() for side, match in found.items() if match}
    units = {unit.lower() for _, unit in told.values() if unit}
    if not units and all(_millimetres(number, "mm") >= IN_MILLIMETRES for number, _ in told.values()):
        units = {"mm"}
    if not {"length", "width"} <= set(told) or len(units) != 1:
        return None
    (unit,) = units
    sides = {side: _millimetres(number, unit) for side, (number, _) in told.items()}
    return Place(sides["length"], sides["width"], sides.get("height"), _inches(unit))


def as_cue(place: Place) -> str:
    """A place as a cue of its thread; `of_before` reads it.

    >>> of_before(["place:330.2,177.8,,in"])
    Place(length=330.2, width=177.8, height=None)
    """
    return f"{KEPT}{place.length},{place.width},{place.height or ''},{'in' if place.inches else ''}"


def of_before(cues: Collection[str]) -> Place | None:
    """The place that an earlier message measured, by the cues of its thread."""
    found = next((name.removeprefix(KEPT).split(",") for name in cues if name.startswith(KEPT)), None)
    if found is None:
        return None
    length, width, height, unit = found
    return Place(float(length), float(width), float(height) if height else None, bool(unit))


def is_measured(text: str) -> bool:
    """Whether measures are those of a place, by its name: "battery bay", "inside"."""
    return bool(BAY.search(text))


def spare(text: str) -> float | None:
    """What is free along a battery, both ends together.

    >>> spare("box has about 1/2 inch spare at each end"), spare("there is 30 mm of room"), spare("12 mm cable")
    (25.4, 30.0, None)
    """
    found = SPARE.search(text)
    if not found:
        return None
    both = 2 if EACH_END.search(found.group(3)) else 1
    return _millimetres(found.group(1), found.group(2)) * both


def length_alone(text: str) -> float | None:
    """The length of a place of which no other side is told.

    >>> length_alone("the tray is 13 inches long inside"), length_alone("the case is 330 mm long")
    (330.2, None)
    >>> length_alone("a moulded tray in the bow, 300 mm long"), length_alone("the box is 290 mm inside, lengthways")
    (300.0, 290.0)
    """
    found = LONG.search(text)
    return _millimetres(found[1], found[2]) if found else None


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

    >>> to_go_in("would a 31 do instead of what is there"), to_go_in("a 31 or a 27")
    ('31', '')
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


def _inches(unit: str) -> bool:
    return unit[:1].lower() not in UNITS


def _millimetres(number: str, unit: str) -> float:
    """A number as people write it: "13 1/2", "half an"."""
    scale = UNITS.get(unit[:1].lower(), INCH)
    words = {"half": 0.5, "quarter": 0.25}.get(number.lower().split()[0])
    if words is not None:
        return words * scale
    total = 0.0
    for part in re.findall(r"\d/\d|\d+(?:[.,]\d+)?", number):
        top, _, bottom = part.replace(",", ".").partition("/")
        total += float(top) / float(bottom) if bottom and float(bottom) else float(top)
    return round(total * scale, 1)


def in_centimetres(text: str) -> bool:
    """Whether the size is asked in centimetres.

    >>> in_centimetres("group 27 in cm?"), in_centimetres("the bay is 53 cm long")
    (True, False)
    """
    return bool(ASKED_IN_CM.search(text))


@lru_cache(maxsize=2)  # asked again for every case of the table
def headroom(text: str) -> float | None:
    """The height in mm that a place has, where it is told alone.

    >>> headroom("the height is only 18 cm in front"), headroom("it is 12 V high")
    (180.0, None)
    """
    found = None if INSIDE.search(text) else HEADROOM.search(text)  # of a whole place the height alone tells nothing
    return _millimetres(found["after"] or found["before"], found["unit"] or found["unit_"]) if found else None
