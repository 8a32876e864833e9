"""Volts under load told as a whole number: "under load falls to 9", "the thruster drags it down to ten"."""

from __future__ import annotations

import re

from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

LOADED = Claim("reading.load_voltage", "role")
FALLS = re.compile(
    r"\b(?:fall|fell|drop(?:ped)?|sag(?:ged)?|sink|sank|dip(?:ped)?|go(?:es)?|went|come|came|dive[ds]?|plunge[ds]?|slump(?:ed)?"
    r"|drag(?:s|ged)? (?:it|her|him|them)|pull(?:s|ed)? (?:it|her|him|them)|crash(?:es|ed)?|tumble[ds]?)s?"
    r"(?: right| all the way| down| away| off)* (?:to|at)(?: only| about| just| around| some| a mere)? $",
    re.IGNORECASE,
)
UNDER = re.compile(
    r"\b(?:under load|load|thruster|motor|windlass|capstan|button|press\w*|push\w*|thrust\w*)\b", re.IGNORECASE
)
GOES_ON = frozenset({"and", "when", "under", "while", "with", "volts", "or"})
LOWEST, HIGHEST = 7.0, 11.0  # volts
OPEN = frozenset({"battery.count", "load.bursts", "battery.age", NOTHING.fact})


def whole_volts(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of whole volts to which a load pulls a battery, where volts at rest are told beside them."""
    facts = {claim.fact for claim in claims.values()}
    if LOADED.fact in facts or "reading.voltage" not in facts or UNDER.search(scene.text) is None:
        return {}
    return {item.at: LOADED for item in scene.quantities("NUM", "COUNT") if _fell_to(scene, claims, item)}


def _fell_to(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    value, claim = item.quantity.value, claims.get(item.at)
    if isinstance(value, str) or not LOWEST <= value <= HIGHEST or (claim and claim.fact not in OPEN):
        return False
    after = scene.after(item)
    ends = after is None or after.kind == "mark" or after.name in GOES_ON
    return ends and FALLS.search(scene.ahead(scene.span(item.start, item.end)[0])) is not None
