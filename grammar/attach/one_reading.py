"""What volts that stand alone are by their own words: at rest, under load, at the motor, a charger's."""

from __future__ import annotations

from grammar.attach.beside_numbers import plain
from grammar.scene.claims import Claim, beside, close, nearest
from grammar.scene.items import Item
from grammar.scene.near import around, gap
from grammar.scene.scene import Scene
from grammar.told.currents.clamped import clamped
from grammar.told.readings.as_it_turns import as_it_turns
from grammar.told.readings.load_test import tested_amps
from grammar.told.readings.under_load import told_asleep, told_loaded

SAGGED = 11.9  # of two readings a volt apart the lower one is under load if it is below this
TIRED = 12.45  # a single reading above this is not one under load, whatever the words
FALL = 0.9  # volts between two readings that a load explains
CHARGING = (13.9, 15.9)
CHARGING_24 = (27.8, 30.2)
MOST_STAGED = CHARGING_24[1]
LEAD_AT_REST = 13.35  # a lead battery above this is being charged
SAG_REACH = 6.0
AT_LOAD = 4.1
LOWERED = 11.9  # the same in the clause that names the load
STAGES = frozenset({"float", "floats", "floating", "absorption", "absorb", "boost", "bulk", "equalise", "equalize"})
LEAST_STAGE = 13.0  # volts of a stage of charging
STARTING = 40.0  # amps of a motor
FLAT = 5.0  # volts that no motor is told to have pulled
FLAT_OUT = 10.5  # no battery rests so low where a motor is told to run
DEAD = 1.0  # volts of a battery that has switched itself off
FLATTENED = 11.5  # with a load named, nobody reads this at rest
NEAR_OFF = 3.0
MOST_OF_ONE = 16.5  # volts of one battery, being charged
STILL = frozenset({"is", "has", "just", "s", "then", "motor", "now", "only"})
DEAD_WORDS = frozenset(
    {"died", "dead", "quit", "stopped", "silent", "failed", "lifeless", "refuses", "conked", "lost", "clicks"}
)
GIVES = frozenset({"gave", "packed", "given"})
AT_ONCE = 0.6
WHILE = frozenset({"with", "while", "whilst", "when", "as"})
RUNS = frozenset(
    {"pushing", "pushes", "on", "going", "goes", "working", "works", "turning", "turns", "running", "runs"}
    | {"thrusting", "thrusts", "spinning", "spins", "engaged", "humming", "whirring", "in"}
)
RUNNING = frozenset({"pushing", "thrusting", "turning", "spinning", "humming", "whirring"})
UNDER = "under"
RESTED, PULLED = 13.0, 0.5  # volts of lithium that rests, and how far at least a motor pulls it
FLOWING = frozenset({"flowing", "drawn", "going"})
MOTORS = frozenset({"motor", "thruster", "windlass", "winch", "capstan"})
POSTS = frozenset({"posts", "battery", "batt", "bat", "bank", "batteries"})


def reading(scene: Scene, item: Item) -> Claim:
    """What volts are by the words beside them."""
    stage = LEAST_STAGE <= of_one(float(item.quantity.value)) <= MOST_OF_ONE and _is_stage(scene, item)
    return Claim("charger.voltage", "role") if stage else _read(scene, item)


def _read(scene: Scene, item: Item) -> Claim:
    value = float(item.quantity.value)
    off = scene.about("role:off_charger") and (value < CHARGING[0] or _charger_off(scene, item))
    if LEAD_AT_REST < value < CHARGING[1] and off:
        return Claim("reading.voltage", "role")
    if (
        off
        and value < CHARGING[0]
        and any(found.concept == "off_charger" and found.end == item.start for found in scene.roles)
    ):
        return Claim("reading.voltage", "role")
    if _at_motor(scene, item) and _falls_short(scene, value):
        return Claim("reading.load_voltage_at_load", "role")
    at_load, at_battery = nearest(scene, item, "at_load"), nearest(scene, item, "at_battery")
    if at_load <= AT_LOAD and at_load < at_battery and _falls_short(scene, value) and not _leads_on(scene, item):
        return Claim("reading.load_voltage_at_load", "role")
    unplugged = scene.lithium and value < CHARGING[0] and _charger_off(scene, item)
    if unplugged:
        return Claim("reading.voltage", "role")
    if value >= 13 and beside(scene, item, "charger", reach=1.2) and not close(scene, item, "off", reach=3):
        return Claim("charger.voltage", "grammar")
    runs = _as_it_runs(scene, item) or as_it_turns(scene, item)
    runs = runs and not _before_it_ran(scene, item) and value >= FLAT and _falls_short(scene, value)
    if not told_asleep(scene, item) and (_while_it_runs(scene, item) or runs):
        return Claim("reading.load_voltage", "role")
    if (
        CHARGING[0] < value <= CHARGING[1]
        or CHARGING_24[0] < value <= CHARGING_24[1]
        or (LEAD_AT_REST < value < CHARGING[1] and not scene.lithium_known)
    ):
        return Claim("charger.voltage", "range")
    staged = 13 <= of_one(value) < CHARGING[1] and value < MOST_STAGED
    if staged and close(scene, item, "charger.voltage", reach=2.6):
        return Claim("charger.voltage", "role")
    return Claim("reading.voltage", "range")


def _is_stage(scene: Scene, item: Item) -> bool:
    """Whether a stage of charging stands right before it: "float at 13.8", "absorption of 14.4"."""
    before = [scene.word(item.start - back) for back in (1, 2, 3)]
    at = 1 if before[0] in ("at", "of", "is", "on") else 0
    return before[at] in STAGES and before[at + 1] not in ("off", "after", "since")


def _at_motor(scene: Scene, item: Item) -> bool:
    """Whether the motor follows a reading at once, and the battery another one: "10.9 posts 8.7 motor"."""
    follows = scene.items[item.at + 2] if item.at + 2 < len(scene.items) else None
    if scene.word(item.end) not in MOTORS or (follows is not None and follows.kind != "mark"):
        return False
    others = [other for other in scene.quantities("NUM", "VOLT") if other is not item]
    return any(scene.word(other.end) in POSTS for other in others)


def _while_it_runs(scene: Scene, item: Item) -> bool:
    """Whether it was read with a load on, though it is so high: "13.9 when the thruster runs"."""
    if {"charger", "alternator", "engine", "panel"} & scene.heads:
        return False
    after = scene.after(item)
    if after is not None and (after.fact, after.name) == ("reading.state", "load"):
        return True
    if "load" not in scene.heads:
        return False
    return any(
        found.start >= item.end and gap(scene, item, found.start, found.end) <= AT_ONCE
        for found in around(scene.sags, item, scene.sag_starts)
    )


def _as_it_runs(scene: Scene, item: Item) -> bool:
    """Whether its clause says that the motor runs: "with the Minnow pushing 11.9", "11.9 when the thruster turns"."""
    for head in scene.heads_by_clause.get(scene.clause(item.start), ()):
        if head.head != "load" or head.name == "electronics":
            continue
        if scene.word(head.end) in RUNNING or _is_under(scene, item, head):
            return True
        runs = scene.word(head.end) in RUNS or scene.word(head.end + 1) in RUNS
        if runs and any(scene.word(at) in WHILE for at in range(head.start - 3, head.start)):
            return True
    return False


def _before_it_ran(scene: Scene, item: Item) -> bool:
    """Whether it is the higher of a lithium battery's two readings: the 13.3 of "13.3, with the motor on 12.4"."""
    value = float(item.quantity.value)
    if value < RESTED:
        return False
    lower = [other for other in scene.quantities("NUM", "VOLT") if DEAD <= plain(other) <= value - PULLED]
    lower = [other for other in lower if plain(other) % 1]
    return bool(lower) and all(nearest(scene, other, "at_load") > AT_LOAD for other in lower)


def _is_under(scene: Scene, item: Item, head: Item) -> bool:
    """Whether the load it was read under stands beside it: "under the Minnow 11.5", "10.2 under your Pike"; a battery
    under the thruster lies there."""
    at = head.start - 1 if scene.word(head.start - 1) == UNDER else head.start - 2
    if scene.word(at) != UNDER or not (head.end <= item.start <= head.end + 1 or at == item.end):
        return False
    before = scene.at_word[at - 1] if at else item
    return before.head != "battery" and before.fact != "battery.chemistry"


def _charger_off(scene: Scene, item: Item) -> bool:
    """Whether it was read "with the charger off", not "off the charger"."""
    return any(
        found.concept == "off_charger"
        and scene.word(found.start) == "charger"
        and gap(scene, item, found.start, found.end) <= NEAR_OFF
        for found in around(scene.roles, item, scene.role_starts)
    )


def _falls_short(scene: Scene, value: float) -> bool:
    """Whether volts at a motor are of one that runs: not 12.7 at rest "at the bow", nor the 0 of a dead battery."""
    return value >= DEAD and (scene.lithium_known or of_one(value) < TIRED)


def _leads_on(scene: Scene, item: Item) -> bool:
    """Whether the place after a reading is that of the next one: "at batt 10.9 at motor 9.9", "10.9, cable end 9.6"."""
    if scene.word(item.end) == ",":
        listed = [found.end for found in scene.roles if found.concept == "at_load" and found.start == item.end + 1]
        return any(end < len(scene.at_word) and scene.at_word[end].dim in ("NUM", "VOLT") for end in listed)
    ends = {found.end for found in scene.roles if found.concept == "at_battery"}
    later = {found.end for found in scene.roles if found.concept == "at_load" and found.start == item.end}
    return item.start in ends and any(scene.at_word[end].dim for end in later if end < len(scene.at_word))


def of_one(value: float) -> float:
    """What a reading is of one battery of the one or more in series: 18.8 V is 9.4 V of each of two."""
    return value / max(2 if value > MOST_OF_ONE else 1, round(value / 12.6))


def _at_so_many_amps(scene: Scene, item: Item) -> bool:
    """Whether the amps that pull them down follow at once: "10.6 V at 180 A", "9.8 @ 240 amps"."""
    later = scene.items[item.at + 1 : item.at + 3]
    amps = later[1].quantity.value if len(later) == 2 and later[1].dim == "AMP" else ""
    if "charger" in scene.heads or isinstance(amps, str) or amps < STARTING:
        return False
    return later[0].name in ("at", "@", "under", "with")


def _is_dead(scene: Scene, load: Item) -> bool:
    """Whether a motor is told to run no more: "the thruster died", "thruster's dead", "my windlass packed up"."""
    after = [scene.word(at) for at in range(load.end, load.end + 3)]
    ahead = after[1:] if after[0] in STILL else after
    return ahead[0] in DEAD_WORDS or (ahead[0] in GIVES and ahead[1] in ("up", "out"))


def loaded(scene: Scene, item: Item, value: float) -> bool:
    """Whether a single reading is one under load."""
    each = of_one(value)
    if FLAT <= each < LOWERED and _at_so_many_amps(scene, item):
        return True
    tired = TIRED + (0.6 if scene.lithium_known else 0.0)
    if (
        each > tired
        or value < (DEAD if "load" in scene.heads else FLAT)
        or "drain" in scene.heads
        or close(scene, item, "off", reach=3)
        or told_asleep(scene, item)
    ):
        return False
    if each < LOWERED and (scene.about("role:tester") or tested_amps(scene) or told_loaded(scene, item)):
        return True
    if each < FLATTENED and close(scene, item, "during_load", reach=0.6, after=True) and not scene.about("word:charge"):
        return True  # "7.9 while trying"
    amps = scene.quantities("AMP", "NUM")
    if each < FLATTENED and any(scene.word(one.end) in FLOWING for one in amps if one.dim == "AMP"):
        return True
    if each < FLATTENED and any(clamped(scene, one, plain(one)) for one in amps):
        return True
    here = "head:load" in scene.by_clause.get(scene.clause(item.start), frozenset())
    motors = any(
        head.head == "load" and head.name != "electronics" and not _is_dead(scene, head) for head in scene.head_items
    )
    states = {other.name for other in scene.items if other.fact == "reading.state"}
    if (
        each < (LOWERED if here else FLATTENED)
        and motors
        and (states <= {"load"} or (each < FLAT_OUT and "load" in states))
    ):
        return True
    if each < LOWERED and "load" in states and not states - {"load"}:
        return True
    return any(
        gap(scene, item, found.start, found.end) <= SAG_REACH for found in around(scene.sags, item, scene.sag_starts)
    )
