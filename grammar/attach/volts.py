"""Which volts these are: of one battery, of the system, a reading at rest or under load, a charger's."""

from __future__ import annotations

from itertools import dropwhile

from grammar.attach.pairs import converts, parted_from, steps_up
from grammar.reading import Stated
from grammar.scene.claims import NOTHING, Claim, beside, by_group, close, names_its_battery
from grammar.scene.items import Item
from grammar.scene.near import around, gap
from grammar.scene.scene import LITHIUM, Scene
from grammar.text.standard import NOMINAL
from grammar.told.batteries.capacities import is_size

LEAST, MOST_LOST = 0.3, 1.9  # volts that are lost somewhere, not a battery's
WORDS_BETWEEN = 3
SIX = 6.0  # no boat's system
CELL, CELLS = 2.0, frozenset({"cell", "cells"})  # V, of a lead battery in parts
INPUT_WITHIN = 0.6
HIGHER = frozenset({24.0, 36.0, 48.0})
ON_METER = ("role:read_off", "role:on_meter")
SHOWING = frozenset({"meter", "multimeter", "voltmeter", "display", "reads", "shows", "showing", "reading", "measured"})
OF_BATTERY = frozenset({"AH", "CCA", "CA", "RC", "GROUP", "WH"})
RESTING = frozenset({"rest", "rests", "rested", "resting"})
PRAISED = frozenset({"good", "ok", "okay", "fine", "alright", "healthy", "enough", "low"})
EACH = frozenset({"each", "apiece"})
OF_BOAT = frozenset(
    {"bank", "system", "boat", "setup", "installation", "supply", "network", "propeller", "prop", "pusher"}
)
MISSING = frozenset(  # "1.2 volts disappear on the way", and "1.2 volts are missing at the motor"
    {"disappear", "disappears", "disappeared", "vanish", "vanishes", "vanished", "missing", "gone", "evaporate"}
)
LINKS = frozenset({"is", "are", "was", "were", "go", "goes", "went", "just", "simply", "that", "which"})
MAINS = frozenset({110.0, 115.0, 120.0, 220.0, 230.0, 240.0, 400.0})  # of the shore
LITHIUM_NOMINAL = {12.8: 12.0, 25.6: 24.0, 38.4: 36.0, 51.2: 48.0}  # four cells of 3.2 V for each 12 V


def is_nominal(item: Item) -> bool:
    """Whether these volts name a system: 12, not 12.0."""
    quantity = item.quantity
    return quantity.value in NOMINAL and "." not in quantity.text and "," not in quantity.text


def is_drop(scene: Scene, item: Item) -> bool:
    """Whether these volts are a loss: too few to be a battery's, and no system's ("24V drop?")."""
    if is_nominal(item) and float(item.quantity.value) > SIX:
        return False
    few = float(item.quantity.value) < 4.5
    return item.quantity.kind == "drop" or (few and (scene.about("word:loss") or _is_missing(scene, item)))


def _is_missing(scene: Scene, item: Item) -> bool:
    """Whether these volts are said to be gone: "1.2 volts disappear on the way"."""
    words = dropwhile(LINKS.__contains__, map(scene.word, range(item.end, item.end + 3)))
    return next(words, "") in MISSING


def of_lithium(scene: Scene, item: Item) -> bool:
    """Whether these volts are a lithium battery's name, not a reading: "12.8 V 100 Ah"."""
    if item.quantity.value not in LITHIUM_NOMINAL:
        return False
    beside_it = [other for other in (scene.before(item), scene.after(item)) if other is not None]
    if any(other.name == "/" for other in beside_it):  # "LFP 12.8/150"
        return scene.lithium
    return any(
        other.dim in ("AH", "WH")
        or other.name == "one"
        or (other.fact == "battery.chemistry" and other.name in LITHIUM)
        for other in beside_it
    )


def is_reading(scene: Scene, value: float) -> bool:
    """Whether a bare number with decimals can be the volts of a bank."""
    if 5 <= value < 18 or 20 <= value < 32 or 40 <= value < 60:
        return True
    if 18 <= value < 20:  # so low only under load, or mistaken
        read = scene.about(*ON_METER) or ("panel" not in scene.heads and not SHOWING.isdisjoint(scene.vocabulary))
        return any(20 <= other < 32 for other in scene.figures) or (12.0 in scene.figures and read)
    return 31.5 <= value < 40 and 36.0 in scene.figures


def volts(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that volts state; readings are settled together, later."""
    if is_drop(scene, item):
        return Claim("cable.drop", "range")
    if value in MAINS or LEAST <= value < MOST_LOST:
        if value < MOST_LOST and close(scene, item, "off", "read_off", reach=1.6):
            scene.implausible.append(_as_reading(item, value))
        return NOTHING
    if of_lithium(scene, item):
        return Claim("battery.nominal", "range")
    if value == CELL and scene.word(item.end) in CELLS:  # "6 x 2 V cells"
        return Claim("battery.nominal", "grammar")
    if not is_nominal(item):
        return Claim("reading.voltage", "range")
    other = _of_a_thing(scene, item) or _of_small_charger(scene, item, value)
    return NOTHING if other else nominal(scene, item)


def _as_reading(item: Item, value: float) -> Stated:
    """Volts that no battery shows at rest, as they were read: "1.26 V at rest"."""
    said = item.quantity
    return Stated("reading.voltage", value, "volt", said.text.strip(), said.span, how="range")


def nominal(scene: Scene, item: Item) -> Claim | None:
    """Volts that name a battery or a system."""
    if falls_to(scene, item) or _falls_on(scene, item) or _rests_at(scene, item):
        return Claim("reading.voltage", "role")
    if stepped := steps_up(scene, item):
        return Claim(stepped, "grammar")
    if _converted(scene, item):
        return Claim("charger.input_voltage", "grammar")
    value, after = float(item.quantity.value), scene.after(item)
    volter = "volter" in item.name and (after is None or after.head not in ("load", "charger"))
    if _of_bank(scene, item) and not volter:
        return Claim("bank.voltage", "grammar")
    each = EACH & {scene.word(item.start - 1), scene.word(item.end)}
    named = bool(each) or volter
    named = named or any(test(scene, item) for test in (_counted, _of_the_one, _a_battery))
    if value == SIX or named:
        return Claim("battery.nominal", "grammar" if named else "range")
    claim = by_group(scene, item)
    if claim and claim.fact != "battery.nominal":
        return claim
    if value > 12:
        return Claim("bank.voltage", "grammar" if claim else "default")
    if claim or _of_one(scene, item) or _after_figures(scene, item) or _among_its_figures(scene, item):
        return claim or Claim("battery.nominal", "grammar")
    if beside(scene, item, "charger", reach=1):
        return NOTHING
    return Claim("bank.voltage", "default")


def _of_small_charger(scene: Scene, item: Item, value: float) -> bool:
    """Whether they are a charger's that is put on a half of the bank: "a 24 V pair, each with its own 12 V charger"."""
    after = [head for head in scene.head_items if head.start >= item.end][:1]
    named = after and after[0].head == "charger" and after[0].start - item.end <= WORDS_BETWEEN
    if not named or converts(scene):
        return False
    return any(other.quantity.value == 2 * value and is_nominal(other) for other in scene.quantities("VOLT"))


def _a_battery(scene: Scene, item: Item) -> bool:
    """Whether "a 12 volt one", "12 volt ones" are batteries: no load is named in their clause."""
    here = scene.by_clause.get(scene.clause(item.start), frozenset())
    ones = scene.word(item.end) == "ones" or (scene.word(item.end) == "one" and item.quantity.value == 12.0)
    return ones and "head:load" not in here and "head:charger" not in here


def _counted(scene: Scene, item: Item) -> bool:
    """Whether batteries of these volts are counted: "two 12 V"; "twin 24 V thrusters" are none."""
    before, after = scene.before(item), scene.after(item)
    if before is None or (
        after is not None and after.head in ("load", "charger") and not names_its_battery(scene, after)
    ):
        return False
    kind = before.fact == "battery.chemistry"
    if (kind or before.name == "of") and item.at > 1 and scene.items[item.at - 2].dim in ("COUNT", "NUM"):
        return scene.items[item.at - 2].quantity.value in (2.0, 3.0, 4.0)  # "two of 12 V", "two AGM 12 V"
    return before.dim == "COUNT" or (before.dim == "NUM" and before.quantity.value in (2.0, 3.0, 4.0))


def _of_a_thing(scene: Scene, item: Item) -> bool:
    """Whether they are a small thing's, where the boat has more: "the radio is a 12 volt thing, the boat is all 24"."""
    after = scene.after(item)
    small = scene.word(item.end) in ("thing", "things", "item", "gadget", "gadgets", "stuff")
    small = small or (after is not None and after.head == "load" and after.name == "electronics")
    others = {other.quantity.value for other in scene.quantities("VOLT", "NUM", "COUNT")}
    others |= {fact.value for fact in scene.said if fact.fact == "bank.voltage"}
    return small and any(value in NOMINAL and value > float(item.quantity.value) for value in others)


def _of_bank(scene: Scene, item: Item) -> bool:
    """Whether the volts are those of one bank: "one 12 V bank", "a bank 12 V"."""
    made = scene.word(item.end) in ("out", "total") and not converts(scene)  # "parallel pairs in series, 12 V out"
    after = scene.after(item)  # "a 12 V flooded bank"
    kind = after is not None and after.fact == "battery.chemistry" and scene.word(after.end) in ("bank", "system")
    return made or kind or scene.word(item.end) in OF_BOAT or scene.word(item.start - 1) in ("bank", "system")


def _of_the_one(scene: Scene, item: Item) -> bool:
    """Whether one battery is told by its figures: "one lithium, 24 V 100 Ah"."""
    before = [other for other in scene.items[max(0, item.at - 3) : item.at] if other.name != ","]
    if len(before) < 2 or before[-1].fact != "battery.chemistry" or not _of_one(scene, item):
        return False
    return scene.word(before[-1].start - 1) in ("1", "one", "single")


def _of_one(scene: Scene, item: Item) -> bool:
    """Whether a battery's figures or kind follow: "12 V 100 Ah", "12 V AGM"."""
    after = scene.after(item)
    if after is not None and after.name in ("/", ","):
        listed, after = after.name == ",", scene.after(after)
        if listed and (after is None or after.dim not in OF_BATTERY - {"GROUP"}):  # "12 V, 100 Ah"
            return False
    if after is None:
        return False
    if after.dim == "NUM" and not isinstance(after.quantity.value, str):
        return is_size(scene, after, after.quantity.value)
    return after.dim in OF_BATTERY or after.fact in ("battery.chemistry", "battery.duty")


def _after_figures(scene: Scene, item: Item) -> bool:
    """Whether a battery's figures stand right before: "100 Ah 12 V"."""
    before = scene.before(item)
    if before is not None and before.name in (",", "at", "/") and item.at > 1:
        before = scene.items[item.at - 2]
    return before is not None and (before.dim in OF_BATTERY or before.fact == "battery.chemistry")


def _among_its_figures(scene: Scene, item: Item) -> bool:
    """Whether all that is told beside them is a battery's: "gel, 90 Ah and twelve volts", "a 12 volt one, 60 Ah"."""
    if "parallel" in scene.names:  # then they are the bank's as well
        return False
    here = [other for other in scene.by_place[scene.clause(item.start)] if other is not item]
    loads = any(other.head and other.head != "battery" for other in here)
    others = any(other.dim in ("AMP", "WATT", "LENGTH", "GAUGE", "AREA", "VOLT") for other in here)
    figures = sum(other.dim in ("AH", "CCA", "CA", "RC") for other in here)
    return figures == 1 and not loads and not others


def _converted(scene: Scene, item: Item) -> bool:
    """Whether these are the volts that a converter takes in: "12 to 24", "out of 12 V"."""
    if "alternator" not in scene.heads and not converts(scene):
        return False
    leads = any(
        found.concept == "charger.input_voltage"
        and (found.end <= item.start or scene.word(found.start) == "input")  # "24 V from it" comes out
        and not parted_from(scene, found.start)
        and gap(scene, item, found.start, found.end) <= INPUT_WITHIN
        for found in around(scene.roles, item, scene.role_starts)
    )
    if leads and not beside(scene, item, "boat", reach=0.6):
        return True
    if item.quantity.value == 12.0 and _of_alternator(scene, item):
        return True
    after = scene.items[item.at + 1 : item.at + 3]
    if item.quantity.value == 12.0 and after and after[0].name in ("side", "in"):
        return True
    return len(after) == 2 and after[0].name in ("to", "->", "=>", "into") and after[1].dim in ("VOLT", "NUM")


def _of_alternator(scene: Scene, item: Item) -> bool:
    """Whether the alternator's amps are told at these volts, where a bank has more: "60 A at 12 volts ... the 24"."""
    before = scene.items[max(0, item.at - 4) : item.at]
    amps = len(before) > 1 and before[-1].name in ("at", "on") and before[-2].dim == "AMP"
    owned = any(head.head == "alternator" and 0 < item.at - head.at <= 6 for head in scene.head_items)
    return amps and owned and bool(HIGHER & scene.figures)


def falls_to(scene: Scene, item: Item) -> bool:
    """Whether a word of falling leads right to it: "drops to 6 V"; "24 down to 12" are a converter's sides."""
    before = scene.items[max(0, item.at - 3) : item.at]
    if is_nominal(item) and any(other.dim in ("VOLT", "NUM") and is_nominal(other) for other in before):
        return False
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
    if close(scene, item, "on_meter", reach=0.3, after=True) or scene.word(item.end) == "exactly":
        return True
    if not RESTING & scene.vocabulary:
        return False
    before, after = scene.word(item.start - 1), scene.word(item.end)
    if (before == "is" and after in PRAISED) or (before == "at" and after == "after"):
        return True
    return any(
        found.concept == "read_off" and found.end == item.start
        for found in around(scene.roles, item, scene.role_starts)
    )
