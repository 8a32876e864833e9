"""Every figure of a message by the rules of its dimension, and whether it can state a fact."""

from __future__ import annotations

from collections.abc import Callable

from grammar.attach import amps as attach_amps
from grammar.attach import batteries as attach_batteries
from grammar.attach import counts as attach_counts
from grammar.attach import lengths as attach_lengths
from grammar.attach import numbers as attach_numbers
from grammar.attach import readings as attach_readings
from grammar.attach import times as attach_times
from grammar.attach import volts as attach_volts
from grammar.attach.bare_volts import SIDES
from grammar.attach.before_battery import PARTS_OF_IT
from grammar.attach.beside_numbers import is_share
from grammar.attach.both_ways import there_and_back
from grammar.attach.counted_batteries import of_others
from grammar.facts import FactSpec, facts
from grammar.reading import Quantity
from grammar.scene.claims import NOTHING, Claim
from grammar.scene.denied import denied
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.canonical import in_unit
from grammar.text.standard import NOMINAL
from grammar.told.background import is_background
from grammar.told.batteries.capacities import GROUPS
from grammar.told.batteries.lithium_limits import limits_told
from grammar.told.cold.degrees import celsius
from grammar.told.times.clock import share_after

Rule = Callable[[Scene, Item, float], Claim | None]
IN_UNIT = {"TIME": "second", "AMP": "ampere", "TEMP": "degree_Celsius", "WATT": "watt", "WEIGHT": "kilogram"}
RULES: dict[str, Rule] = {
    "AMP": attach_amps.amps,
    "VOLT": attach_volts.volts,
    "AH": attach_batteries.amp_hours,
    "WATT": attach_batteries.watts,
    "PERCENT": attach_batteries.percent,
    "TEMP": attach_batteries.temperature,
    "CRATE": attach_batteries.rate,
    "WEIGHT": attach_batteries.weight,
    "COUNT": attach_counts.counts,
    "NUM": attach_numbers.number,
    "LENGTH": attach_lengths.lengths,
    "INCH": attach_lengths.lengths,
    "MM": attach_lengths.millimetres,
    "TIME": attach_times.times,
    **dict.fromkeys(attach_batteries.BY_UNIT, attach_batteries.rated),
}
TAKEN_AS_TYPED = {  # "a 20 Ah charger", "two 12s", "1.1 V loss": the number counts, in the fact's own unit
    "charger.current": ("AH",),
    "battery.capacity": ("TIME", "CCA", "AMP"),
    "battery.cca": ("TIME",),
    "battery.nominal": ("TIME",),
    "cable.drop": ("VOLT",),
    "reading.gravity": ("WEIGHT",),
    "cable.area": ("MM", "TIME"),
    "drain.current": ("AH",),
    "load.current": ("AH",),
}
LEAST_THRUSTER = 20  # amps: no bow thruster runs on fewer
MOST_QUANTITIES = 300  # a message with more is a table, which a person reads
LASTING = frozenset({"night", "anchor", "overnight", "all", "nights"})
WEIGHED = frozenset({"or", "vs", "not", "/", "instead"})
SYSTEM = frozenset({"bank.voltage", "battery.nominal", "charger.input_voltage"})
PER_DAY = frozenset({"drain.current", "load.current"})  # "5 Ah a day" is a current
HOURS, NIGHT, HOUR = 24.0, 12.0, 3600.0


def ruled(scene: Scene) -> dict[int, Claim]:
    """What each quantity is by the rules. Amps come last: what they are hangs on the volts read."""
    claims: dict[int, Claim] = {}
    readings: list[Item] = []
    measured = scene.measured[:MOST_QUANTITIES]
    amps = [item for item in measured if item.dim == "AMP"]
    for item in [item for item in measured if item.dim != "AMP"]:
        claim = _claim(scene, item)
        if claim is not None and claim.fact == "reading.voltage":
            readings.append(item)
        elif claim is not None:
            claims[item.at] = claim
    claims |= attach_readings.readings(scene, readings)
    scene.loaded = any(claim.fact.startswith("reading.load") for claim in claims.values())
    scene.read_at_rest = any(claim.fact == "reading.voltage" for claim in claims.values())
    claims |= {item.at: claim for item in amps if (claim := _claim(scene, item))}
    claims |= limits_told(scene)
    return claims | _limit_of_lithium(scene, claims) | _beside_limit(scene, claims) | _beside_charger(scene, claims)


def can_be(scene: Scene, item: Item, fact: str) -> bool:
    """Whether a figure may state a fact: its unit and the fact's range allow it, and no word denies it."""
    spec = facts()[fact]
    if (spec.kind != "number" and fact != "battery.group") or item.dim == "CRATE" or denied(scene, item):
        return False
    if is_background(scene, item):
        return False
    if not spec.unit and item.dim not in ("NUM", "COUNT", "GRAVITY"):
        return False
    parts = scene.word(item.end) in PARTS_OF_IT
    if fact == "battery.count" and (parts or of_others(scene, item)):
        return False
    if fact == "battery.group" and scene.word(item.end) in SIDES:
        return False
    if fact == "load.current" and _too_few(scene, item):
        return False
    if fact == "reading.gravity" and item.quantity.value != 0 and not isinstance(item.quantity.value, str):
        return 1 < item.quantity.value < 2  # "1265" is one where a word says so
    value = converted(scene, item, fact, item.quantity)
    if fact in SYSTEM:
        return value in NOMINAL and not _counts_things(scene, item)
    if isinstance(value, str):
        return value in GROUPS
    return value is not None and in_range(spec, value)


def _counts_things(scene: Scene, item: Item) -> bool:
    """Whether it says how many small loads there are: the six of "six lamps of 5 watts"."""
    after = scene.after(item)
    return item.dim == "COUNT" and after is not None and after.head == "load" and after.name == "electronics"


def _limit_of_lithium(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """Amps of nothing named beside a lithium battery are its limit, where the load has amps of its own."""
    running = [at for at, claim in claims.items() if claim.fact == "load.current"]
    loose = [at for at in running if claims[at].how in ("default", "near")]
    if not scene.lithium_known or len(running) != len(loose) + 1 or len(loose) != 1:
        return {}
    near = scene.items[max(0, loose[0] - 3) : loose[0] + 4]
    owned = any(item.fact == "battery.chemistry" or item.dim == "AH" for item in near)
    return {loose[0]: Claim("battery.max_current", "near")} if owned else {}


def _beside_limit(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """Amps near a limit that has amps of its own are a load's: "will 100 Ah with a 150 A BMS run 180 A"."""
    limits = [at for at, claim in claims.items() if claim.fact == "battery.max_current"]
    loose = [at for at in limits if claims[at].how == "near"]
    if len(limits) != 2 or len(loose) != 1 or len(scene.quantities("AH")) > 1:
        return {}
    loaded = any(claim.fact in ("load.current", "load.power") for claim in claims.values())
    loaded = loaded or any(item.kind == "model" for item in scene.items)
    return {} if loaded else {loose[0]: Claim("load.current", "near")}


def _beside_charger(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """Amps near a charger that has amps of its own are a load's: "3 A for the night, 10 A charger"."""
    charging = [at for at, claim in claims.items() if claim.fact == "charger.current"]
    loose = [at for at in charging if claims[at].how in ("default", "near", "range")]
    if len(charging) != 2 or len(loose) != 1 or any(claim.fact == "load.current" for claim in claims.values()):
        return {}
    first, last = sorted(charging)
    between = {item.name for item in scene.items[first + 1 : last]}
    lasting = scene.about("request:how_long") or bool(between & LASTING)
    return {loose[0]: Claim("load.current", "near")} if lasting and not between & WEIGHED else {}


def _claim(scene: Scene, item: Item) -> Claim | None:
    if item.dim not in RULES or denied(scene, item):
        return None
    if is_background(scene, item):
        return NOTHING
    claim = RULES[item.dim](scene, item, _plain(item))
    return None if claim and claim.fact == "load.current" and _too_few(scene, item) else claim


def _too_few(scene: Scene, item: Item) -> bool:
    """Whether a number without a unit is too small for a thruster's amps: "five Pikes", "7 m run (1 way)"."""
    value = item.quantity.value
    if item.dim not in ("NUM", "COUNT") or isinstance(value, str) or value >= LEAST_THRUSTER:
        return False
    return "thruster" in scene.vocabulary or any(
        one.kind == "model" or (one.fact, one.name) == ("load.kind", "thruster") for one in scene.items
    )


def _plain(item: Item) -> float:
    """The value that the rules look at: in one unit for the dimension; 0 for a text."""
    quantity = item.quantity
    if isinstance(quantity.value, str):
        return 0.0
    unit = IN_UNIT.get(item.dim)
    value = in_unit(float(quantity.value), quantity.unit, unit) if unit else None
    return float(quantity.value) if value is None else value


def converted(scene: Scene, item: Item, fact: str, quantity: Quantity) -> float | str | None:
    """A quantity in the fact's unit, whatever its range; None where the unit is another."""
    spec = facts()[fact]
    if spec.kind == "text":
        thread = "M" if item.dim == "MM" else ""
        return quantity.value if isinstance(quantity.value, str) else f"{thread}{quantity.value:g}"
    if isinstance(quantity.value, str):
        return None
    value = _meant(scene, item, fact, float(quantity.value) + share_after(scene, item))
    as_typed = item.dim in TAKEN_AS_TYPED.get(fact, ()) or (fact == "reading.rest_time" and _is_night(quantity))
    if fact == "ambient.temperature":
        return celsius(scene, item, quantity)
    amount = value if as_typed else in_unit(value, quantity.unit, spec.unit)
    if fact == "cable.length" and amount is not None and there_and_back(scene, item):
        return amount / 2
    return amount


def in_range(spec: FactSpec, value: float) -> bool:
    """Whether a value is plausible for a fact."""
    return spec.low is None or spec.high is None or spec.low <= value <= spec.high


def _is_night(quantity: Quantity) -> bool:
    return "night" in quantity.text.lower().replace("fortnight", "")


def _meant(scene: Scene, item: Item, fact: str, value: float) -> float:
    """What the number counts for this fact: a share of the capacity, amp-hours a day, a night's rest ..."""
    if item.dim == "CRATE":
        return value * float(scene.quantities("AH")[0].quantity.value)
    if value < 0 and facts()[fact].unit == "ampere":  # a battery monitor shows what leaves the battery with a minus
        return -value
    if item.dim == "AH" and fact in PER_DAY:
        return value / HOURS
    if fact == "battery.charge" and is_share(item):
        return value * 100.0
    if fact == "reading.gravity" and value > 2:
        return value / 1000
    if fact == "reading.rest_time" and _is_night(item.quantity):
        return value * (NIGHT if value <= 1 else HOURS)
    return attach_volts.LITHIUM_NOMINAL.get(value, value) if fact == "battery.nominal" else value
