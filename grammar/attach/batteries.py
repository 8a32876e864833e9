"""What the figures on and about a battery are: ratings, charge, weight, temperature."""

from __future__ import annotations

import re

from grammar.attach.before_battery import OF_BATTERY
from grammar.scene.claims import LACKING, NOTHING, Claim, beside, by_group, close
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.batteries.how_full import ends_at
from grammar.told.cold.weather import is_gone
from grammar.told.currents.sunlit import in_peak_watts
from grammar.told.readings.quoted import quotes_both_limits
from grammar.told.words import ahead_of

LIFTED = regex(  # "forbids heavy lifting above 15 kg", "may not lift more than 20 kg", "can only carry 15 kg"
    r"(?:\b(?:nothing|anything|not) (?:over|above|heavier than|more than)(?: about)?"
    r"|\bonly (?:lift|carry|manage)(?: up to| about)?"
    r"|\b(?:lift|lifting|carry|carrying)(?: (?:anything|it|things|weights?|up|to))*"
    r" ?(?:above|over|more than|beyond|max(?:imum)?|no more than|at most|heavier than|up to|exceeding)(?: about)?) ?$",
    re.IGNORECASE,
)
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
BOXES = frozenset({"cupboard", "boxed", "box", "compartment"})
EATEN = regex(  # "the 45 Ah the refrigerator takes out each day"
    r" (?:that |which )?(?:the|my|our|his|her|its) [\w-]+(?: box)? (?:takes?|uses?|eats?|draws?|burns?|needs?)\b"
    r"[^.?!;,]{0,12}"
    r" (?:a|per|each|every) (?:day|24 hours)",
    re.IGNORECASE,
)
ENGINES = frozenset({"engine", "diesel", "petrol", "outboard", "inboard"})
IN_TANKS = frozenset({"water", "fuel", "diesel", "petrol", "tank"})
TAKEN_OUT = frozenset({"took", "taken", "used", "drew", "removed"})
INSULATION = (60.0, 125.0)  # C
RATINGS = frozenset({60.0, 75.0, 80.0, 85.0, 90.0, 105.0, 125.0})  # C, as printed on cables
PLACED = frozenset({"house", "bow", "stern", "starter", "leisure", "thruster", "domestic"})
GRAVITY = (1.05, 1.35)
FEW = 5  # words and marks of a message that is no more than the print on it
SIZED = frozenset({"cable.gauge", "cable.area"})
RATED_AMPS = frozenset({"CCA", "CA"})
COLD = frozenset(
    {"heater", "heated", "cold", "frost", "winter", "freezing", "chilly", "unheated", "thermometer", "icy"}
)
RATES = frozenset({"1C", "2C", "3C"})
CHARGED = frozenset({"charge", "charged", "charging", "discharge"})
THRUST_WITHIN = 4  # words
LOW_CRANKING, CRANKING = 150.0, 300.0
HEAVIEST = 80.0  # kg of one battery
HOT_CABLE = 70.0  # C
MOST_DROP = 10.0  # percent
LEFT_SO = frozenset({"at", "alone", "standing", "unattended", "charging"})
EACH = frozenset({"each", "every", "per"})
WITHIN = frozenset({"within", "inside", "between", "usual", "recommended", "customary"})
CABLE = frozenset({"cable.area", "cable.gauge", "cable.length"})
PANELS = regex(  # "a 10 W stick-on", "a 15 watt suction-cup one"
    r"\W{0,2}(?:little |small |semi[- ])?(?:stick[- ]?on|flexible|bendy|roll[- ]?up|fold(?:ing|able|[- ]?up|[- ]?out)"
    r"|suction|peel[- ]and[- ]stick|walk[- ]?on|clip[- ]on solar|sun ?catcher)\b",
    re.IGNORECASE,
)


def rated(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that follows from the unit alone."""
    if item.dim == "CCA" and before_label(scene, item):
        return Claim("battery.capacity", "near")
    if item.dim in RATED_AMPS and scene.word(item.start - 1) in LACKING:  # "no CCA. 130 A stern pusher"
        load = scene.after(item)
        return Claim("load.current", "near") if load is not None and load.head == "load" else NOTHING
    if item.dim == "WH" and close(scene, item, "used_up", reach=1.5):
        return NOTHING
    aired = "space" in scene.heads or scene.about("word:vent") or bool(BOXES & scene.vocabulary)
    if item.dim == "VOLUME" and item.quantity.unit == "liter" and not aired:
        return NOTHING
    if item.dim == "VOLUME" and scene.word(item.end) in IN_TANKS:
        return NOTHING
    if item.dim == "AREA" and beside(scene, item, "space", reach=1):
        return NOTHING
    return Claim(BY_UNIT[item.dim], "token")


def before_label(scene: Scene, item: Item) -> bool:
    """Whether a number that seems to be cranking amps only stands before their label: the 90 of "start 90 CCA 720"."""
    after = scene.after(item)
    if (
        after is None
        or after.dim != "NUM"
        or isinstance(after.quantity.value, str)
        or isinstance(item.quantity.value, str)
    ):
        return False
    return item.quantity.value < LOW_CRANKING and after.quantity.value >= CRANKING


def amp_hours(scene: Scene, item: Item, value: float) -> Claim | None:
    """A capacity, but not amp-hours used up in a day; a "20 Ah charger" gives amps."""
    if close(scene, item, "a_day", reach=1.0, after=True):
        return Claim("drain.current" if scene.about("role:drain.current") else "load.current", "role")
    if _left_of(scene, item):
        return NOTHING
    if EATEN.match(scene.text, scene.span(item.start, item.end)[1]):
        return Claim("load.current", "role")
    named = scene.word(item.start - 1) in ("a", "an", "my", "our")  # "how long before a 50 Ah has lost half"
    gone = _is_gone(scene, item) and not named and not _beside_battery(scene, item) and not _left_so(scene, item)
    if gone or scene.word(item.start - 1) in TAKEN_OUT:
        return NOTHING
    sides = scene.sides.get(item.at)
    tied = sides is not None and sides.tied and sides.left is not None and sides.left.head == "charger"
    if tied and value <= 60 and len(scene.quantities("AH")) > 1:
        return Claim("charger.current", "grammar")
    if sides and sides.right and sides.right.head == "charger" and sides.right.at == item.at + 1 and value <= 60:
        return Claim("charger.current", "grammar")
    return Claim("battery.capacity", "token")


def _left_of(scene: Scene, item: Item) -> bool:
    """Whether it is what is left of a larger capacity: the "92 Ah" of "still 92 Ah of 100"."""
    after = scene.items[item.at + 1 : item.at + 3]
    whole = after[1] if len(after) == 2 and after[0].name == "of" else None
    if whole is None or whole.dim not in ("NUM", "AH") or isinstance(whole.quantity.value, str):
        return False
    return 0.3 * whole.quantity.value < float(item.quantity.value) < whole.quantity.value


def _is_gone(scene: Scene, item: Item) -> bool:
    """Whether amp-hours are used up; "how long a day from 120 Ah", "lost half of 130 Ah" speak of the battery's."""
    whole = scene.word(item.start - 1) in ("from", "of")
    return close(scene, item, "used_up", reach=1.5, after=whole)


def _left_so(scene: Scene, item: Item) -> bool:
    """Whether "left" tells how it was left, not what is left of it: "105 Ah: left at half", "left on charge"."""
    at = item.end + (scene.word(item.end) in (":", ",", "-"))
    if scene.word(at) != "left":
        return False
    charged = any(head.head == "charger" and at < head.start <= at + 5 for head in scene.head_items)
    follows = scene.word(at + 1)
    return follows in LEFT_SO or (follows == "on" and (charged or scene.word(at + 2) in ("charge", "shore", "float")))


def _beside_battery(scene: Scene, item: Item) -> bool:
    """Whether the battery is named right before or after: "battery 120 Ah used to half", "a 90 Ah gel left alone"."""
    before, after = scene.before(item), scene.after(item)
    if before is not None and before.head == "battery":
        return True
    placed = scene.word(item.end) in PLACED
    return placed or (after is not None and (after.head == "battery" or after.fact in OF_BATTERY))


def watts(scene: Scene, item: Item, value: float) -> Claim | None:
    """A panel's power or the load's; an engine's is no fact."""
    claim = by_group(scene, item)
    if "solar.power" in scene.expected or ("solar.power" in scene.likely and "load" not in scene.heads):
        return Claim("solar.power", "grammar")
    if in_peak_watts(item) or ("watter" in item.name and (claim is None or claim.fact != "load.power")):
        return Claim("solar.power", "role")
    if claim:
        return claim
    if beside(scene, item, "engine", reach=3) or _of_engine(scene, item):
        return NOTHING
    if PANELS.match(scene.text, scene.span(item.start, item.end)[1]):
        return Claim("solar.power", "role")
    if close(scene, item, "sunny", reach=1.0) and not beside(scene, item, "load", reach=2):
        return Claim("solar.power", "role")
    if "load" not in scene.heads and (scene.about("role:sun", "role:sunny") or "drain" in scene.heads):
        return Claim("solar.power", "default")
    if "panel" in scene.heads and (beside(scene, item, "panel", reach=6) or "load" not in scene.heads):
        return Claim("solar.power", "near")
    return Claim("load.power", "default")


def _of_engine(scene: Scene, item: Item) -> bool:
    """Whether it is what the boat's engine has: "the engine is a 28 hp diesel"."""
    return not ENGINES.isdisjoint(scene.word(at) for at in range(item.start - 4, item.end + 2))


def percent(scene: Scene, item: Item, value: float) -> Claim | None:
    """A state of charge, or the loss that a cable is allowed."""
    if _for_each(scene, item.start, item.end):
        return NOTHING
    if item.quantity.kind == "state_of_charge" and not ends_at(scene, item):
        return Claim("battery.charge", "token")
    if quotes_both_limits(scene):
        return NOTHING
    if (
        item.quantity.kind == "drop"
        or close(scene, item, "cable.drop", reach=2.5)
        or (scene.about("word:loss") and value <= 10)
    ):
        return Claim("cable.drop", "role")
    if _is_rule(scene, item):
        return NOTHING
    if close(scene, item, "no_charge", reach=2) or ends_at(scene, item) or _to_be_kept(scene, item):
        return NOTHING
    if value <= MOST_DROP and _of_cable(scene):
        return Claim("cable.drop", "default")
    return Claim("battery.charge", "default")


def _for_each(scene: Scene, start: int, end: int) -> bool:
    """Whether a figure is a step of a rule: "10 % for each 10 degrees", "a tenth per 10 C"."""
    before = scene.word(start - 1) in EACH or scene.at_word[start - 1].name in EACH if start else False
    after = [scene.word(end), scene.word(end + 1)]
    step = after[0] in EACH or (after[0] in ("for", "at") and after[1] in EACH)
    follows = any(item.dim == "TEMP" for item in scene.at_word[end : end + 3])
    return before or (step and follows)


def _is_rule(scene: Scene, item: Item) -> bool:
    """Whether a range of percent is one that something keeps to: "8 A sits within the ten to twenty-five percent"."""
    ranged = item.part is not None and len(item.part.quantities) > 1
    before = {scene.word(at) for at in range(item.start - 3, item.start)}
    return ranged and bool(WITHIN & before)


def _of_cable(scene: Scene) -> bool:
    """Whether only a cable is spoken of, so that a small percentage is its loss: "lights, so 3 %"."""
    told = any(fact.fact in CABLE for fact in scene.said) and "battery" not in scene.heads
    here = bool(scene.quantities("AREA", "GAUGE", "LENGTH")) and ("cable" in scene.heads or scene.quantities("AMP"))
    return told or bool(here)


def _to_be_kept(scene: Scene, item: Item) -> bool:
    """Whether it is a mark to stay over, not where the battery stands: "keep it above seventy-five per cent"."""
    words = {scene.word(at) for at in range(max(0, item.start - 8), item.start - 1)}
    return scene.word(item.start - 1) in ("above", "over") and bool({"keep", "kept", "stay", "hold"} & words)


def temperature(scene: Scene, item: Item, value: float) -> Claim | None:
    """The air's temperature, or what a cable's insulation stands; `value` in Celsius."""
    if _for_each(scene, item.start, item.end):
        return NOTHING
    cold = bool(COLD & scene.vocabulary) and value > 1 and scene.word(item.end) not in ("rate", "or")
    if item.quantity.text.strip() in RATES and not cold and (scene.lithium_known or CHARGED & scene.vocabulary):
        return NOTHING  # "the seller says 1C is fine"
    told = any(fact.fact == "cable.insulation" for fact in scene.said) or "cable.insulation" in scene.expected
    spoken = told or close(scene, item, "cable.insulation", reach=3) or "cable" in scene.heads
    sized = value >= HOT_CABLE and bool(scene.quantities("GAUGE", "AREA"))  # no boat is so hot
    if INSULATION[0] <= value <= 250 and (spoken or sized):
        return Claim("cable.insulation", "role")
    if float(item.quantity.value) in RATINGS and _only_a_cable(scene):
        return Claim("cable.insulation", "near")
    gone = is_gone(scene, scene.span(item.start, item.end), value)
    return NOTHING if gone else Claim("ambient.temperature", "token")


def _only_a_cable(scene: Scene) -> bool:
    """Whether a cable was told of before and no battery that might be warm: "it says 90 deg" is of its jacket."""
    told = {fact.fact for fact in scene.said}
    if len(scene.tokens) > FEW:
        return False
    return bool(told & SIZED) and "battery" not in scene.heads and not any(fact.startswith("battery.") for fact in told)


def rate(scene: Scene, item: Item, value: float) -> Claim | None:
    """A current as a share of the capacity: "charge at 0.1C"; without a capacity it is no current."""
    if not scene.quantities("AH"):
        return None
    if "continuous" in item.name or close(scene, item, "battery.max_current", reach=2.6):
        return Claim("battery.max_current", "role")
    return Claim("charger.current", "role") if scene.about("word:charge", "word:setting") else None


def weight(scene: Scene, item: Item, value: float) -> Claim | None:
    """A battery's weight; a boat's or a person's is no fact."""
    if "thrust" in {scene.word(at) for at in range(item.start - THRUST_WITHIN, item.end + THRUST_WITHIN)}:
        return NOTHING  # "I only know the thrust: 95 kilos"
    after = scene.after(item)
    if GRAVITY[0] <= value <= GRAVITY[1] and after is not None and after.name == "/":
        return Claim("reading.gravity", "role")  # "1.19 kg/l"
    named = after is not None and (after.head == "battery" or after.fact == "battery.chemistry")
    if not named and LIFTED.search(ahead_of(scene, item)):
        return NOTHING
    claim = by_group(scene, item)
    if claim and claim.fact == "-" and scene.word(item.end) == "on" and value <= HEAVIEST and "battery" in scene.heads:
        return Claim("battery.weight", "default")  # "29 kg on a boat that jumps"
    if claim and claim.fact in ("-", "battery.weight"):
        return claim
    return Claim("battery.weight", "token") if not beside(scene, item, "boat", reach=1.5) else NOTHING
