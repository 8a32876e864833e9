"""Times of things counted: "two 12s", "3 years", "in series for 2 h"."""

from __future__ import annotations

import re

from grammar.attach.before_battery import COUNTED, SMALLEST_NAME, is_of_seconds
from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.standard import METRIC_SIZES

PER_POLE = frozenset((each, pole) for each in ("per", "each", "a") for pole in ("pole", "leg", "side", "conductor"))
LIKELY_NAME = 45  # "charge with what, 70s"


AT_BOATS = frozenset({"to", "on", "for", "in", "into", "aboard", "and", "or"})
THOSE = frozenset({"the", "our", "your", "these", "those", "their"})
NO_NOUN = frozenset(
    {"", ".", ",", "?", "!", ";", ")", "we", "i", "you", "they", "and", "or", "but", "too", "both", "boats"}
)
SMALLEST_BOAT, LONGEST_BOAT = 18, 75  # feet


def of_boats(scene: Scene, item: Item) -> bool:
    """Whether boats of a class are meant: "the thruster we fit to the 38s"; not "after the 30s", "the 30s burst"."""
    match = re.fullmatch(r"(\d{2})s", item.quantity.text.lower())
    if match is None or not SMALLEST_BOAT <= int(match[1]) <= LONGEST_BOAT:
        return False
    placed = scene.word(item.start - 1) in THOSE and scene.word(item.start - 2) in AT_BOATS
    return placed and scene.word(item.end) in NO_NOUN


def joined_in_series(scene: Scene, item: Item) -> bool:
    """Whether "2s" before a battery's figures means two in series."""
    if not re.fullmatch(r"[2-8]s", item.quantity.text.lower()):
        return False
    after = scene.after(item)
    return after is not None and (after.dim in COUNTED or after.fact == "battery.chemistry")


def plural_time(scene: Scene, item: Item) -> Claim | None:
    """What "three lithium 50s" and "two 12s" say: a capacity or volts, not seconds."""
    if of_boats(scene, item):
        return NOTHING
    match = re.fullmatch(r"(\d{1,3})s", item.quantity.text.lower())
    before = scene.before(item)
    if match is None or before is None or (before.kind == "times" and is_of_seconds(scene, item)):
        return None
    counted = any(other.kind == "count" for other in scene.items[max(0, item.at - 2) : item.at])
    value = int(match[1])
    them = scene.items[max(0, item.at - 3) : item.at]  # "two of them 88s"
    counted = counted or (
        len(them) == 3 and them[0].dim in ("COUNT", "NUM") and them[2].name in ("them", "those", "these")
    )
    they_are = before.name in ("are", "theyre") and value >= SMALLEST_NAME and _of_batteries(scene)
    leisure = before.fact in ("battery.chemistry", "battery.duty")
    named = (
        before.name == ","
        and value >= LIKELY_NAME
        and "load" not in scene.heads
        and "battery" in scene.facts | scene.heads
    )
    named = named or (
        before.name == "," and value >= LIKELY_NAME and "load" not in scene.heads and counted_batteries(scene)
    )
    if before.dim not in ("COUNT", "NUM", "VOLT") and not (named or leisure or counted or they_are):
        return None
    if value in (6, 12):
        return Claim("battery.nominal", "grammar")
    if value in METRIC_SIZES and (scene.word(item.end), scene.word(item.end + 1)) in PER_POLE:
        return Claim("cable.area", "grammar")
    hole = any(other.quantity.value == value for other in scene.quantities("MM"))  # "two 50 mm holes ... two 50s"
    if hole:
        return NOTHING
    return Claim("battery.capacity", "grammar") if value >= 20 else None


def counted_batteries(scene: Scene) -> bool:
    """Whether batteries of a kind are counted: "11 wets"."""
    return any(item.fact == "battery.chemistry" for item in scene.items) and bool(scene.quantities("COUNT", "NUM"))


def _of_batteries(scene: Scene) -> bool:
    """Whether "they're 225s" speaks of batteries."""
    told = any(fact.fact.startswith("battery.") for fact in scene.said)
    return told or bool({"battery"} & (scene.heads | scene.facts))
