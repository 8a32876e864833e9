"""What the figures on and about a battery are: ratings, charge, weight, counts, temperature."""

from __future__ import annotations

from grammar.attach import NOTHING, Claim, beside, by_group, close
from grammar.items import Item
from grammar.near import around, gap
from grammar.scene import Scene
from grammar.vocabulary import small_words

BY_UNIT = {  # the unit or the label says it all
    "CCA": "battery.cca",
    "CA": "battery.ca",
    "RC": "battery.reserve",
    "WH": "battery.energy",
    "GROUP": "battery.group",
    "GAUGE": "cable.gauge",
    "AREA": "cable.area",
    "GRAVITY": "reading.gravity",
    "STUD": "terminal.size",
    "VOLUME": "space.volume",
}
COUNTED = frozenset({"VOLT", "AH", "CCA", "CA", "RC", "GROUP", "WH", "WEIGHT"})
TAKEN_OUT = frozenset({"took", "taken", "used", "drew", "removed"})
INSULATION = (60.0, 125.0)  # C


def rated(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that follows from the unit alone."""
    if item.dim == "WH" and close(scene, item, "used_up", reach=1.5):
        return NOTHING
    if item.dim == "VOLUME" and item.quantity.unit == "liter" and "space" not in scene.heads:
        return NOTHING
    if item.dim == "AREA" and beside(scene, item, "space", reach=1):
        return NOTHING
    return Claim(BY_UNIT[item.dim], "token")


def amp_hours(scene: Scene, item: Item, value: float) -> Claim | None:
    """A capacity, but not amp-hours used up in a day; a "20 Ah charger" gives amps."""
    if close(scene, item, "a_day", reach=1.0, after=True):
        return Claim("drain.current" if scene.about("role:drain.current") else "load.current", "role")
    gone = close(scene, item, "used_up", reach=1.5) and not _follows_battery(scene, item)
    if gone or scene.word(item.start - 1) in TAKEN_OUT:
        return NOTHING
    sides = scene.sides.get(item.at)
    tied = sides is not None and sides.tied and sides.left is not None and sides.left.head == "charger"
    if tied and value <= 60 and len(scene.quantities("AH")) > 1:
        return Claim("charger.current", "grammar")
    if sides and sides.right and sides.right.head == "charger" and sides.right.at == item.at + 1 and value <= 60:
        return Claim("charger.current", "grammar")
    return Claim("battery.capacity", "token")


def _follows_battery(scene: Scene, item: Item) -> bool:
    """Whether the battery is named right before: "battery 120 Ah used to half"."""
    before = scene.before(item)
    return before is not None and before.head == "battery"


def watts(scene: Scene, item: Item, value: float) -> Claim | None:
    """A panel's power or the load's; an engine's is no fact."""
    claim = by_group(scene, item)
    if claim:
        return claim
    if beside(scene, item, "engine", reach=3):
        return NOTHING
    if close(scene, item, "sunny", reach=1.0) and not beside(scene, item, "load", reach=2):
        return Claim("solar.power", "role")
    if "load" not in scene.heads and (scene.about("role:sun", "role:sunny") or "drain" in scene.heads):
        return Claim("solar.power", "default")
    if "panel" in scene.heads and (beside(scene, item, "panel", reach=6) or "load" not in scene.heads):
        return Claim("solar.power", "near")
    return Claim("load.power", "default")


def percent(scene: Scene, item: Item, value: float) -> Claim | None:
    """A state of charge, or the loss that a cable is allowed."""
    if item.quantity.kind == "state_of_charge":
        return Claim("battery.charge", "token")
    if (
        item.quantity.kind == "drop"
        or close(scene, item, "cable.drop", reach=2.5)
        or (scene.about("word:loss") and value <= 10)
    ):
        return Claim("cable.drop", "role")
    if close(scene, item, "no_charge", reach=2):
        return NOTHING
    return Claim("battery.charge", "default")


def temperature(scene: Scene, item: Item, value: float) -> Claim | None:
    """The air's temperature, or what a cable's insulation stands; `value` in Celsius."""
    if INSULATION[0] <= value <= 250 and (close(scene, item, "cable.insulation", reach=3) or "cable" in scene.heads):
        return Claim("cable.insulation", "role")
    return Claim("ambient.temperature", "token")


def rate(scene: Scene, item: Item, value: float) -> Claim | None:
    """A current as a share of the capacity: "charge at 0.1C"; without a capacity it is no current."""
    if not scene.quantities("AH"):
        return None
    if "continuous" in item.name or close(scene, item, "battery.max_current", reach=2.6):
        return Claim("battery.max_current", "role")
    return Claim("charger.current", "role") if scene.about("word:charge", "word:setting") else None


def weight(scene: Scene, item: Item, value: float) -> Claim | None:
    """A battery's weight; a boat's or a person's is no fact."""
    claim = by_group(scene, item)
    if claim and claim.fact == "-":
        return claim
    return Claim("battery.weight", "token") if not beside(scene, item, "boat", reach=1.5) else NOTHING


def counts(scene: Scene, item: Item, value: float) -> Claim | None:
    """How many batteries, banks, outputs or bursts: a small whole number right before what it counts."""
    if value <= 12 and close(scene, item, "sun", reach=1.6, after=True):
        return Claim("solar.sun_hours", "role")
    if value <= 30 and item.kind != "count" and is_age(scene, item):
        return Claim("battery.age", "role")
    if value != int(value) or not 1 <= value <= MOST_BURSTS:
        return None
    if close(scene, item, "load.bursts", reach=1.3) and not _rated_next(scene, item):
        return Claim("load.bursts", "role")
    if value <= 12 and _of_charger(scene, item):
        return Claim("charger.outputs", "grammar")
    if value <= 12 and (limit := _allowed(scene, item)):
        return Claim(limit, "grammar")
    for role, reach in COUNTS.items():
        if value <= 12 and close(scene, item, role, reach=reach, after=True):
            return Claim(role, "role")
    return _batteries(scene, item, value)


def is_age(scene: Scene, item: Item) -> bool:
    """Whether a bare number is of years: "8 old", "turned four", "five winters"."""
    before = scene.word(item.start - 1)
    going_on = before == "on" and scene.word(item.start - 2) in ("going", "coming")
    return scene.word(item.end) in OLD or before in TURNED or going_on


def _allowed(scene: Scene, item: Item) -> str:
    """Whether so many are the most that a maker allows: "up to 4 in parallel", "series up to 2"; the fact or ""."""
    before = [scene.word(at) for at in range(item.start - 4, item.start)]
    after = " ".join(scene.word(at) for at in range(item.end, item.end + 2))
    if not ALLOWED & set(before):
        return ""
    for layout in ("series", "parallel"):
        if layout in before or after in (f"in {layout}", f"{layout} ", f"{layout} max"):
            return f"battery.max_in_{layout}"
    return ""


def _of_charger(scene: Scene, item: Item) -> bool:
    """Whether a charger's outputs are counted: "a two bank charger", "2 bank 6 A charger", "twin output"."""
    if scene.word(item.end) not in ("bank", "output", "way", "channel"):
        return False
    later = scene.items[item.at + 1 : item.at + 5]
    named = scene.word(item.start - 1) in ("a", "the") and "charger" in scene.heads
    return scene.word(item.end) == "output" or named or any(other.head == "charger" for other in later)


def _batteries(scene: Scene, item: Item, value: float) -> Claim | None:
    if value <= MOST_BATTERIES and _before_battery(scene, item):
        return Claim("battery.count", "grammar")
    if 2 <= value <= MOST_BATTERIES and (_one_of(scene, item) or _has_so_many(scene, item)):
        return Claim("battery.count", "grammar")
    if not 2 <= value <= MOST_BATTERIES or item.dim != "COUNT" or _of_others(scene, item):
        return None
    if scene.word(item.end) in PARTS_OF_IT:
        return None
    if item.kind == "count":
        near = (gap(scene, item, owner.start, owner.end) for owner in around(scene.owners, item, scene.owner_starts))
        alone = item.name.endswith(("pair", "twins")) and not scene.heads - {"battery"}
        return Claim("battery.count", "near") if alone or min(near, default=NEVER) <= BESIDE else None
    if item.kind == "times" or "battery" in scene.heads | scene.facts:
        return Claim("battery.count", "default")
    return None


def _one_of(scene: Scene, item: Item) -> bool:
    """Whether it is "one of our two", with nothing but batteries in the message."""
    before = [scene.word(at) for at in range(item.start - 3, item.start)]
    one_of = any(before[at : at + 2] in (["one", "of"], ["1", "of"]) for at in (0, 1))
    return one_of and not scene.heads - {"battery", "cell"}


def _has_so_many(scene: Scene, item: Item) -> bool:
    """Whether "I have four" speaks of the batteries of the conversation."""
    after = scene.after(item)
    ends = after is None or after.kind == "mark"
    told = any(fact.fact.startswith("battery.") for fact in scene.said)
    return ends and told and scene.word(item.start - 1) in ("have", "got", "use", "used", "fit", "fitted", "buy")


def _rated_next(scene: Scene, item: Item) -> bool:
    """Whether a battery's figure follows: "two times 180 Ah"."""
    return any(after.dim in COUNTED for after in scene.items[item.at + 1 : item.at + 3])


def _of_others(scene: Scene, item: Item) -> bool:
    """Whether other things than batteries are counted: "2 x 50 W panels"."""
    for after in scene.items[item.at + 1 : item.at + 5]:
        if (after.head and after.head != "battery") or after.dim in ("WATT", "AMP", "TIME"):
            return True
        if after.head == "battery" or after.kind == "mark":
            return False
    return False


def _before_battery(scene: Scene, item: Item) -> bool:
    """Whether a battery follows: its kind, its volts, its figures or the word itself."""
    strange = 0
    for after in scene.items[item.at + 1 : item.at + 6]:
        if after.dim in COUNTED or after.fact in OF_BATTERY or after.head == "battery":
            return True
        if item.quantity.value != 1.0 and (after.fact == "bank.layout" or after.name in THEM):
            return True
        each = after.name == "," and scene.word(after.end) == "each"
        if after.dim == "NUM" and isinstance(after.quantity.value, float) and after.quantity.value >= 20:
            continue
        if after.head or after.dim or (after.kind == "mark" and after.name not in ("(", ")") and not each):
            return False
        if each:
            continue
        if after.kind == "word" and after.name not in small_words("counted"):
            strange += 1
            if strange > STRANGE or after.name in small_words("between"):
                return False
    return False


COUNTS = {"charger.outputs": 1.8, "bank.count": 0.6, "battery.max_in_series": 0.6, "battery.max_in_parallel": 0.6}
OF_BATTERY = frozenset({"battery.chemistry", "battery.duty", "battery.nominal"})
OLD = frozenset({"old", "yo", "yrs", "winters", "summers", "seasons"})
TURNED = frozenset({"turned", "turns", "turn", "turning", "age", "aged", "theyre"})
ALLOWED = frozenset({"up", "max", "maximum", "allows", "allowed", "allow", "most"})
PARTS_OF_IT = frozenset(["caps", "cap", "cells", "posts", "terminals", "lugs", "studs", "plugs", "leads", "boats"])
BESIDE = 1.6
NEVER = 99.0
MOST_BATTERIES = 24
MOST_BURSTS = 1000
STRANGE = 2  # words not known that may stand between a number and its batteries: "two old Swedish batteries"
THEM = frozenset(["them", "em", "together", "those"])
