"""A bare number of a later message is in the unit of the figure that it takes the place of: "sorry, 20" of 24 ft."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from grammar.facts import facts
from grammar.later.alike import as_typed
from grammar.reading import Stated
from grammar.text.canonical import in_unit
from grammar.text.patterns import regex

UNIT = regex(r"[^\W\d][^\d]*$|['′\"″]$")  # at the end of a figure as it was typed: "ft" of "28 ft"
LENGTH, HALVED = "cable.length", (1.0, 0.5)  # "28 there and back"
POWER = "load.power"  # a bare number of watts after kilowatts is common, one of horsepower was settled before
KEPT = frozenset({LENGTH, POWER, "ambient.temperature", "battery.weight", "storage.time"})
SAME = 1e-9


def in_their_unit(stated: Sequence[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """The facts, those that bare numbers state in the unit in which the same fact was told before."""
    before = {item.fact: item for item in reversed(said) if item.of == 1}  # `said` has the newest first
    for item in stated:
        old = before.get(item.fact)
        yield item if old is None or item.of > 1 else _as_before(item, old)


def _as_before(item: Stated, old: Stated) -> Stated:
    new, typed, unit = as_typed(item.text), as_typed(old.text), facts()[item.fact].unit
    if item.fact not in KEPT or new is None or typed is None or new.unit or typed.unit in ("", unit):
        return item
    if isinstance(new.value, str) or isinstance(item.value, str) or item.low is not None:
        return item
    ending = UNIT.search(old.text.strip())
    text = f"{item.text} {ending[0]}" if ending else item.text
    for part in HALVED if item.fact == LENGTH else HALVED[:1]:
        taken = float(new.value) * part  # as the fact's own unit: feet stood for metres
        value = in_unit(taken, typed.unit, unit)
        if value is not None and abs(item.value - taken) <= SAME * max(1.0, abs(taken)):
            return item if item.fact == POWER else replace(item, value=value, text=text)
    return replace(item, text=text)
