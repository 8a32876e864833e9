"""Amp-hours told in a way of their own: "25 A into 110", "when each has 130", "AGM 75", "if it's a 100"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

SMALLEST, LARGEST = 20.0, 400.0
LIKELY = 40.0  # amp-hours that a bare "it's a ..." tells
LEAST_CASE = 50.0  # a number from here on is hardly a case, where neither "group" nor "case" is said
CASES = frozenset({"group", "grp", "case", "size", "bci", "fit", "fits", "tray", "dimensions"})
ARTICLES = frozenset({"a", "an", "the", "my", "our", "this", "his", "her"})
HOLDS = frozenset({"has", "is", "holds", "being", "of", "at", "a", "be", "with", "having"})
IT_IS = frozenset({"its", "thats", "hers", "theyre"})
NO_SIZE = frozenset({"fuse", "cable", "panel", "charger", "alternator", "dcdc", "bms"})
NOT_AFTER = frozenset(
    {
        *(
            "kg",
            "kilos",
            "kilo",
            "lb",
            "lbs",
            "pounds",
            "v",
            "volts",
            "volt",
            "a",
            "amps",
            "amp",
            "cca",
            "%",
            "percent",
        ),
        *("mm", "cm", "square", "ft", "feet", "metres", "awg", "watts", "w", "watt", "year", "years", "footer", "foot"),
    }
)


def own_size(scene: Scene, item: Item, value: float) -> bool:
    """Whether a bare number is a battery's amp-hours by the words right before it."""
    if item.dim != "NUM" or not SMALLEST <= value <= LARGEST or scene.word(item.end) in NOT_AFTER:
        return False
    after = scene.after(item)
    ends = after is None or after.kind in ("mark", "word")
    if not ends:
        return False
    return (
        _poured_into(scene, item)
        or _each_has(scene, item)
        or _of_kind(scene, item, value)
        or _it_is(scene, item, value)
    )


def _poured_into(scene: Scene, item: Item) -> bool:
    """Whether a charger's amps go into it: "25 A into 110", "20 amps into a 90"."""
    at = item.start - 1 - (scene.word(item.start - 1) in ARTICLES)
    return scene.word(at) == "into" and at > 0 and scene.at_word[at - 1].dim == "AMP"


def _each_has(scene: Scene, item: Item) -> bool:
    """Whether each of some batteries has it: "when each has 130", "each being a 90", "130 in each"."""
    at = item.start - 1
    while scene.word(at) in HOLDS and item.start - at <= 2:
        at -= 1
    batteries = "battery" in scene.heads | scene.facts and not scene.heads & (NO_SIZE - {"charger"})
    told = at < item.start - 1 and scene.word(at) == "each"
    return batteries and (told or (scene.word(item.end), scene.word(item.end + 1)) == ("in", "each"))


def _of_kind(scene: Scene, item: Item, value: float) -> bool:
    """Whether it follows a battery's kind: "an AGM 75", "two gels of 65"; "AGM 31" may be a case."""
    before = scene.before(item)
    if before is not None and before.name == "of":
        before = scene.items[item.at - 2] if item.at > 1 else None
    named = before is not None and before.fact == "battery.chemistry"
    return named and value >= LEAST_CASE and not CASES & scene.vocabulary


def _it_is(scene: Scene, item: Item, value: float) -> bool:
    """Whether it is the battery spoken of: "and if it's a 100 does it keep 20 amps going"."""
    if scene.word(item.start - 1) != "a" or scene.word(item.start - 2) not in IT_IS or value < LIKELY or value % 5:
        return False
    amps = bool(scene.quantities("AMP")) or "load" not in scene.heads
    return amps and "battery.chemistry" in scene.facts and not scene.heads & NO_SIZE and not scene.quantities("AH")
