"""Which times these are: in store, an age, a burst, a run, hours of sun, hours at rest."""

from __future__ import annotations

import re

from grammar.attach.counts import COUNTED, SMALLEST_NAME, is_of_seconds
from grammar.scene.claims import NOTHING, Claim, beside, close
from grammar.scene.items import TIMES, Item
from grammar.scene.near import around
from grammar.scene.scene import Scene
from grammar.told.times.left_alone import left_alone
from grammar.told.years.ages import ended, of_people

LONGEST_BURST = 90.0  # seconds
LIKELY_BURST = 30.0  # longer ones are a run, unless a word says burst
LONGEST_RESERVE = 36000.0
EACH_TIME = 900.0  # seconds of "4 minutes each"
SYSTEMS = frozenset({12.0, 13.0, 24.0})  # volts that are told without their decimals
RESERVE = 1500.0  # seconds: no reserve is shorter
DAY = 86400.0
LIKELY_NAME = 45  # "charge with what, 70s"
RESTS = frozenset({"rest", "off", "pause", "between"})
RUNS = frozenset({"run", "runs", "on"})
LONGEST_REST = 600.0
SHORTEST_REST = 60.0  # seconds: nobody waits less before a reading
LEFT = frozenset({"left", "unplugged", "disconnected"})
TOOK = frozenset({"took", "takes", "cost"})
EMPTIED = frozenset({"flat", "dead", "dies", "empty", "died", "drained", "drains"})
IN, AWAY = (
    frozenset({"in", "within"}),
    frozenset({"back", "home", "return", "away", "before", "sail", "leave"}),
)
PEOPLE = frozenset({"us", "me", "him", "her", "them"})  # "it took us 2 hours to get off"
STORED = 5 * DAY
STORED_AT_REST = 31 * DAY
ON_END = frozenset({"running", "runnin", "straight", "together", "solid"})
ON_END_OF_TWO = frozenset({("on", "end"), ("in", "a"), ("on", "the")})  # "three days in a row", "on the trot"
SUNLESS = re.compile(
    r"\bsun\b[^.?!;]{0,10}\b(?:drops?|sets?|goes|gone|down|sinks?|away|disappears|leaves|hides?)\b"
    r"|\b(?:no|without|lack of) (?:any )?sun\b",
    re.IGNORECASE,
)
GOING_ON = 10  # words of a message that goes on with what was told
RUN_WORDS = frozenset({"run", "runs", "last", "lasts", "on", "off", "use", "used", "long", "charge", "rest"})
BOOKS = frozenset(
    {
        "depreciate",
        "depreciates",
        "depreciated",
        "depreciation",
        "amortise",
        "amortised",
        "amortize",
        "write",
        "writes",
        "written",
    }
)
LONGEST_STORE = 5  # years
WORKING = frozenset(
    {
        "hauling",
        "winching",
        "thrusting",
        "pushing",
        "cranking",
        "manoeuvring",
        "trolling",
        "running",
        "docking",
        "lifting",
    }
)
LONG = frozenset({"day", "week", "month", "year"})


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
    claim = _no_time(scene, item, value) or _told(scene, item, value)
    if claim:
        return claim
    if unit == "year":
        return _years(scene, item)
    if unit == "hour" and value >= STORED and not close(scene, item, "storage.time", reach=3):
        return NOTHING  # what an engine has run
    if unit in ("month", "week", "day") or value >= STORED:
        return _stored(scene, item, value)
    return _short(scene, item, value)


def _no_time(scene: Scene, item: Item, value: float) -> Claim | None:
    """What only looks like a time: "2s", "three 50s", "in a day"."""
    if _in_series(scene, item):
        return Claim("bank.layout", "grammar")
    a_day = item.quantity.text.lower().startswith(("a ", "an ", "the ", "day"))
    if item.quantity.unit == "day" and a_day and value < STORED:  # not "a hundred days"
        read = scene.word(item.start - 1) == "after" and _reading_before(scene, item)  # "it holds 12.6 after a day"
        return None if read or close(scene, item, "reading.rest_time", reach=0.6, after=True) else NOTHING
    before = scene.before(item)
    if before is not None and before.kind == "noise" and item.quantity.text.lower().startswith(("a ", "an ", "per ")):
        return NOTHING  # "260 euros a month"
    ahead = [scene.word(at) for at in range(max(0, item.start - 4), item.start)]
    gone = EMPTIED & set(ahead) and IN & set(ahead) and not AWAY & set(ahead)
    if item.quantity.unit in ("day", "week") and gone:
        return NOTHING  # how long it lasts as they found: "goes flat in about 10 days"
    if item.quantity.unit in LONG and scene.word(item.end) == "apart":
        return NOTHING  # "bought them a week apart"
    if scene.word(item.start - 2) in TOOK and scene.word(item.start - 1) in PEOPLE:
        return NOTHING
    return _plural(scene, item)


def _reading_before(scene: Scene, item: Item) -> bool:
    """Whether a number with a point or volts stand just before."""
    near = scene.items[max(0, item.at - 3) : item.at]
    return any(other.dim == "VOLT" or (other.dim == "NUM" and "." in other.name) for other in near)


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
    if _rested(scene, item, value):
        return Claim("reading.rest_time", "role")
    if close(scene, item, "time_ago", reach=1.0 if unit == "year" else 2.5) and not _lasts(scene, item):
        return _ago(scene, item, value)
    if claim := _of_reserve(scene, item, value):
        return claim
    if (
        unit in LONG - {"year"}
        and _may_be_age(scene, item)
        and close(scene, item, "battery.age", reach=1)
        and not _is_stay(scene, item)
    ):
        return Claim("battery.age", "role")
    if value < STORED and close(scene, item, "reading.rest_time", reach=4):
        return Claim("reading.rest_time", "role")
    return None


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


def _rested(scene: Scene, item: Item, value: float) -> bool:
    """Whether it is how long before a reading the charge ended or nothing was done."""
    if left_alone(scene, item, value):
        return True
    if value < STORED_AT_REST and (_after_charge(scene, item) or (value < STORED and _off_the_charger(scene, item))):
        return True
    unplugged = close(scene, item, "off_charger", reach=4.0) and scene.word(item.end) in ("ago", "since")
    return value < STORED and (unplugged or close(scene, item, "reading.rest_time", reach=0.6, after=True))


def _ago(scene: Scene, item: Item, value: float) -> Claim:
    """What began so long ago: the battery's life, or its stay where it was left."""
    unit = item.quantity.unit
    if unit in ("day", "week", "month") and LEFT & scene.vocabulary and value >= STORED:
        return Claim("storage.time", "role")  # "left her unplugged 84 days ago"
    since = unit == "year" and (close(scene, item, "battery.age", reach=2.5) or _since(scene, item))
    since = since and not ended(scene, item)
    since = since or (unit == "year" and [scene.word(item.start - 2), scene.word(item.start - 1)] == ["put", "in"])
    return Claim("battery.age", "role") if since else NOTHING


def _may_be_age(scene: Scene, item: Item) -> bool:
    """Whether it may be a life: days are one where that is said; "the shore lead had been in for two days"."""
    return item.quantity.unit != "day" or scene.word(item.end) in ("old", "ago", "new")


def _is_stay(scene: Scene, item: Item) -> bool:
    """Whether a time is how long something stands: "for 20 weeks with the old ones left in"."""
    return scene.word(item.start - 1) == "for" and scene.word(item.end) in ("with", "without", "and", ",")


def _between_bursts(scene: Scene, item: Item) -> bool:
    """Whether it is the pause of "4 sec each, half a minute between", "pump 30 sec rest 2 min"."""
    bursts = any(other.quantity.unit == "second" and other.at < item.at for other in scene.quantities("TIME"))
    paused = scene.word(item.end) in ("between", "apart", "rest", "pause", "break") or scene.word(item.start - 1) in (
        "rest",
        "pause",
        "rests",
    )
    return bursts and paused


def _after_charge(scene: Scene, item: Item) -> bool:
    """Whether a reading was taken so long after the charge: "reads 12.8 after a week off charge"."""
    off = [scene.word(item.end), scene.word(item.end + 1)]
    read = _reading_before(scene, item) and scene.word(item.start - 1) == "after"
    return read and off in (["off", "charge"], ["off", "charger"], ["off", "the"])


def _off_the_charger(scene: Scene, item: Item) -> bool:
    """Whether it is how long the charger has been off: "30 min off charger 13.1", "an hr off charger"."""
    off = any(found.concept == "off_charger" and found.start == item.end for found in scene.roles)
    return off and scene.word(item.end) == "off"


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


def _of_reserve(scene: Scene, item: Item, value: float) -> Claim | None:
    """A battery's reserve: "reserve of 140 min", "a 2 hour reserve"."""
    unit = item.quantity.unit
    if unit == "hour" and value <= LONGEST_RESERVE and close(scene, item, "battery.reserve", reach=0.3, after=True):
        return Claim("battery.reserve", "role")
    if unit == "minute" and _in_amp_hours(scene, item):
        return Claim("battery.reserve", "role")
    if unit == "minute" and close(scene, item, "battery.reserve", reach=3.5):
        return Claim("battery.reserve", "role")
    if unit == "minute" and value >= RESERVE and scene.about("role:battery.reserve") and "load" not in scene.heads:
        return Claim("battery.reserve", "near")
    return None


def _in_amp_hours(scene: Scene, item: Item) -> bool:
    """Whether minutes are asked for as amp-hours: "and 150 minutes in Ah?"."""
    words = [scene.word(at) for at in range(item.end, item.end + 3)]
    return words[0] in ("in", "to", "as", "into") and (
        words[1] == "ah" or words[1:] in (["amp", "hours"], ["amp", "hour"])
    )


def _since(scene: Scene, item: Item) -> bool:
    """Whether the clause tells that a battery was fitted then: "fitted in the year I retired, eight years ago"."""
    clause = scene.clause(item.start)
    begun = [found for found in scene.roles if found.concept == "battery.age" and found.end <= item.start]
    others = {head.head for head in scene.head_items if begun and begun[-1].end <= head.start < item.start}
    return bool(begun) and scene.clause(begun[-1].start) == clause and not others - {"battery"}


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


def _in_series(scene: Scene, item: Item) -> bool:
    """Whether "2s" before a battery's figures means two in series."""
    if not re.fullmatch(r"[2-8]s", item.quantity.text.lower()):
        return False
    after = scene.after(item)
    return after is not None and (after.dim in COUNTED or after.fact == "battery.chemistry")


def _plural(scene: Scene, item: Item) -> Claim | None:
    """What "three lithium 50s" and "two 12s" say: a capacity or volts, not seconds."""
    match = re.fullmatch(r"(\d{1,3})s", item.quantity.text.lower())
    before = scene.before(item)
    if match is None or before is None or (before.kind == "times" and is_of_seconds(scene, item)):
        return None
    counted = any(other.kind == "count" for other in scene.items[max(0, item.at - 2) : item.at])
    value = int(match[1])
    them = scene.items[max(0, item.at - 3) : item.at]  # "two of them 88s"
    counted = counted or (
        len(them) == 3 and them[0].dim in ("COUNT", "NUM") and them[2].name in ("them", "those", "these")
    )
    they_are = before.name in ("are", "theyre") and value >= SMALLEST_NAME and _of_batteries(scene)
    leisure = before.fact in ("battery.chemistry", "battery.duty")
    named = (
        before.name == ","
        and value >= LIKELY_NAME
        and "load" not in scene.heads
        and "battery" in scene.facts | scene.heads
    )
    named = named or (
        before.name == "," and value >= LIKELY_NAME and "load" not in scene.heads and counted_batteries(scene)
    )
    if before.dim not in ("COUNT", "NUM", "VOLT") and not (named or leisure or counted or they_are):
        return None
    if value in (6, 12):
        return Claim("battery.nominal", "grammar")
    hole = any(other.quantity.value == value for other in scene.quantities("MM"))  # "two 50 mm holes ... two 50s"
    if hole:
        return NOTHING
    return Claim("battery.capacity", "grammar") if value >= 20 else None


def counted_batteries(scene: Scene) -> bool:
    """Whether batteries of a kind are counted: "11 wets"."""
    return any(item.fact == "battery.chemistry" for item in scene.items) and bool(scene.quantities("COUNT", "NUM"))


def _of_batteries(scene: Scene) -> bool:
    """Whether "they're 225s" speaks of batteries."""
    told = any(fact.fact.startswith("battery.") for fact in scene.said)
    return told or bool({"battery"} & (scene.heads | scene.facts))


def _years(scene: Scene, item: Item) -> Claim | None:
    if scene.word(item.end) in ("guarantee", "warranty") or of_people(scene, item) or _written_off(scene, item):
        return NOTHING
    if close(scene, item, "storage.time", reach=2) and float(item.quantity.value) < LONGEST_STORE:
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


def _stored(scene: Scene, item: Item, value: float) -> Claim | None:
    if _may_be_age(scene, item) and close(scene, item, "battery.age", reach=2.5) and not _is_stay(scene, item):
        return Claim("battery.age", "role")
    if item.quantity.unit == "month" and _listed_last(scene, item):
        return Claim("battery.age", "near")
    end = item.end + 2 if scene.word(item.end + 1) in TIMES else item.end  # "three cloudy days in a row"
    on_end = scene.word(end) in ON_END or (scene.word(end), scene.word(end + 1)) in ON_END_OF_TWO
    supplied = close(scene, item, "load.time", reach=3) or scene.word(item.start - 1) == "for" or on_end
    if item.quantity.unit == "day" and value < STORED and supplied and "load" in scene.heads:
        return Claim("load.time", "role")  # "a fridge for three days"
    if item.quantity.unit != "day" or value >= STORED or close(scene, item, "storage.time", reach=5):
        return Claim("storage.time", "role")
    return NOTHING


def _listed_last(scene: Scene, item: Item) -> bool:
    """Whether months end a battery's figures: "flooded, 130 Ah, 18 months."."""
    before, after = scene.items[max(0, item.at - 2) : item.at], scene.after(item)
    if len(before) < 2 or before[1].name != "," or (after is not None and after.kind != "mark"):
        return False
    return before[0].dim in COUNTED or before[0].fact in ("battery.chemistry", "battery.duty")


def _is_dark(scene: Scene) -> bool:
    """Whether the hours are those without sun: "the sun is gone for ten hours", "when the sun drops"."""
    return "sun" in scene.vocabulary and SUNLESS.search(scene.text) is not None


def _of_sun(scene: Scene, item: Item, value: float) -> bool:
    """Whether hours are of sun: "5 hours of sun"; "call it five hours" where only a panel is told of."""
    if scene.word(item.end) in ("till", "until", "before") or _is_dark(scene):  # "ten hours till the sun is up"
        return False
    panel = "panel" in scene.heads
    alone = panel and "load" not in scene.heads and value <= 12 * 3600 and scene.word(item.start - 1) == "it"
    return alone or ((panel or scene.about("role:sun")) and close(scene, item, "sun", reach=6))


def _of_sun_again(scene: Scene) -> bool:
    """Whether a short message goes on with the hours of sun told before: "november, say 1h"."""
    told = {old.fact for old in scene.said}
    short = len(scene.tokens) <= GOING_ON and not {"load", "charger", "battery"} & scene.heads
    return short and "solar.sun_hours" in told and "load.time" not in told and not scene.vocabulary & RUN_WORDS


def _short(scene: Scene, item: Item, value: float) -> Claim | None:
    asked = value <= DAY and ("solar.sun_hours" in scene.expected or _of_sun_again(scene))
    if item.quantity.unit == "hour" and (asked or _of_sun(scene, item, value)):
        return Claim("solar.sun_hours", "role")
    each = value <= EACH_TIME and scene.word(item.end) == "each" and scene.word(item.end + 1) != "way"
    if each or (value <= LONGEST_BURST and close(scene, item, "load.burst", reach=0.3, after=True)):
        return Claim("load.burst", "role")
    if close(scene, item, "load.rest", reach=3):
        return Claim("load.rest", "role")
    if close(scene, item, "load.time", reach=4):
        return Claim("load.time", "role")
    if close(scene, item, "load.burst", reach=3) and value <= LONGEST_BURST:
        return Claim("load.burst", "role")
    if item.quantity.unit == "hour":
        if "panel" in scene.heads and value <= 12 * 3600 and not _is_dark(scene):
            return Claim("solar.sun_hours", "near")
        here = scene.by_clause.get(scene.clause(item.start), frozenset())
        if here & {"word:charge", "word:setting", "word:winter"} and "request:what_size" not in here:
            return NOTHING
        return Claim("load.time", "default")
    if value <= LIKELY_BURST and item.quantity.unit == "second":
        return Claim("load.burst", "range")
    return Claim("load.time", "default")
