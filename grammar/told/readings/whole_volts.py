"""Volts read that are a whole number: "under load falls to 9", "12 volts on a 12 volt battery"."""

from __future__ import annotations

import re

from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.text.standard import NOMINAL
from grammar.told.words import ahead_of, stops

LOADED = Claim("reading.load_voltage", "role")
FALLS = regex(
    r"\b(?:fall|fell|drop(?:ped)?|sag(?:ged)?|sink|sank|dip(?:ped)?|go(?:es)?|went|come|came|dive[ds]?|plunge[ds]?|slump(?:ed)?"
    r"|drag(?:s|ged)? (?:it|her|him|them)|pull(?:s|ed)? (?:it|her|him|them)|crash(?:es|ed)?|tumble[ds]?)s?"
    r"(?: right| all the way| down| away| off)* (?:to|at)(?: only| about| just| around| some| a mere)? $",
    re.IGNORECASE,
)
UNDER = regex(
    r"\b(?:under load|load|thruster|motor|windlass|capstan|button|press\w*|push\w*|thrust\w*)\b", re.IGNORECASE
)
GOES_ON = frozenset({"and", "when", "under", "while", "with", "volts", "or"})
FROM_HERE = regex(  # "it drops to 21.8 from 25"
    r"\b(?:to|at) \d{1,2}[.,]\d{1,2} ?(?:v|volts?)? from(?: about| around| some)? $", re.IGNORECASE
)
DOWN_TO = regex(r"^ ?(?:v|volts?)?(?: right| straight| all the way)*(?: down)? to \d{1,2}[.,]\d", re.IGNORECASE)
FALLING = regex(
    r"\b(?:f[ae]lls?|fell|drop(?:s|ped)?|sag(?:s|ged)?|sinks?|sank|dip(?:s|ped)?|go(?:es)?|went|down|collaps\w+|slump(?:s|ed)?"
    r"|dive[sd]?|plunge[sd]?|tumble[sd]?)"
    r" from(?: about| around| some)? $",
    re.IGNORECASE,
)
RESTED = Claim("reading.voltage", "role")
STOOD = ((12.0, 13.0), (24.0, 27.0))  # volts at rest
LOWEST, HIGHEST = 7.0, 11.0  # volts
OPEN = frozenset({"battery.count", "load.bursts", "battery.age", NOTHING.fact})
LEAST_TWO, MOST_TWO = 18.0, 29.5  # volts shown of a 24 V bank


def whole_volts(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of whole volts to which a load pulls a battery, where volts at rest are told beside them."""
    facts = {claim.fact for claim in claims.values()}
    if LOADED.fact in facts and RESTED.fact not in facts:
        return {item.at: RESTED for item in scene.quantities("NUM", "COUNT", "VOLT") if _fell_from(scene, claims, item)}
    if LOADED.fact in facts or "reading.voltage" not in facts or UNDER.search(scene.text) is None:
        return {}
    return {item.at: LOADED for item in scene.quantities("NUM", "COUNT") if _fell_to(scene, claims, item)}


def _fell_from(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    """Whether whole volts are those that a load pulled down: "drops to 21.8 from 25", "fell from 12 to 9.8"."""
    value, claim = item.quantity.value, claims.get(item.at)
    open_to = claim is None or claim.fact in OPEN | {"bank.voltage", "battery.nominal"}
    if isinstance(value, str) or not open_to or not any(low <= value <= high for low, high in STOOD):
        return False
    before, end = ahead_of(scene, item), scene.span(item.start, item.end)[1]
    fell = FALLING.search(before) is not None and DOWN_TO.match(scene.text[end : end + 40]) is not None
    return fell or FROM_HERE.search(before) is not None


def _fell_to(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    value, claim = item.quantity.value, claims.get(item.at)
    if isinstance(value, str) or not LOWEST <= value <= HIGHEST or (claim and claim.fact not in OPEN):
        return False
    ends = stops(scene, item, GOES_ON)
    return ends and FALLS.search(ahead_of(scene, item)) is not None


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
