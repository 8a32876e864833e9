"""Which short times are a burst, a run or the sun of a day."""

from __future__ import annotations

import re

from grammar.attach.stays import DAY
from grammar.scene.claims import NOTHING, Claim, close
from grammar.scene.items import TIMES, Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

LONGEST_BURST = 90.0  # seconds
LIKELY_BURST = 30.0  # longer ones are a run, unless a word says burst
EACH_TIME = 900.0  # seconds of "4 minutes each"
SUNLESS = regex(
    r"\bsun\b[^.?!;]{0,10}\b(?:drops?|sets?|goes|gone|down|sinks?|away|disappears|leaves|hides?)\b"
    r"|\b(?:no|without|lack of) (?:any )?sun\b",
    re.IGNORECASE,
)
GOING_ON = 10  # words of a message that goes on with what was told
RUN_WORDS = frozenset({"run", "runs", "last", "lasts", "on", "off", "use", "used", "long", "charge", "rest"})
OUTINGS = frozenset({"weekend", "passage", "crossing", "race", "trip"})  # "no shore power for a 48 hour weekend"


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


def _a_time(scene: Scene, item: Item, value: float) -> bool:
    """Whether it is told of each of many times: "forty seconds a sack"; not "a day"."""
    each = value <= LONGEST_BURST and scene.word(item.end) in ("a", "per")
    return each and scene.word(item.end + 1) not in {*TIMES, "weekend"}


def short_time(scene: Scene, item: Item, value: float) -> Claim | None:
    """A burst, a run, or the hours of sun of a day."""
    asked = value <= DAY and ("solar.sun_hours" in scene.expected or _of_sun_again(scene))
    if item.quantity.unit == "hour" and (asked or _of_sun(scene, item, value)):
        return Claim("solar.sun_hours", "role")
    each = value <= EACH_TIME and scene.word(item.end) == "each" and scene.word(item.end + 1) != "way"
    if (
        each
        or _a_time(scene, item, value)
        or (value <= LONGEST_BURST and close(scene, item, "load.burst", reach=0.3, after=True))
    ):
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
        charged = here & {"word:charge", "word:setting", "word:winter"} and scene.word(item.end) not in OUTINGS
        if charged and "request:what_size" not in here:
            return NOTHING
        return Claim("load.time", "default")
    if value <= LIKELY_BURST and item.quantity.unit == "second":
        return Claim("load.burst", "range")
    return Claim("load.time", "default")
