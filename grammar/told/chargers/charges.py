"""Which figures are a charger's by how it is spoken of: "a charger of 20", "ours is a 30", "fed by a 15 amp thing"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

CHARGERS = frozenset({"charger", "dcdc"})
MOST = 200.0  # amps of a charger
AFTER_FIGURE = frozenset(  # after a bare figure; any other word is what it counts: "a charger of four exits"
    {
        *("to", "for", "on", "and", "be", "is", "do", "will", "that", "which", "into", "or", "how", "in", "as", "when"),
        *("can", "from", "at", "with", "fill", "make", "then", "if", "enough", "too", "long"),
    }
)
NEAR = 3  # words
VOLTS = frozenset({12.0, 24.0, 36.0, 48.0})
MOST_BARE = 120.0  # of one that goes by a bare number
LEAST = 2.0
TAKES = frozenset(
    {
        *("take", "takes", "pull", "pulls", "draw", "draws", "eat", "eats", "want", "wants", "use", "uses"),
        *("need", "needs", "swallows", "drinks", "sucks", "gulps"),
    }
)
SO_MUCH = frozenset({"about", "around", "some", "will", "would", "only", "just", "up", "to"})
BEFORE = 4  # words from a converter to its figure
OURS = frozenset({"ours", "mine", "one", "mines", "thats", "its", "it", "that", "this", "charger"})
IS = frozenset({"is", "was", "thats", "its", "mines"})
ASKED = ("request:what_size", "request:which", "request:how_many", "request:enough", "role:charger.current")
ONES = frozenset({"one", "unit", "job", "jobbie", "model"})
FED = frozenset(
    {"fed", "charged", "recharged", "replenished", "filled", "refilled", "refreshed", "restored", "topped", "nourished"}
)
BY = frozenset({"by", "from", "with", "off"})
THINGS = frozenset(
    {"thing", "one", "box", "unit", "gadget", "gizmo", "brick", "job", "jobbie", "machine", "contraption"}
)
FED_WITHIN = 7  # words before the figure
A_ONE = frozenset({"one", "unit", "job", "model"})
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
GIVERS = frozenset({"dcdc", "alternator", "charger", "panel", "load", "drain"})
WIRES = frozenset({"lead", "leads", "cable", "cables", "wire", "wires", "cord"})


def of_charger(scene: Scene, item: Item, value: float) -> bool:
    """Whether amps, or a bare number, are a charger's or a converter's by the words right before them."""
    if not LEAST <= value <= MOST:
        return False
    tests = (_so_much_of_it, _converter_takes, _one_beside_alternator, fills_it)
    return any(test(scene, item) for test in tests)


def _so_much_of_it(scene: Scene, item: Item) -> bool:
    """Whether it is the figure of "my charger of 20", "a converter of 15 amps"."""
    volts = item.dim == "NUM" and item.quantity.value in VOLTS and (scene.quantities("VOLT") or _joined(scene))
    after = scene.after(item)
    things = item.dim == "NUM" and after is not None and after.kind == "word" and after.name not in AFTER_FIGURE
    if (
        scene.word(item.start - 1) != "of" or volts or things
    ):  # "three in a row, one charger of 36 or three little ones"
        return False
    return any(head.head in CHARGERS and head.end == item.start - 1 for head in scene.head_items)


def _converter_takes(scene: Scene, item: Item) -> bool:
    """Whether a converter is what takes it: "the DC to DC eats 30", and a converter gives about what it takes."""
    if item.dim not in ("AMP", "NUM") or scene.word(item.end) in ("volts", "v", "volt"):
        return False
    left = [head for head in scene.head_items if head.end <= item.start]
    if not left or left[-1].head != "dcdc" or item.start - left[-1].end > BEFORE:
        return False
    between = [scene.word(at) for at in range(left[-1].end, item.start)]
    return bool(TAKES & set(between)) and set(between) <= TAKES | SO_MUCH


def _one_beside_alternator(scene: Scene, item: Item) -> bool:
    """Whether it is "a 60 amp one", of a converter or charger spoken of, beside the alternator's own amps."""
    if item.dim != "AMP" or scene.word(item.end) not in ONES or not CHARGERS & scene.heads or "load" in scene.heads:
        return False
    others = [other for other in scene.quantities("AMP") if other is not item]
    return len(others) == 1 and _of_alternator(scene, others[0]) and not _of_alternator(scene, item)


def _of_alternator(scene: Scene, item: Item) -> bool:
    """Whether the alternator stands right after or before it: "a 90 amp alternator", "the alternator is 80 A"."""
    near = (head for head in scene.head_items if head.head == "alternator")
    return any(0 <= head.start - item.end <= 1 or 0 <= item.start - head.end <= NEAR for head in near)


def _joined(scene: Scene) -> bool:
    """Whether batteries are joined, or sums are done, so that a bare 24 or 36 is of volts."""
    return bool(scene.facts & {"bank.layout"} or {12.0, 24.0} <= scene.figures)


def is_own_charger(scene: Scene, item: Item, value: float) -> bool:
    """Whether it is the charger that they have, where one is asked about: "because ours is a 30", "mine's 8"."""
    if "charger" not in scene.heads or scene.heads - {"charger", "battery", "cell"} or not scene.about(*ASKED):
        return False
    if not LEAST <= value <= MOST_BARE or scene.quantities("AMP"):
        return False
    after = scene.after(item)
    if after is not None and after.kind != "mark" and after.name not in ("amp", "already", "and", "at", "here", "now"):
        return False
    article = scene.word(item.start - 1) in ("a", "an")
    at = item.start - 1 - article
    if scene.word(at) in ("mines", "ours") or (article and scene.word(at) in ("its", "thats")):
        return True
    return scene.word(at) in IS and scene.word(at - 1) in OURS | {"have"}


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
    ones = scene.word(item.end) in A_ONE and scene.word(item.start - 1) in ("a", "an", "the", "my", "our")
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
    given = bool(GIVES & set(before[-2:])) and scene.word(item.end) in ("at", "on")
    return given and (bool(BOXES & set(before)) or _converter_is_last(scene, item))


def _converter_is_last(scene: Scene, item: Item) -> bool:
    """Whether of all that gives amps a converter was named last: "a converter that takes the engine's 12 volts and
    gives out 20 A at 24"."""
    named = [head.head for head in scene.head_items if head.end <= item.start and head.head in GIVERS]
    return named[-1:] == ["dcdc"]


def _offered(scene: Scene, item: Item) -> bool:
    """Whether a charger is held up to what the desk said of its size: "20's on offer, too hot?"."""
    asked = scene.likely[:1] == ("charger.current",) and not any(old.fact == "charger.current" for old in scene.said)
    if not asked or scene.heads - CHARGERS or len(scene.measured) > 1:
        return False
    return bool({"offer", "sale", "shop"} & scene.vocabulary) and scene.word(item.end) not in ("percent", "%")


def _alone(scene: Scene) -> bool:
    return len(scene.quantities("AMP")) == 1
