"""The place for a battery as the customer measured it: the inside of a tray, what is spare, whose tray it is."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass, field
from functools import lru_cache

from grammar.text.patterns import regex
from service.told.tray_of_whom import PLACE

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
    r"|(?:x|by|\*|×) ?\d+(?:[.,]\d+)?[^.?!;\d]{0,14}\b(?:of )?(?:space|room)\b"
    r"|\b(?:fits?|goe?s?|drops?|slots?)\b[^.?!;\d]{0,12}\d+(?:[.,]\d+)?[^.?!;\d]{0,8}(?:x|by|\*|×) ?\d",
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
IS_THE_CASE = regex(  # measures that are said of a battery, not of the place for one
    r"\b(?:batter(?:y|ies)|case|groups?|sizes?)(?: size)?"
    r"(?: (?:is|are|was|has|have|of|an?|about|measur\w+|that))*[:,]? \d"
    r"|\b(?:is|are) (?:what|which) (?:bci )?(?:group|case|size)"
    r"|\b(?:what|which) (?:group|case)(?: size)? is (?:it|this|that|(?:my|our|the) (?:one|battery))\b",
    re.IGNORECASE,
)
SHORT = r"(\d{1,2}(?:\.\d+)?)"
NO_UNIT = regex(
    rf"\b{SHORT}{BARE_BY}{SHORT}{BARE_BY}{SHORT}\b(?!{UNIT}|{BARE_BY}\d|\.\d| ?(?:v|ah|a)\b)",
    re.IGNORECASE,
)
IN_A_PLACE = regex(rf"\b(?:{PLACE}|fits?|goe?s? in\w*|box|shelf)\b", re.IGNORECASE)
KEPT = "place:"  # begins the cue of a place that was measured in an earlier message


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


def of_the_case(text: str) -> tuple[Place, ...]:
    """The length, width and height of a battery, where they are its own and no place's; without a unit as inches and
    as centimetres.

    >>> of_the_case("which group is 13 x 6.8 x 9.4 inches")
    (Place(length=330.2, width=172.7, height=238.8),)
    >>> of_the_case("which group goes in 13 x 6.8 x 9.4 inches")
    ()
    """
    if not IS_THE_CASE.search(text) or IN_A_PLACE.search(text):
        return ()
    found, bare = inside(text), NO_UNIT.search(text)
    if found:
        return (found,) if found.height else ()
    if bare is None:
        return ()
    one, two, height = bare.groups()[:3]
    return _outside(one, two, height, "in"), _outside(one, two, height, "cm")


def _outside(one: str, two: str, height: str, unit: str) -> Place:
    sides = sorted(_millimetres(side, unit) for side in (one, two))
    return Place(sides[1], sides[0], _millimetres(height, unit), _inches(unit))


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
    >>> headroom("30 cm long by 18 cm wide by 23 cm high")
    """
    whole = INSIDE.search(text) or by_name(text)  # of a whole place the height alone tells nothing
    found = None if whole else HEADROOM.search(text)
    return _millimetres(found["after"] or found["before"], found["unit"] or found["unit_"]) if found else None
