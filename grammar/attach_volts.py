"""Which volts these are: of one battery, of the system, a reading at rest or under load, a charger's."""
from __future__ import annotations

from grammar.attach import NOTHING, Claim, beside, by_group, close
from grammar.near import around, gap
from grammar.scene import Item, Scene

NOMINAL = frozenset({6.0, 12.0, 24.0, 36.0, 48.0})
OF_BATTERY = frozenset({"AH", "CCA", "CA", "RC", "GROUP", "WH"})
SAGGED = 11.9  # of two readings a volt apart the lower one is under load if it is below this
TIRED = 12.45  # a single reading above this is not one under load, whatever the words
FALL = 0.9  # volts between two readings that a load explains
FALLEN = 0.15  # the same where the words say that it falls
CHARGING = (13.9, 15.9)
SAG_REACH = 6.0


def is_nominal(item: Item) -> bool:
    """Whether these volts name a system: 12, not 12.0."""
    quantity = item.quantity
    return quantity.value in NOMINAL and "." not in quantity.text and "," not in quantity.text


def is_reading(value: float) -> bool:
    """Whether a bare number with decimals can be the volts of a bank."""
    return 5 <= value < 18 or 20 <= value < 32 or 40 <= value < 60


def nominal(scene: Scene, item: Item) -> Claim | None:
    """Volts that name a battery or a system."""
    if falls_to(scene, item):
        return Claim("reading.voltage", "role")
    if _converted(scene, item):
        return Claim("charger.input_voltage", "grammar")
    before = scene.items[item.at - 1] if item.at else None
    if before is not None and (before.dim == "COUNT" or before.dim == "NUM" and before.quantity.value in (2.0, 3.0, 4.0)):
        return Claim("battery.nominal", "grammar")
    claim = by_group(scene, item)
    if claim and claim.fact != "battery.nominal":
        return claim
    value = float(item.quantity.value)
    if value > 12:
        return Claim("bank.voltage", "grammar" if claim else "default")
    if claim or _of_one(scene, item):
        return claim or Claim("battery.nominal", "grammar")
    if beside(scene, item, "charger", reach=1):
        return NOTHING
    return Claim("bank.voltage", "default")


def _of_one(scene: Scene, item: Item) -> bool:
    """Whether a battery's figures or kind follow: "12 V 100 Ah", "12 V AGM"."""
    after = scene.items[item.at + 1] if item.at + 1 < len(scene.items) else None
    return after is not None and (after.dim in OF_BATTERY or after.fact in ("battery.chemistry", "battery.duty"))


def _converted(scene: Scene, item: Item) -> bool:
    """Whether these are the volts that a converter takes in: "12 to 24", "out of 12 V"."""
    if not {"dcdc", "alternator"} & scene.heads:
        return False
    if close(scene, item, "charger.input_voltage", reach=0.6) and not beside(scene, item, "boat", reach=0.6):
        return True
    after = scene.items[item.at + 1 : item.at + 3]
    return len(after) == 2 and after[0].name in ("to", "->", "=>", "into") and after[1].dim in ("VOLT", "NUM")


def falls_to(scene: Scene, item: Item) -> bool:
    """Whether a word of falling leads right to it: "drops to 6 V"."""
    return any(
        found.concept == "drop" and found.end <= item.start and gap(scene, item, found.start, found.end) <= 0.5
        for found in around(scene.roles, item, scene.role_starts)
    )


def readings(scene: Scene, items: list[Item]) -> dict[int, Claim]:
    """What each reading of the message is. Two that differ by a volt or more are before and under load."""
    claims = {item.at: _reading(scene, item) for item in items}
    resting = [item for item in items if claims[item.at].fact == "reading.voltage"]
    values = [float(item.quantity.value) for item in resting]
    if len(values) >= 2 and _is_fall(scene, values):
        low = resting[values.index(min(values))]
        claims[low.at] = Claim("reading.load_voltage", "range")
    elif len(values) == 1 and _loaded(scene, resting[0], values[0], alone=len(items) == 1):
        claims[resting[0].at] = Claim("reading.load_voltage", "role")
    return claims


def _reading(scene: Scene, item: Item) -> Claim:
    value = float(item.quantity.value)
    if close(scene, item, "at_load", reach=4) and not close(scene, item, "at_battery", reach=1.5):
        return Claim("reading.load_voltage_at_load", "role")
    if value >= 13 and beside(scene, item, "charger", reach=2.5):
        return Claim("charger.voltage", "grammar")
    if CHARGING[0] < value <= CHARGING[1]:
        return Claim("charger.voltage", "range")
    if value >= 13 and value < CHARGING[1] and close(scene, item, "charger.voltage", reach=1.5):
        return Claim("charger.voltage", "role")
    return Claim("reading.voltage", "range")


def _is_fall(scene: Scene, values: list[float]) -> bool:
    apart = max(values) - min(values)
    if scene.sags:
        return apart >= FALLEN
    return apart >= FALL and (min(values) < SAGGED * max(1, round(max(values) / 12.6)) or "load" in scene.heads)


def _loaded(scene: Scene, item: Item, value: float, *, alone: bool) -> bool:
    """Whether a single reading is one under load."""
    if value / max(1, round(value / 12.6)) > TIRED + (0.6 if "lfp" in scene.kinds else 0) or close(scene, item, "off", reach=3):
        return False
    return any(
        gap(scene, item, found.start, found.end) <= SAG_REACH for found in around(scene.sags, item, scene.sag_starts)
    )
