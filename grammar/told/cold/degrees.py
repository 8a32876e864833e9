"""Degrees as Celsius: told, or as the rest of the message suggests; "it freezes six degrees" is below zero."""

from __future__ import annotations

import re

from grammar.reading import Quantity
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.canonical import in_unit
from grammar.told.cold.under import is_under

HOT = 45.0  # nobody's battery space is so warm in Celsius, but beside an engine or in the sun
HOTTEST = 65.0
HEATED = frozenset(
    {
        "engine",
        "diesel",
        "sun",
        "tropics",
        "exhaust",
        "heat",
        "bakes",
        "bake",
        "baking",
        "hot",
        "desert",
        "summer",
        "shade",
    }
)
TOLD = re.compile(r"(?:[^a-z]|deg|degrees?|degs)c(?:elsius|entigrade)?\b|celsius|centigrade|zero|freez")
AMERICAN = frozenset({"foot", "inch", "pound", "degree_Fahrenheit"})
METRIC_WORDS = frozenset(
    {"mm", "cm", "millimetres", "millimeters", "centimetres", "centimeters", "metres", "kilos", "kg"}
)
METRIC = frozenset({"meter", "centimeter", "kilogram", "millimeter ** 2", "millimeter", "liter"})
FAHRENHEIT = frozenset({"f", "fahrenheit", "farenheit", "fahrenheight"})
AMERICA = frozenset({"american", "yankee", "yank"})
SCALES = frozenset({"thermometer", "degrees", "scale", "degree"})
CONVERTED = frozenset({"in", "to", "into"})  # "what is that in Fahrenheit"
FROST = frozenset({"freezes", "freezing", "freeze", "froze", "frost"})
REAL = re.compile(
    r"\bin (?:real|proper|normal|honest|our|european|metric|sensible) (?:degrees|ones|money|figures)\b"
    r"|\b(?:in|to|into) (?:celsius|centigrade|c)\b",
    re.IGNORECASE,
)
FOLLOWS = 6  # words
NEAR = 2  # words
MOST_WEIGHT = 1000.0  # pounds of a battery


def celsius(scene: Scene, item: Item, quantity: Quantity) -> float | None:
    """A temperature in Celsius; None where the quantity is none."""
    value = in_unit(float(quantity.value), quantity.unit, "degree_Celsius")
    if value is None or quantity.unit == "degree_Fahrenheit":
        return value
    typed = quantity.text.lower()
    if said_fahrenheit(scene) and not re.search(r"c(?:elsius|entigrade)?\b", typed.replace(" ", "")):
        return (value - 32) / 1.8
    if TOLD.search(typed):
        return value
    if is_under(scene, item):
        return -value
    value = _scaled(scene, value)
    around = {scene.word(at) for at in (*range(item.start - NEAR, item.start), *range(item.end, item.end + NEAR))}
    return -value if value > 0 and around & FROST and scene.word(item.end) != "above" else value


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
        if token.word in FAHRENHEIT and _opens(scene, at) and REAL.search(scene.text):
            return True
        if token.word == "celsius" and scene.word(at - 1) == "not":
            return True
    return False


def _opens(scene: Scene, at: int) -> bool:
    """Whether "in Fahrenheit" tells what follows: "in Fahrenheit ours sleep at 5"."""
    follows = scene.at_word[at + 1 : at + 1 + FOLLOWS]
    return scene.word(at - 1) == "in" and any(one.dim in ("NUM", "COUNT", "TEMP") for one in follows)


def _is_ours(item: Item) -> bool:
    """Whether feet or pounds are not the boat's or a price: everybody has boats of so many feet."""
    return item.quantity.kind != "boat_length" and (item.dim != "WEIGHT" or float(item.quantity.value) < MOST_WEIGHT)


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
