"""What the figures on and about a battery are: ratings, charge, weight, counts, temperature."""
from __future__ import annotations

from grammar.attach import NOTHING, Claim, beside, by_group, close
from grammar.scene import Item, Scene

BY_UNIT = {  # the unit or the label says it all
    "CCA": "battery.cca", "CA": "battery.ca", "RC": "battery.reserve", "WH": "battery.energy", "GROUP": "battery.group",
    "GAUGE": "cable.gauge", "AREA": "cable.area", "GRAVITY": "reading.gravity", "STUD": "terminal.size",
    "VOLUME": "space.volume",
}
COUNTED = frozenset({"VOLT", "AH", "CCA", "CA", "RC", "GROUP", "WH"})
INSULATION = (60.0, 125.0)  # C


def rated(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that follows from the unit alone."""
    if item.dim == "WH" and close(scene, item, "used_up", reach=1.5):
        return NOTHING
    if item.dim == "AREA" and beside(scene, item, "space", reach=1):
        return NOTHING
    return Claim(BY_UNIT[item.dim], "token")


def amp_hours(scene: Scene, item: Item, value: float) -> Claim | None:
    """A capacity, but not amp-hours used up in a day; a "20 Ah charger" gives amps."""
    if close(scene, item, "used_up", reach=1.5):
        return NOTHING
    sides = scene.sides.get(item.at)
    if sides and sides.right and sides.right.head == "charger" and sides.right.at == item.at + 1 and value <= 60:
        return Claim("charger.current", "grammar")
    return Claim("battery.capacity", "token")


def watts(scene: Scene, item: Item, value: float) -> Claim | None:
    """A panel's power or the load's; an engine's is no fact."""
    claim = by_group(scene, item)
    if claim:
        return claim
    if beside(scene, item, "engine", reach=3):
        return NOTHING
    if scene.about("role:sun") and "load" not in scene.heads:
        return Claim("solar.power", "default")
    if "panel" in scene.heads and (beside(scene, item, "panel", reach=6) or "load" not in scene.heads):
        return Claim("solar.power", "near")
    return Claim("load.power", "default")


def percent(scene: Scene, item: Item, value: float) -> Claim | None:
    """A state of charge, or the loss that a cable is allowed."""
    if item.quantity.kind == "state_of_charge":
        return Claim("battery.charge", "token")
    if item.quantity.kind == "drop" or close(scene, item, "cable.drop", reach=2.5) or scene.about("word:loss") and value <= 10:
        return Claim("cable.drop", "role")
    if close(scene, item, "no_charge", reach=2):
        return NOTHING
    return Claim("battery.charge", "default")


def temperature(scene: Scene, item: Item, value: float) -> Claim | None:
    """The air's temperature, or what a cable's insulation stands; `value` in Celsius."""
    if INSULATION[0] <= value <= 250 and (close(scene, item, "cable.insulation", reach=3) or "cable" in scene.heads):
        return Claim("cable.insulation", "role")
    return Claim("ambient.temperature", "token")


def weight(scene: Scene, item: Item, value: float) -> Claim | None:
    """A battery's weight; a boat's or a person's is no fact."""
    claim = by_group(scene, item)
    if claim and claim.fact == "-":
        return claim
    return Claim("battery.weight", "token") if not beside(scene, item, "boat", reach=1.5) else NOTHING


def counts(scene: Scene, item: Item, value: float) -> Claim | None:
    """How many batteries, banks, outputs or bursts: a small whole number right before what it counts."""
    if value != int(value) or not 1 <= value <= 200:
        return None
    if close(scene, item, "load.bursts", reach=1.3):
        return Claim("load.bursts", "role")
    for role in ("charger.outputs", "bank.count", "battery.max_in_series", "battery.max_in_parallel"):
        if close(scene, item, role, reach=0.6) and value <= 12:
            return Claim(role, "role")
    if value <= 24 and _before_battery(scene, item):
        return Claim("battery.count", "grammar")
    if value <= 24 and item.dim == "COUNT" and item.kind != "count" and "battery" in scene.heads | scene.facts:
        return Claim("battery.count", "default")
    return None


def _before_battery(scene: Scene, item: Item) -> bool:
    """Whether a battery follows: its kind, its volts, its figures or the word itself."""
    for after in scene.items[item.at + 1 : item.at + 6]:
        if after.dim in COUNTED or after.fact in ("battery.chemistry", "battery.duty") or after.head == "battery":
            return True
        if after.fact == "bank.layout" or after.name in THEM:
            return True
        if after.head or after.dim or after.kind == "mark" and after.name != "(":
            return False
        if after.kind == "word" and after.name not in PASSED:
            return False
    return False


THEM = frozenset("them together those".split())
PASSED = frozenset("of in what he she they i we identical new old the my big small large same matched equal more good a these those x * separate other".split())
