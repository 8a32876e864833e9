"""Whether a count stands before batteries: "two big blue AGMs"."""

from __future__ import annotations

import re

from grammar.lexicon.vocabulary import small_words
from grammar.scene.claims import close, names_its_battery
from grammar.scene.items import Item
from grammar.scene.scene import Scene

COUNTED = frozenset({"VOLT", "AH", "CCA", "CA", "RC", "GROUP", "WH", "WEIGHT"})
OF_BATTERY = frozenset({"battery.chemistry", "battery.duty", "battery.nominal"})
PARTS_OF_IT = frozenset(
    ["ways", "directions", "sides", "legs", "caps", "cap", "cells", "posts", "terminals", "lugs", "studs", "plugs"]
) | {"leads", "boats", "dimensions"}
SMALLEST_NAME = 20.0  # amp-hours that batteries are called by: "two 90s"
STRANGE = 2  # words not known that may stand between a number and its batteries: "two old Swedish batteries"
THEM = frozenset(["them", "em", "together", "those"])


def stands_before_battery(scene: Scene, item: Item) -> bool:
    """Whether a battery follows: its kind, its volts, its figures or the word itself."""
    strange = 0
    for after in scene.items[item.at + 1 : item.at + 6]:
        if _of_another(scene, after) or (after.dim == "GROUP" and strange and scene.word(after.start - 1) == "case"):
            return False  # "the three dimensions of case 24"
        if after.head == "load" and names_its_battery(scene, after):  # "two 12 V thruster batteries"
            continue
        if _is_battery(scene, item, after):
            return True
        if after.dim == "TIME" and after.quantity.unit == "year":
            continue
        each = after.name == "," and scene.word(after.end) == "each"
        each = each or (after.name == "." and scene.word(after.start - 1) == "ea")  # "2 ea. 12 V AGM"
        if each or (after.dim == "NUM" and not isinstance(after.quantity.value, str) and after.quantity.value >= 20):
            continue
        if after.head or after.dim or (after.kind == "mark" and after.name not in ("(", ")")):
            return False
        if after.kind == "word" and after.name not in small_words("counted"):
            strange += 1
            if strange > STRANGE or after.name in small_words("between"):
                return False
    return False


def _of_another(scene: Scene, after: Item) -> bool:
    """Whether it belongs to another thing: the volts of "twin 24 V thrusters", the caps of "six screw caps"."""
    named = scene.after(after)
    if after.dim == "VOLT":
        return named is not None and named.head in ("load", "charger") and not names_its_battery(scene, named)
    words = {scene.word(at) for at in range(after.start, after.end)}  # "caps" of "caps on"
    if after.fact != "battery.chemistry" or PARTS_OF_IT.isdisjoint(words):
        return False
    return named is None or (
        named.head != "battery" and named.fact != "battery.chemistry"
    )  # "two filler-cap batteries"


def _is_battery(scene: Scene, item: Item, after: Item) -> bool:
    """Whether what follows a number is a battery or its figure."""
    if _plural(scene, after) or after.dim in COUNTED or after.fact in OF_BATTERY or after.head == "battery":
        return True
    batteries = "battery" in scene.heads or "bank.layout" in scene.facts
    if after.dim == "NUM" and scene.word(item.end) == "of" and batteries:  # "two of 100"
        return not isinstance(after.quantity.value, str) and after.quantity.value >= 20
    return item.quantity.value != 1.0 and (after.fact == "bank.layout" or after.name in THEM)


def is_of_seconds(scene: Scene, item: Item) -> bool:
    """Whether "10 s" is a time: the batteries of "two 90s" are larger, and no bursts."""
    if item.dim != "TIME" or item.quantity.unit != "second" or isinstance(item.quantity.value, str):
        return False
    bursts = close(scene, item, "load.burst", "load.bursts", reach=1.3, after=True)
    bursts = bursts or scene.word(item.end) in ("runs", "per")
    return bursts or item.quantity.value < SMALLEST_NAME or not _as_a_name(item)


def _as_a_name(item: Item) -> bool:
    return bool(re.fullmatch(r"\d{2,3}s", item.quantity.text.lower()))


def _plural(scene: Scene, item: Item) -> bool:
    """Whether it is the "90s" of "two 90s"."""
    if item.dim == "TIME" and item.quantity.value in (6, 12) and scene.word(item.start - 1) in ("both", "the"):
        return _as_a_name(item) and scene.word(item.start - 2) != "for"  # "both 12s"
    return item.dim == "TIME" and _as_a_name(item) and not is_of_seconds(scene, item)
