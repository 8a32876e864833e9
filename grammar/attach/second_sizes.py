"""A bare number beside another of its kind: "70 mm2 instead of 50", "2/0 or 1/0"."""

from __future__ import annotations

from grammar.attach.bare_volts import SIDES, SIZES
from grammar.attach.lengths import of_cable
from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.standard import METRIC_SIZES, NOMINAL
from grammar.told.batteries.capacities import GROUPS

ONWARD = frozenset(["->", "=>", "→", ">", "to", "/"])
MEASURED = frozenset(
    {"centimetres", "centimeters", "cm", "mm", "millimetres", "millimeters", "measurements", "measures", "inside"}
)
SMALLEST_CAPACITY = 20
LARGEST_CAPACITY = 1000
INSTEAD = frozenset({"replace", "replaces", "replacing", "instead", "than"})
CRANKING = 300.0  # amps: no thruster's battery has so many amp-hours
FAR = 8  # items from the one's figure to the other's
HEAVIEST = 60.0  # kg of one of two


def size_beside(scene: Scene, item: Item, value: float) -> Claim | None:
    """A number beside others of a kind: "group 24 ... will a 31 fit", "50 or 70 mm2"."""
    before = scene.before(item)
    if claim := _of_the_other(scene, item, value):
        return claim
    if before is not None and before.kind == "times" and value in NOMINAL and value <= 12:
        return Claim("battery.nominal", "grammar")
    if before is not None and before.kind == "times" and SMALLEST_CAPACITY <= value <= LARGEST_CAPACITY:
        if scene.expected and "battery.capacity" not in scene.expected and (rating := _asked_rating(scene, value)):
            return Claim(rating, "grammar")
        return Claim("cable.area" if of_cable(scene, value) else "battery.capacity", "grammar")
    if str(int(value)) in GROUPS and (_onward(scene, item) or _instead_of_another(scene, item)):
        return Claim("battery.group", "grammar")
    goes = (scene.word(item.end), scene.word(item.end + 1), scene.word(item.end + 2))
    if str(int(value)) in GROUPS and (goes[:2] == ("go", "in") or goes[1:] == ("go", "in")):
        return Claim("battery.group", "grammar")  # "27 go in?", "31 would go in"
    fits = scene.about("word:fit") and "dcdc" not in scene.heads and not _is_measured(scene, item)
    if str(int(value)) in GROUPS and fits and not scene.quantities("AH", "INCH"):
        return Claim("battery.group", "range")
    said = scene.word(item.start - 1) == "says" and any(
        scene.word(other.start - 1) == "says" for other in scene.quantities("AREA")
    )
    if scene.quantities("AREA") and value in METRIC_SIZES and (said or _joined_to(scene, item, "AREA")):
        return Claim("cable.area", "grammar")
    return None


def _of_the_other(scene: Scene, item: Item, value: float) -> Claim | None:
    """What the other battery has where the first one's figure has its unit: "one has 700 CCA and the other 800"."""
    last, row = scene.word(item.start - 1), scene.word(item.start - 2)
    if last != "other" and (last != "one" or row not in ("old", "new", "older", "newer", "second")):
        return None
    rated = [one for one in scene.quantities("CCA", "AH") if item.at - FAR <= one.at < item.at]
    if not rated:
        return None
    like = 0.5 <= value / float(rated[-1].quantity.value) <= 2.0
    return Claim("battery.cca" if rated[-1].dim == "CCA" else "battery.capacity", "grammar") if like else None


def _is_measured(scene: Scene, item: Item) -> bool:
    """Whether it is a side of a tray: "34 long, 18 across, 24 to the collar" in centimetres."""
    beside = {scene.word(item.start - 1), scene.word(item.end)}
    if beside & ((SIDES | SIZES | {"across"}) - {"by"}):
        return True
    return bool(MEASURED & scene.vocabulary) and scene.word(item.end) in ("to", "from", "at", "in", "below", "above")


def _asked_rating(scene: Scene, value: float) -> str:
    """What the desk asked for that "2 x 29" or "2 x 560" answers."""
    if "battery.cca" in scene.expected and value >= CRANKING:
        return "battery.cca"
    return "battery.weight" if "battery.weight" in scene.expected and value <= HEAVIEST else ""


def _onward(scene: Scene, item: Item) -> bool:
    """Whether a case leads to it: "group 24 -> 27"."""
    return item.at > 1 and scene.items[item.at - 1].name in ONWARD and scene.items[item.at - 2].dim == "GROUP"


def _instead_of_another(scene: Scene, item: Item) -> bool:
    """Whether it is weighed against another case size: "will a 31 replace the 29"."""
    near = scene.items[max(0, item.at - 4) : item.at + 5]
    others = [other for other in near if other is not item and other.dim in ("NUM", "GROUP")]
    other = others[0] if len(others) == 1 else None
    if other is None or f"{other.quantity.value}".removesuffix(".0") not in GROUPS or other.quantity.value in NOMINAL:
        return False
    first, second = sorted((item, other), key=lambda one: one.at)
    return bool(INSTEAD & {scene.word(at) for at in range(first.end, second.start)})


def _joined_to(scene: Scene, item: Item, dim: str) -> bool:
    later = scene.items[item.at + 1 : item.at + 3]
    return len(later) == 2 and later[0].name in ("or", "/", "vs", "to", "and") and later[1].dim == dim
