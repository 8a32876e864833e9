"""Two case sizes weighed against each other: "24 or 27, which is shorter", "does a 27 or a 31 go deeper"."""

from __future__ import annotations

import re

from grammar.reading import Span, Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.batteries.capacities import GROUPS

FACT = "battery.group"
PAIR = regex(
    r"(?<![\d.,x/-])(?P<one>\d\d)(?:s|'s)?,? (?:or|vs\.?|versus|against) (?:an? |the )?(?P<other>\d\d)(?:s|'s)?\b"
    r"(?![.,]\d| ?(?:v|volts?|ah|amps?|a|mm2?|cm|inch\w*|in|kg|kilos?|awg|hours?|days?|%)\b)",
    re.IGNORECASE,
)
SEVERAL = regex(
    r"(?<![\d.,x/-])(?P<one>\d\d)(?:'?s)?(?:, ?| ?/ ?)(?P<other>\d\d)(?:'?s)?"
    r"(?:,? (?:or|and) |, ?| ?/ ?)(?P<third>\d\d)(?:'?s)?\b"
    r"(?![.,]\d| ?(?:v|volts?|ah|amps?|a|mm2?|cm|inch\w*|in|kg|kilos?|awg|hours?|days?|%)\b)",
    re.IGNORECASE,
)
SIDES = regex(
    r"\b(?:deep(?:er)?|short(?:er)?|long(?:er)?|tall(?:er)?|wide(?:r)?|high(?:er)?|narrower|footprint|case|tray|locker|box|group|sizes?)\b",
    re.IGNORECASE,
)
OTHERS = regex(r"\b(?:how long (?:will|does|do|can)|metres?|feet|cable|burst|minutes)\b", re.IGNORECASE)
VOLTS = frozenset({"24", "36", "48"})


def two_cases(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, with two sizes of case in place of what their numbers were taken for."""
    found = None if scene.quantities("AH", "VOLT", "LENGTH") else SEVERAL.search(scene.text) or PAIR.search(scene.text)
    if found is None or not SIDES.search(scene.text) or OTHERS.search(scene.text):
        return stated
    names = tuple(found.groupdict().values())
    if not set(names) <= GROUPS or set(names) <= VOLTS or len(set(names)) < len(names):
        return stated
    start, end = found.span()
    if any(item.fact == FACT and not _inside(item.span, start, end, len(names) > 2) for item in stated):
        return stated
    kept = [item for item in stated if not (item.span[0] < end and start < item.span[1])]
    told = (Stated(FACT, found[name], "", found[name], found.span(name), how="default") for name in ("one", "other"))
    return [*kept, *told]


def _inside(span: Span, start: int, end: int, row: bool) -> bool:
    """Whether a size told already is one of those weighed; in a row of three its word "group" may stand before."""
    return (span[1] > start if row else span[0] >= start) and span[0] < end
