"""Which amps these are: the load's, its first instant's, a charger's, a fuse's, a drain's, a limit of the battery."""

from __future__ import annotations

from grammar.attach.charging_amps import (
    CHARGES,
    MOST_CHARGE,
    MOST_FILL,
    SMALLEST_CRANKING,
    TINY,
    alternator_of,
    charged_here,
    of_named_charger,
    the_one_told,
)
from grammar.attach.fuse_amps import fuse_of
from grammar.attach.limit_amps import limit_pair, peaks, printed_limit
from grammar.attach.pairs import limits, put_out
from grammar.attach.role_amps import by_strong_role
from grammar.scene.claims import (
    NOTHING,
    Claim,
    asked,
    beside_tiny,
    by_group,
    by_nearness,
    by_role,
    row_of,
)
from grammar.scene.items import Item
from grammar.scene.near import gap
from grammar.scene.scene import Scene
from grammar.told.batteries.amp_batteries import hours_of
from grammar.told.batteries.how_full import ends_at
from grammar.told.chargers.charges import of_charger
from grammar.told.currents.clamped import on_clamp
from grammar.told.currents.flows import flowing, through_a_cable
from grammar.told.currents.fuses import another, in_place
from grammar.told.readings.load_test import tested_amps
from grammar.told.words import stops

WEAK_CHARGE = 0.6  # of the amp-hours: a charger hardly gives more
MOST_DRAIN = 5.0
ASHORE = frozenset({"dock", "shore", "marina", "pontoon", "quay", "pier"})
OUTLETS = frozenset(
    {"outlet", "socket", "hookup", "pedestal", "pillar", "receptacle"}
)  # no charger's: those are several
PANEL_GIVES = frozenset({"gives", "makes", "puts", "sends", "delivers", "pushes", "manages", "giving", "making"})
EVERY = frozenset({"a", "per", "each", "every"})
BURST = frozenset(
    {"shove", "push", "burst", "nudge", "blip", "dab", "jab", "prod", "thrust", "squirt", "go", "pop", "shot"}
)
LEAST_IN_USE, BESIDE = 0.2, 3.0
CRANKS = 4.5  # cranking amps to an amp-hour of lead; a lithium battery that allows so much says what it allows
SMALLEST_TEST = 50.0  # amps of a load tester
ONLY_BESIDE = frozenset({"fuse", "battery"})  # named further away they claim no amps
FILLING = frozenset({"word:charge", "head:charger", "head:dcdc", "head:alternator"})
TO_FILL = frozenset({"fill", "refill", "recharge", "full"})
RESERVE_AT = 25.0  # amps of the test that gives a reserve
BREAKS = frozenset({"aic", "interrupting", "breaking", "interrupt", "rupturing"})


def amps(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that a number of amps states."""
    if told := _plainly(scene, item, value):
        return told
    claim = the_one_told(scene, item, value) or limits(scene, item, value) or limit_pair(scene, item)
    claim = claim or put_out(scene, item) or of_named_charger(scene, item, value) or by_strong_role(scene, item, value)
    tiny = item.quantity.unit == "milliampere" or value <= TINY
    before = scene.before(item)
    owned = _heads_right(scene, item, "charger", "panel") or (before is not None and before.head == "load")
    cabled = "load" in scene.heads and "drain" not in scene.heads and bool(scene.quantities("AREA", "GAUGE"))
    owned = owned or (cabled and bool(scene.quantities("LENGTH")) and not scene.about("role:drain.current"))
    owned = owned or _of_a_thing_in_use(scene, item, value)
    if claim is None and tiny and not owned:
        return Claim("drain.current", "range")
    if claim is None and not scene.loaded and peaks(scene, item):
        return Claim("battery.peak_current", "role")
    claim = claim or by_group(scene, item) or by_role(scene, item, value, weak=True) or _in_apposition(scene, item)
    claim = fuse_of(scene, item, value, claim or _on_the_label(scene, item, value))
    claim = printed_limit(scene, claim)
    if claim is not None and claim.fact in ("load.current", "battery.ca") and _is_tested(scene, item, value):
        return Claim("reading.current", "role")
    if claim is None and _run_here(scene, item):
        return Claim("load.current", "default")
    if claim is None and charged_here(scene, item, value):
        return Claim("charger.current", "range")
    claim = claim or alternator_of(scene, item) or by_nearness(scene, item, but=ONLY_BESIDE)
    if claim is None:
        return _by_topic(scene, item, value)
    if claim.fact == "load.current" and scene.loaded and claim.how == "near":
        return Claim("reading.current", "range")
    if claim.fact == "battery.ca" and value < SMALLEST_CRANKING:
        return _by_topic(scene, item, value)
    return claim


def _plainly(scene: Scene, item: Item, value: float) -> Claim | None:
    """What its own words tell before all else: a short circuit's amps, a fuse's in place of another, a clamp's."""
    if is_fault_current(scene, item) or _of_a_source(scene, item):
        return NOTHING
    if value == RESERVE_AT and scene.about("role:battery.reserve") and _for_minutes(scene, item):
        return NOTHING
    if another(scene, item, value):
        return Claim("fuse.rating", "role")
    if fact := flowing(scene, item, value):
        return Claim(fact, "role")
    if of_charger(scene, item, value):
        return Claim("charger.current", "grammar")
    if hours := hours_of(scene, item, value):
        return hours
    if claim := in_place(scene, item) or on_clamp(scene, item, value):
        return claim
    if scene.word(item.end) in EVERY and scene.word(item.end + 1) in BURST:
        return Claim("load.current", "role")  # "150 A a shove"
    return Claim("load.current", "near") if through_a_cable(scene, item) else None


def _for_minutes(scene: Scene, item: Item) -> bool:
    """Whether minutes follow, of a reserve: "RC: 25 A during 120 minutes"."""
    return any(other.dim == "TIME" and other.quantity.unit == "minute" for other in scene.items[item.at : item.at + 5])


def _of_a_source(scene: Scene, item: Item) -> bool:
    """Whether amps are what an outlet ashore allows, or a panel gives: "a 30 A dock outlet", "the panel makes 5 A"."""
    at = item.end + (scene.word(item.end) in ASHORE)
    if scene.word(at) in OUTLETS and "charger.outputs" not in scene.facts:
        return True
    panels = (head for head in scene.head_items if head.head == "panel" and 0 < item.start - head.end <= 3)
    return any(scene.word(head.end) in PANEL_GIVES for head in panels)


def _of_a_thing_in_use(scene: Scene, item: Item, value: float) -> bool:
    """Whether so few amps are those of a lamp or a radio that is on: "for the radio, half an ampere"."""
    if value < LEAST_IN_USE or scene.about("role:drain.current") or {"drain", "panel"} & scene.heads:
        return False
    clause = scene.clause(item.start)
    return any(
        head.head == "load" and scene.clause(head.start) == clause and gap(scene, item, head.start, head.end) <= BESIDE
        for head in scene.head_items
    )


def is_fault_current(scene: Scene, item: Item) -> bool:
    """Whether amps are those of a short circuit that a fuse can break: kiloamps, "10000 A AIC"."""
    after = {scene.word(at) for at in range(item.end, item.end + 2)}
    before = {scene.word(at) for at in range(item.start - 3, item.start)}
    kilo = item.quantity.unit == "kiloampere" and not scene.about("role:battery.cca", "role:battery.ca")
    return kilo or bool(BREAKS & after) or (bool(BREAKS & before) and "fuse" in scene.heads)


def _on_the_label(scene: Scene, item: Item, value: float) -> Claim | None:
    """The last figure of a label: "12V 74Ah 680A". Many times the amp-hours is a cranking current."""
    before = scene.before(item)
    if before is None or before.dim != "AH" or before.end != item.start or isinstance(before.quantity.value, str):
        return None
    cranks = value >= SMALLEST_CRANKING and value >= CRANKS * before.quantity.value
    return Claim("battery.cca", "near") if cranks else None


def _is_tested(scene: Scene, item: Item, value: float) -> bool:
    """Whether a tester, and no motor that is named, drew these amps."""
    tested = scene.about("role:tester") or (scene.loaded and tested_amps(scene) is item)
    return value >= SMALLEST_TEST and tested and not scene.facts & {"load.kind", "load.model"}


def _run_here(scene: Scene, item: Item) -> bool:
    """Whether the clause asks how long something runs, and only another one speaks of charging."""
    here = scene.by_clause.get(scene.clause(item.start), frozenset())
    charged = any(names & FILLING for names in scene.by_clause.values())
    return charged and "request:how_long" in here and not here & FILLING


def _heads_right(scene: Scene, item: Item, *names: str) -> bool:
    sides = scene.sides.get(item.at)
    return sides is not None and sides.right is not None and sides.right.head in names


def _in_apposition(scene: Scene, item: Item) -> Claim | None:
    """ "The fuse, 200 A, ..." and "fuse (200 A)"."""
    before = scene.items[item.at - 2] if item.at > 1 else None
    if before is None or scene.items[item.at - 1].name not in (",", "(", "-") or asked(scene, before):
        return None
    if before.head == "battery":  # "1.9 m from the battery, 400 A"
        return None
    fact = row_of(before, item.dim)
    return Claim(fact, "near") if fact else None


def _has_state(scene: Scene) -> bool:
    """Whether the message tells how full the battery is."""
    return (
        any(not ends_at(scene, item) for item in scene.quantities("PERCENT"))
        or bool(scene.quantities("GRAVITY"))
        or "battery.charge" in scene.facts
        or scene.read_at_rest
    )


def _load_elsewhere(scene: Scene, item: Item) -> bool:
    """Whether every load is named in another clause and has amps there."""
    clause = scene.clause(item.start)
    if "head:load" in scene.by_clause.get(clause, frozenset()):
        return False
    others = {scene.clause(other.start) for other in scene.quantities("AMP") if other is not item}
    return any("head:load" in scene.by_clause.get(other, frozenset()) for other in others)


def _fills(scene: Scene, item: Item) -> bool:
    """Whether a time to fill is asked: "how long does it take on 8 A", "time to fill at 90 A", "with 9 A, how long"."""
    if scene.vocabulary & TO_FILL and scene.about("request:how_long"):
        return True
    before = scene.word(item.start - 1)
    taking = bool(scene.vocabulary & {"take", "takes"}) and (
        before in ("on", "at", "with", "from") or _takes(scene, item)
    )
    ends = stops(scene, item, ("how",))
    return scene.about("request:how_long") and (taking or (before in ("with", "w", "w/") and ends))


def _takes(scene: Scene, item: Item) -> bool:
    """Whether the amps themselves take the time: "how long would 15 amps take"."""
    return scene.word(item.end) in ("take", "takes")


def _by_topic(scene: Scene, item: Item, value: float) -> Claim | None:
    """No head at all: what the message is about decides."""
    if scene.loaded:
        return Claim("reading.current", "range")
    fills = "load" not in scene.heads and _fills(scene, item)
    charging = (
        fills
        or scene.about("word:charge", "word:setting", "word:vent")
        or (_has_state(scene) and scene.about("request:how_long") and scene.word(item.start - 1) not in ("do", "does"))
    )
    hours = max((float(part.quantity.value) for part in scene.quantities("AH")), default=0.0)
    small = value <= (MOST_FILL if fills else MOST_CHARGE) and (charging or not hours or value <= WEAK_CHARGE * hours)
    loaded = "load" in scene.heads and not _load_elsewhere(scene, item)
    lasting = scene.about("request:how_long", "request:what_size", "role:run_on") and scene.likely[:1] != CHARGES
    filling = charging or (bool(hours) and not lasting)
    bursts = any(part.quantity.unit == "second" for part in scene.quantities("TIME"))
    if small and filling and not bursts and not loaded and "drain" not in scene.heads:
        return Claim("charger.current", "default")
    if "drain" in scene.heads and value <= MOST_DRAIN and not beside_tiny(scene, item, value):
        return Claim("drain.current", "default")
    asked = scene.likely[:1] == CHARGES and not scene.heads - {"charger", "dcdc", "battery", "meter"}
    if small and asked and not bursts and not scene.quantities("TIME"):
        return Claim("charger.current", "default")
    if small and {"charger", "dcdc"} & scene.heads and "load" not in scene.heads and not scene.about("request:enough"):
        return Claim("charger.current", "default")
    if "engine" in scene.heads and "load" not in scene.heads:
        return NOTHING
    return Claim("load.current", "default")
