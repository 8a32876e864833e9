"""Numbers of a text that are a sign of danger by themselves: too hot, too many volts of charge, below freezing."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from itertools import pairwise

from grammar.dangers.air import UNNAMED, in_celsius, of_the_air
from grammar.dangers.offered import is_offered

VOLTS = ("v", "volt", "volts")
NO_VOLTS = frozenset(
    (
        "a",
        "amp",
        "amps",
        "ah",
        "m",
        "metre",
        "metres",
        "meter",
        "meters",
        "mm",
        "mm2",
        "cm",
        "ft",
        "feet",
        "foot",
        "kg",
        "lb",
        "lbs",
        "l",
        "litre",
        "litres",
        "h",
        "hour",
        "hours",
        "min",
        "minutes",
        "w",
        "kw",
        "knots",
        "miles",
        "c",
        "kilo",
        "kilos",
        "wide",
        "tall",
        "deep",
        "x",
        "inch",
        "inches",
        "percent",
        "bar",
        "psi",
        "gallon",
        "gallons",
        "euro",
        "euros",
        "ohm",
        "ohms",
        "by",
    )
)
FALLS = frozenset(
    {"drop", "drops", "dropped", "fall", "falls", "fell", "dip", "dips", "dipped", "sag", "sags", "sagged", "down"}
)
DIRECTIONS = frozenset(  # "66 degrees north" is a place, a "90 degree knockdown" an angle
    (
        *("north", "south", "latitude", "east", "west", "lat", "knockdown", "knockdowns", "heel", "roll", "tilt"),
        *("list", "turn", "bend", "bends", "angle", "angles", "elbow", "knock"),
    )
)
SIDES = frozenset({"by", "x"})  # lead to the other side of "31.5 cm by 17.5"
LENGTHS = frozenset({"cm", "mm", "inch", "inches", "in", "long", "wide", "deep", "high", "tall"})
LEAST_F, MOST_F = 59.0, 90.0  # degrees that are told with a hydrometer, without their scale: Fahrenheit, of mild acid
HEATED = frozenset(  # of a message in which they may be those of a battery that is too hot
    {
        *("c", "celsius", "hot", "warm", "rising", "hand", "touch", "case", "charge", "charging", "charger", "battery"),
        *("lid", "side", "batteries", "cooking", "boiling"),
    }
)
FLAT = 9.0  # volts under which a lithium battery has switched off or is empty,
CELL = (2.4, 3.8)  # where they are not those of one cell
WIDE = 1.5
NEEDLE = 4  # words between a needle and where it stands
GAUGES = frozenset({"needle", "voltmeter", "volts", "voltage"})
TILTED = frozenset({"tipped", "tilted", "tilt", "angle", "heel", "heeled", "heeling", "rotated", "lean", "leaning"})
COOL, MILD = 12.0, 25.0  # C
COUNTED = frozenset(  # before "feet" they make it a length, and no part of anybody
    (
        *("three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen"),
        *("fifteen", "sixteen", "eighteen", "twenty", "thirty", "forty", "fifty", "hundred", "many"),
    )
)
MILLIAMPS = frozenset({"ma", "milliamp", "milliamps"})
ONE_READS = (10.5, 14.9)  # volts of one 12 V battery
ONES = frozenset({"one", "first", "second", "left", "right", "lower", "upper", "other"})
ONE_BEFORE = 4  # words from the one to its volts
DEGREES = frozenset({"c", "deg", "degc", "degree", "degrees", "celsius", "centigrade", "grad"})


def figures(words: list[str], commas: Collection[int]) -> list[str]:
    """Numbers that are a sign by themselves get a name: too hot, too high a charging voltage, below freezing."""
    named = _units(words)
    systems = _systems(words)
    others = {word for word, after in pairwise(words) if after in NO_VOLTS}  # the bare twin of "15.5 inches" is inches
    tilted = not TILTED.isdisjoint(words)
    acid = any(_is_gravity(word) for word in words)  # its degrees are told to correct it by
    for at, word in enumerate(words):
        if not "0" <= word[:1] <= "9":
            continue
        value = float(word.replace(",", "."))
        after = words[at + 1] if at + 1 < len(words) else ""
        if after == "a" or after in MILLIAMPS or _is_elsewhere(value, words, at, tilted, commas):
            continue
        if acid and after in UNNAMED and LEAST_F <= value <= MOST_F and HEATED.isdisjoint(words):
            continue
        if _is_hot(value, words, at):
            named[at] = word if words[at - 1 : at] in (["#-"], ["minus"]) else "#hot"  # "freezes at -59 C"
        elif weather := _weather(value, words, at):
            named[at] = weather
        elif (
            after in VOLTS
            or (_is_broken(word) and after not in NO_VOLTS and word not in others and not _is_side(words, at))
            or (_is_needle(words, at) and words[at - 1 : at] not in (["minus"], ["#-"], ["-"]))
        ):
            low = after in VOLTS and 0.5 < value < FLAT and not word.isdigit() and not CELL[0] < value < CELL[1]
            high = _too_high(value, systems) and not _is_range(words, at) and not is_offered(words, at)
            named[at] = "#high" if high else "#low" if low else word
        elif after == "f" and value <= 32:
            named[at] = "#-"
    return named


def _systems(words: Sequence[str]) -> set[str]:
    """The volts that are named and may be a system's, against which a reading is held."""
    systems = {word for word, after in pairwise(words) if after in VOLTS}
    if FALLS & set(words):  # then one battery's volts are no reading
        systems.discard("12")
    if _reads_one_by_one(words):  # "a 24 V charger on two in series: one reads 13.1, the other 15.7"
        systems -= {"24", "36", "48"}
    return systems


def _units(words: Sequence[str]) -> list[str]:
    """The words, named where a number before them makes another thing of them: amps and no article, no feet."""
    named = list(words)
    for at, (number, word) in enumerate(pairwise(words), 1):
        digits = "0" <= number[:1] <= "9"
        if digits and word == "a":
            named[at] = "amp"
        elif digits and word in MILLIAMPS:
            named[at - 1] = "#ma"
        elif (digits or number in COUNTED) and word in ("feet", "foot"):
            named[at] = "ft"
    return named


def _is_elsewhere(value: float, words: Sequence[str], at: int, tilted: bool, commas: Collection[int]) -> bool:
    """Whether degrees are those of a compass, a tilt or the air, and of no battery."""
    after, beyond = ([*words[at + 1 : at + 3], "", ""])[:2]
    if after in DEGREES and (beyond in DIRECTIONS or tilted):
        return True
    return (after in DEGREES or after == "f") and of_the_air(value, words, at, commas)


def _is_hot(value: float, words: Sequence[str], at: int) -> bool:
    """Whether these degrees are more than a sound battery has; those of a told Fahrenheit are more from 140."""
    after = words[at + 1 : at + 2]
    if after == ["f"] or in_celsius(value, words, at) is not None:
        return 140 <= value <= 212
    return bool(after) and after[0] in DEGREES and 50 <= value <= 100


def _weather(value: float, words: Sequence[str], at: int) -> str:
    """The name of degrees of ordinary weather, which no battery gets by a fault of its own; "" for other numbers."""
    after, before = words[at + 1 : at + 2], words[at - 1 : at]
    celsius = value if after and after[0] in DEGREES else (value - 32) / 1.8 if after == ["f"] else None
    told = in_celsius(value, words, at)
    celsius = celsius if told is None else told
    if celsius is None or before in (["#-"], ["minus"], ["below"]) or not 0.0 < celsius <= MILD:
        return ""
    return "#cool" if celsius <= COOL else "#mild"


def _is_gravity(word: str) -> bool:
    """Whether a number is what a hydrometer shows of acid: 1.265."""
    return len(word) == len("1.265") and word[:2] in ("1.", "1,") and "100" <= word[2:] <= "300"


def _is_broken(number: str) -> bool:
    return "." in number or "," in number


def _is_side(words: Sequence[str], at: int) -> bool:
    """Whether it is the second side of "31.5 cm by 17.5"; "killed by 15.2" is of volts."""
    first = words[at - 2] if at > 1 and words[at - 1] in SIDES else ""
    return "0" <= first[:1] <= "9" or first in LENGTHS


def _is_needle(words: list[str], at: int) -> bool:
    """Whether a needle stands at this bare number: a gauge reads volts where no other unit follows."""
    after = words[at + 1] if at + 1 < len(words) else ""
    before = words[max(0, at - NEEDLE) : at]
    return after not in NO_VOLTS and after not in ("amp", "percent") and not GAUGES.isdisjoint(before)


def _reads_one_by_one(words: Sequence[str]) -> bool:
    """Whether the volts of one battery of several are told: "one reads 13.1", "the left one is at 12.9"."""
    found = (at for at, word in enumerate(words) if _is_broken(word) and word[:1].isdigit())
    read = (at for at in found if ONE_READS[0] <= float(words[at].replace(",", ".")) <= ONE_READS[1])
    return any(not ONES.isdisjoint(words[max(0, at - ONE_BEFORE) : at]) for at in read)


def _is_range(words: Sequence[str], at: int) -> bool:
    """Whether it ends a device's wide range, "9-33 V": no reading wanders that far."""
    before = words[at - 1] if at else ""
    return "0" <= before[:1] <= "9" and float(words[at].replace(",", ".")) > WIDE * float(before.replace(",", "."))


def _too_high(volts: float, systems: set[str]) -> bool:
    """Whether a 12 V or 24 V battery takes harm from these volts; a larger system that is named has them at rest."""
    if 15.0 <= volts <= 17.9:
        return "12" in systems or not systems & {"24", "36", "48"}
    return 30.0 <= volts <= 35.8 and not systems & {"36", "48"}
