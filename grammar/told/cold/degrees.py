"""Degrees told, as Celsius: "eight under", "by min 18", "locker about 15"; or as the rest of the message suggests."""

from __future__ import annotations

import re

from grammar.reading import Quantity
from grammar.scene.claims import UNSURE, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.canonical import in_unit
from grammar.text.patterns import regex
from grammar.told.words import stops

BARE = frozenset({"NUM", "COUNT"})
LOWEST, WARMEST = 45.0, 40.0  # degrees below zero, above it
ZERO = frozenset({"zero", "nought", "nil", "freezing", "celsius"})
UNDER = frozenset({"under", "below"})
COLD = frozenset(
    {
        *("forecast", "frost", "frosts", "frosty", "ice", "icy", "cold", "colder", "winter", "winters", "unheated"),
        *("barn", "shed", "garage"),
    }
    | {
        *("night", "nights", "tonight", "overnight", "freeze", "freezes", "frozen", "outside", "outdoors", "snow"),
        *("liquid",),
    }
    | {"weather", "dawn", "thermometer", "mercury", "temperature", "temps", "january", "february", "december"}
)
GOES_ON = frozenset(
    {"", "in", "at", "by", "out", "outside", "here", "and", "tonight", "overnight", "with", "when", "now"}
)
BY = frozenset({"by", "at", "on", "in", "to", "of", "is", "its", "for", "bij", "bei", "", ".", ","})
OUT = frozenset({"outside", "outdoors", "overnight", "tonight"})
SHOWN_BY = frozenset({"thermometer", "mercury"})
PLACES = frozenset(
    {"locker", "shed", "barn", "cabin", "garage", "forepeak", "workshop", "cellar", "boathouse", "saloon", "bench"}
)
SHOWS = frozenset({"says", "reads", "shows", "at", "on"})
ABOUT = frozenset({"about", "around", "at", "near", "is", "stays", "roughly", "say"})
HOT = 45.0  # nobody's battery space is so warm in Celsius, but beside an engine or in the sun
HOTTEST = 65.0
HEATED = frozenset(
    {
        *("engine", "diesel", "sun", "tropics", "exhaust", "heat", "bakes", "bake", "baking", "hot", "desert"),
        *("summer", "shade", "hits", "arvo"),
    }
)
TOLD = regex(r"(?:[^a-z]|deg|degrees?|degs)c(?:elsius|entigrade)?\b|celsius|centigrade|zero|freez")
AMERICAN = frozenset({"foot", "inch", "pound", "degree_Fahrenheit"})
METRIC_WORDS = frozenset(
    {"mm", "cm", "millimetres", "millimeters", "centimetres", "centimeters", "metres", "kilos", "kg"}
)
METRIC = frozenset({"meter", "centimeter", "kilogram", "millimeter ** 2", "millimeter", "liter"})
FAHRENHEIT = frozenset({"f", "fahrenheit", "farenheit", "fahrenheight"})
AMERICA = frozenset({"american", "yankee", "yank"})
SCALES = frozenset({"thermometer", "degrees", "scale", "degree"})
CONVERTED = frozenset({"in", "to", "into"})  # "what is that in Fahrenheit"
FROST_DEGREES = (["frost", "degrees"], ["frost", "degree"], ["degrees", "frost"])  # "7 frost degrees"
FROST = frozenset({"freezes", "freezing", "freeze", "froze", "frost"})
REAL = regex(
    r"\bin (?:real|proper|normal|honest|our|european|metric|sensible) (?:degrees|ones|money|figures)\b"
    r"|\b(?:in|to|into) (?:celsius|centigrade|c)\b",
    re.IGNORECASE,
)
HITS = regex(  # "hits 44 in the battery locker", "gets to 40 down there of an afternoon"
    r"\b(?:hits?|reach(?:es)?|gets? (?:up )?to|climbs? to|goes (?:up )?to|tops?) $", re.IGNORECASE
)
IN_THERE = regex(
    r"(?: degrees)? (?:in|inside|down|under) (?:the|my|our|that|there|here)(?: \w+){0,2}? ?"
    r"(?:locker|box|compartment|bilge|lazarette|engine room|space|hold|there|here)\b",
    re.IGNORECASE,
)
ON_THERMOMETER = regex(  # "88 on the old thermometer in Fahrenheit"
    r"\b(?P<shown>\d{1,3}) (?:on|by) (?:the|my|our|an?|his) (?:\w+ ){0,2}thermometer,? (?:\w+ ){0,2}?in (?:degrees )?"
    r"(?:fahrenheit|f)\b",
    re.IGNORECASE,
)
HOTTEST_F = 130.0  # anywhere on a boat
ROUNDED = 0.6  # °C
FAR = 60  # characters
FOLLOWS = 6  # words
NEAR = 2  # words
MOST_WEIGHT = 1000.0  # pounds of a battery


def told_under(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of bare numbers that are degrees."""
    bare = [
        item for item in scene.measured if item.dim in BARE and claims.get(item.at) in (None, Claim("-", "grammar"))
    ]
    found = {item.at for item in bare if _is_of_degrees(scene, item)}
    loose = [item for item in scene.quantities(*BARE) if item.at in claims and claims[item.at].how in UNSURE]
    found |= {item.at for item in loose if is_under(scene, item)}
    return {at: Claim("ambient.temperature", "role") for at in found}


def _is_of_degrees(scene: Scene, item: Item) -> bool:
    return (
        is_under(scene, item)
        or _is_zero(scene, item)
        or _is_minus(item)
        or _is_signed(scene, item)
        or _is_of_a_place(scene, item)
        or _on_thermometer(scene, item)
    )


def is_under(scene: Scene, item: Item) -> bool:
    """Whether degrees are so many under zero: "forecast eight under", "five under zero", "by min 18"."""
    value = item.quantity.value
    if isinstance(value, str) or not 0 < value <= LOWEST or value % 1:
        return False
    if [scene.word(item.start - 2), scene.word(item.start - 1)] == ["frost", "of"] and item.dim in BARE:
        return True
    if [scene.word(item.end), scene.word(item.end + 1)] in FROST_DEGREES and item.dim in BARE:
        return True
    if scene.word(item.end) in UNDER:
        follows = scene.word(item.end + 1)
        mark = scene.after(item)
        after = scene.after(mark) if mark is not None else None
        ends = after is None or after.kind == "mark" or follows in GOES_ON
        cold = bool(COLD & scene.vocabulary) or scene.word(item.start - 1) == "its"  # "it's eleven under"
        return follows in ZERO or (scene.word(item.end) == "under" and ends and cold)
    before = scene.at_word[item.start - 2] if item.start > 1 else None
    least = scene.word(item.start - 1) == "min" and item.dim in BARE and scene.word(item.start - 2) in BY
    ends = stops(scene, item, ("how", "what", "will", "and", "in"))
    return least and ends and (before is None or not before.dim)


def _is_zero(scene: Scene, item: Item) -> bool:
    """Whether it is zero out there: "when it's zero outside", "zero overnight"."""
    return item.quantity.value == 0 and scene.word(item.end) in OUT


def _is_minus(item: Item) -> bool:
    """Whether it has a minus of its own: "640 CCA by minus ten"."""
    value = item.quantity.value
    return (
        not isinstance(value, str) and -LOWEST <= value < 0 and not value % 1 and "minus" in item.quantity.text.lower()
    )


def _is_signed(scene: Scene, item: Item) -> bool:
    """Whether it has a minus sign beside cranking amps: "this morning, -6 and 640 CCA"."""
    value = item.quantity.value
    if (
        isinstance(value, str)
        or not -LOWEST <= value < 0
        or value % 1
        or not item.quantity.text.strip().startswith("-")
    ):
        return False
    return bool(scene.quantities("CCA", "CA")) and stops(scene, item, GOES_ON)


def _is_of_a_place(scene: Scene, item: Item) -> bool:
    """Whether it tells how warm a place is: "nothing connected, locker about 15", "the shed is around 12"."""
    value = item.quantity.value
    if isinstance(value, str) or not 0 <= value <= WARMEST or value % 1 or scene.quantities("MM", "INCH", "LENGTH"):
        return False
    before = [scene.word(item.start - back) for back in range(1, 7)]
    if before[:2] in (["its", "where"], ["its", "inside"], ["its", "indoors"], ["its", "ashore"]) and item.dim == "NUM":
        return stops(scene, item)  # "if I bring it in where it's 15, can I charge it"
    shown = before[0] in SHOWS and SHOWN_BY & set(before)
    if not shown and (before[0] not in ABOUT or not PLACES & set(before[1:3])):
        return False
    if scene.about("word:fit"):
        return False
    after = scene.after(item)
    return (after is None or after.kind == "mark") and item.dim == "NUM"


def celsius(scene: Scene, item: Item, quantity: Quantity) -> float | None:
    """A temperature in Celsius; None where the quantity is none."""
    value = in_unit(float(quantity.value), quantity.unit, "degree_Celsius")
    if value is None or quantity.unit == "degree_Fahrenheit":
        return value
    typed = quantity.text.lower()
    if (both := _told_in_both(scene, item, value)) is not None:
        return both  # "0 F, so minus 18": the same once more, in Celsius
    if said_fahrenheit(scene) and not re.search(r"c(?:elsius|entigrade)?\b", typed.replace(" ", "")):
        return (value - 32) / 1.8
    if TOLD.search(typed):
        return value
    if is_under(scene, item):
        return -value
    value = _scaled(scene, value)
    around = {scene.word(at) for at in (*range(item.start - NEAR, item.start), *range(item.end, item.end + NEAR))}
    return -value if value > 0 and around & FROST and scene.word(item.end) != "above" else value


def _told_in_both(scene: Scene, item: Item, value: float) -> float | None:
    """The Celsius of degrees in Fahrenheit beside it that come to the same; None without any."""
    beside = (other.quantity for other in scene.measured[:8] if other is not item and other.part is not None)
    told = [one for one in beside if one.unit == "degree_Fahrenheit" and not isinstance(one.value, str)]
    signed = -value if is_under(scene, item) else value
    found = (in_unit(float(one.value), one.unit, "degree_Celsius") for one in told)
    return next((celsius for celsius in found if celsius is not None and abs(celsius - signed) <= ROUNDED), None)


def said_fahrenheit(scene: Scene) -> bool:
    """Whether a word of its own says that the degrees are Fahrenheit's: "Fahrenheit, of course", "not Celsius"."""
    if AMERICA & scene.vocabulary and any(
        token.word in AMERICA and SCALES & {scene.word(at + 1), scene.word(at + 2)}
        for at, token in enumerate(scene.tokens)
    ):
        return True
    if not (FAHRENHEIT | {"celsius"}) & scene.vocabulary:
        return False
    for at, token in enumerate(scene.tokens):
        if token.word in FAHRENHEIT and not scene.at_word[at].dim and scene.word(at - 1) not in CONVERTED:
            return True
        if token.word in FAHRENHEIT and scene.word(at - 2) in ("above", "below"):  # "8 above in Fahrenheit"
            return True
        if token.word in FAHRENHEIT and ON_THERMOMETER.search(scene.text):
            return True
        if token.word in FAHRENHEIT and _opens(scene, at) and REAL.search(scene.text):
            return True
        if token.word == "celsius" and scene.word(at - 1) == "not":
            return True
    return False


def _on_thermometer(scene: Scene, item: Item) -> bool:
    """Whether a thermometer shows it whose scale is told behind it."""
    found = ON_THERMOMETER.search(scene.text)
    value, (start, end) = item.quantity.value, scene.span(item.start, item.end)
    shown = found is not None and found.span("shown") == (start, end)
    shown = shown or (HITS.search(scene.ahead(start)) and IN_THERE.match(scene.text[end : end + FAR])) is not None
    return shown and not isinstance(value, str) and value <= HOTTEST_F


def _opens(scene: Scene, at: int) -> bool:
    """Whether "in Fahrenheit" tells what follows: "in Fahrenheit ours sleep at 5"."""
    follows = scene.at_word[at + 1 : at + 1 + FOLLOWS]
    return scene.word(at - 1) == "in" and any(one.dim in ("NUM", "COUNT", "TEMP") for one in follows)


def _is_ours(item: Item) -> bool:
    """Whether feet or pounds are not the boat's or a price: everybody has boats of so many feet."""
    boats = item.quantity.kind == "boat_length" or item.quantity.text.lower().endswith("footer")
    return not boats and (item.dim != "WEIGHT" or float(item.quantity.value) < MOST_WEIGHT)


def _scaled(scene: Scene, value: float) -> float:
    """Degrees that are not told to be of either kind: what the other units of the message suggest."""
    if value >= HOT and FAHRENHEIT & scene.vocabulary:
        return value  # they are to be turned into Fahrenheit
    american = any(item.part and item.quantity.unit in AMERICAN and _is_ours(item) for item in scene.measured)
    american = american or (value > 0 and any(item.dim in ("GAUGE", "GROUP") for item in scene.measured))
    metric = any(item.part and item.quantity.unit in METRIC for item in scene.measured)
    metric = metric or bool(METRIC_WORDS & scene.vocabulary)
    if HOT <= value <= HOTTEST and not american and (metric or HEATED & scene.vocabulary):
        return value
    return (value - 32) / 1.8 if value >= HOT or (american and not metric) else value
