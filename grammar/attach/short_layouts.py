"""How batteries are joined, written short: "2s2p", "2P 3S", "4S", "max 4S 4P"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from grammar.attach.allowed import ALLOWED
from grammar.reading import Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

IN_SERIES, IN_PARALLEL = regex(r"(\d+) ?s"), regex(r"(\d+) ?p")
CELLS = regex(r"\b(?:lithium|li|lfp|lifepo4|cells?|packs?|bms)\b", re.IGNORECASE)
USUAL = 12.0  # volts of a battery
SQUARE = 4  # of so many in two strings the rules know the volts


def joined(scene: Scene, item: Item, told: Sequence[Stated]) -> list[Stated]:
    """The layout and the count, or the most that a maker allows; of long strings the volts too."""
    span = scene.span(item.start, item.end)
    text = scene.text[slice(*span)]
    series, parallel = (int(found[1]) if (found := way.search(text.lower())) else 0 for way in (IN_SERIES, IN_PARALLEL))

    def stated(fact: str, value: float | str, unit: str = "", how: str = "token") -> Stated:
        return Stated(fact, value, unit, text, span, how=how)

    if ALLOWED & {scene.word(at) for at in (item.start - 2, item.start - 1, item.end)}:
        limits = {"battery.max_in_series": series, "battery.max_in_parallel": parallel}
        return [stated(fact, float(most)) for fact, most in limits.items() if most]
    count = max(series, 1) * max(parallel, 1)
    layout = "series-parallel" if min(series, parallel) > 1 else "series" if series > parallel else "parallel"
    facts = [stated("bank.layout", layout), stated("battery.count", float(count))]
    if layout == "series-parallel" and count != SQUARE and (each := _volts_of_one(scene, told)):
        facts.append(stated("bank.voltage", series * each, "volt", "default"))
    return facts if count else []


def _volts_of_one(scene: Scene, told: Sequence[Stated]) -> float:
    """The volts of one battery; 0 where the bank's are told, or the strings may be of cells."""
    volts = {item.fact: item.value for item in told if isinstance(item.value, float)}
    if "bank.voltage" in volts:
        return 0.0
    return volts.get("battery.nominal") or (0.0 if CELLS.search(scene.text) else USUAL)
