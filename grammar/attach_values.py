"""The facts that words state: kinds, duties, layouts, models, yes and no."""
from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from grammar.facts import facts
from grammar.near import gap
from grammar.reading import Stated, Value
from grammar.scene import Item, Scene

DENIED_WITHIN = 2.6  # a denial holds over the value that is this near after it
SETTING_WITHIN = 1.1
UNSURE_WITHIN = 4.0
OPEN_CHOICE = frozenset({"bank.layout", "charger.isolated", "battery.duty", "reading.state"})  # "series or parallel?" states neither
GENERIC = {"battery.chemistry": "lead"}  # "sealed AGM" is AGM


@dataclass(frozen=True, slots=True)
class Words:
    """The facts stated by words, and those denied."""

    stated: tuple[Stated, ...]
    denied: tuple[Stated, ...]


def words_of(scene: Scene) -> Words:
    """What the value words and model names of a message state, each value once, and what they deny."""
    stated: list[Stated] = []
    denied: list[Stated] = []
    for item in scene.items:
        if item.kind not in ("value", "model"):
            continue
        fact, value = _meaning(scene, item)
        if not fact or _unsure(scene, item):
            continue
        span = scene.span(item.start, item.end)
        found = Stated(fact, value, "", scene.text[slice(*span)], span, how="token")
        if _denied(scene, item):
            denied.append(found)
        elif not any(other.fact == fact and other.value == value for other in stated):
            stated.append(found)
    return Words(tuple(_settled(scene, stated)), tuple(denied))


def _meaning(scene: Scene, item: Item) -> tuple[str, Value]:
    if item.kind == "model":
        return "load.model", item.name
    kind = facts()[item.fact].kind
    if kind == "flag":
        return item.fact, item.name == "true"
    if kind == "number":
        return item.fact, float(item.name)
    if item.fact == "battery.chemistry" and _is_setting(scene, item):
        return "charger.setting", "flooded" if item.name == "lead" else item.name
    return item.fact, item.name


def _is_setting(scene: Scene, item: Item) -> bool:
    """Whether the kind is that of a charger's switch: "AGM setting", "set to gel"."""
    for found in scene.roles:
        if found.concept == "charger.setting" and gap(scene, item, found.start, found.end) <= SETTING_WITHIN:
            return True
    return False


def _denied(scene: Scene, item: Item) -> bool:
    return any(
        found.end <= item.start and gap(scene, item, found.start, found.end) <= DENIED_WITHIN
        for found in scene.denials
    )


def _unsure(scene: Scene, item: Item) -> bool:
    """Whether the writer does not know: "no idea if AGM or gel"."""
    return any(
        found.end <= item.start and gap(scene, item, found.start, found.end) <= UNSURE_WITHIN
        for found in scene.note("no_idea")
    )


def _settled(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """Without open choices ("series or parallel?") and without a general kind beside its exact one."""
    values: dict[str, list[Stated]] = {}
    for item in stated:
        values.setdefault(item.fact, []).append(item)
    for item in stated:
        among = values[item.fact]
        if len(among) > 1 and item.fact in OPEN_CHOICE:
            continue
        if len(among) > 1 and item.value == GENERIC.get(item.fact) and _touches(item, among):
            continue
        yield item


def _touches(item: Stated, among: list[Stated]) -> bool:
    return any(0 <= max(item.span[0] - other.span[1], other.span[0] - item.span[1]) <= 3 for other in among if other is not item)
