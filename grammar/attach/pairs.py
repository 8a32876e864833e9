"""Numbers in pairs: the two sides of a converter ("12 to 24", "24 V from 12 V"), the two limits of a battery."""

from __future__ import annotations

from grammar.scene.claims import FIGURES, Claim, beside
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.standard import NOMINAL

SIDES = frozenset({"NUM", "VOLT", "COUNT"})
SYSTEMS = NOMINAL - {6.0}
UPWARD = frozenset(["to", "-", "->", "=>", ">", "→", "into", "down"])
OUT_OF = frozenset(["of", "from"])
FROM_IT = OUT_OF | {"out", "a", "the", "my"}
REACH = 7  # pieces from one side to the other: "24 V 20 A from 12 V", "24 V pair at the bow from the 12 V"
ISOLATED = frozenset(["iso", "isolated", "noniso", "isolating"])
APART = frozenset(  # "separate from the 24 V bank" takes nothing from it
    {"separate", "separated", "apart", "independent", "different", "distinct", "disconnected", "removed", "away"}
)
FED = frozenset({"feed", "feeding", "fed", "supply", "supplied", "power", "powered"})
OUTLETS = frozenset({"outlet", "output", "exit", "out", "terminals"})
GIVING = frozenset({"charge", "feed", "take", "draw", "fill", "supply"})  # "12 to charge it from"
TAKEN = frozenset({"from", "off", "out"})
CHARGES = frozenset({"charge", "charges", "feed", "feeds", "fill", "fills"})
SOURCES = frozenset({"engine", "starter", "start", "starting", "house", "domestic", "alternator"})
FORWARD = frozenset({"bow", "stern", "thruster", "windlass", "front", "forward"})
SMALLEST_LIMIT = 20.0
BESIDE_BMS = 2.0


def converts(scene: Scene) -> bool:
    """Whether a converter from one voltage to another is spoken of."""
    told = any(fact.fact == "charger.input_voltage" or fact.value == "dc-dc" for fact in scene.said)
    return told or "dcdc" in scene.heads or scene.about("word:boost")


def steps_up(scene: Scene, item: Item) -> str:
    """What the numbers of "12 to 24", "24 out of 12" are: the side taken from and the side charged; else ""."""
    for other in scene.items[max(0, item.at - REACH) : item.at + REACH + 1]:
        if other is item or other.dim not in SIDES or abs(other.at - item.at) > REACH:
            continue
        first, second = sorted((item, other), key=lambda one: one.at)
        taken = _taken_from(scene, first, second)
        if taken is not None:
            return "charger.input_voltage" if taken is item else "bank.voltage"
    return ""


def _taken_from(scene: Scene, first: Item, second: Item) -> Item | None:
    """Which of two voltages a converter takes in; None where they are no pair."""
    one, other = first.quantity.value, second.quantity.value
    if not {one, other} <= SYSTEMS or (one == other and not _evenly(scene, first, second)):
        return None
    if one != other and (giver := _placed(scene, first, second)) is not None:
        return giver
    pieces = scene.items[first.at + 1 : second.at]
    if any(parted_from(scene, piece.start) for piece in pieces):
        return None
    between = {piece.name for piece in pieces if not piece.dim} or _sign(scene, first, second)
    if "from" in between and {one, other} == {12.0, 24.0} and _draws_from(scene, second):
        return second
    if any(piece.dim == "COUNT" for piece in (first, *pieces)):  # "24 V from two 12 V"
        return None
    out = between & OUT_OF and between - {"/"} <= FROM_IT
    if out and ((one, other) == (24.0, 12.0) or converts(scene)):
        return second
    if (scene.word(first.start - 1), scene.word(second.start - 1)) == ("in", "out") and converts(scene):
        return first
    close = len(pieces) <= 2 and not any(piece.dim for piece in pieces)
    if not close or "from" in between:
        return None
    if between & UPWARD and ((one, other) == (12.0, 24.0) or converts(scene)):
        return first
    told = converts(scene) or ("charger" in scene.heads and bool(ISOLATED & scene.vocabulary))
    adjacent = first.end == second.start and (one, other) == (12.0, 24.0)  # "dcdc 12 24"
    return first if told and (adjacent or between == {"/"}) else None


def parted_from(scene: Scene, at: int) -> bool:
    """Whether the word at a place is the "from" of what is kept apart: "separate from"."""
    return scene.word(at) == "from" and scene.word(at - 1) in APART


def _placed(scene: Scene, first: Item, second: Item) -> Item | None:
    """Which of two voltages is the source's by what follows each: "12 engine and 24 bow", "24 to charge, 12 to charge
    it from"; None where that does not tell both."""
    if not (converts(scene) or "alternator" in scene.heads or scene.about("word:charge")):
        return None
    tasks = [_task(scene, item) for item in (first, second)]
    sides = [task or _place(scene, item) for task, item in zip(tasks, (first, second), strict=True)]
    if set(sides) != {"source", "bow"}:
        return None
    between = range(first.end, second.start) if not any(tasks) else range(0)
    words = {scene.word(at) for at in between if not parted_from(scene, at)}
    if words & TAKEN:  # "charge my 12 V start from the 24 V thruster bank"
        return second
    return first if words & CHARGES or sides[0] == "source" else second


def _task(scene: Scene, item: Item) -> str:
    """Whether volts are there "to charge" or "to charge it from"; "" for neither."""
    words = [scene.word(at) for at in range(item.end, item.end + 4)]
    if words[0] == "to" and words[1] in GIVING and "from" in words[2:]:
        return "source"
    charged = words[:2] == ["to", "charge"] or words[:3] == ["to", "be", "charged"]
    at = item.end + 3
    placed = words[:2] in (["in", "the"], ["at", "the"]) and [scene.word(at), scene.word(at + 1)] == ["to", "charge"]
    return "bow" if charged or placed else ""


def _place(scene: Scene, item: Item) -> str:
    """Whether the place that follows volts is one that gives or one that is charged; "" for neither."""
    words = [scene.word(at) for at in range(item.end, item.end + 2)]
    there = words[0] in ("in", "at", "on") and words[1] in ("the", "my", "our")
    follows = scene.word(item.end + (2 if there else 0))
    return "source" if follows in SOURCES else "bow" if follows in FORWARD else ""


def _evenly(scene: Scene, first: Item, second: Item) -> bool:
    """Whether a converter has the same volts on both sides: "12 to 12"."""
    return converts(scene) and scene.word(first.end) == "to" and second.start == first.end + 1


def _draws_from(scene: Scene, second: Item) -> bool:
    """Whether "from the 12 V" is where a charge is taken: "charge a 24 V pair from a 12 V boat"."""
    words = [scene.word(at) for at in range(second.start - 2, second.start)]
    fed = scene.about("word:charge", "word:boost") or not FED.isdisjoint(scene.vocabulary)
    return "from" in words and fed


def _sign(scene: Scene, first: Item, second: Item) -> set[str]:
    """The sign right between two numbers, which is no piece of its own: the dash of "12-24 V"."""
    if first.part is None or second.part is None:
        return set()
    return {scene.text[first.part.span[1] : second.part.span[0]].strip()}


def _volts(scene: Scene) -> list[Item]:
    return scene.quantities("VOLT", "NUM")


def put_out(scene: Scene, item: Item) -> Claim | None:
    """The amps that a converter gives: "24 V 20 A from 12 V", "12 to 24, 15 A out"."""
    after = scene.word(item.end)
    if (after in ("out", "output") or _at_outlet(scene, item)) and (
        converts(scene)
        or {12.0, 24.0} <= scene.figures
        or any(steps_up(scene, other) for other in [*_volts(scene), *scene.quantities("COUNT")])
    ):
        return Claim("charger.current", "role")
    side = [scene.word(at) for at in range(item.end, item.end + 4)]
    if side[:2] == ["on", "the"] and side[3] in ("side", "end") and converts(scene):
        return Claim("charger.current", "role")
    if _behind_pair(scene, item):
        return Claim("charger.current", "role")
    left = [other for other in scene.items[max(0, item.at - 2) : item.at] if other.dim in ("VOLT", "NUM")]
    right = [other for other in scene.items[item.at + 2 : item.at + 4] if other.dim in ("VOLT", "NUM")]
    if after in OUT_OF and left and right and _taken_from(scene, left[0], right[0]) is not None:
        return Claim("charger.current", "role")
    return None


def _at_outlet(scene: Scene, item: Item) -> bool:
    """Whether it is told where the amps come out: "12 A at its outlet", "10 A from the output"."""
    place = [scene.word(at) for at in range(item.end, item.end + 3)]
    return place[0] in ("at", "on", "from") and place[1] in ("its", "the") and place[2] in OUTLETS


def _behind_pair(scene: Scene, item: Item) -> bool:
    """Whether it follows a converter's two volts at once: "12v to 24v 20A isolated?", "dc/dc 12>24 8A"."""
    sides = [other for other in scene.items[max(0, item.at - 3) : item.at] if other.dim in SIDES]
    if len(sides) != 2 or sides[1].end != item.start or scene.word(item.end) in ("motor", "thruster", "load"):
        return False
    return _taken_from(scene, *sides) is sides[0]


def limits(scene: Scene, item: Item, value: float) -> Claim | None:
    """The two figures of "BMS 150/300": what it allows all the time, and for some seconds."""
    for step in (2, -2):
        place = item.at + step
        other = scene.items[place] if 0 <= place < len(scene.items) else None
        if other is None or other.dim not in FIGURES or scene.items[item.at + step // 2].name != "/":
            continue
        low, high = (value, other.quantity.value) if step > 0 else (other.quantity.value, value)
        near = beside(scene, item, "bms", reach=BESIDE_BMS) or beside(scene, other, "bms", reach=BESIDE_BMS)
        if near and not isinstance(low, str) and not isinstance(high, str) and SMALLEST_LIMIT <= low < high:
            return Claim("battery.max_current" if step > 0 else "battery.peak_current", "role")
    return None
