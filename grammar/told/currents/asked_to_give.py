"""Amps that a battery is asked to give a motor, and round volts that are read off one of as many volts."""

from __future__ import annotations

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.standard import NOMINAL

GIVE = frozenset({"give", "deliver", "supply", "feed", "push", "send", "provide", "offer"})
CAN = frozenset({"will", "can", "could", "would", "does", "may", "must"})
TO = frozenset({"to", "into", "for"})
AHEAD, BEFORE = 4, 6  # words
LEAST_TWO, MOST_TWO = 18.0, 29.5  # volts shown of a 24 V bank


def asked_to_give(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps that are wanted of a lithium battery, no limit: "will it give 130 A to the bow motor"."""
    limits = [at for at, claim in claims.items() if claim.fact == "battery.max_current" and claim.how == "role"]
    if len(limits) != 1 or any(claim.fact == "load.current" for claim in claims.values()):
        return {}
    item = scene.items[limits[0]]
    return {item.at: Claim("load.current", "near")} if _is_wanted(scene, item) else {}


def _is_wanted(scene: Scene, item: Item) -> bool:
    before = [scene.word(at) for at in range(max(0, item.start - BEFORE), item.start)]
    asked = before[-1:] and before[-1] in GIVE and bool(CAN & set(before))
    loads = any(item.end < head.start <= item.end + AHEAD for head in scene.head_items if head.head == "load")
    return bool(asked) and scene.word(item.end) in TO and loads


def volts_of_as_many(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of round volts that are read: "12 volts on a 12 volt battery", "24 V bank, reads 21"."""
    found = {item.at for item in scene.quantities("VOLT") if _on_as_many(scene, item)}
    found |= {item.at for item in scene.quantities("NUM") if item.at not in claims and _shown_of_two(scene, item)}
    return {at: Claim("reading.voltage", "role") for at in found}


def _on_as_many(scene: Scene, item: Item) -> bool:
    at = item.end + 1 + (scene.word(item.end + 1) in ("a", "the", "my", "his", "her", "our", "its"))
    if item.quantity.value not in NOMINAL or scene.word(item.end) != "on" or at >= len(scene.at_word):
        return False
    other = scene.at_word[at]
    named = scene.after(other)
    return (
        other.dim == "VOLT"
        and other.quantity.value == item.quantity.value
        and named is not None
        and (named.head == "battery" or named.fact == "battery.chemistry")
    )


def _shown_of_two(scene: Scene, item: Item) -> bool:
    """Whether a whole number is what a 24 V bank shows: "24 V bank, reads 21"."""
    value, after = item.quantity.value, scene.after(item)
    ends = after is None or after.kind == "mark" or after.name in ("volts", "v", "now", "and")
    shown = scene.word(item.start - 1) in ("reads", "shows", "says", "showing", "reading") and ends
    two = any(other.quantity.value == 24 for other in scene.quantities("VOLT"))
    return shown and two and not isinstance(value, str) and LEAST_TWO <= value <= MOST_TWO and value != 24
