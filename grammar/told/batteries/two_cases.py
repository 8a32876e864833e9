"""Two case sizes weighed against each other: "24 or 27, which is shorter", "does a 27 or a 31 go deeper"."""

from __future__ import annotations

import re

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.told.batteries.capacities import GROUPS

FACT = "battery.group"
PAIR = re.compile(
    r"(?<![\d.,x/-])(?P<one>\d\d)(?:s|'s)?,? (?:or|vs\.?|versus|against) (?:an? |the )?(?P<other>\d\d)(?:s|'s)?\b"
    r"(?![.,]\d| ?(?:v|volts?|ah|amps?|a|mm2?|cm|inch\w*|in|kg|kilos?|awg|hours?|days?|%)\b)",
    re.IGNORECASE,
)
SIDES = re.compile(
    r"\b(?:deep(?:er)?|short(?:er)?|long(?:er)?|tall(?:er)?|wide(?:r)?|high(?:er)?|narrower|footprint|case|tray|locker)\b",
    re.IGNORECASE,
)
OTHERS = re.compile(r"\b(?:how long (?:will|does|do|can)|metres?|feet|cable|burst|minutes)\b", re.IGNORECASE)
VOLTS = frozenset({"24", "36", "48"})


def two_cases(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, with two sizes of case in place of what their numbers were taken for."""
    found = None if scene.quantities("AH", "VOLT", "LENGTH") else PAIR.search(scene.text)
    if found is None or not SIDES.search(scene.text) or OTHERS.search(scene.text):
        return stated
    names = found["one"], found["other"]
    if not set(names) <= GROUPS or set(names) <= VOLTS or names[0] == names[1]:
        return stated
    start, end = found.span()
    if any(item.fact == FACT and not start <= item.span[0] < end for item in stated):
        return stated
    kept = [item for item in stated if not (item.span[0] < end and start < item.span[1])]
    told = (Stated(FACT, found[name], "", found[name], found.span(name), how="default") for name in ("one", "other"))
    return [*kept, *told]
