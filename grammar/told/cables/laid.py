"""What is told of a cable in its own words: "eleven metres of boat in between", "it's number 4", "95mm onto M10"."""

from __future__ import annotations

from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.standard import METRIC_SIZES

HULL = frozenset({"boat", "hull", "deck", "ship", "vessel", "bilge", "barge", "narrowboat"})
APART = frozenset({"between", "away", "apart", "off", "separates", "separating", "parts", "from"})
WIRES = frozenset({"cable", "wire", "copper", "lead", "conductor", "flex"})
NEAR = 4  # words
SHORTEST, LONGEST = 1.0, 60.0  # metres of a run
NUMBERED = frozenset({"number", "no", "nr"})
OUGHTS = frozenset({"aughts", "oughts", "naughts", "awg", "gauge", "gage"})
GAUGES = frozenset({1.0, 2.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0})
OF_WIRE = frozenset(
    {"its", "is", "was", "bought", "a", "used", "uses", "with", "of", "in", "some", "got", "have", "has", "ran", "laid"}
    | {"fitted", "wired", "pulled", "cable", "wire", "copper", "put", "took"}
)
ALONG = frozenset({"on", "along", "through", "in", "down", "over", "ran", "run", "by", "with"})  # what amps flow on
THINNEST = 16.0  # mm2 of a cable: fewer millimetres in a lug are its hole
ONTO = frozenset({"on", "onto", "to", "for", "with", "4"})
LUGS = frozenset({"ring", "lug", "terminal", "eye", "crimp", "rings", "lugs", "terminals", "eyes", "crimps"})


def laid(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of figures that nothing has, or that were taken for the boat's, and that are a cable's."""
    facts = {claim.fact for claim in claims.values()}
    free = [item for item in scene.measured if claims.get(item.at, NOTHING).fact == NOTHING.fact]
    found: dict[int, Claim] = {}
    if "cable.length" not in facts:
        open_at = {item.at for item in free}
        loose = [item for item in scene.quantities("NUM") if item.at in open_at or claims[item.at].how == "weighed"]
        own = [item for item in loose if _of_cable(scene, item)] or [item for item in free if _of_hull(scene, item)]
        found |= {item.at: Claim("cable.length", "near") for item in own[:1]}
    if not facts & {"cable.gauge", "cable.area"}:
        found |= {item.at: Claim("cable.gauge", "near") for item in free if _is_numbered(scene, item)}
        found |= {item.at: Claim("cable.area", "near") for item in free if _meets_a_stud(scene, item)}
    return found


def _of_hull(scene: Scene, item: Item) -> bool:
    """Whether the boat lies between: "5 m of hull between engine and bow"; not "10 m of boat"."""
    if item.dim != "LENGTH" or scene.word(item.end) != "of":
        return False
    after = [scene.word(at) for at in range(item.end + 1, item.end + 1 + NEAR)]
    spoken = {"cable", "dcdc", "fuse", "load", "space", "battery"} & scene.heads or scene.quantities(
        "AMP", "AREA", "GAUGE"
    )
    return after[0] in HULL and bool(APART & set(after[1:])) and bool(spoken)


def _of_cable(scene: Scene, item: Item) -> bool:
    """Whether a bare figure is so many metres of it, after metres: "24 metres of boat away, well, 12 of cable"."""
    if scene.word(item.end) != "of" or scene.word(item.end + 1) not in WIRES:
        return False
    metres = [other for other in scene.quantities("LENGTH") if other.at < item.at]
    if not metres or metres[-1].quantity.unit != "meter" or item.dim != "NUM" or isinstance(item.quantity.value, str):
        return False
    return SHORTEST <= item.quantity.value <= LONGEST


def _is_numbered(scene: Scene, item: Item) -> bool:
    """Whether a size of American wire goes by its number: "he bought number 2", "wire too. It's number 4"."""
    if item.dim != "NUM" or item.quantity.value not in GAUGES or scene.word(item.start - 1) not in NUMBERED:
        return False
    after = scene.after(item)
    ends = after is None or after.kind == "mark" or after.name in WIRES or after.head == "cable"
    amps, before = bool(scene.quantities("AMP")), scene.word(item.start - 2)
    if OUGHTS & scene.vocabulary and scene.quantities("AMP", "LENGTH"):  # "would number 4 do, or the aughts"
        return True
    if amps and before in ALONG and ends:  # "a windlass, 105 A, on number 4"
        return True
    spoken = "cable" in scene.heads or (scene.quantities("LENGTH") and amps)
    return ends and bool(spoken) and before in OF_WIRE


def _meets_a_stud(scene: Scene, item: Item) -> bool:
    """Whether millimetres before a stud's size are the cable's in a lug: "ring for 95mm onto M10"."""
    value = item.quantity.value
    if item.dim != "MM" or value not in METRIC_SIZES or float(value) < THINNEST or not LUGS & scene.vocabulary:
        return False
    at = item.end + 1 + (scene.word(item.end + 1) in ("an", "a", "the", "my"))
    return scene.word(item.end) in ONTO and at < len(scene.at_word) and scene.at_word[at].dim == "STUD"
