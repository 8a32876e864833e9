"""Which amps these are: the load's, its first instant's, a charger's, a fuse's, a drain's, a limit of the battery."""

from __future__ import annotations

import re

from grammar.attach.pairs import limits, put_out
from grammar.scene.claims import (
    FIGURES,
    NOTHING,
    Claim,
    asked,
    by_group,
    by_nearness,
    by_role,
    close,
    row_of,
)
from grammar.scene.items import Item
from grammar.scene.near import around, gap
from grammar.scene.scene import Scene
from grammar.told.chargers.charges import of_charger
from grammar.told.currents.clamped import on_clamp
from grammar.told.currents.flows import flowing
from grammar.told.currents.fuses import FUSES, in_place, put_in, stands_in
from grammar.told.currents.spent import spent, through_a_cable
from grammar.told.readings.load_line import tested_amps

PRONOUNS = frozenset({"one", "unit"})
TAKEN = frozenset(
    {"take", "took", "taking", "use", "buy", "bought", "get", "got", "choose", "pick", "fit", "order", "put"}
)
BY_AMPS = frozenset({"charger", "dcdc", "fuse"})  # things that go by their amps
WEAK_CHARGE = 0.6  # of the amp-hours: a charger hardly gives more
MOST_CHARGE = 60.0
MOST_DRAIN = 5.0
BEFORE_AMPS = 4  # words from a charger to its amps
EVERY = frozenset({"a", "per", "each", "every"})
BURST = frozenset(
    {"shove", "push", "burst", "nudge", "blip", "dab", "jab", "prod", "thrust", "squirt", "go", "pop", "shot"}
)
LEAST_IN_USE, BESIDE = 0.2, 3.0
TINY = 0.5  # amps that are hardly anything but a drain
CRANKS = 4.5  # cranking amps to an amp-hour of lead; a lithium battery that allows so much says what it allows
SMALLEST_CRANKING = 300.0
SMALLEST_PEAK = 40.0  # bare amps
SMALLEST_TEST = 50.0  # amps of a load tester
FUSE_THERE = re.compile(  # "fuse at the battery 250 A"
    r"\b(?:fuse|breaker) (?:at|near|by|beside|on|in) (?:the|its|my|our) \w+(?: \w+)?[,:]? (?:is |of )?$", re.IGNORECASE
)
GIVES = frozenset({"give", "gives", "deliver", "delivers", "supply", "supplies"})
POURS = frozenset(
    ["push", "pushes", "feed", "feeds", "shove", "shoves", "pour", "pours", "pump", "pumps", "stuff", "stuffs", "put"]
) | {"puts", "send", "sends", "cram", "get"}
SOURCES = frozenset({"genset", "generator", "gennie", "genny", "dock", "quay", "pedestal", "mains", "marina"})
IN_WHAT = frozenset({"it", "them", "her", "", ".", ",", "?", ";", "how", "when"})
INTO = 3  # words
OF_AMPS = frozenset({"alternator", "load", "charger", "dcdc", "fuse", "panel", "bms", "drain"})
FROM_ALTERNATOR = 9  # words
MOST_POURED = 200.0
STEADY = frozenset({"bms", "steady", "cont", "continuous", "continuously", "constant"})
SHORTLY = frozenset({"short", "brief", "briefly", "peak", "pk", "burst", "surge", "max"})
PAIR = 9  # pieces between two limits of one battery
NEXT, LEADS_TO = 4, 4  # words from a figure to the word that is the next one's, and from that to it
SHORT = 60.0  # seconds that a peak may last
TO_LIMIT = 0.7
ONLY_BESIDE = frozenset({"fuse", "battery"})  # named further away they claim no amps
AFTER = 3.0  # an owner that follows is further away than one before
FILLING = frozenset({"word:charge", "head:charger", "head:dcdc", "head:alternator"})
RUNNING = frozenset({"run", "runs", "running"})
DRAWING = frozenset({"draw", "draws", "drawing", "averages", "averaging", "takes", "pulls", "uses"})
AVERAGES = frozenset({"averages", "averaging", "average"})
CUTS = frozenset({"cuts", "trips", "stops", "cut", "trip", "limits", "switches", "shuts"})
STEADILY = frozenset({"continuous", "continuously", "cont", "constant", "sustained"})
OF_LOADS = frozenset({"thruster", "thrusters", "motor", "motors", "windlass", "its"})
LABELS = frozenset({"sticker", "label", "printed", "marked", "stamped"})
CHARGES = ("charger.current",)
TO_CHARGE = frozenset({"charge", "charging", "recharge"})
TO_FILL = frozenset({"fill", "refill", "recharge", "full"})
MOST_FILL = 150.0  # amps, where a capacity is told with them
LATER = frozenset({"after", "afterwards", "thereafter"})  # "600 A of kick, 400 after"
LEAD = frozenset({"flooded", "agm", "gel", "lead"})
WEIGHED = frozenset({"big", "small", "large", "much", "little", "heavy", "light", "good", "right"})
FITTING = frozenset({"right", "enough", "ok", "okay", "correct", "fine", "good", "big", "small", "much"})
NOMINALLY = frozenset({"nom", "nominal", "rated", "running", "run", "."})
PEAKS = ("load.peak", "battery.peak_current")
BREAKS = frozenset({"aic", "interrupting", "breaking", "interrupt", "rupturing"})
JOINING = frozenset(["and", ",", ";", "but", "then"])


def amps(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that a number of amps states."""
    if told := _plainly(scene, item, value):
        return told
    claim = _the_one(scene, item, value) or limits(scene, item, value) or limit_pair(scene, item)
    claim = claim or put_out(scene, item) or _charger_named(scene, item, value) or by_strong_role(scene, item, value)
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
    claim = _of_fuse(scene, item, value, claim or _on_the_label(scene, item, value))
    claim = _printed_limit(scene, claim)
    if claim is not None and claim.fact in ("load.current", "battery.ca") and _is_tested(scene, item, value):
        return Claim("reading.current", "role")
    if claim is None and _run_here(scene, item):
        return Claim("load.current", "default")
    if claim is None and _charging_here(scene, item, value):
        return Claim("charger.current", "range")
    claim = claim or _of_alternator(scene, item) or by_nearness(scene, item, but=ONLY_BESIDE)
    if claim is None:
        return _by_topic(scene, item, value)
    if claim.fact == "load.current" and scene.loaded and claim.how == "near":
        return Claim("reading.current", "range")
    if claim.fact == "battery.ca" and value < SMALLEST_CRANKING:
        return _by_topic(scene, item, value)
    return claim


def _plainly(scene: Scene, item: Item, value: float) -> Claim | None:
    """What its own words tell before all else: a short circuit's amps, a fuse's in place of another, a clamp's."""
    if is_fault_current(scene, item):
        return NOTHING
    if fact := flowing(scene, item, value):
        return Claim(fact, "role")
    if of_charger(scene, item, value):
        return Claim("charger.current", "grammar")
    if claim := in_place(scene, item) or on_clamp(scene, item, value):
        return claim
    if scene.word(item.end) in EVERY and scene.word(item.end + 1) in BURST:
        return Claim("load.current", "role")  # "150 A a shove"
    return Claim("load.current", "near") if through_a_cable(scene, item) else None


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


def taken_in(scene: Scene, item: Item, value: float) -> bool:
    """Whether a battery is asked to take these amps, which charges it: "can the battery take a 60"."""
    before = [scene.at_word[at] for at in range(max(0, item.start - 4), item.start)]
    takes = [one for one in before if one.name in ("take", "takes", "accept")]
    if not takes or value > MOST_CHARGE or "load" in scene.heads:
        return False
    owner = scene.before(takes[-1])
    can = any(scene.word(at) in ("can", "may", "could", "will") for at in range(takes[-1].start - 4, takes[-1].start))
    return can and owner is not None and (owner.head == "battery" or owner.fact == "battery.chemistry")


def _poured_in(scene: Scene, item: Item, value: float) -> bool:
    """Whether they are given to a battery: "the genset can push 70 amps in", "the dock gives 10 A"."""
    if value > MOST_POURED or scene.facts & {"load.model"}:
        return False
    before = [scene.word(item.start - back) for back in (1, 2, 3)]
    if before[0] in ("up", "to", "about", "some"):
        before = before[1:]
    if before[0] in POURS and scene.word(item.end) in ("in", "into") and _into_battery(scene, item.end + 1):
        return True
    return before[0] in POURS | GIVES | {"put", "puts"} and bool(SOURCES & set(before[1:]))


def _into_battery(scene: Scene, at: int) -> bool:
    """Whether a battery is named there, or nothing: "in.", "into it", "into a 90 Ah gel", "into the 24"."""
    if scene.word(at) in IN_WHAT:
        return True
    near = [scene.at_word[place] for place in range(at, min(at + INTO, len(scene.tokens)))]
    return any(one.dim in ("AH", "VOLT") or one.head == "battery" or one.fact == "battery.chemistry" for one in near)


def _the_one(scene: Scene, item: Item, value: float) -> Claim | None:
    """A battery that goes by its unlabelled amps: "the 700 amp one"; what "averages 28 A" is a load's."""
    if taken_in(scene, item, value) or _poured_in(scene, item, value):
        return Claim("charger.current", "role")
    alone = "runtime" in scene.vocabulary and not {"charger", "panel", "bms"} & scene.heads  # "8 A 105 Ah AGM runtime"
    if value > TINY and (scene.word(item.start - 1) in AVERAGES or (alone and len(scene.quantities("AMP")) == 1)):
        return Claim("load.current", "role")
    named = value >= SMALLEST_CRANKING and scene.word(item.end) in ("one", "ones")
    others = {"load.current", "load.peak", "fuse.rating"} & {*scene.expected, *scene.likely} or "fuse" in scene.heads
    kind = scene.at_word[item.end] if item.end < len(scene.tokens) else item  # "my 1000 amp AGM"
    named = named or (kind.fact == "battery.chemistry" and kind.name in LEAD and value >= SMALLEST_CRANKING)
    return Claim("battery.ca", "grammar") if named and not others else None


def _charger_named(scene: Scene, item: Item, value: float) -> Claim | None:
    """A charger that goes by its amps: "a 30 amp one off the alternator", "how long on a 10 amp"."""
    if named := _by_pronoun(scene, item):
        return named
    if value > MOST_CHARGE:
        return None
    sides = scene.sides.get(item.at)
    right = sides.right.head if sides is not None and sides.right is not None else ""
    one = scene.word(item.end) in ("one", "unit")
    if one and scene.likely[:1] == CHARGES and not scene.heads - {"charger", "dcdc", "battery", "meter"}:
        return Claim("charger.current", "grammar")  # "and how long would a 30 amp one take"
    given = [scene.word(at) for at in range(item.end + 1, item.end + 4)]
    if one and {"of", "off", "from"} & set(given) and "alternator" in scene.heads:
        return Claim("charger.current", "grammar")
    if one and scene.quantities("PERCENT") and scene.word(item.start - 1) in ("a", "the", "my"):
        return Claim("charger.current", "grammar")
    on_it = scene.word(item.start - 2) == "on" and scene.word(item.start - 1) in ("a", "the", "my")
    asked_so = scene.about("request:how_long") and right not in ("load", "fuse", "cable")
    return Claim("charger.current", "grammar") if on_it and asked_so and item.name.endswith("amp") else None


def _by_pronoun(scene: Scene, item: Item) -> Claim | None:
    """What "if I take a 20 A one" is: the charger, converter or fuse that was named last before."""
    verbs = {scene.word(item.start - back) for back in (1, 2, 3)}
    if (
        scene.word(item.end) not in PRONOUNS
        or not verbs & TAKEN
        or scene.word(item.start - 1) not in ("a", "an", "the")
    ):
        return None
    named = [head for head in scene.head_items if head.end <= item.start and head.head in BY_AMPS]
    fact = row_of(named[-1], "AMP") if named else ""
    return Claim(fact, "grammar") if fact else None


def by_strong_role(scene: Scene, item: Item, value: float) -> Claim | None:
    """Amps that a word names; whose peak or limit it is depends on what stands nearest."""
    if _follows_running(scene, item) or _of_short_limit(scene, item):
        return Claim("load.peak" if _follows_running(scene, item) else "battery.peak_current", "role")
    claim = by_role(scene, item, value)
    if claim is None and (claim := _cut_off(scene, item, value)):
        return claim
    if claim and claim.fact in PEAKS and _names_the_next(scene, item):
        steady = {"load": "load.current", "": "load.current", "bms": "battery.max_current"}.get(_owner(scene, item))
        return Claim(steady, "role") if steady else None
    if claim and claim.fact in PEAKS:
        small = item.dim == "NUM" and value < SMALLEST_PEAK  # "engine 10 pk" is horsepower
        return None if small or _on_a_switch(scene) else _of_start(scene, item, claim)
    if claim and claim.fact == "battery.max_current" and value <= TINY:  # "30 mA permanent for the alarm"
        return None
    if claim and claim.fact == "battery.max_current" and value <= MOST_CHARGE and _of_charger(scene, item):
        return Claim("charger.current", "role")
    if claim and claim.fact == "battery.max_current" and scene.lithium and _is_named_limit(scene, item):
        return claim
    if claim and claim.fact == "battery.max_current" and (not _limited(scene, item) or _owner(scene, item) == "load"):
        given = by_group(scene, item)
        own = given is not None and given.fact in ("alternator.current", "drain.current")
        if not own and value <= MOST_CHARGE and scene.likely[:1] == CHARGES and "load" not in scene.heads:
            return Claim("charger.current", "role")
        return given if own else Claim("load.current", "role")
    return claim


def _of_short_limit(scene: Scene, item: Item) -> bool:
    """Whether it is what a battery allows for moments, by its name: "its kick limit 400", "300 A surge limit"."""
    limits = (
        found
        for found in around(scene.roles, item, scene.role_starts)
        if found.concept == "battery.peak_current" and scene.word(found.end - 1) == "limit"
    )
    return any(gap(scene, item, found.start, found.end) <= TO_LIMIT for found in limits)


def _of_charger(scene: Scene, item: Item) -> bool:
    """Whether a charger stands right before: "shore charger holds a steady 40 A"."""
    near = (head for head in scene.head_items if 0 <= item.start - head.end <= BEFORE_AMPS)
    return any(head.head == "charger" for head in near) and "bms" not in scene.heads


def _is_named_limit(scene: Scene, item: Item) -> bool:
    """Whether lithium's amps are called a limit, or stand beside those of a load."""
    steady = scene.word(item.start - 1) in STEADY and "limit" in scene.vocabulary
    return scene.word(item.start - 1) == "limit" or steady or _beside_a_draw(scene, item)


def _beside_a_draw(scene: Scene, item: Item) -> bool:
    """Whether the load has a figure of its own: "it's rated 100 A continuous and the thruster takes 240"."""
    if scene.word(item.end) not in STEADILY:
        return False
    drawn = [found for found in scene.roles if found.concept == "load.current" and scene.word(found.start) in DRAWING]
    return any(other.start == found.end for found in drawn for other in scene.quantities(*FIGURES) if other is not item)


def _of_start(scene: Scene, item: Item, claim: Claim) -> Claim:
    """What amps near a word of starting are: those of running, or whose peak."""
    if _names_next(scene, item) or _is_steady(scene, item):
        return Claim("load.current", "role")
    if any(_runs(scene, other) for other in scene.quantities("NUM")):
        return Claim("load.peak", "role")
    return _peak(scene, item, claim)


def _on_a_switch(scene: Scene) -> bool:
    """Whether "switch on" is where a charger's switch stands, no first instant: "switch on AGM"."""
    kinds = (item for item in scene.items if item.fact in ("battery.chemistry", "charger.setting"))
    return any([scene.word(item.start - 2), scene.word(item.start - 1)] == ["switch", "on"] for item in kinds)


def _cut_off(scene: Scene, item: Item, value: float) -> Claim | None:
    """Amps at which a management system switches off: "the BMS cuts at 300", "bms trips above 150 A"."""
    if value < SMALLEST_PEAK or scene.word(item.start - 1) not in ("at", "above", "over"):
        return None
    cuts = scene.word(item.start - 2) in CUTS or scene.word(item.start - 3) in CUTS
    systems = [head for head in scene.head_items if head.head == "bms" and 0 <= item.start - head.end <= 4]
    return Claim("battery.max_current", "role") if cuts and systems else None


def _follows_running(scene: Scene, item: Item) -> bool:
    """Whether it is the second of a load's two figures: the 280 of "190 A / start 280 A"."""
    before = scene.items[max(0, item.at - 3) : item.at]
    starts = scene.word(item.start - 1) in ("start", "starting")
    return starts and len(before) == 3 and before[0].dim == "AMP" and before[1].name in ("/", ",", ";")


def _names_next(scene: Scene, item: Item) -> bool:
    """Whether the word of starting behind it is that of the next figure: the 190 of "190 A / start 280 A"."""
    later = scene.items[item.at + 1 : item.at + 4]
    if len(later) != 3 or later[0].name not in ("/", ",", ";") or later[2].dim != "AMP":
        return False
    return not close(scene, item, "load.peak", reach=1.0) or scene.word(item.start - 1) in NOMINALLY


def _names_the_next(scene: Scene, item: Item) -> bool:
    """Whether the word of a peak leads to the figure after it: the 170 of "wants 170 and kicks with 260"."""
    words = [
        found
        for found in around(scene.roles, item, scene.role_starts)
        if found.concept in PEAKS and item.end < found.start <= item.end + NEXT
    ]
    if not words or close(scene, item, *PEAKS, reach=0.1):
        return False
    if not JOINING & {scene.word(at) for at in range(item.end, words[0].start)}:
        return False
    after = [other for other in scene.measured if 0 <= other.start - words[0].end <= LEADS_TO]
    between = {scene.word(at) for at in range(words[0].end, after[0].start)} if after else JOINING
    return not between & JOINING and after[0].dim in FIGURES


def _is_steady(scene: Scene, item: Item) -> bool:
    """Whether amps near a word of starting are those of running: "240 at start, 160 running", "running 320 A"."""
    runs_at = scene.word(item.start - 2) in RUNNING and scene.word(item.start - 1) in ("at", "on", "with")
    if runs_at or scene.word(item.start - 1) in RUNNING or scene.word(item.end) in RUNNING:
        return not (close(scene, item, "load.peak", reach=0.1) or _at_the_kick(scene, item))
    after = scene.word(item.end) in LATER and scene.word(item.end + 1) in ("", ".", ",", "?", ";")
    return after and any(other.at < item.at for other in scene.quantities(*FIGURES))


def _at_the_kick(scene: Scene, item: Item) -> bool:
    """Whether it is the second figure and at the start: the 400 of "150 A running 400 at kick-in"."""
    at = item.end + 1 + (scene.word(item.end + 1) == "the")
    kicks = [found for found in scene.roles if found.concept == "load.peak" and found.start == at]
    follows = any(other.start == found.end for found in kicks for other in scene.quantities(*FIGURES))
    before = any(other.at < item.at for other in scene.quantities("AMP"))
    return scene.word(item.end) in ("at", "on") and bool(kicks) and before and not follows


def _limited(scene: Scene, item: Item) -> bool:
    """Whether the batteries spoken of have a limit: a lithium's, or the one asked for."""
    if scene.lithium or "bms" in scene.heads or "battery.max_current" in scene.expected:
        return True
    return scene.lithium_known and scene.word(item.start - 1) not in ("max", "maximum")


def _runs(scene: Scene, item: Item) -> bool:
    """Whether a bare number is what a load runs at: the "340 run" of "500 A peak / 340 run"."""
    return scene.word(item.end) in RUNNING


def _fuses(scene: Scene, item: Item) -> bool:
    """Whether the amps stand on a cable, where a fuse is told of: "the fuse is far off, 400 A on 70 mm2"."""
    later = scene.items[item.at + 1 : item.at + 3]
    on_cable = len(later) == 2 and later[0].name == "on" and later[1].dim in ("AREA", "GAUGE")
    if scene.word(item.start - 1) == "for":  # "a fuse for 300 A on 2/0"
        return False
    if _right_for(scene, item):
        return True
    return on_cable and any(head.head == "fuse" and not asked(scene, head) for head in scene.head_items)


def _of_fuse(scene: Scene, item: Item, value: float, claim: Claim | None) -> Claim | None:
    """The claim, or what a fuse that is spoken of makes of the amps."""
    if value in FUSES and FUSE_THERE.search(scene.ahead(scene.span(item.start, item.end)[0])):
        return Claim("fuse.rating", "role")
    if (value in FUSES and _so_much_of_a_fuse(scene, item)) or put_in(scene, item, value):
        return Claim("fuse.rating", "role")
    if claim is None and stands_in(scene, item, value):
        return Claim("fuse.rating", "role")
    if claim is None and _fuses(scene, item):
        return Claim("fuse.rating", "near")
    if _is_the_fuse(scene, item, value) or ((claim is None or claim.how == "near") and _blown(scene, item, value)):
        return Claim("fuse.rating", "role")
    fused = claim is not None and claim.fact == "fuse.rating" and _to_be_fused(scene, item, value)
    return Claim("load.current", "near") if fused else claim


def _so_much_of_a_fuse(scene: Scene, item: Item) -> bool:
    """Whether it is weighed as a fuse: "is 400 A too big a fuse on 95 mm2"."""
    words = [scene.word(at) for at in range(item.end, item.end + 5)]
    named = next((at for at, word in enumerate(words) if word in ("fuse", "breaker")), 0)
    return named > 1 and words[named - 1] in ("a", "of") and bool(WEIGHED & set(words[:named]))


def _is_the_fuse(scene: Scene, item: Item, value: float) -> bool:
    """Whether a fuse is said to be of these amps: "the fuse for my Pike is 200 A"."""
    clause = scene.clause(item.start)
    heads = [head for head in scene.head_items if head.end <= item.start and scene.clause(head.start) == clause]
    told = scene.word(item.start - 1) in ("is", "was", "says")
    return told and value in FUSES and bool(heads) and heads[0].head == "fuse" and scene.word(heads[0].end) == "for"


def _blown(scene: Scene, item: Item, value: float) -> bool:
    """Whether amps of a usual size begin what follows on a fuse that blew: "my fuse blew again. 200 A, ..."."""
    before = scene.items[item.at - 1] if item.at else None
    return before is not None and before.kind in ("mark", "end") and value in FUSES and scene.blown


def _to_be_fused(scene: Scene, item: Item, value: float) -> bool:
    """Whether amps of no usual size of fuse stand apart from the word: the load's of "340 A 5 m fuse cable"."""
    near = {scene.word(at) for at in (*range(item.start - 3, item.start), item.end, item.end + 1)}
    return value not in FUSES and not {"fuse", "fuses", "fused", "breaker"} & near


def _right_for(scene: Scene, item: Item) -> bool:
    """Whether they are a fuse's, asked about for a motor's: "is 250 A right for a 200 A motor", of fuses."""
    later = scene.items[item.at + 1 : item.at + 6]
    other = next((at for at, one in enumerate(later) if one.dim == "AMP"), None)
    if other is None or "fuse" not in scene.heads or not {"for", "on"} & {one.name for one in later[:other]}:
        return False
    fits = FITTING & {one.name for one in later[:other]}
    sides = scene.sides.get(later[other].at)
    return bool(fits) and sides is not None and sides.right is not None and sides.right.head == "load"


def limit_pair(scene: Scene, item: Item) -> Claim | None:
    """Two limits of one battery: "100 A continuous, 200 for 5 sec"."""
    near = scene.items[max(0, item.at - PAIR) : item.at + PAIR + 1]
    others = [other for other in near if other is not item and other.dim in FIGURES]
    if named := _named_first(scene, item, [other for other in others if other.dim == "AMP"]):
        return named
    owned = {"charger", "alternator", "dcdc", "panel"} & scene.heads
    if scene.lithium and not owned and scene.word(item.start - 1) in GIVES:
        return Claim("battery.max_current", "role")  # "each lithium may give 100 A"
    steady = close(scene, item, "battery.max_current", reach=2.0)
    if _slashed(scene, item):
        return Claim("battery.max_current", "role")
    if steady and any(_for_seconds(scene, other) for other in others if other.at > item.at):
        return Claim("battery.max_current", "role")
    if (_for_seconds(scene, item) or _after_seconds(scene, item)) and any(
        close(scene, other, "battery.max_current", reach=2.0) for other in others if other.at < item.at
    ):
        return Claim("battery.peak_current", "role")
    return None


def _named_first(scene: Scene, item: Item, others: list[Item]) -> Claim | None:
    """Two limits with their names in front: "BMS 150 A peak 300 A"."""
    before = scene.word(item.start - 1)
    if before in STEADY and any(scene.word(other.start - 1) in SHORTLY for other in others if other.at > item.at):
        return Claim("battery.max_current", "role")
    if before in SHORTLY and any(scene.word(other.start - 1) in STEADY for other in others if other.at < item.at):
        return Claim("battery.peak_current", "role")
    return None


def _slashed(scene: Scene, item: Item) -> bool:
    """Whether it is the first of "100 A/200 A 5 s": a limit for seconds stands behind the stroke."""
    later = scene.items[item.at + 1 : item.at + 4]
    if len(later) < 3 or later[0].name != "/" or later[1].dim not in FIGURES or not _is_short(later[2]):
        return False
    return _limited(scene, item)


def peaks(scene: Scene, item: Item) -> bool:
    """Whether amps for some seconds are what a battery allows."""
    if not _for_seconds(scene, item):
        return False
    if close(scene, item, "load.current", reach=0.3) or _is_lead(scene):
        return False
    told = any(fact.fact == "battery.max_current" for fact in scene.said) and "load" not in scene.heads
    return told or _owner(scene, item) in ("battery", "bms") or "battery.peak_current" in scene.expected


def _is_lead(scene: Scene) -> bool:
    """Whether lead batteries alone are spoken of: no limit for seconds stands on them."""
    kinds = {item.name for item in scene.items if item.fact == "battery.chemistry"}
    return bool(kinds) and kinds <= LEAD and "bms" not in scene.heads


def _of_alternator(scene: Scene, item: Item) -> Claim | None:
    """Amps that end what is said of an alternator: "same alternator, straight on to it, 90 amps"."""
    before = [head for head in scene.head_items if head.end <= item.start and head.head in OF_AMPS]
    if not before or before[-1].head != "alternator" or item.start - before[-1].end > FROM_ALTERNATOR:
        return None
    between = scene.items[before[-1].at + 1 : item.at]
    ends = any(other.name == "end" or other.dim for other in between)
    apart = scene.word(item.start - 1) in (",", "is", "(", "of") or [
        scene.word(item.end),
        scene.word(item.end + 1),
    ] == [
        "of",
        "it",
    ]
    return Claim("alternator.current", "near") if apart and not ends else None


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


def _charging_here(scene: Scene, item: Item, value: float) -> bool:
    """Whether the clause speaks of charging and of no load."""
    here = scene.by_clause.get(scene.clause(item.start), frozenset())
    most = MOST_FILL if scene.word(item.start - 1) in ("with", "at") and scene.vocabulary & TO_CHARGE else MOST_CHARGE
    return value <= most and "word:charge" in here and not here & {"head:load", "head:drain", "head:alternator"}


def _peak(scene: Scene, item: Item, claim: Claim) -> Claim:
    """A first instant is the load's, a bare peak is the nearest owner's, or the one that was asked for or told."""
    owner = _owner(scene, item)
    told = {fact.fact for fact in scene.said} & set(PEAKS)
    spoken = "battery.peak_current" in scene.expected or told == {"battery.peak_current"}
    if not owner and claim.fact != "load.peak" and spoken:
        return Claim("battery.peak_current", "role")
    if claim.fact == "load.peak" and {"inrush", "rotor"} & {scene.word(item.start - 1), scene.word(item.end)}:
        return claim
    if claim.fact == "load.peak":
        return claim if owner != "bms" else Claim("battery.peak_current", "role")
    drawn = any(
        scene.word(found.start) in DRAWING and scene.clause(found.start) == scene.clause(item.start)
        for found in around(scene.roles, item, scene.role_starts)
        if found.end <= item.start
    )
    loads = owner in ("load", "") or (drawn and owner != "bms")  # "draw averages 18, spikes 55"
    if not drawn and _of_the_battery(scene):
        loads = False  # the house knows what its model takes: "a lithium one for the Minnow, 600 A peak on the sticker"
    return Claim("load.peak" if loads else "battery.peak_current", "role")


def _of_the_battery(scene: Scene) -> bool:
    """Whether the amps on a label are a lithium battery's limit, as the load is one of the house's models."""
    return scene.lithium and bool(LABELS & scene.vocabulary) and any(item.kind == "model" for item in scene.items)


def _printed_limit(scene: Scene, claim: Claim | None) -> Claim | None:
    """What amps are; on a lithium battery's label its limit, where they would be those of a model of the house's."""
    load = claim is None or claim.fact in ("load.current", "battery.ca")
    return (
        Claim("battery.max_current", "default")
        if load and _of_the_battery(scene) and not _labels_the_load(scene)
        else claim
    )


def _labels_the_load(scene: Scene) -> bool:
    """Whether the label is the load's: "on the thruster's label"."""
    at = [place for place, token in enumerate(scene.tokens) if token.word in LABELS]
    return any(scene.word(place - back) in OF_LOADS for place in at for back in (1, 2))


def _owner(scene: Scene, item: Item) -> str:
    """Which of battery, management system and load stands nearest; "" for none."""
    nearest: tuple[float, str] = (12.0, "")
    for head in around(scene.owners, item, scene.owner_starts):
        name = head.head if head.head in ("bms", "load") else "battery"
        far = gap(scene, item, head.start, head.end)
        nearest = min(nearest, (far + (AFTER if head.start > item.start and far > 0.5 else 0.0), name))
    for rated in around(scene.quantities("AH"), item, [other.start for other in scene.quantities("AH")]):
        far = gap(scene, item, rated.start, rated.end)
        nearest = min(nearest, (far + (AFTER if rated.start > item.start and far > 0.5 else 0.0), "battery"))
    if not nearest[1] and {"battery", "bms"} & (scene.heads | scene.facts):
        return "battery" if "load" not in scene.heads else ""
    return nearest[1]


def _has_state(scene: Scene) -> bool:
    """Whether the message tells how full the battery is."""
    return (
        bool(scene.quantities("PERCENT", "GRAVITY"))
        or any(item.fact == "battery.charge" for item in scene.items)
        or scene.read_at_rest
    )


def _for_seconds(scene: Scene, item: Item) -> bool:
    """Whether the amps are allowed for some seconds: "300 A for 5 s"."""
    return any(_is_short(after) for after in scene.items[item.at + 1 : item.at + 3])


def _after_seconds(scene: Scene, item: Item) -> bool:
    """The same, written before: "100 A, 30 s 150 A"."""
    before = scene.before(item)
    return before is not None and _is_short(before)


def _is_short(item: Item) -> bool:
    return item.dim == "TIME" and item.quantity.unit == "second" and float(item.quantity.value) <= SHORT


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
    after = scene.after(item)
    ends = after is None or after.kind == "mark" or after.name == "how"
    return scene.about("request:how_long") and (taking or (before in ("with", "w", "w/") and ends))


def _takes(scene: Scene, item: Item) -> bool:
    """Whether the amps themselves take the time: "how long would 15 amps take"."""
    return scene.word(item.end) in ("take", "takes")


def _by_topic(scene: Scene, item: Item, value: float) -> Claim | None:
    """No head at all: what the message is about decides."""
    if scene.loaded:
        return Claim("reading.current", "range")
    if value > TINY and spent(scene, item):
        return Claim("load.current", "near")
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
    if "drain" in scene.heads and value <= MOST_DRAIN:
        return Claim("drain.current", "default")
    asked = scene.likely[:1] == CHARGES and not scene.heads - {"charger", "dcdc", "battery", "meter"}
    if small and asked and not bursts and not scene.quantities("TIME"):
        return Claim("charger.current", "default")
    if small and {"charger", "dcdc"} & scene.heads and "load" not in scene.heads and not scene.about("request:enough"):
        return Claim("charger.current", "default")
    if "engine" in scene.heads and "load" not in scene.heads:
        return NOTHING
    return Claim("load.current", "default")
