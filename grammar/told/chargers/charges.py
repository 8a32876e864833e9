"""Which figures are a charger's by how it is spoken of: "a charger of 20", "ours is a 30", "the B2B eats 30"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.told.currents.fed import fills_it

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
