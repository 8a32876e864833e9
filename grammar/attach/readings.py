"""What the volts read off a meter are: at rest or under load, at the battery or at the motor, a charger's."""

from __future__ import annotations

from itertools import pairwise

from grammar.attach.beside_numbers import plain
from grammar.scene.claims import Claim, beside, close, nearest
from grammar.scene.items import Item
from grammar.scene.near import around, gap
from grammar.scene.scene import Scene
from grammar.told.currents.clamped import clamped
from grammar.told.readings.load_test import tested_amps
from grammar.told.readings.quoted import own_readings
from grammar.told.readings.under_load import by_their_places, told_asleep, told_loaded, up_front
from grammar.told.times import dates

LOST = 4.0  # volts: a smaller figure may be the difference of two readings
FEW = 12  # readings of which the differences are looked at
SAGGED = 11.9  # of two readings a volt apart the lower one is under load if it is below this
TIRED = 12.45  # a single reading above this is not one under load, whatever the words
FALL = 0.9  # volts between two readings that a load explains
FALLEN = 0.15  # the same where the words say that it falls
CHARGING = (13.9, 15.9)
CHARGING_24 = (27.8, 30.2)
MOST_STAGED = CHARGING_24[1]
LEAD_AT_REST = 13.35  # a lead battery above this is being charged
SAG_REACH = 6.0
AT_LOAD = 4.1
PLACED = 6.0
SAME = 0.006
ROUNDLY = 0.4  # volts that a loss told in round figures may be off
LOWERED = 11.9  # the same in the clause that names the load
TO = frozenset(["to", "->", "=>", "then", ">"])
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
FLOWING = frozenset({"flowing", "drawn", "going"})
MOTORS = frozenset({"motor", "thruster", "windlass", "winch", "capstan"})
POSTS = frozenset({"posts", "battery", "batt", "bat", "bank", "batteries"})
MONTHS = frozenset(["jan", "feb", "mar", "apr", "jun", "jul", "aug", "sep", "sept", "oct", "nov", "dec"])
SPELT = MONTHS | {name for name, _ in dates.MONTHS if name != "may"}
DATED = frozenset({"yesterday", "later", "tues", "thurs"})
WEEKDAYS = frozenset(["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"])
DAYS = SPELT | DATED | WEEKDAYS
NOW = frozenset({"today", "now"})


def readings(scene: Scene, items: list[Item]) -> dict[int, Claim]:
    """What each reading of the message is. Two that differ by a volt or more are before and under load."""
    items = _of_now(scene, own_readings(scene, items))
    if ends := _both_ends(scene, items):
        return ends
    claims = {item.at: _reading(scene, item) for item in items}
    claims |= _nearer_the_battery(items, claims)
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
    elif values and len(set(values)) == 1 and _loaded(scene, resting[0], values[0]):
        claims |= {item.at: Claim("reading.load_voltage", "role") for item in resting}
    return claims | _higher_at_battery(claims, items)


def _higher_at_battery(claims: dict[int, Claim], items: list[Item]) -> dict[int, Claim]:
    """Of one reading at each end the higher one is the battery's: volts are lost on the way, never won."""
    ends = {claim.fact: item for item in items if (claim := claims[item.at]).fact.startswith("reading.load")}
    if len(ends) != 2 or sum(claims[item.at].fact in ends for item in items) != 2:
        return {}
    here, there = ends["reading.load_voltage"], ends["reading.load_voltage_at_load"]
    if float(here.quantity.value) >= float(there.quantity.value):
        return {}
    return {here.at: claims[there.at], there.at: claims[here.at]}


def _both_ends(scene: Scene, items: list[Item]) -> dict[int, Claim]:
    """Two readings of one moment, the higher at the battery and the lower at the motor: "11.9 on the battery, 10.2 down
    at the stern motor, both with it humming"; nothing where neither is under load. A third one above them was read at
    rest."""
    if len(items) not in (2, 3):
        return {}
    *rest, high, low = sorted(items, key=lambda item: -float(item.quantity.value))
    placed = by_their_places(scene, high, low)  # the same volts at both ends are those of no current
    if not placed and not _under_load(scene):
        return {}
    above, below = float(high.quantity.value), float(low.quantity.value)
    if above - below < FALL or of_one(above) >= TIRED or told_asleep(scene, high):
        return {}
    if not placed and not _is_at(scene, high, low, "at_battery", "battery"):
        return {}
    if not placed and not (up_front(scene, low) or _is_at(scene, low, high, "at_load", "load")):
        return {}
    ends = {high.at: Claim("reading.load_voltage", "role"), low.at: Claim("reading.load_voltage_at_load", "role")}
    return ends | {item.at: Claim("reading.voltage", "role") for item in rest}


def _under_load(scene: Scene) -> bool:
    states = {item.name for item in scene.items if item.fact == "reading.state"}
    return bool(scene.sags) or "load" in states or scene.about("role:during_load")


def _is_at(scene: Scene, item: Item, other: Item, place: str, head: str) -> bool:
    """Whether a reading is the one of two that stands at a place, by its words or by the thing named there."""
    near, far = nearest(scene, item, place), nearest(scene, other, place)
    if min(near, far) <= PLACED:
        return near < far
    things = [thing for thing in scene.head_items if thing.head == head]
    near, far = (
        min((gap(scene, one, thing.start, thing.end) for thing in things), default=99.0) for one in (item, other)
    )
    return near < far and near <= PLACED


def _nearer_the_battery(items: list[Item], claims: dict[int, Claim]) -> dict[int, Claim]:
    """Of two readings "at its terminals" and "at the lugs" the higher one is the battery's."""
    there = [item for item in items if claims[item.at].fact == "reading.load_voltage_at_load"]
    values = [float(item.quantity.value) for item in there]
    if len(there) != 2 or values[0] == values[1]:
        return {}
    return {there[values.index(max(values))].at: Claim("reading.load_voltage", "role")}


def _of_now(scene: Scene, items: list[Item]) -> list[Item]:
    """The readings without those of the past ("last autumn it showed 12.8") and without the difference of two."""
    past = {scene.clause(found.start) for found in scene.named("note", "past")}
    now = [item for item in items if scene.clause(item.start) not in past] or items
    now = _latest(scene, now)
    values = [float(item.quantity.value) for item in now]
    read = {value for value in values if value > LOST}
    lost = {round(abs(one - other), 2) for one in read for other in read} if len(read) <= FEW else set()
    return [item for item in now if float(item.quantity.value) > LOST or not _is_lost(float(item.quantity.value), lost)]


def _is_lost(value: float, lost: set[float]) -> bool:
    """Whether so few volts are the difference of two readings; round ones only about: "where are my two volts"."""
    slack = ROUNDLY if value == int(value) else SAME
    return any(abs(value - other) <= slack for other in lost if other)


def _latest(scene: Scene, items: list[Item]) -> list[Item]:
    """The reading of today alone, where others near it were taken before: "it was 13.1 for days, today 12.9"."""
    if len(items) > 1 and not _under_load(scene) and all(_dated(scene, item) for item in items):
        return items[-1:]
    for before, item in pairwise(items):
        told = any(scene.word(at) in NOW for at in range(before.end, item.start))
        if told and abs(float(before.quantity.value) - float(item.quantity.value)) < FALL:
            return [item]
    return items


def _dated(scene: Scene, item: Item) -> bool:
    """Whether the day or month of a reading is told beside it: "12.45 V on 1 Nov", "Monday 12.6"."""
    near = [scene.word(at) for at in (*range(item.start - 2, item.start), *range(item.end, item.end + 4))]
    return any(word in DAYS for word in near)


def _reading(scene: Scene, item: Item) -> Claim:
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
    runs = _as_it_runs(scene, item) and value >= FLAT and _falls_short(scene, value)
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
    clause = scene.clause(item.start)
    for head in scene.head_items:
        if head.head != "load" or head.name == "electronics" or scene.clause(head.start) != clause:
            continue
        before = {scene.word(at) for at in range(head.start - 3, head.start)}
        after = {scene.word(at) for at in range(head.end, head.end + 2)}
        if (WHILE & before and RUNS & after) or scene.word(head.end) in RUNNING or _is_under(scene, item, head):
            return True
    return False


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


def _is_fall(scene: Scene, items: list[Item], values: list[float]) -> bool:
    """Whether the readings are one battery's, before and under load."""
    if (
        sum(close(scene, item, "one_of_two", reach=1.6) for item in items) > 1
        or len(scene.named("detail", "two_read")) > 1
    ):
        return False
    apart = max(values) - min(values)
    high, low = (items[values.index(end(values))] for end in (max, min))
    falls = low.at - high.at == 2 and scene.items[high.at + 1].name in TO
    if scene.sags or (falls and "load" in scene.heads) or close(scene, low, "during_load", reach=0.6):
        return apart >= FALLEN
    if len(values) > 2 and not _under_load(scene):
        return False  # one of several batteries is low
    most = (SAGGED + (0.6 if scene.lithium_known else 0.0)) * max(1, round(max(values) / 12.6))
    return apart > FALL - 0.01 and (min(values) < most or "load" in scene.heads)


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


def _loaded(scene: Scene, item: Item, value: float) -> bool:
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
