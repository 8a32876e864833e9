"""What is told of batteries together: one more, strings of a bank, half the current of before."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from grammar.items import Item
from grammar.reading import Stated
from grammar.scene import Scene
from grammar.vocabulary import Found

TIMES = {"half_of_it": 0.5, "twice_it": 2.0}  # "half the amps" of what was said before
SYSTEM = 12.0  # volts of the usual battery
MOST = 12  # batteries of one string


def combined(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with those that speak of several batteries, or of what was said, as a whole."""
    found = [*_strings(scene), *_one_more(scene, stated), *_shares(scene, stated), *_wired_for(scene, stated)]
    told = {item.fact for item in found}
    return [*(item for item in stated if item.fact not in told), *found]


def _fact(scene: Scene, fact: str, value: float | str, start: int, end: int) -> Stated:
    span = scene.span(start, end)
    unit = "ampere" if fact == "load.current" else ""
    return Stated(fact, value, unit, scene.text[slice(*span)], span, how="default")


def _strings(scene: Scene) -> Iterator[Stated]:
    """ "Two and two in series", "2 in series, 2 strings": the counts of a bank in strings."""
    layouts = {item.start: item for item in scene.items if item.fact == "bank.layout" and item.name == "series"}
    counts = [item for item in scene.measured if item.dim in ("NUM", "COUNT") and _small(item)] if layouts else []
    for first, second in pairwise(counts):
        if first.quantity.value != second.quantity.value:
            continue
        value, ends = float(first.quantity.value), second.end
        if second.at - first.at == 2 and scene.word(first.end) == "and" and ends in layouts:
            count = 2 * value
        elif scene.word(ends) in ("strings", "string") and first.end in layouts:
            count = value**2
        else:
            continue
        yield _fact(scene, "bank.layout", "series-parallel", first.start, ends)
        yield _fact(scene, "battery.count", count, first.start, ends)
        return


def _small(item: Item) -> bool:
    value = item.quantity.value
    return not isinstance(value, str) and 2 <= value <= MOST and value == int(value)


def _one_more(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "A second identical one next to it": one more than there were."""
    more = [
        found
        for found in scene.named("role", "one_more")
        if found.end >= len(scene.tokens) or not scene.at_word[found.end].dim
    ]
    if not more or any(item.fact == "battery.count" for item in stated):
        return
    before = (item.value for item in scene.said if item.fact == "battery.count" and isinstance(item.value, float))
    yield _fact(scene, "battery.count", next(before, 1.0) + 1.0, more[0].start, more[0].end)


def _shares(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Half the amps": a share of the current said before."""
    shares: list[Found] = [found for found in scene.roles if found.concept in TIMES]
    before = [item.value for item in scene.said if item.fact == "load.current"]
    if not shares or not before or isinstance(before[0], str) or any(item.fact == "load.current" for item in stated):
        return
    share = shares[0]
    yield _fact(scene, "load.current", float(before[0]) * TIMES[share.concept], share.start, share.end)


def _wired_for(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Two twelves wired for 24": in series, as the volts tell."""
    wired = scene.named("role", "wired_for")
    values = {item.fact: item.value for item in stated}
    count, volts = values.get("battery.count", 0.0), values.get("bank.voltage", 0.0)
    if not wired or "bank.layout" in values or values.get("battery.nominal", SYSTEM) != SYSTEM:
        return
    if isinstance(count, float) and count > 1 and count * SYSTEM == volts:
        yield _fact(scene, "bank.layout", "series", wired[0].start, wired[0].end)
