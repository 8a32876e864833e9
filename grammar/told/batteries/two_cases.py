"""Case sizes told without their word: two weighed against each other, "24 or 27, which is shorter", and one whose sides
are asked, "27 is how many cm", or that a label shows where it is to fit, "it says 31 on the lid, will it go in"."""

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
NAMES = {"twenty-four": "24", "twenty-seven": "27", "twenty-nine": "29", "thirty-one": "31"}
SIZE = rf"(?P<one>\d\d|{'|'.join(NAMES)})"
NO_UNIT = r"(?![.,]\d| ?(?:v|volts?|ah|amps?|a|mm2?|m|metres?|meters?|feet|ft|kg|kilos?|awg|hours?|days?|%|watts?)\b)"
HOW_BIG = (
    r"how (?:many (?:cm|mm|cent\w+|inch\w*)(?: (?:long|wide|tall|high|deep))?|long|wide|tall|high|deep)"
    r"(?: in (?:cm|mm|cent\w+|millim\w+|inch\w*))?"
)
ITS_SIDES = regex(
    rf"(?<![\d.,x/-])\b{SIZE}\b{NO_UNIT},? (?:is|measures|comes to|makes) {HOW_BIG}\b"
    rf"|\b{HOW_BIG} (?:is|are|has) (?:an? )?{SIZE.replace('<one>', '<asked>')}(?:'?s)?\b{NO_UNIT}",
    re.IGNORECASE,
)
ON_ITS_LABEL = regex(
    rf"\b(?:label|sticker|lid|case|top|plate)(?: (?:of it|on it))? (?:stands|says|reads|shows|has|is)"
    rf" (?:an? )?[\"'‘“]?{SIZE}\b{NO_UNIT}",
    re.IGNORECASE,
)
TO_FIT = regex(r"\b(?:fits?|goes? in|go into|hole|locker|tray|box|\d+ ?(?:cm|mm|inch\w*))\b", re.IGNORECASE)
SIDES = regex(
    r"\b(?:deep(?:er)?|short(?:er)?|long(?:er)?|tall(?:er)?|wide(?:r)?|high(?:er)?|narrower|footprint|case|tray|locker|box|group|sizes?)\b",
    re.IGNORECASE,
)
OTHERS = regex(r"\b(?:how long (?:will|does|do|can)|metres?|feet|cable|burst|minutes)\b", re.IGNORECASE)
VOLTS = frozenset({"24", "36", "48"})


def two_cases(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, with two sizes of case in place of what their numbers were taken for."""
    if one := _one_case(scene, stated):
        return [*(item for item in stated if not (item.span[0] < one.span[1] and one.span[0] < item.span[1])), one]
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


def _one_case(scene: Scene, stated: list[Stated]) -> Stated | None:
    """The one size whose sides are asked, or that a label shows of what is to fit; None where none is told so."""
    if any(item.fact == FACT for item in stated) or scene.quantities("AH", "VOLT", "AMP"):
        return None
    found = ITS_SIDES.search(scene.text)
    if found is None and TO_FIT.search(scene.text):
        found = ON_ITS_LABEL.search(scene.text)
    if found is None:
        return None
    group = "one" if found["one"] else "asked"
    name = NAMES.get(found[group].lower(), found[group])
    return Stated(FACT, name, "", found[group], found.span(group), how="default") if name in GROUPS else None


def _inside(span: Span, start: int, end: int, row: bool) -> bool:
    """Whether a size told already is one of those weighed; in a row of three its word "group" may stand before."""
    return (span[1] > start if row else span[0] >= start) and span[0] < end
