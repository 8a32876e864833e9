"""A battery's weight beside what somebody may lift: "it's twelve kilos more than my doctor permits, at 26"."""

from __future__ import annotations

import re

from grammar.reading import Stated
from grammar.scene.scene import Scene

FACT = "battery.weight"
BEYOND = re.compile(
    r"\b(?:[\w.]+)[ -]?(?:kilos?|kilograms?|kgs?)\b (?:more than|over|above|beyond|heavier than) (?:what |anything )?"
    r"(?:i|we|he|she|they|my|our|his|her|their|the doctor|the limit)\b",
    re.IGNORECASE,
)
ITS_OWN = re.compile(
    r"\b(?:at|weighs|weighing) (?:about )?(?P<kilos>\d{2}(?:\.\d)?)\b(?!\.?\d| ?(?:%|per|a\b|amps|v\b|y|h))", re.I
)
HEAVIEST = 80.0  # kg


def own_weight(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts without kilos that are only too many, and with the weight that stands beside them."""
    beyond = BEYOND.search(scene.text)
    if beyond is None:
        return stated
    start, end = beyond.span()
    stated = [item for item in stated if item.fact != FACT or not (start <= item.span[0] < end)]
    found = None if any(item.fact == FACT for item in stated) else ITS_OWN.search(scene.text)
    if found is None or float(found["kilos"]) > HEAVIEST:
        return stated
    span = found.span("kilos")
    kept = [item for item in stated if not (item.span[0] < span[1] and span[0] < item.span[1])]
    return [*kept, Stated(FACT, float(found["kilos"]), "kilogram", found["kilos"], span, how="default")]
