"""Which times are a lay-up, a rest before a reading, or long ago."""

from __future__ import annotations

import re

from grammar.attach.before_battery import COUNTED
from grammar.scene.claims import NOTHING, Claim, close
from grammar.scene.items import TIMES, Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.times.left_alone import left_alone
from grammar.told.words import ahead_of
from grammar.told.years.ages import ended

READ_WITHIN = 6  # pieces from a reading to how long nothing had run
DAY = 86400.0
LEFT = frozenset({"left", "unplugged", "disconnected", "stored", "laid"})
STORED = 5 * DAY
STORED_AT_REST = 31 * DAY
INDOORS = regex(  # where a battery stands ashore: "it's been in the greenhouse twelve weeks"
    r"\bin (?:the|a|my|our|his|her) (?:\w+ )?(?:green ?house|cellar|basement|barn|shed|garage|loft|attic|workshop|hall"
    r"|hallway|(?:boat ?)?house|hut|kitchen|cupboard|porch|conservatory|stable|(?:utility|spare|store) ?room|flat)"
    r"(?: now| already)?(?: for| these| about| all| some)* $",
    re.IGNORECASE,
)
COMES_BACK = regex(  # "and come back about 7 months later", "are back after 7 months"
    r"\b(?:come|comes|coming|be|are|am|is|get|gets|getting) back\b(?: (?:to (?:it|her|them)|aboard|here|home))?,?"
    r"(?P<after>(?: only)? (?:after|in))?(?: (?:about|around|some|roughly|only|almost|nearly|perhaps|maybe|say))* ?$",
    re.IGNORECASE,
)
LATER = ("later", "on", "after", "afterwards")
NOT_BACK = regex(
    r"(?:\bnot|n[o']t|\bnever|\bnobody|\bno one)\b(?: (?:be|is|are|am|comes?|coming|gets?))*"
    r" (?:back|home|return\w*)(?: here| aboard| again| home)* (?:for|within|before)(?: about| another| some| the)* $",
    re.IGNORECASE,
)
ON_END = frozenset({"running", "runnin", "straight", "together", "solid"})
ON_END_OF_TWO = frozenset({("on", "end"), ("in", "a"), ("on", "the")})  # "three days in a row", "on the trot"


def reading_before(scene: Scene, item: Item) -> bool:
    """Whether a number with a point or volts stand just before."""
    near = scene.items[max(0, item.at - READ_WITHIN) : item.at]
    return any(other.dim == "VOLT" or (other.dim == "NUM" and "." in other.name) for other in near)


def rested_for(scene: Scene, item: Item, value: float) -> bool:
    """Whether it is how long before a reading the charge ended or nothing was done."""
    if left_alone(scene, item, value):
        return True
    if value < STORED_AT_REST and (_after_charge(scene, item) or (value < STORED and _off_the_charger(scene, item))):
        return True
    unplugged = close(scene, item, "off_charger", reach=4.0) and scene.word(item.end) in ("ago", "since")
    return value < STORED and (unplugged or close(scene, item, "reading.rest_time", reach=0.6, after=True))


def long_ago(scene: Scene, item: Item, value: float) -> Claim:
    """What began so long ago: the battery's life, or its stay where it was left."""
    unit = item.quantity.unit
    if _nobody_there(scene, item):
        return Claim("storage.time", "role")
    if unit in ("day", "week", "month") and LEFT & scene.vocabulary and value >= STORED:
        return Claim("storage.time", "role")  # "left her unplugged 84 days ago"
    since = unit == "year" and (close(scene, item, "battery.age", reach=2.5) or _since(scene, item))
    since = since and not ended(scene, item)
    since = since or (unit == "year" and [scene.word(item.start - 2), scene.word(item.start - 1)] == ["put", "in"])
    return Claim("battery.age", "role") if since else NOTHING


def may_be_age(scene: Scene, item: Item) -> bool:
    """Whether it may be a life: days are one where that is said; "the shore lead had been in for two days"."""
    return item.quantity.unit != "day" or scene.word(item.end) in ("old", "ago", "new")


def is_stay(scene: Scene, item: Item) -> bool:
    """Whether a time is how long something stands: "for 20 weeks with the old ones left in"."""
    if item.quantity.unit != "year" and INDOORS.search(ahead_of(scene, item)):
        return True
    return scene.word(item.start - 1) == "for" and scene.word(item.end) in ("with", "without", "and", ",")


def _nobody_there(scene: Scene, item: Item) -> bool:
    """Whether it is how long nobody comes: "the owner isn't back for 200 days", "I won't be home for three weeks"."""
    if item.quantity.unit not in ("day", "week", "month"):
        return False
    back = COMES_BACK.search(ahead_of(scene, item))
    comes = back is not None and (back["after"] is not None or scene.word(item.end) in LATER)
    return comes or NOT_BACK.search(ahead_of(scene, item)) is not None


def _after_charge(scene: Scene, item: Item) -> bool:
    """Whether a reading was taken so long after the charge: "reads 12.8 after a week off charge"."""
    off = [scene.word(item.end), scene.word(item.end + 1)]
    read = reading_before(scene, item) and scene.word(item.start - 1) == "after"
    return read and off in (["off", "charge"], ["off", "charger"], ["off", "the"])


def _off_the_charger(scene: Scene, item: Item) -> bool:
    """Whether it is how long the charger has been off: "30 min off charger 13.1", "an hr off charger"."""
    off = any(found.concept == "off_charger" and found.start == item.end for found in scene.roles)
    return off and scene.word(item.end) == "off"


def _since(scene: Scene, item: Item) -> bool:
    """Whether the clause tells that a battery was fitted then: "fitted in the year I retired, eight years ago"."""
    clause = scene.clause(item.start)
    begun = [found for found in scene.roles if found.concept == "battery.age" and found.end <= item.start]
    others = {head.head for head in scene.head_items if begun and begun[-1].end <= head.start < item.start}
    return bool(begun) and scene.clause(begun[-1].start) == clause and not others - {"battery"}


OF_ANOTHER = regex(  # "my neighbour sees to his every two weeks"
    r"\b(?:his|hers|theirs)(?: (?:own|boat|one))?,? (?:(?:only|about|once|again|like clockwork),? )*every(?: other)? $",
    re.IGNORECASE,
)


def stored_for(scene: Scene, item: Item, value: float) -> Claim | None:
    """Days and more in which a battery is laid up, or its age."""
    if OF_ANOTHER.search(ahead_of(scene, item)):
        return NOTHING
    if may_be_age(scene, item) and close(scene, item, "battery.age", reach=2.5) and not is_stay(scene, item):
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
