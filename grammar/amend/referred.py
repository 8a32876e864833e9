"""A figure that the question says once more: it refers back to what was told of it, and is no second of its kind."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

READ, LOAD, PEAK = "reading.voltage", "load.current", "battery.peak_current"
THE = regex(r"\b(?:the|that|this|its) $", re.IGNORECASE)
SEVERAL = frozenset({"ambient.temperature", "battery.charge"})
TOLD_BEFORE = {  # of a figure that nothing near tells of: what it may refer back to, and how it was settled
    (READ, "range"): ("reading.load_voltage", "reading.load_voltage_at_load", "charger.voltage"),
    (LOAD, "default"): ("charger.current", "alternator.current", "fuse.rating"),
}


def without_references(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Without what a question only repeats: "it held 9.1 with the lever over. Is 9.1 too low?", "a 40 A charger. Is
    40 A too much?"."""
    told: dict[tuple[str, object], list[Stated]] = {}
    for item in stated:
        told.setdefault((item.fact, item.value), []).append(item)
    return [
        item
        for item in stated
        if not any(
            item.span[0] > other.span[1] and (fact == PEAK or _repeats(scene, item, other))
            for fact in _meant(scene, item)
            for other in told.get((fact, item.value), ())
        )
    ]


def _meant(scene: Scene, item: Stated) -> Sequence[str]:
    """The facts that a figure may only name once more, as the peak in "400 A for 5 s ... the 400 A peak saves me"."""
    if item.fact == "load.peak":
        return (PEAK,) if THE.search(scene.ahead(item.span[0])) else ()
    return TOLD_BEFORE.get((item.fact, item.how), ())


def _repeats(scene: Scene, item: Stated, other: Stated) -> bool:
    """Whether this figure, of which nothing near tells what it is, is one that was told in a clause before."""
    return _clause(scene, item) != _clause(scene, other) and in_question(scene, item)


def in_question(scene: Scene, item: Stated) -> bool:
    """Whether it stands in a clause that asks."""
    return scene.clauses[_clause(scene, item)].asks


def _clause(scene: Scene, item: Stated) -> int:
    at = bisect_right(scene.tokens, item.span[0], key=lambda token: token.end)
    return min(scene.clause(at if at < len(scene.tokens) else 0), len(scene.clauses) - 1)


def asked_again(scene: Scene, among: list[Stated], repeated: list[Stated]) -> list[Stated]:
    """The values of a fact; one that the question repeats has its place there, so that the question goes by it. Of
    temperatures and charges, of which people tell several; a number of batteries stays where it was told."""
    if len(among) < 2 or among[0].fact not in SEVERAL:
        return among
    again = {item.value: item for item in repeated if in_question(scene, item)}
    return [
        replace(item, text=again[item.value].text, span=again[item.value].span) if item.value in again else item
        for item in among
    ]
