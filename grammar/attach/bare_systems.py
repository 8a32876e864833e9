"""Whether a bare 12 or 24 is the volts of a battery or of the boat."""

from __future__ import annotations

from grammar.attach.pairs import converts, steps_up
from grammar.lexicon.vocabulary import small_words
from grammar.scene.claims import TOUCHING, Claim
from grammar.scene.denied import denied
from grammar.scene.items import Item
from grammar.scene.near import gap
from grammar.scene.scene import Scene
from grammar.text.standard import NOMINAL
from grammar.told.words import stops

FROM = frozenset({"on", "of", "from"})
SYSTEM = frozenset({"bank", "system", "pair", "side"})
HULLS = frozenset({"hulls", "boats", "yachts", "barges", "launches"})
SIX = 6.0
TAKEN_IN = 12.0  # volts of a converter's side
JOINED_TO = frozenset({24.0, 36.0, 48.0})  # volts of several batteries
MAKES = frozenset({"make", "makes", "making", "made", "turned"})


def system_of(scene: Scene, item: Item, value: float) -> Claim | None:
    """A bare 12, 24 ... as the volts of a system or of a converter's two sides."""
    if stepped := steps_up(scene, item):
        return Claim(stepped, "grammar")
    if _is_side_told(scene, item):
        return Claim("charger.input_voltage", "grammar")
    if _each_of_them(scene, item):
        return Claim("battery.nominal", "grammar")
    if _is_poured_into(scene, item):
        return Claim("bank.voltage", "grammar")
    if scene.word(item.end) in HULLS:
        return None  # "all six hulls have a battery tray"
    near = [other for other in scene.items[max(0, item.at - 4) : item.at] if other.dim]
    last = near[-1] if near else None
    if "dcdc" in scene.heads and scene.word(item.end) == "out":
        return Claim("bank.voltage", "grammar")
    if (
        last is not None
        and last.dim in ("WATT", "AMP")
        and scene.word(item.start - 1) in ("at", "on")
        and last.end == item.start - 1
    ):
        return Claim("bank.voltage", "grammar")
    if (
        last is not None
        and last.dim == "VOLT"
        and scene.word(item.start - 1) == "a"
        and scene.word(item.start - 2) in FROM
    ):
        return Claim("battery.nominal", "grammar")
    if value == TAKEN_IN and _goes_in(scene, item):
        return Claim("charger.input_voltage", "near")
    return Claim("bank.voltage", "grammar") if _names_system(scene, item, scene.after(item)) else None


def _each_of_them(scene: Scene, item: Item) -> bool:
    """Whether it is the volts of each of joined batteries: "two AGMs in series, 12 each"."""
    each = scene.word(item.end) in ("each", "apiece") and item.quantity.value in (SIX, TAKEN_IN)
    joined = "bank.layout" in scene.facts or bool({"volts", "voltage"} & scene.vocabulary)
    return each and joined and not {"weigh", "weighs", "kilos", "kg", "lb"} & scene.vocabulary


def _is_poured_into(scene: Scene, item: Item) -> bool:
    """Whether a charger's amps go there: "the booster sends 15 A to the 24 in the bow"."""
    goes = scene.word(item.start - 1) in ("the", "my", "our") and scene.word(item.start - 2) in ("to", "into")
    charges = converts(scene) or "alternator" in scene.heads
    return bool(goes and charges and item.quantity.value not in (SIX, TAKEN_IN) and scene.quantities("AMP"))


def _is_side_told(scene: Scene, item: Item) -> bool:
    """Whether it only names the side that a converter of the conversation takes from: "pull on the 24 side?"."""
    taken = any(old.fact == "charger.input_voltage" and old.value == item.quantity.value for old in scene.said)
    return taken and scene.word(item.end) in ("side", "end", "feed")


def _goes_in(scene: Scene, item: Item) -> bool:
    """Whether a bare 12 is what a converter takes in."""
    return "dcdc" in scene.heads and scene.word(item.end) in ("in", "side", "to", "->", "=>", "volts")


def _names_system(scene: Scene, item: Item, after: Item | None) -> bool:
    """Whether a bare 12 or 24 is the system's: "a 24 boat", "in series for 36"."""
    paired = scene.word(item.end) in ("bow", "stern", "thruster") and scene.word(item.end + 1) in SYSTEM
    paired = paired or (after is not None and after.fact == "battery.chemistry" and scene.word(after.end) == "bank")
    if after is not None and (after.head in ("boat", "load") or scene.word(item.end) in SYSTEM or paired):
        return True
    if scene.word(item.start - 1) in ("bank", "system") or scene.word(item.start - 2) in ("bank", "system", "pair"):
        return True
    if scene.word(item.start - 1) in ("its", "is", "actually", "no") and _mends_volts(scene, item):
        return True
    if _is_loads(scene, item) or _is_wanted(scene, item) or _is_made(scene, item):
        return True
    second = scene.items[item.at + 2] if item.at + 2 < len(scene.items) else None
    if after is not None and after.name == "," and second is not None and second.name == "not":  # "12, not 24"
        after, second = second, scene.items[item.at + 3] if item.at + 3 < len(scene.items) else None
    if after is not None and after.name == "not" and second is not None and second.dim in ("NUM", "VOLT"):
        return second.quantity.value in NOMINAL
    sixes = any(other.quantity.value == SIX for other in scene.quantities("VOLT"))  # "two 6 V wired for 12"
    if item.quantity.value == 12.0 and sixes and scene.word(item.start - 1) in ("for", "wire", "make", "get"):
        return True
    if item.quantity.value in (6.0, 12.0) or scene.word(item.start - 1) not in (small_words("leading") | {"="}):
        return False
    return "bank" in scene.facts or "load" in scene.heads or after is None or after.kind == "mark"


def _is_loads(scene: Scene, item: Item) -> bool:
    """Whether it is the load's: "the thruster's 24"."""
    sides = scene.sides.get(item.at)
    left = sides.left if sides is not None else None
    if item.quantity.value in (6.0, 12.0) or left is None or left.head != "load":
        return False
    return gap(scene, item, left.start, left.end) <= TOUCHING


def _is_wanted(scene: Scene, item: Item) -> bool:
    """Whether a load asks for these volts: "the bow motor wants 24"."""
    ends = stops(scene, item)
    large = item.quantity.value not in (6.0, 12.0)
    return large and ends and "load" in scene.heads and scene.word(item.start - 1) in ("wants", "needs")


def _is_made(scene: Scene, item: Item) -> bool:
    """Whether it is what batteries are joined to, or what amps go into: "two twelves to make the 24", "as a 24"."""
    if item.quantity.value not in JOINED_TO or scene.about("word:fit"):
        return False
    at = item.start - (scene.word(item.start - 1) in ("a", "an", "the", "our", "my"))
    before, earlier = scene.word(at - 1), {scene.word(at - 2), scene.word(at - 3)}
    made = before in MAKES or (before in ("up", "into") and bool(earlier & MAKES))
    fewer = not {SIX, TAKEN_IN}.isdisjoint(other.quantity.value for other in scene.quantities("VOLT", "NUM"))
    poured = before == "into" and bool(scene.quantities("AMP"))
    return made or (fewer and (before == "as" or scene.word(item.end) == "out")) or poured


def _mends_volts(scene: Scene, item: Item) -> bool:
    """Whether it takes the place of volts that do not hold: "I said 12 volt, it's 24"."""
    before = scene.items[max(0, item.at - 5) : item.at]
    mended = scene.word(item.start - 1) == "no"  # "24 V? no 12"
    return any(other.dim == "VOLT" and (mended or denied(scene, other)) for other in before)
