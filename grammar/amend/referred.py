"""A figure that the question says once more: it refers back to what was told of it, and is no second of its kind."""

from __future__ import annotations

from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene

READ = "reading.voltage"
SEVERAL = frozenset({"ambient.temperature", "battery.charge"})
OF_A_MOMENT = frozenset({"reading.load_voltage", "reading.load_voltage_at_load", "charger.voltage"})


def without_references(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Without volts that a question only repeats: "it held 9.1 with the lever over. Is 9.1 too low?" """
    told = [item for item in stated if item.fact in OF_A_MOMENT]
    return [item for item in stated if not any(_repeats(scene, item, other) for other in told)]


def _repeats(scene: Scene, item: Stated, other: Stated) -> bool:
    """Whether these volts, of which nothing near tells when they were read, are the ones told in a clause before."""
    if item.fact != READ or item.how != "range" or item.value != other.value or item.span[0] <= other.span[1]:
        return False
    return _clause(scene, item) != _clause(scene, other) and in_question(scene, item)


def in_question(scene: Scene, item: Stated) -> bool:
    """Whether it stands in a clause that asks."""
    return scene.clauses[_clause(scene, item)].asks


def _clause(scene: Scene, item: Stated) -> int:
    at = next((place for place, token in enumerate(scene.tokens) if token.end > item.span[0]), 0)
    return min(scene.clause(at), len(scene.clauses) - 1)


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
