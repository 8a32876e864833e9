"""Which times these are: in store, an age, a burst, a run, hours of sun, hours at rest."""

from __future__ import annotations

import re

from grammar.attach.before_battery import is_of_seconds
from grammar.attach.no_time import LONG, no_time
from grammar.attach.reserves import of_reserve
from grammar.attach.short_times import LONGEST_BURST, short_time
from grammar.attach.stays import (
    STORED,
    is_stay,
    long_ago,
    may_be_age,
    rested_for,
    stored_for,
)
from grammar.scene.claims import NOTHING, Claim, beside, close
from grammar.scene.items import Item
from grammar.scene.near import around
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.times import outings
from grammar.told.words import ahead_of
from grammar.told.years.ages import of_people
from grammar.told.years.deeds import of_a_deed
from grammar.told.years.of_others import of_a_rate, of_a_rule, of_a_thing, of_use

SYSTEMS = frozenset({12.0, 13.0, 24.0})  # volts that are told without their decimals
RESTS = frozenset({"rest", "off", "pause", "between"})
RUNS = frozenset({"run", "runs", "on"})
LONGEST_REST = 600.0
NEARBY = 60  # characters after a figure
SHORTEST_REST = 60.0  # seconds: nobody waits less before a reading
BOOKS = frozenset(
    {
        *("depreciate", "depreciates", "depreciated", "depreciation", "amortise", "amortised", "amortize", "write"),
        *("writes", "written"),
    }
)
LONGEST_STORE = 5  # years
WORKING = frozenset(
    {
        *("hauling", "winching", "thrusting", "pushing", "cranking", "manoeuvring", "trolling", "running"),
        *("docking", "lifting", "thruster", "thrust"),
    }
)
WEATHER = frozenset(
    {"rain", "cloud", "clouds", "fog", "drizzle", "gloom", "overcast", "snow", "mist", "storms", "gales"}
)
APART = frozenset({"older", "newer", "younger", "apart"})
OLD = regex(r"^[- ](?:old|young)\b", re.IGNORECASE)
FADES = regex(  # "it goes weak after two minutes": how long a motor ran, no rest of a battery
    r"\b(?:weak\w*|slow\w*|tired|lazy|sluggish|fades?|fading|faint\w*|gives? (?:up|out)|(?:cuts?|trips?) out)\b"
    r"[^.?!;,]{0,16}\bafter (?:about |only |just |some |a |the first )?$",
    re.IGNORECASE,
)


def _cells(scene: Scene, item: Item) -> bool:
    """Whether it counts cells in series: the "10S" of an e-bike pack."""
    return item.quantity.text.strip().endswith("S") and any(
        other.fact == "battery.chemistry" and other.name == "lithium-other" for other in scene.items
    )


def times(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that a time states; `value` in seconds."""
    unit = item.quantity.unit
    if unit in ("week", "month") and [scene.word(item.start - 2), scene.word(item.start - 1)] == ["back", "in"]:
        return Claim("storage.time", "role")  # "haul-out tomorrow, back in 26 weeks"
    if unit == "second" and _cells(scene, item):
        return NOTHING
    if unit == "day" and scene.word(item.end) == "in" and scene.word(item.end + 1) == "day":
        return NOTHING  # "13.4 day in day out"
    if scene.word(item.end) == "of" and WEATHER & {scene.word(item.end + 1), scene.word(item.end + 2)}:
        return NOTHING  # "a week of rain"
    claim = no_time(scene, item, value) or _told(scene, item, value)
    if claim:
        return claim
    if unit == "year":
        return _years(scene, item)
    if unit == "hour" and value >= STORED and not close(scene, item, "storage.time", reach=3):
        return NOTHING  # what an engine has run
    if unit in ("month", "week", "day") or value >= STORED:
        ends = scene.span(item.start, item.end)[1]
        before = ahead_of(scene, item)
        if of_use(before, scene.text[ends : ends + NEARBY]) or outings.is_until(before):
            return NOTHING
        return stored_for(scene, item, value)
    return short_time(scene, item, value)


NEVER_SEEN = regex(  # "14 years on this boat and never seen that"
    r" (?:on|with|of|aboard|sailing|owning) (?:this|the|our|my) (?:\w+ )?(?:boat|barge|yacht|ship)\b[^.?!;]{0,20}"
    r"\b(?:never|not once|no trouble|without|first time)\b",
    re.IGNORECASE,
)


def _told(scene: Scene, item: Item, value: float) -> Claim | None:
    """A time that a word beside it tells of."""
    unit = item.quantity.unit
    if unit == "second" and (claim := _in_seconds(scene, item, value)):
        return claim
    if value <= LONGEST_REST and _between_bursts(scene, item):
        return Claim("load.rest", "role")
    if value < SHORTEST_REST:
        return None
    if _at_amps(scene, item) and not scene.about("word:charge"):
        return Claim("load.time", "role")
    if rested_for(scene, item, value):
        return NOTHING if _under_way(scene, item) else Claim("reading.rest_time", "role")
    if close(scene, item, "time_ago", reach=1.0 if unit == "year" else 2.5) and not _lasts(scene, item):
        return long_ago(scene, item, value)
    if claim := of_reserve(scene, item, value):
        return claim
    if (
        unit in LONG - {"year"}
        and may_be_age(scene, item)
        and close(scene, item, "battery.age", reach=1)
        and not is_stay(scene, item)
    ):
        return Claim("battery.age", "role")
    if value < STORED and not _fades(scene, item) and close(scene, item, "reading.rest_time", reach=4):
        return NOTHING if _under_way(scene, item) else Claim("reading.rest_time", "role")
    return None


def _under_way(scene: Scene, item: Item) -> bool:
    """Whether the boat was out for so long: "after 20 minutes away"."""
    ends = scene.span(item.start, item.end)[1]
    return item.quantity.unit in ("minute", "hour") and outings.is_under_way(scene.text[ends : ends + NEARBY])


def _fades(scene: Scene, item: Item) -> bool:
    """Whether a motor went weak in it: "it slows after two minutes"."""
    return FADES.search(ahead_of(scene, item)) is not None


def _at_amps(scene: Scene, item: Item) -> bool:
    """Whether a current is drawn for so long: "what is left after 3 hours at 8 A"."""
    hours = item.quantity.unit in ("minute", "hour")
    if hours and scene.word(item.end) == "of" and scene.word(item.end + 1) in WORKING:  # "ten minutes of hauling"
        return True
    after = scene.items[item.at + 1 : item.at + 3]
    return (
        len(after) == 2
        and after[0].name in ("at", "of", "on")
        and (after[1].dim in ("AMP", "WATT") or (hours and after[0].name == "at" and _is_bare_amps(after[1])))
    )


def _is_bare_amps(item: Item) -> bool:
    """Whether a bare whole number is of no volts: "what is left after three hours at 9"."""
    value = item.quantity.value if item.dim == "NUM" else ""
    return not isinstance(value, str) and value > 0 and not value % 1 and "." not in item.name and value not in SYSTEMS


def _between_bursts(scene: Scene, item: Item) -> bool:
    """Whether it is the pause of "4 sec each, half a minute between", "pump 30 sec rest 2 min"."""
    bursts = any(other.quantity.unit == "second" and other.at < item.at for other in scene.quantities("TIME"))
    paused = scene.word(item.end) in ("between", "apart", "rest", "pause", "break") or scene.word(item.start - 1) in (
        "rest",
        "pause",
        "rests",
    )
    return bursts and paused


def _in_seconds(scene: Scene, item: Item, value: float) -> Claim | None:
    """Seconds that a word beside them tells of: "push 4 sec", "6 s on", "30 s off"."""
    if value <= LONGEST_BURST and (_is_pushed(scene, item) or _is_counted(scene, item)):
        return Claim("load.burst", "role")
    if value <= LONGEST_BURST and scene.word(item.start - 1) == "for" and _so_often(scene, item):
        return Claim("load.burst", "role")
    after = scene.items[item.at + 1 : item.at + 3]
    onward = scene.word(item.end) in ("rest", "pause", "off") and len(after) == 2 and after[1].dim == "TIME"
    if onward and value <= LONGEST_BURST:  # "30 sec rest 2 min"
        return Claim("load.burst", "role")
    if value <= LONGEST_REST and scene.word(item.end) in RESTS:
        return Claim("load.rest", "role")
    if value <= LONGEST_BURST and (scene.word(item.end) in RUNS or _of_bursts(scene, item)):
        return Claim("load.burst", "role")
    return None


def _so_often(scene: Scene, item: Item) -> bool:
    """Whether it is told how often: "twice a day for 5 seconds", "six times for 10 s"."""
    return bool({"twice", "times", "thrice"} & {scene.word(at) for at in range(item.start - 6, item.start)})


def _is_pushed(scene: Scene, item: Item) -> bool:
    """Whether a word of pushing stands right before it: "push 4 sec, pause 30"."""
    return any(
        found.concept == "load.burst" and found.end == item.start
        for found in around(scene.roles, item, scene.role_starts)
    )


def _is_counted(scene: Scene, item: Item) -> bool:
    """Whether it is told so many times: the 10 s of "8 x 10 s"."""
    before = scene.before(item)
    return before is not None and before.kind == "times" and is_of_seconds(scene, item)


def _of_bursts(scene: Scene, item: Item) -> bool:
    """Whether it is the six seconds of "bursts of six seconds"."""
    return scene.word(item.start - 1) == "of" and close(scene, item, "load.burst", reach=0.3)


def _lasts(scene: Scene, item: Item) -> bool:
    """Whether it is "will it last 20 hours", not "the last 20 hours"."""
    at = item.start - 1
    return scene.word(at) in ("last", "lasts") and scene.word(at - 1) not in ("the", "these", "in", "those")


def _years(scene: Scene, item: Item) -> Claim | None:
    if scene.word(item.end) in APART:
        return NOTHING  # "the one is two years older"
    ends = scene.span(item.start, item.end)[1]
    between = ahead_of(scene, item), scene.text[ends : ends + NEARBY]
    if NEVER_SEEN.match(scene.text, ends) or of_a_deed(*between) or of_a_thing(*between):
        return NOTHING
    others = sum(other is not item and other.quantity.unit == "year" for other in scene.quantities("TIME"))
    if of_a_rate(between[0], item.quantity.text) or of_a_rule(between[0], scene.text, others):
        return NOTHING
    if scene.word(item.end) in ("guarantee", "warranty") or of_people(scene, item) or _written_off(scene, item):
        return NOTHING
    after = scene.after(item)
    if "-" in item.quantity.text and after is not None and (after.dim in ("NUM", "AH") or after.head == "battery"):
        return Claim("battery.age", "role")  # "may the new 110 sit with a 4-year 110"
    aged = OLD.match(between[1]) is not None and not beside(scene, item, "boat", "engine", "load", reach=0.6)
    if not aged and close(scene, item, "storage.time", reach=2) and float(item.quantity.value) < LONGEST_STORE:
        return Claim("storage.time", "role")
    if beside(scene, item, "boat", "engine", "load", reach=0.6) and not _aboard(scene, item):
        return NOTHING
    if close(scene, item, "battery.age", reach=2.5):
        return Claim("battery.age", "role")
    if close(scene, item, "no_age", reach=1) or close(scene, item, "of_people", reach=3):
        return NOTHING
    return Claim("battery.age", "near")


def _written_off(scene: Scene, item: Item) -> bool:
    """Whether it is the time over which somebody's books write batteries off: "I depreciate them over four years"."""
    return scene.word(item.start - 1) in ("over", "in", "across") and bool(BOOKS & scene.vocabulary)


def _aboard(scene: Scene, item: Item) -> bool:
    """Whether it is of what is in the boat: "the lithium in our boat is nine years old"."""
    if scene.word(item.end) in ("in", "on", "aboard"):
        return True
    boats = (head for head in scene.head_items if head.head == "boat" and head.end <= item.start)
    return any({"in", "on", "of"} & {scene.word(head.start - back) for back in (1, 2, 3)} for head in boats)
