"""Amp-hours that were taken out of a battery, or are to be put back: they tell its charge, not its size."""

from __future__ import annotations

import re

from grammar.reading import Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

SYSTEM = 12.0  # volts of the usual battery
BESIDE = 30  # characters right before or after
DRAWN_BEFORE = regex(
    r"\b(?:took|taken|taking|drew|drawn|used|using|pulled|eaten|ate|consumed|burnt|burned|put back|return|replace|give)"
    r"(?: back| out| about| some| roughly| around)* ?$",
    re.IGNORECASE,
)
PUT_BEFORE = regex(r"\b(?:put|putting|get|getting|needs?|wants?|pump|push)\b[^.?!,;]{0,12}$", re.IGNORECASE)
PUT_AFTER = regex(r"^ ?back\b", re.IGNORECASE)
TO_RETURN = regex(  # "80 Ah to put back", "90 Ah missing from ...": of a battery whose size is told besides
    r"^ ?(?:to (?:(?:put|go|get|come|be put) back|(?:be )?(?:return|replace|restor|refill)(?:ed|e)?\b|make up\b)"
    r"|(?:are |is )?(?:gone(?! flat| dead| bad)|missing|taken out|drawn (?:out|off)|used up|down|short)\b)",
    re.IGNORECASE,
)
DRAWN_AFTER = regex(
    r"^ ?(?:out of|from|off|of (?:it|the|my|our)|used|gone|drawn|taken|back|in(?:to)? (?:it|a|the|my))\b", re.IGNORECASE
)


def drawn(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Amp-hours that were taken out of a battery, as the charge that is left: "I drew 60 Ah from my 200 Ah AGM"."""
    used = next((item for item in scene.quantities("AH") if _is_drawn(scene, item)), None)
    if used is None or isinstance(used.quantity.value, str):
        return stated
    span, gone = scene.span(used.start, used.end), float(used.quantity.value)
    stated = [item for item in stated if item.span != span]
    sizes = [item.value for item in (*stated, *scene.said) if item.fact == "battery.capacity"]
    known = any(item.fact == "battery.charge" for item in stated)
    if known or not sizes or isinstance(sizes[0], str) or gone >= sizes[0] * (strings := _strings_of(scene, stated)):
        return stated
    left = 100 - gone / (sizes[0] * strings) * 100
    return [*stated, Stated("battery.charge", left, "percent", scene.text[slice(*span)], span, how="grammar")]


def _strings_of(scene: Scene, stated: list[Stated]) -> float:
    """How many batteries, or strings of them, give their amp-hours side by side."""
    told = {item.fact: item.value for item in reversed((*stated, *scene.said))}
    layouts = [item.name for item in scene.items if item.fact == "bank.layout"]
    layout = layouts[0] if layouts else told.get("bank.layout")
    count, volts, each = (
        told.get(fact, usual)
        for fact, usual in (("battery.count", 1.0), ("bank.voltage", 0.0), ("battery.nominal", SYSTEM))
    )
    if not (isinstance(count, float) and isinstance(volts, float) and isinstance(each, float)) or layout == "series":
        return 1.0
    in_series = volts / each if volts > each else 2.0 if layout == "series-parallel" else 1.0
    return max(1.0, count / in_series)


def _is_drawn(scene: Scene, item: Item) -> bool:
    """Whether amp-hours are said to be taken out or to be put back."""
    start, end = scene.span(item.start, item.end)
    before, after = scene.text[max(0, start - BESIDE) : start], scene.text[end : end + BESIDE]
    if DRAWN_BEFORE.search(before) and DRAWN_AFTER.search(after):
        return True
    others = len(scene.quantities("AH")) > 1 or any(old.fact == "battery.capacity" for old in scene.said)
    returned = TO_RETURN.search(after) or (PUT_BEFORE.search(before) and PUT_AFTER.search(after))
    return others and bool(returned)
