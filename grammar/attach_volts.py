"""Which volts these are: of one battery, of the system, a reading at rest or under load, a charger's."""

from __future__ import annotations

from grammar.attach import NOTHING, Claim, beside, by_group, close, nearest
from grammar.items import Item
from grammar.near import around, gap
from grammar.scene import Scene

NOMINAL = frozenset({6.0, 12.0, 24.0, 36.0, 48.0})
SIX = 6.0  # no boat's system
OF_BATTERY = frozenset({"AH", "CCA", "CA", "RC", "GROUP", "WH"})
SAGGED = 11.9  # of two readings a volt apart the lower one is under load if it is below this
TIRED = 12.45  # a single reading above this is not one under load, whatever the words
FALL = 0.9  # volts between two readings that a load explains
FALLEN = 0.15  # the same where the words say that it falls
CHARGING = (13.9, 15.9)
LEAD_AT_REST = 13.35  # a lead battery above this is being charged
SAG_REACH = 6.0
AT_LOAD = 4.1
LOWERED = 11.9  # the same in the clause that names the load
RESTING = frozenset({"rest", "rests", "rested", "resting"})
PRAISED = frozenset({"good", "ok", "okay", "fine", "alright", "healthy", "enough", "low"})
TO = frozenset(["to", "->", "=>", "then", ">"])
MAINS = frozenset({110.0, 115.0, 120.0, 220.0, 230.0, 240.0, 400.0})  # of the shore
LITHIUM_NOMINAL = {12.8: 12.0, 25.6: 24.0, 38.4: 36.0, 51.2: 48.0}  # four cells of 3.2 V for each 12 V
UPWARD = frozenset(["to", "-", "->", "=>", ">", "into"])
OUT_OF = frozenset(["of", "from"])
FROM_IT = OUT_OF | {"out", "a", "the", "my"}
FLATTENED = 11.5  # with a load named, nobody reads this at rest


def is_nominal(item: Item) -> bool:
    """Whether these volts name a system: 12, not 12.0."""
    quantity = item.quantity
    return quantity.value in NOMINAL and "." not in quantity.text and "," not in quantity.text


def is_drop(scene: Scene, item: Item) -> bool:
    """Whether these volts are a loss: too few to be a battery's."""
    return item.quantity.kind == "drop" or (float(item.quantity.value) < 4.5 and scene.about("word:loss"))


def of_lithium(scene: Scene, item: Item) -> bool:
    """Whether these volts are a lithium battery's name, not a reading: "12.8 V 100 Ah"."""
    if item.quantity.value not in LITHIUM_NOMINAL:
        return False
    beside_it = [other for other in (scene.before(item), scene.after(item)) if other is not None]
    return any(
        other.dim in ("AH", "WH") or other.fact == "battery.chemistry" or other.name == "one" for other in beside_it
    )


def is_reading(scene: Scene, value: float) -> bool:
    """Whether a bare number with decimals can be the volts of a bank."""
    if 5 <= value < 18 or 20 <= value < 32 or 40 <= value < 60:
        return True
    if 18 <= value < 20:  # so low only under load
        return any(20 <= other < 32 for other in scene.figures)
    return 31.5 <= value < 40 and 36.0 in scene.figures


def volts(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that volts state; readings are settled together, later."""
    if is_drop(scene, item):
        return Claim("cable.drop", "range")
    if value in MAINS:
        return NOTHING
    if of_lithium(scene, item):
        return Claim("battery.nominal", "range")
    return nominal(scene, item) if is_nominal(item) else Claim("reading.voltage", "range")


def nominal(scene: Scene, item: Item) -> Claim | None:
    """Volts that name a battery or a system."""
    if falls_to(scene, item) or _falls_on(scene, item) or _rests_at(scene, item):
        return Claim("reading.voltage", "role")
    if stepped := steps_up(scene, item):
        return Claim(stepped, "grammar")
    if _converted(scene, item):
        return Claim("charger.input_voltage", "grammar")
    before = scene.before(item)
    if before is not None and (
        before.dim == "COUNT" or (before.dim == "NUM" and before.quantity.value in (2.0, 3.0, 4.0))
    ):
        return Claim("battery.nominal", "grammar")
    value = float(item.quantity.value)
    if value == SIX:
        return Claim("battery.nominal", "range")
    claim = by_group(scene, item)
    if claim and claim.fact != "battery.nominal":
        return claim
    if value > 12:
        return Claim("bank.voltage", "grammar" if claim else "default")
    if claim or _of_one(scene, item) or _after_figures(scene, item):
        return claim or Claim("battery.nominal", "grammar")
    if beside(scene, item, "charger", reach=1):
        return NOTHING
    return Claim("bank.voltage", "default")


def _of_one(scene: Scene, item: Item) -> bool:
    """Whether a battery's figures or kind follow: "12 V 100 Ah", "12 V AGM"."""
    after = scene.after(item)
    return after is not None and (after.dim in OF_BATTERY or after.fact in ("battery.chemistry", "battery.duty"))


def _after_figures(scene: Scene, item: Item) -> bool:
    """Whether a battery's figures stand right before: "100 Ah 12 V"."""
    before = scene.before(item)
    if before is not None and before.name in (",", "at", "/") and item.at > 1:
        before = scene.items[item.at - 2]
    return before is not None and (before.dim in OF_BATTERY or before.fact == "battery.chemistry")


def _converted(scene: Scene, item: Item) -> bool:
    """Whether these are the volts that a converter takes in: "12 to 24", "out of 12 V"."""
    if not {"dcdc", "alternator"} & scene.heads and not scene.about("word:boost"):
        return False
    if close(scene, item, "charger.input_voltage", reach=0.6) and not beside(scene, item, "boat", reach=0.6):
        return True
    after = scene.items[item.at + 1 : item.at + 3]
    if item.quantity.value == 12.0 and after and after[0].name in ("side", "in"):
        return True
    return len(after) == 2 and after[0].name in ("to", "->", "=>", "into") and after[1].dim in ("VOLT", "NUM")


def steps_up(scene: Scene, item: Item) -> str:
    """What the numbers of "12 to 24", "24 out of 12" are: the side taken from and the side charged; else ""."""
    near = scene.items[max(0, item.at - 3) : item.at + 4]
    value = item.quantity.value
    for other in near:
        if other is item or other.dim not in ("NUM", "VOLT") or abs(other.at - item.at) not in (2, 3):
            continue
        first, second = sorted((item, other), key=lambda one: one.at)
        between = {one.name for one in scene.items[first.at + 1 : second.at]}
        low, high = first.quantity.value, second.quantity.value
        if (low, high) == (12.0, 24.0) and between & UPWARD:
            return "charger.input_voltage" if value == 12.0 else "bank.voltage"
        if (low, high) == (24.0, 12.0) and between & OUT_OF and between <= FROM_IT:
            return "charger.input_voltage" if value == 12.0 else "bank.voltage"
    return ""


def falls_to(scene: Scene, item: Item) -> bool:
    """Whether a word of falling leads right to it: "drops to 6 V"."""
    return any(
        found.concept == "drop" and found.end <= item.start and gap(scene, item, found.start, found.end) <= 0.5
        for found in around(scene.roles, item, scene.role_starts)
    )


def _falls_on(scene: Scene, item: Item) -> bool:
    """Whether it is the lower of two readings: "from 13.2 V to 12 V", where the words tell of a fall."""
    if item.at < 2 or scene.word(item.start - 1) != "to" or not scene.sags:
        return False
    before = next(other for other in reversed(scene.items[: item.at]) if other.end < item.start)
    return before.dim == "VOLT" and not is_nominal(before) and before.end == item.start - 1


def _rests_at(scene: Scene, item: Item) -> bool:
    """Whether round volts are read and name no system: "rests at 12 V", "reads 12 V at rest", "is 12 V good rested"."""
    if close(scene, item, "on_meter", reach=0.3, after=True):
        return True
    if not any(token.word in RESTING for token in scene.tokens):
        return False
    before, after = scene.word(item.start - 1), scene.word(item.end)
    if (before == "is" and after in PRAISED) or (before == "at" and after == "after"):
        return True
    return any(
        found.concept == "read_off" and found.end == item.start
        for found in around(scene.roles, item, scene.role_starts)
    )


def readings(scene: Scene, items: list[Item]) -> dict[int, Claim]:
    """What each reading of the message is. Two that differ by a volt or more are before and under load."""
    items = _of_now(scene, items)
    claims = {item.at: _reading(scene, item) for item in items}
    resting = [item for item in items if claims[item.at].fact == "reading.voltage"]
    values = [float(item.quantity.value) for item in resting]
    if (
        resting
        and any(claim.fact == "reading.load_voltage_at_load" for claim in claims.values())
        and min(values) < TIRED
    ):
        claims[resting[values.index(min(values))].at] = Claim("reading.load_voltage", "role")
    elif len(values) >= 2 and _is_fall(scene, resting, values):
        low = resting[values.index(min(values))]
        claims[low.at] = Claim("reading.load_voltage", "range")
    elif len(values) == 1 and _loaded(scene, resting[0], values[0], alone=len(items) == 1):
        claims[resting[0].at] = Claim("reading.load_voltage", "role")
    return claims


def _of_now(scene: Scene, items: list[Item]) -> list[Item]:
    """The readings without those of the past, where there are others: "last autumn it showed 12.8"."""
    past = {scene.clause(found.start) for found in scene.named("note", "past")}
    now = [item for item in items if scene.clause(item.start) not in past]
    return now or items


def _reading(scene: Scene, item: Item) -> Claim:
    value = float(item.quantity.value)
    if LEAD_AT_REST < value < CHARGING[0] and scene.about("role:off_charger"):
        return Claim("reading.voltage", "role")
    at_load = nearest(scene, item, "at_load")
    if at_load <= AT_LOAD and at_load < nearest(scene, item, "at_battery"):
        return Claim("reading.load_voltage_at_load", "role")
    if value >= 13 and beside(scene, item, "charger", reach=1.2) and not close(scene, item, "off", reach=3):
        return Claim("charger.voltage", "grammar")
    if CHARGING[0] < value <= CHARGING[1] or (LEAD_AT_REST < value < CHARGING[1] and not scene.lithium_known):
        return Claim("charger.voltage", "range")
    if 13 <= value < CHARGING[1] and close(scene, item, "charger.voltage", reach=2.6):
        return Claim("charger.voltage", "role")
    return Claim("reading.voltage", "range")


def _is_fall(scene: Scene, items: list[Item], values: list[float]) -> bool:
    """Whether the readings are one battery's, before and under load."""
    if sum(close(scene, item, "one_of_two", reach=1.6) for item in items) > 1:
        return False
    apart = max(values) - min(values)
    high, low = (items[values.index(end(values))] for end in (max, min))
    falls = low.at - high.at == 2 and scene.items[high.at + 1].name in TO
    if scene.sags or (falls and "load" in scene.heads) or close(scene, low, "during_load", reach=0.6):
        return apart >= FALLEN
    most = (SAGGED + (0.6 if scene.lithium_known else 0.0)) * max(1, round(max(values) / 12.6))
    return apart > FALL - 0.01 and (min(values) < most or "load" in scene.heads)


def _loaded(scene: Scene, item: Item, value: float, *, alone: bool) -> bool:
    """Whether a single reading is one under load."""
    of_one = value / max(1, round(value / 12.6))
    tired = TIRED + (0.6 if scene.lithium_known else 0.0)
    if of_one > tired or "drain" in scene.heads or close(scene, item, "off", reach=3):
        return False
    if scene.about("role:tester") and of_one < LOWERED:
        return True
    here = "head:load" in scene.by_clause.get(scene.clause(item.start), frozenset())
    if of_one < (LOWERED if here else FLATTENED) and "load" in scene.heads and "reading.state" not in scene.facts:
        return True
    return any(
        gap(scene, item, found.start, found.end) <= SAG_REACH for found in around(scene.sags, item, scene.sag_starts)
    )
