"""Amps that fill a battery, by what is done with them: "fed by a 15 amp thing", "give her 10 A till full"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

CHARGERS = frozenset({"charger", "dcdc"})
FED = frozenset(
    {"fed", "charged", "recharged", "replenished", "filled", "refilled", "refreshed", "restored", "topped", "nourished"}
)
BY = frozenset({"by", "from", "with", "off"})
THINGS = frozenset(
    {"thing", "one", "box", "unit", "gadget", "gizmo", "brick", "job", "jobbie", "machine", "contraption"}
)
FED_WITHIN = 7  # words before the figure
ONES = frozenset({"one", "unit", "job", "model"})
LOADING = frozenset({"load", "loading", "loaded", "loads"})  # what a charger does, in some tongues
SPENT = frozenset({"spent", "empty", "emptied", "flat", "exhausted", "drained", "dead"})
SPENT_WITHIN = 14  # words
ON = frozenset({"with", "on", "at", "from"})
WHEN = frozenset({"when", "once", "if", "after"})
AGAIN = frozenset({"before", "till", "until"})
GIVE = frozenset({"give", "giving", "feed", "feeding", "gave"})
IT = frozenset({"her", "it", "him", "them"})
MADE_GOOD = (("make", "good"), ("put", "right"), ("make", "up"), ("put", "back"), ("make", "whole"))
BOXES = frozenset({"box", "gadget", "gizmo", "unit", "brick", "contraption"})
BOX_WITHIN = 6  # words
GIVES = frozenset({"puts", "gives", "putting", "giving", "delivers", "delivering", "makes", "pushes"})
WIRES = frozenset({"lead", "leads", "cable", "cables", "wire", "wires", "cord"})


def fills_it(scene: Scene, item: Item) -> bool:
    """Whether amps fill a battery; only amps, or the bare number of an offer, are looked at."""
    if item.dim != "AMP":
        return _offered(scene, item)
    tests = (_fed_by, _takes_in, _loaded_with, _after_spent, _given_to_it, _makes_good, _of_its_lead, _of_box)
    return any(test(scene, item) for test in tests)


def _fed_by(scene: Scene, item: Item) -> bool:
    """Whether a battery is fed by a thing of so many amps."""
    at = item.start - (scene.word(item.start - 1) in ("a", "an", "the", "my", "our"))
    if scene.word(at - 1) not in BY or scene.word(item.end) not in THINGS:
        return False
    return bool(FED & {scene.word(place) for place in range(at - FED_WITHIN, at - 1)})


def _takes_in(scene: Scene, item: Item) -> bool:
    """Whether "a 20 A one" is a converter: one is spoken of, and no other amps."""
    ones = scene.word(item.end) in ONES and scene.word(item.start - 1) in ("a", "an", "the", "my", "our")
    return ones and "dcdc" in scene.heads and not scene.heads & {"load", "alternator"} and _alone(scene)


def _loaded_with(scene: Scene, item: Item) -> bool:
    """Whether somebody loads a battery with so many amps: "I load with 12 A on a gel which stands at half"."""
    who = scene.word(item.start - 3) in ("i", "we", "you", "to")
    return who and scene.word(item.start - 1) == "with" and scene.word(item.start - 2) in LOADING


def _after_spent(scene: Scene, item: Item) -> bool:
    """Whether an empty battery is filled again: "when it is spent, how long with 15 A before I go on"."""
    if scene.word(item.start - 1) not in ON or not scene.about("request:how_long"):
        return False
    before = {scene.word(at) for at in range(item.start - SPENT_WITHIN, item.start)}
    after = {scene.word(at) for at in range(item.end, item.end + 2)}
    return bool(SPENT & before and AGAIN & after and WHEN & before)


def _given_to_it(scene: Scene, item: Item) -> bool:
    """Whether it is given so many amps for some time: "give her 10 amps till she's happy"."""
    given = scene.word(item.start - 1) in IT and scene.word(item.start - 2) in GIVE
    return given and scene.word(item.end) in AGAIN | {"for"}


def _makes_good(scene: Scene, item: Item) -> bool:
    """Whether they are to put back what was taken: "how long for 24 A to make good a half"."""
    return any((scene.word(at), scene.word(at + 1)) in MADE_GOOD for at in range(item.end, item.end + 3))


def _of_its_lead(scene: Scene, item: Item) -> bool:
    """Whether a charger's lead carries them: "a 30 A charger lead of 3 m"."""
    return scene.word(item.end) == "charger" and scene.word(item.end + 1) in WIRES


def _of_box(scene: Scene, item: Item) -> bool:
    """Whether a box between two voltages gives them: "a box that puts out 20 amps at 24", "a 20 amp box"."""
    if not {12.0, 24.0} <= scene.figures:
        return False
    if scene.word(item.end) in BOXES:
        return True
    before = [scene.word(at) for at in range(item.start - BOX_WITHIN, item.start)]
    return bool(GIVES & set(before[-2:])) and bool(BOXES & set(before)) and scene.word(item.end) in ("at", "on")


def _offered(scene: Scene, item: Item) -> bool:
    """Whether a charger is held up to what the desk said of its size: "20's on offer, too hot?"."""
    asked = scene.likely[:1] == ("charger.current",) and not any(old.fact == "charger.current" for old in scene.said)
    if not asked or scene.heads - CHARGERS or len(scene.measured) > 1:
        return False
    return bool({"offer", "sale", "shop"} & scene.vocabulary) and scene.word(item.end) not in ("percent", "%")


def _alone(scene: Scene) -> bool:
    return len(scene.quantities("AMP")) == 1
