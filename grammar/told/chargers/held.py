"""Volts at which a charger holds a battery, where none is named: "13.5 held on it month upon month"."""

from __future__ import annotations

import re

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

CHARGER = Claim("charger.voltage", "role")
READ = frozenset({"reading.voltage", "reading.load_voltage", "reading.load_voltage_at_load"})
LEAST, MOST = 13.0, 15.0  # volts: no battery under load has so many
HELD = regex(
    r"^(?: ?v(?:olts?)?)? (?:held|kept|maintained|left) on (?:it|them|her|an?|the|my|our|his|mine|ours)\b",
    re.IGNORECASE,
)
AFTER = 40  # characters


def held_on(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of volts that seemed read and are held on a battery."""
    return {item.at: CHARGER for item in scene.quantities("VOLT", "NUM") if _is_held(scene, claims, item)}


def _is_held(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    value, claim = item.quantity.value, claims.get(item.at)
    if isinstance(value, str) or not LEAST <= value <= MOST or claim is None or claim.fact not in READ:
        return False
    end = scene.span(item.start, item.end)[1]
    return HELD.match(scene.text[end : end + AFTER]) is not None
