"""What a bare number is: the plausible range and its neighbours decide, else it is nothing."""

from __future__ import annotations

from itertools import islice

from grammar.attach.amps import LATER, by_strong_role, limit_pair, peaks, taken_in
from grammar.attach.batteries import before_label
from grammar.attach.beside_numbers import RATINGS, SMALLEST_LOAD, by_neighbour, decimals_of, plain
from grammar.attach.counts import counts
from grammar.attach.lengths import bare_area, of_cable, thin_wire
from grammar.attach.pairs import converts, limits, steps_up
from grammar.attach.volts import falls_to, is_reading
from grammar.lexicon.vocabulary import small_words
from grammar.scene.claims import NOTHING, TOUCHING, Claim, beside, by_group, by_nearness, by_role, close
from grammar.scene.denied import denied
from grammar.scene.items import Item
from grammar.scene.names import is_name
from grammar.scene.near import gap
from grammar.scene.scene import Scene
from grammar.text.standard import METRIC_SIZES, NOMINAL
from grammar.told.batteries.by_size import alike, goes_by
from grammar.told.batteries.capacities import GROUPS, MOST_OF_ONE, is_size
from grammar.told.chargers.charges import is_own_charger, of_charger
from grammar.told.currents.fuses import FUSES, fuse
from grammar.told.years.ages import is_age

FROM = frozenset({"on", "of", "from"})
ONWARD = frozenset(["->", "=>", "→", ">", "to", "/"])
GRAVITY = (1.05, 1.35)
SPREAD = (0.01, 0.2)
FROST = (-45.0, -1.0)
WARM, LEAST_ASIDE = 45.0, 3.0  # "(+1)" is one more
HOT = (25.0, 50.0)
HEAT = frozenset({"hot", "heat", "summer", "summers", "roasting", "sweltering", "tropics", "scorching"})
REACHES = frozenset({"hits", "reaches", "touches", "hit", "reach"})
NEAR_ZERO = frozenset({"near", "around"})
SIDES = frozenset({"long", "wide", "deep", "high", "tall", "inches", "thick"})
SIZES = frozenset({"by", "x", "depth", "width", "height", "length", "deep", "wide", "high", "long"})
ENDS = frozenset({"bow", "stern"})
SHOWS = frozenset({"reads", "shows", "showing", "read"})
MEASURED = frozenset(
    {"centimetres", "centimeters", "cm", "mm", "millimetres", "millimeters", "measurements", "measures", "inside"}
)
SHOWN = (8, 17)  # volts of a battery
AT_REST = (11.6, 13.3)
RESTED = ((12, 13), (24, 26))  # whole volts at rest
UNTIL = frozenset({"flat", "even", "until", "till", "before", "then", "resting", "idle", "beforehand"})
MOST_LOST = 0.5  # of the volts, in a fall that is told
LOADED = (6, 12)  # volts of a 12 V battery that a load pulls down
NOT_VOLTS = frozenset(
    {"amps", "a", "amp", "percent", "%", "degrees", "degs", "minutes", "hours", "months", "years", "cells"}
)
GIVES = frozenset({"puts", "gives", "putting", "giving", "amps"})  # "amps out 30"
SMALLEST_CAPACITY = 20
RUNNING = frozenset({"run", "running", "nominal"})  # "500 A peak / 340 run"
LARGEST_CAPACITY = 1000
LARGEST_LEAD = 400  # amp-hours of one lead battery: an "AGM 880" has cranking amps
INSTEAD = frozenset({"replace", "replaces", "replacing", "instead", "than"})
SYSTEM = frozenset({"bank", "system", "pair", "side"})
SIX = 6.0
TAKEN_IN = 12.0  # volts of a converter's side
JOINED_TO = frozenset({24.0, 36.0, 48.0})  # volts of several batteries
MAKES = frozenset({"make", "makes", "making", "made", "turned"})
LITTLE = 2.0  # amps that something left on takes
RATED = ("CCA", "CA", "RC")
SMALLEST_RATING = 40.0
MANY_WATTS = 500.0  # no small load takes so many amps
CRANKING = 300.0  # amps: no thruster's battery has so many amp-hours
MOST_SET = 100.0  # amps
HEAVIEST = 60.0  # kg of one of two
RECKONED = frozenset({"used", "uses", "factor", "constant", "k"})  # "he used 10.8 for copper"
METERS = frozenset({"volts", "volt", "v", "meter", "voltmeter", "multimeter"})

OURS = frozenset({"a", "an", "the", "my", "our"})
GIVERS = frozenset({"charger", "dcdc", "alternator", "panel", "fuse"})
HAVE = frozenset({"got", "have", "ive", "found", "own"})
AT_HAND = frozenset(
    {"in", "already", "at", "here", "lying", "spare", "from", "on", "home", "one", "would", "will", "is"}
)
MOST_CHARGER = 60.0  # amps


AFTER_ABOVE = frozenset(
    {"", ".", ",", "?", "!", ";", "zero", "freezing", "and", "or", "now", "then", "today", "ok", "too"}
)


def number(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that a number without a unit states; a load's name is none."""
    claim = _plainly(scene, item, value)
    named = claim is not None and claim.fact.startswith("load.") and is_name(scene, item)
    if claim is not None and claim.fact == "load.current" and not named and _goes_by_watts(scene, item):
        return Claim("load.power", claim.how)
    return NOTHING if named else claim


def _goes_by_watts(scene: Scene, item: Item) -> bool:
    """Whether it is of watts: "a 1500 inverter"; of a thing like the one of whose was spoken, "no kettle then. toaster
    900"."""
    small = (head for head in scene.head_items if (head.head, head.name) == ("load", "electronics"))
    if plain(item) >= MANY_WATTS and any(gap(scene, item, head.start, head.end) <= TOUCHING for head in small):
        return True
    before, told = scene.before(item), {old.fact for old in scene.said}
    named = before is not None and (before.fact, before.name) == ("load.kind", "electronics")
    return named and "load.power" in told and "load.current" not in told


def _plainly(scene: Scene, item: Item, value: float) -> Claim | None:
    decimals = decimals_of(item, value)
    if (GRAVITY[0] <= value <= GRAVITY[1] and decimals in (2, 3)) or _is_gravity(scene, value):
        return Claim("reading.gravity", "range")
    if SPREAD[0] <= value <= SPREAD[1] and decimals in (2, 3) and close(scene, item, "spread", reach=3):
        return Claim("reading.gravity_spread", "role")
    if FROST[0] <= value <= FROST[1] and decimals == 0:
        return Claim("ambient.temperature", "range")
    if (told := by_neighbour(scene, item, value)) is not None:
        return told
    if value <= 12 and close(scene, item, "sun", reach=1.6, after=True):
        return Claim("solar.sun_hours", "role")
    if _is_warmth(scene, item, value, decimals):
        return Claim("ambient.temperature", "role")
    if _is_read(scene, item, value) if decimals else _is_whole_reading(scene, item, value):
        return Claim("reading.voltage", "range")
    if decimals:
        return _small_figure(scene, item, value)
    if value >= SMALLEST_LOAD and (_next_load(scene, item) or _at_an_end(scene, item)):
        return Claim("load.current", "near")
    claim = _system(scene, item, value) if value in NOMINAL else None
    claim = claim or bare_area(scene, item, value) or _second_size(scene, item, value)
    return claim or counts(scene, item, value) or _named(scene, item, value) or _at_hand(scene, item, value)


def _small_figure(scene: Scene, item: Item, value: float) -> Claim | None:
    """What a number with decimals is, if no volts: the section of a thin wire, what something left on takes."""
    if thin_wire(scene, item, value):
        return Claim("cable.area", "grammar")
    return Claim("drain.current", "role") if value < LITTLE and _drains(scene, item) else None


def _is_warmth(scene: Scene, item: Item, value: float, decimals: int) -> bool:
    """Whether a bare number is of degrees above zero: "temp 12", "near zero", "spring here is +2"."""
    if 0 <= value <= 130 and not decimals and close(scene, item, "ambient.temperature", reach=1.6):
        return True
    if not decimals and 0 <= value <= WARM and (_signed(scene, item) or _above_zero(scene, item)):
        return True
    before = scene.word(item.start - 1)
    if HOT[0] <= value <= HOT[1] and not decimals and HEAT & scene.vocabulary:
        placed = before == "," and scene.word(item.end) in ("on", "in", "here")  # "hot in Darwin, 36 on deck"
        return before in REACHES or placed
    return (value == 0 and before in NEAR_ZERO) or (0 <= value <= WARM and before in ("plus", "+") and _warmer(scene))


def _above_zero(scene: Scene, item: Item) -> bool:
    """Whether it is the second of two temperatures: "at 10 below, and at 5 above?"."""
    above = scene.word(item.end) == "above" and scene.word(item.end + 1) in AFTER_ABOVE
    return above and (bool(scene.quantities("TEMP")) or _warmer(scene))


def _drains(scene: Scene, item: Item) -> bool:
    """Whether a small figure is of something left on: "still draws 0.3", "what does it eat in standby. 0.06?"."""
    alone = scene.about("role:drain.current") and len(scene.measured) == 1
    return alone or close(scene, item, "drain.current", reach=6.5)


def _warmer(scene: Scene) -> bool:
    """Whether a temperature was spoken of: then "plus 5" is another."""
    return any(fact.fact == "ambient.temperature" for fact in scene.said)


def _next_load(scene: Scene, item: Item) -> bool:
    """Whether it goes on a list of loads and their amps: the 200 of "winch 80 amp, screw 200"."""
    row = scene.items[max(0, item.at - 3) : item.at]
    after = scene.after(item)
    if (
        len(row) != 3
        or row[0].dim != "AMP"
        or row[1].name not in (",", "and", "+")
        or row[2].kind not in ("word", "thing", "value")
        or row[2].fact == "battery.chemistry"  # "lights 7 A, AGM 110"
    ):
        return False
    first = scene.before(row[0])
    return first is not None and first.head == "load" and (after is None or after.kind == "mark")


def _at_an_end(scene: Scene, item: Item) -> bool:
    """Whether it is of one of two thrusters told by their places: "bow 250 stern 200"."""
    if scene.word(item.start - 1) not in ENDS:
        return False
    return {scene.word(other.start - 1) for other in scene.quantities("NUM")} >= ENDS


def _signed(scene: Scene, item: Item) -> bool:
    """Whether a plus stands right at a number that adds to nothing: "spring here is +2", "in a shed at +5"."""
    if not item.quantity.text.strip().startswith("+"):
        return False
    before, after = scene.word(item.start - 1), scene.after(item)
    told = "ambient.temperature" in scene.expected or any(old.fact == "ambient.temperature" for old in scene.said)
    ends = after is None or after.kind == "mark" or after.name in ("in", "here", "now", "outside", "inside", "at")
    apart = before in ("(", ",") and plain(item) >= LEAST_ASIDE and not scene.at_word[item.start - 2].dim
    if ends and apart:  # "hands frozen (+6)", "alone in the boat, +10"
        return True
    return ends and (before in ("is", "at", "its", "about", "around", "in", "to", "near") or (before == "" and told))


def _is_read(scene: Scene, item: Item, value: float) -> bool:
    """Whether a number with decimals is of volts; "the tray is 15.5 long" is not."""
    if scene.word(item.start - 1) in RECKONED and not scene.vocabulary & METERS:
        return False
    return is_reading(scene, value) and scene.word(item.end) not in SIDES and not _is_side(scene, item)


def _is_whole_reading(scene: Scene, item: Item, value: float) -> bool:
    """Whether a number without decimals is of volts: one that they fall to, or that is shown."""
    return (
        (4 <= value < 32 and _falls(scene, item))
        or _is_shown(scene, item, value)
        or _is_loaded(scene, item, value)
        or _falls_from(scene, item, value)
    )


def _falls_from(scene: Scene, item: Item, value: float) -> bool:
    """Whether whole volts are those from which a press pulls them: "25 flat till my thumb goes down, then 19.5"."""
    if not any(low <= value <= high for low, high in RESTED) or scene.word(item.end) not in UNTIL or not scene.sags:
        return False
    return any(MOST_LOST * value <= other < value and other % 1 for other in scene.figures)


def _is_loaded(scene: Scene, item: Item, value: float) -> bool:
    """Whether it was read beside volts at rest as the load ran: "12.7 resting and 9 with the thruster on"."""
    runs = any(found.start == item.end for found in scene.sags)
    rested = scene.about("role:off") and any(AT_REST[0] <= other < AT_REST[1] for other in scene.figures)
    return LOADED[0] <= value <= LOADED[1] and runs and bool(rested)


def _is_shown(scene: Scene, item: Item, value: float) -> bool:
    """Whether a whole number is what a battery or a meter shows: "my bow battery reads 16 with everything off"."""
    named = scene.word(item.start - 1) in SHOWS and {"battery", "meter"} & scene.heads
    return SHOWN[0] <= value <= SHOWN[1] and bool(named) and scene.word(item.end) not in NOT_VOLTS


def _is_side(scene: Scene, item: Item) -> bool:
    """Whether it is a side of a tray or a case, told in centimetres: "26 cm long by 17.5", "length 41, depth 17.5"."""
    near = [scene.word(item.start - 1), scene.word(item.start - 2), scene.word(item.end)]
    if not SIZES & set(near):
        return False
    lengths = any(other.dim in ("LENGTH", "INCH", "MM") for other in scene.items[max(0, item.at - 6) : item.at + 7])
    return lengths or bool({"depth", "width", "height"} & set(near))


def _falls(scene: Scene, item: Item) -> bool:
    """Whether a bare number is what volts fall to; "group 24 -> 27" falls nowhere."""
    return falls_to(scene, item) and (item.at < 2 or scene.items[item.at - 2].dim != "GROUP")


def _system(scene: Scene, item: Item, value: float) -> Claim | None:
    """A bare 12, 24 ... as the volts of a system or of a converter's two sides."""
    if stepped := steps_up(scene, item):
        return Claim(stepped, "grammar")
    if _each_of_them(scene, item):
        return Claim("battery.nominal", "grammar")
    if _is_poured_into(scene, item):
        return Claim("bank.voltage", "grammar")
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


def _is_gravity(scene: Scene, value: float) -> bool:
    return 1000 < value <= 1350 and ("hydrometer" in scene.heads or scene.about("word:gravity_word"))


def _second_size(scene: Scene, item: Item, value: float) -> Claim | None:
    """A number beside others of a kind: "group 24 ... will a 31 fit", "50 or 70 mm2"."""
    before = scene.before(item)
    if before is not None and before.kind == "times" and value in NOMINAL and value <= 12:
        return Claim("battery.nominal", "grammar")
    if before is not None and before.kind == "times" and SMALLEST_CAPACITY <= value <= LARGEST_CAPACITY:
        if scene.expected and "battery.capacity" not in scene.expected and (rating := _asked_rating(scene, value)):
            return Claim(rating, "grammar")
        return Claim("cable.area" if of_cable(scene, value) else "battery.capacity", "grammar")
    if str(int(value)) in GROUPS and (_onward(scene, item) or _instead_of_another(scene, item)):
        return Claim("battery.group", "grammar")
    fits = scene.about("word:fit") and "dcdc" not in scene.heads and not _is_measured(scene, item)
    if str(int(value)) in GROUPS and fits and not scene.quantities("AH", "INCH"):
        return Claim("battery.group", "range")
    if scene.quantities("AREA") and value in METRIC_SIZES and _joined_to(scene, item, "AREA"):
        return Claim("cable.area", "grammar")
    return None


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


def _named(scene: Scene, item: Item, value: float) -> Claim | None:
    """A number that its neighbours name: "115 gel", "a 30 charger", "the thruster takes 265", "12 boat"."""
    if _given_by(scene, item, value) or goes_by(scene, item, value) or alike(scene, item, value):
        return Claim("battery.capacity", "grammar")
    if of_charger(scene, item, value) or is_own_charger(scene, item, value):
        return Claim("charger.current", "grammar")
    claim = _of_kind(scene, item, value) or fuse(scene, item, value)
    if claim is None and (taken_in(scene, item, value) or _puts_out(scene, item) or _is_set_to(scene, item, value)):
        claim = Claim("charger.current", "role")
    if claim is None and value <= 30 and is_age(scene, item):
        claim = Claim("battery.age", "role")
    if claim is None and value >= SMALLEST_CAPACITY:
        claim = _bare_amps(scene, item, value)
    if claim is not None:
        return claim
    if value in NOMINAL or value < 5 or beside(scene, item, "boat", "engine", reach=1):
        return None
    claim = by_strong_role(scene, item, value) or by_role(scene, item, value, weak=True) or _strict(scene, item)
    if claim is None and is_size(scene, item, value):
        return Claim("battery.capacity", "near")
    return claim or _near(scene, item, value) or _rated(scene, item, value)


def _given_by(scene: Scene, item: Item, value: float) -> bool:
    """Whether it is the battery that gives the amps: "150 A out of a 100, ten pushes", "the 110 feeds the fridge"."""
    before = [scene.word(item.start - back) for back in (1, 2, 3)]
    if before[0] not in OURS or GIVERS & scene.heads or not SMALLEST_CAPACITY <= value <= LARGEST_LEAD:
        return False
    if scene.word(item.end) in ("feeds", "powers"):
        return True
    after = scene.after(item)
    ends = after is None or after.kind == "mark" or after.name in ("and", "with", "for", "till", "until", "before")
    taken = before[1] in ("off", "from") or before[1:] == ["of", "out"]
    return taken and ends and bool(scene.quantities("AMP"))


def _at_hand(scene: Scene, item: Item, value: float) -> Claim | None:
    """A charger that goes by its amps, where its size is asked: "how many amps. got a 15 in the garage"."""
    have = scene.word(item.start - 1) in ("a", "an") and scene.word(item.start - 2) in HAVE
    after = scene.after(item)
    alone = after is None or after.kind == "mark" or scene.word(item.end) in AT_HAND
    chargers = "charger" in scene.heads and not scene.heads - {"charger", "battery"}
    found = have and alone and chargers and value <= MOST_CHARGER and not scene.quantities("AMP")
    return Claim("charger.current", "near") if found else None


def _puts_out(scene: Scene, item: Item) -> bool:
    """Whether it is what a charger gives: "my b2b puts out 30 at 24 volts"."""
    given = scene.word(item.start - 1) == "out" and scene.word(item.start - 2) in GIVES
    return given and bool({"charger", "dcdc", "alternator"} & scene.heads) and scene.word(item.end) != "v"


def _is_set_to(scene: Scene, item: Item, value: float) -> bool:
    """Whether a charger is set to so many amps: "dc-dc set at 30"."""
    set_to = scene.word(item.start - 2) in ("set", "dialled", "limited") and scene.word(item.start - 1) in ("at", "to")
    last = next((head.head for head in reversed(scene.head_items) if head.end <= item.start), "")
    return set_to and last in ("charger", "dcdc") and value <= MOST_SET and not scene.quantities("VOLT")


def _of_kind(scene: Scene, item: Item, value: float) -> Claim | None:
    """A battery's figure beside its kind or its label: "115 gel", "AGM, 31", "start 90 CCA 720"."""
    labelled = scene.before(item)
    if labelled is not None and labelled.dim == "CCA" and before_label(scene, labelled):
        return Claim("battery.cca", "role")
    after = scene.after(item)
    if after is not None and after.name == "of":  # "if it were 100 of lithium"
        after = scene.after(after)
    named = after is not None and (after.fact == "battery.chemistry" or after.name == "deep-cycle")
    if named and SMALLEST_CAPACITY <= value <= LARGEST_CAPACITY:
        return Claim("battery.capacity", "grammar")
    before = _told_before(scene, item)
    if before is not None and before.fact == "battery.chemistry" and before.at < item.at - 1 and value == 31.0:
        return Claim("battery.group", "grammar")  # "63 lbs, AGM, 31"
    if (
        before is not None
        and before.fact in ("battery.chemistry", "battery.charge", "battery.duty")
        and str(int(value)) not in GROUPS
        and SMALLEST_CAPACITY <= value <= (LARGEST_CAPACITY if scene.lithium else LARGEST_LEAD)
    ):
        return Claim("battery.capacity", "grammar")
    return Claim("battery.capacity", "near") if _beside_one(scene, item, value) else None


def _beside_one(scene: Scene, item: Item, value: float) -> bool:
    """Whether the volts of one battery lead to it: the "220" of "two 6 V 220 run 9 amps"."""
    before = scene.before(item)
    one = (
        before is not None
        and before.dim == "VOLT"
        and before.quantity.value in NOMINAL
        and bool(scene.by_dim.get("COUNT"))
    )
    runs = scene.word(item.end) in ("run", "runs") and any(other.at > item.at for other in scene.quantities("AMP"))
    return one and runs and is_size(scene, item, value)


def _told_before(scene: Scene, item: Item) -> Item | None:
    """The item before a number, over a bracket that opens or a comma: "golf carts (220)", "AGM, 95)"."""
    before, after = scene.before(item), scene.after(item)
    if before is None or item.at < 2:
        return before
    apart = before.name in ("(", ",") and (after is None or after.kind == "mark" or _at_volts(scene, after))
    if not apart and before.fact == "battery.duty":
        return None
    other = scene.items[item.at - 2]
    return other if apart and other.fact in ("battery.chemistry", "battery.duty") else before


def _at_volts(scene: Scene, after: Item) -> bool:
    """Whether the volts follow: the "at 24 V" of "the new one is AGM, 230 at 24 V"."""
    volts = scene.after(after)
    return after.name == "at" and volts is not None and volts.dim == "VOLT"


def _bare_amps(scene: Scene, item: Item, value: float) -> Claim | None:
    """Amps without their unit: the limits of a battery, "500 A peak / 340 run"."""
    if claim := limits(scene, item, value) or limit_pair(scene, item):
        return claim
    if value >= SMALLEST_LOAD and scene.word(item.end) in RUNNING | LATER and scene.quantities("AMP"):
        return Claim("load.current", "role")
    return Claim("battery.peak_current", "role") if peaks(scene, item) else None


def _rated(scene: Scene, item: Item, value: float) -> Claim | None:
    """The one number of a message that asks about a rating: "what is CCA, and is 800 of them plenty"."""
    if value < SMALLEST_RATING or any(scene.by_dim.get(dim) for dim in RATED):
        return None
    large = (other for other in scene.by_dim["NUM"] if plain(other) >= SMALLEST_RATING)
    if len(list(islice(large, 2))) > 1:
        return None
    spoken = (fact for fact in RATINGS if scene.about(f"role:{fact}") or scene.likely[:1] == (fact,))
    named = (fact for fact in spoken if RATINGS[fact][0] <= value <= RATINGS[fact][1])
    found = list(named)
    if len(found) > 1 and {"battery.cca", "battery.ca"} <= set(found):  # "what's CCA, what's MCA, mine says 840"
        return None
    fact = found[0] if found else None
    if fact is None or ("load" in scene.heads and beside(scene, item, "load", reach=2)):
        return None
    return Claim(fact, "near")


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
    after = scene.after(item)
    ends = after is None or after.kind == "mark"
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


def _strict(scene: Scene, item: Item) -> Claim | None:
    """A head right beside a bare number, or tied to it."""
    sides = scene.sides.get(item.at)
    if sides is None or item.quantity.value in NOMINAL:
        return None
    left = sides.left
    beside_left = left is not None and gap(scene, item, left.start, left.end) <= TOUCHING
    beside_right = sides.right is not None and sides.right.at == item.at + 1
    if beside_left and left is not None and left.head == "charger" and item.dim == "NUM":  # "90 Ah, charger 15"
        after = scene.after(item)
        if after is None or after.kind == "mark":
            return Claim("charger.current", "near")
    large = float(item.quantity.value) >= SMALLEST_LOAD and beside_left
    claim = by_group(scene, item) if sides.tied or large or beside_right else None
    if claim and claim.fact == "battery.capacity" and not _is_capacity(item):
        return None
    return claim


def _is_capacity(item: Item) -> bool:
    value = float(item.quantity.value)
    return SMALLEST_CAPACITY <= value <= MOST_OF_ONE and f"{value:g}" not in GROUPS


def _near(scene: Scene, item: Item, value: float) -> Claim | None:
    """A bare number near the one thing that it can be of: a usual size of fuse, a large figure after a load."""
    reach = 8 if scene.word(item.end) in ("?", "for") else 4
    if value in FUSES and beside(scene, item, "fuse", reach=reach):
        return Claim("fuse.rating", "near")
    before = scene.before(item)
    if (
        value >= SMALLEST_LOAD
        and before is not None
        and beside(scene, item, "load", reach=2)
        and "fuse" not in scene.heads
    ):
        return by_nearness(scene, item, reach=2.0)
    return None
