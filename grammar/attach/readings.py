"""What the volts read off a meter are: at rest or under load, at the battery or at the motor, a charger's."""

from __future__ import annotations

from itertools import pairwise

from grammar.attach.one_reading import FALL, SAGGED, TIRED, loaded, of_one, reading
from grammar.scene.claims import Claim, close, nearest
from grammar.scene.items import Item
from grammar.scene.near import gap
from grammar.scene.scene import Scene
from grammar.told.readings.as_it_turns import at_one_moment, turning
from grammar.told.readings.midway import without_midway
from grammar.told.readings.quoted import own_readings
from grammar.told.readings.under_load import by_their_places, told_asleep, up_front
from grammar.told.times import dates

LOST = 4.0  # volts: a smaller figure may be the difference of two readings
FEW = 12  # readings of which the differences are looked at
FALLEN = 0.15  # the same where the words say that it falls
PLACED = 6.0
HELD_UP = 14.5  # volts of a battery that is charged meanwhile
SAME = 0.006
ROUNDLY = 0.4  # volts that a loss told in round figures may be off
TO = frozenset(["to", "->", "=>", "then", ">"])
TESTED = frozenset({"pulled", "pulling", "drew", "drawing", "test", "tested", "tester", "load", "under", "loaded"})
MONTHS = frozenset(["jan", "feb", "mar", "apr", "jun", "jul", "aug", "sep", "sept", "oct", "nov", "dec"])
SPELT = MONTHS | {name for name, _ in dates.MONTHS if name != "may"}
DATED = frozenset({"yesterday", "later", "tues", "thurs"})
WEEKDAYS = frozenset(["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"])
DAYS = SPELT | DATED | WEEKDAYS
NOW = frozenset({"today", "now"})


def readings(scene: Scene, items: list[Item]) -> dict[int, Claim]:
    """What each reading of the message is. Two that differ by a volt or more are before and under load."""
    items = without_midway(scene, _of_now(scene, own_readings(scene, items)))
    if ends := _both_ends(scene, items):
        return ends
    claims = {item.at: reading(scene, item) for item in items}
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
    elif values and len(set(values)) == 1 and loaded(scene, resting[0], values[0]):
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
    together = at_one_moment(scene, [high, low])
    if not placed and not together and not _under_load(scene):
        return {}
    above, below = float(high.quantity.value), float(low.quantity.value)
    if above - below < FALL or of_one(above) >= (HELD_UP if together else TIRED) or told_asleep(scene, high):
        return {}
    if not placed and not _is_at(scene, high, low, "at_battery", "battery"):
        return {}
    if not placed and not (up_front(scene, low) or _is_at(scene, low, high, "at_load", "load")):
        return {}
    ends = {high.at: Claim("reading.load_voltage", "role"), low.at: Claim("reading.load_voltage_at_load", "role")}
    return ends | {item.at: Claim("reading.voltage", "role") for item in rest}


def _under_load(scene: Scene) -> bool:
    states = {item.name for item in scene.items if item.fact == "reading.state"}
    return bool(scene.sags) or "load" in states or scene.about("role:during_load") or turning(scene)


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
    if len(items) == 3 and by_their_places(scene, *items[1:]):
        return items  # "12.7 rest, now 11.9 at the battery, 9.9 at the motor"
    for before, item in pairwise(items):
        ends = [other.end for other in scene.items[before.at : item.at] if (other.kind, other.name) == ("mark", "end")]
        begins = max(ends, default=before.end)  # "it reads 12.4 now. The other 12.6" tells the day of the first
        told = any(scene.word(at) in NOW for at in range(begins, item.start))
        if told and abs(float(before.quantity.value) - float(item.quantity.value)) < FALL:
            return [item]
    return items


def _dated(scene: Scene, item: Item) -> bool:
    """Whether the day or month of a reading is told beside it: "12.45 V on 1 Nov", "Monday 12.6"."""
    near = [scene.word(at) for at in (*range(item.start - 2, item.start), *range(item.end, item.end + 4))]
    return any(word in DAYS for word in near)


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
    drawn = falls and scene.vocabulary & TESTED and scene.quantities("AMP")  # "pulled 180 A: 12.7 > 11.9"
    if scene.sags or drawn or (falls and "load" in scene.heads) or close(scene, low, "during_load", reach=0.6):
        return apart >= FALLEN
    if len(values) > 2 and not _under_load(scene):
        return False  # one of several batteries is low
    most = (SAGGED + (0.6 if scene.lithium_known else 0.0)) * max(1, round(max(values) / 12.6))
    return apart > FALL - 0.01 and (min(values) < most or "load" in scene.heads)
