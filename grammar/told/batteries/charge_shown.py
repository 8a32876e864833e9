"""A state of charge as a display shows it: "one says SOC 64", "the battery's own gauge says 40 %"."""

from __future__ import annotations

import re

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

CHARGE = Claim("battery.charge", "role")
BEHIND_NAME = re.compile(
    r"\b(?:soc|s\.o\.c\.?|state of charge)[\"',:=]*"
    r"(?: (?:is|at|of|says|reads|shows|stands at|sits at|was|gives))*(?: only| just| about| around)? ?[\"']?$",
    re.IGNORECASE,
)
SHOWN = re.compile(
    r"\b(?:gauge|meter|monitor|display|shunt|app|screen|computer|dial|indicator|readout)\b[^.?!;\d]{0,24}"
    r"\b(?:says?|said|shows?|showed|reads?|gives?|stands at|at|claims)(?: only| just| about| still)? ?[\"']?$",
    re.IGNORECASE,
)
PERCENT = re.compile(r"^ ?(?:%|per ?cent\b|pct\b)", re.IGNORECASE)
UNITS = re.compile(r"^ ?(?:v\b|volts?\b|a\b|amps?\b|ah\b|[.,:]\d|w\b)", re.IGNORECASE)
AHEAD = 10  # characters


def charge_shown(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of figures that are a state of charge."""
    if any(claim.fact == CHARGE.fact for claim in claims.values()):
        return {}
    return {item.at: CHARGE for item in scene.quantities("NUM") if item.at not in claims and _is_shown(scene, item)}


def _is_shown(scene: Scene, item: Item) -> bool:
    value = item.quantity.value
    if isinstance(value, str) or not 1 <= value <= 100 or value != int(value):
        return False
    start, end = scene.span(item.start, item.end)
    before, after = scene.ahead(start), scene.text[end : end + AHEAD]
    if PERCENT.match(after):
        return bool(BEHIND_NAME.search(before) or SHOWN.search(before))
    return BEHIND_NAME.search(before) is not None and not UNITS.match(after)
