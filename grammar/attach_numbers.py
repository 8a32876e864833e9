"""What a bare number is: the plausible range and its neighbours decide, else it is nothing."""
from __future__ import annotations

from grammar.attach import Claim, beside, by_group, by_role, close
from grammar.attach_batteries import counts
from grammar.attach_lengths import METRIC_SIZES
from grammar.attach_volts import NOMINAL, falls_to, is_reading
from grammar.scene import Item, Scene

GROUPS = frozenset({"22", "24", "25", "27", "29", "31", "34", "35", "36", "47", "48", "49", "51", "58", "65", "75", "78", "94"})
GRAVITY = (1.0, 1.35)
FROST = (-45.0, -1.0)
SMALLEST_CAPACITY = 20
LARGEST_CAPACITY = 1000


def number(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that a number without a unit states."""
    typed = item.quantity.text.strip()
    decimals = len(typed.rpartition(".")[2]) if "." in typed else 0
    if GRAVITY[0] <= value <= GRAVITY[1] and decimals == 3 or _is_gravity(scene, value):
        return Claim("reading.gravity", "range")
    if FROST[0] <= value <= FROST[1] and decimals == 0:
        return Claim("ambient.temperature", "range")
    if decimals and is_reading(value) or not decimals and 4 <= value < 32 and falls_to(scene, item):
        return Claim("reading.voltage", "range")
    if decimals:
        return None
    return counts(scene, item, value) or _second_size(scene, item, value) or _named(scene, item, value)


def _is_gravity(scene: Scene, value: float) -> bool:
    return 1000 < value <= 1350 and ("hydrometer" in scene.heads or scene.about("word:gravity_word"))


def _second_size(scene: Scene, item: Item, value: float) -> Claim | None:
    """A number beside others of a kind: "group 24 ... will a 31 fit", "50 or 70 mm2"."""
    if scene.quantities("GROUP") and str(int(value)) in GROUPS and scene.about("word:fit"):
        return Claim("battery.group", "range")
    if scene.quantities("AREA") and value in METRIC_SIZES and _joined_to(scene, item, "AREA"):
        return Claim("cable.area", "grammar")
    return None


def _joined_to(scene: Scene, item: Item, dim: str) -> bool:
    later = scene.items[item.at + 1 : item.at + 3]
    return len(later) == 2 and later[0].name in ("or", "/", "vs", "to", "and") and later[1].dim == dim


def _named(scene: Scene, item: Item, value: float) -> Claim | None:
    """A number that its neighbours name: "115 gel", "a 30 charger", "the thruster takes 265", "12 boat"."""
    after = scene.items[item.at + 1] if item.at + 1 < len(scene.items) else None
    if value in NOMINAL and after is not None and after.head in ("boat", "load"):
        return Claim("bank.voltage", "grammar")
    if after is not None and after.fact == "battery.chemistry" and SMALLEST_CAPACITY <= value <= LARGEST_CAPACITY:
        return Claim("battery.capacity", "grammar")
    if value < 5 or beside(scene, item, "boat", "engine", reach=1):
        return None
    return by_role(scene, item, value) or _strict(scene, item)


def _strict(scene: Scene, item: Item) -> Claim | None:
    """A head right beside a bare number, or tied to it."""
    sides = scene.sides.get(item.at)
    if sides is None or not (sides.tied or close(scene, item, "load.current", reach=1)):
        return None
    return by_group(scene, item)
