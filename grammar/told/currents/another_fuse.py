"""Which amps are those of another fuse: "the yard says a 300 A fuse, the shop says 400 A is better"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.told.currents.fuses import FUSES, SAYING

REACH = 14  # pieces between the two
OPINES = 4  # words before amps in which somebody is told to hold them right
OPINION = SAYING | {
    *("would", "prefer", "prefers", "swears", "recommends", "recommended", "suggests", "suggested", "advises"),
    *("advised", "insists", "wants", "asks", "takes", "other", "offers"),
}
CHOICE = frozenset({"or", "vs", "versus", "against", "instead"})
DRAWS = frozenset({"draw", "draws", "drawing", "drew", "pull", "pulls", "pulling", "run", "runs", "running", "current"})
WORDS = frozenset({"fuse", "fuses", "breaker", "breakers", "fused"})
GOING_ON = WORDS | {
    *(",", ";", ".", "and", "a", "an", "the", "at", "with", "for"),
}  # and nobody else is named: "the shop 400 A"
ITSELF = frozenset({"it", "motor", "thruster", "windlass", "load", "plate", "which"})  # and no person
OF_LOAD = ("load.current", "load.power", "load.model")


def of_another(scene: Scene, item: Item, value: float) -> bool:
    """Whether amps of a usual size stand against those of a fuse, by somebody's word or as the other choice.

    Nothing but a fuse is named between the two, and no word that tells what a motor draws.
    """
    if value not in FUSES or "fuse" not in scene.heads or _is_named(scene, item):
        return False
    words = _before(scene, item)
    if words[0] == "or" and words[2:] == ["it", "be"]:  # "or must it be 350 A"
        return True
    if ITSELF & set(words):
        return False
    follows = scene.after(item)
    if follows is not None and follows.head not in ("", "fuse"):
        return False
    before, after = scene.items[max(0, item.at - REACH) : item.at], scene.items[item.at + 1 : item.at + 1 + REACH]
    return _against(scene, item, before[::-1]) or _against(scene, item, after)


def is_choice(scene: Scene, item: Item) -> bool:
    """Whether two usual sizes are put up where a fuse is spoken of and the load has its own amps: "250 A or 350 A"."""
    assert item.part is not None
    sizes = {quantity.value for quantity in item.part.quantities}
    told = len(sizes) > 1 and sizes <= FUSES and "fuse" in scene.heads
    return told and " or " in scene.text[slice(*scene.span(item.start, item.end))].lower() and has_its_own(scene, item)


def has_its_own(scene: Scene, item: Item) -> bool:
    """Whether a load is told of apart from these amps: a model, or amps beside the load itself."""
    if any(found.kind == "model" for found in scene.items) or any(old.fact in OF_LOAD for old in scene.said):
        return True
    sides = (scene.sides.get(other.at) for other in scene.quantities("AMP") if other is not item)
    heads = (head for one in sides if one for head in (one.left, one.right))
    return any(head is not None and head.head == "load" for head in heads)


def _against(scene: Scene, item: Item, others: list[Item]) -> bool:
    """Whether the first amps on one side are a fuse's, and what stands between tells of a choice or an opinion."""
    between: set[str] = set()
    for other in others:
        if other.dim in ("AMP", "NUM"):
            told = between | {*_before(scene, item), *(_before(scene, other) if between - GOING_ON else ())}
            weighed = bool(CHOICE & between or OPINION & told) and not DRAWS & between
            return weighed and _is_named(scene, other)
        if (other.dim and other.dim != "COUNT") or other.head not in ("", "fuse"):
            return False
        between |= {scene.word(at) for at in range(other.start, other.end)}
    return False


def _before(scene: Scene, item: Item) -> list[str]:
    return [scene.word(at) for at in range(item.start - OPINES, item.start)]


def _is_named(scene: Scene, item: Item) -> bool:
    """Whether amps stand right beside the word: "a 300 A fuse", "a fuse of 300 A", "breaker 250 A"."""
    near = (item.start - 1, item.start - 2, item.start - 3, item.end)
    return not WORDS.isdisjoint(scene.word(at) for at in near)
