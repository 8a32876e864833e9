"""Which short times are a burst, a run or the sun of a day."""

from __future__ import annotations

import re

from grammar.attach.stays import DAY
from grammar.scene.claims import NOTHING, Claim, close
from grammar.scene.items import TIMES, Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.currents.sunlit import in_peak_watts

LONGEST_BURST = 90.0  # seconds
LIKELY_BURST = 30.0  # longer ones are a run, unless a word says burst
EACH_DAY = frozenset({"way", "day", "morning", "evening", "night", "afternoon", "week", "weekend", "side"})
EACH_TIME = 900.0  # seconds of "4 minutes each"
SUNLESS = regex(
    r"\bsun\b[^.?!;]{0,10}\b(?:drops?|sets?|goes|gone|down|sinks?|away|disappears|leaves|hides?)\b"
    r"|\b(?:no|without|lack of) (?:any )?sun\b",
    re.IGNORECASE,
)
EVENING = regex(
    r"^ ?(?:or so |solid )?(?:of (?:an evening|a night|the evening|the night|darkness)|at night|after dark|by night"
    r"|in the (?:evenings?|dark|night)|(?:each|every|per|a|an) (?:night|evening)|nightly)\b",
    re.IGNORECASE,
)
STATE_OF_CHARGE = regex(r"\d ?(?:%|per ?cent) (?:state of |of )?charged?\b", re.IGNORECASE)
CHARGES = regex(r"\b(?:re)?charg\w*", re.IGNORECASE)
GOING_ON = 10  # words of a message that goes on with what was told
RUN_WORDS = frozenset({"run", "runs", "last", "lasts", "on", "off", "use", "used", "long", "charge", "rest"})
OUTINGS = frozenset({"weekend", "passage", "crossing", "race", "trip"})  # "no shore power for a 48 hour weekend"


def _by_night(scene: Scene, item: Item) -> bool:
    """Whether hours are those of an evening or a night, when no sun shines: "five hours of an evening"."""
    return EVENING.match(scene.text[scene.span(item.start, item.end)[1] :]) is not None


def _is_dark(scene: Scene) -> bool:
    """Whether the hours are those without sun: "the sun is gone for ten hours", "when the sun drops"."""
    return "sun" in scene.vocabulary and SUNLESS.search(scene.text) is not None


def _of_sun(scene: Scene, item: Item, value: float) -> bool:
    """Whether hours are of sun: "5 hours of sun"; "call it five hours" where only a panel is told of."""
    if scene.word(item.end) in ("till", "until", "before") or _is_dark(scene):  # "ten hours till the sun is up"
        return False
    if _by_night(scene, item):
        return False
    panel = "panel" in scene.heads
    alone = panel and "load" not in scene.heads and value <= 12 * 3600 and scene.word(item.start - 1) == "it"
    if "load" not in scene.heads and any(in_peak_watts(other) for other in scene.quantities("WATT")):
        return True  # "120 Wp, 5 h: how many Ah"
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


def _each_of_many(scene: Scene, item: Item, value: float) -> bool:
    """Whether it is told of things counted: "a dozen lifts of half a minute", "ten hoists of a minute"."""
    row = scene.items[max(0, item.at - 3) : item.at]
    counted = len(row) == 3 and row[0].dim in ("COUNT", "NUM") and row[1].kind == "word" and row[1].name.endswith("s")
    return counted and row[2].name in ("of", "at") and value <= LONGEST_BURST


def short_time(scene: Scene, item: Item, value: float) -> Claim | None:
    """A burst, a run, or the hours of sun of a day."""
    asked = value <= DAY and ("solar.sun_hours" in scene.expected or _of_sun_again(scene))
    if item.quantity.unit == "hour" and (asked or _of_sun(scene, item, value)):
        return Claim("solar.sun_hours", "role")
    each = value <= EACH_TIME and scene.word(item.end) == "each" and scene.word(item.end + 1) not in EACH_DAY
    if (
        each
        or _each_of_many(scene, item, value)
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
        return _hours(scene, item, value)
    if value <= LIKELY_BURST and item.quantity.unit == "second":
        return Claim("load.burst", "range")
    return Claim("load.time", "default")


def _charge_is_a_state(scene: Scene) -> bool:
    """Whether a charge is spoken of only as how full it is: "at 80 % charge"."""
    states = len(STATE_OF_CHARGE.findall(scene.text))
    return states > 0 and states == len(CHARGES.findall(scene.text))


def _hours(scene: Scene, item: Item, value: float) -> Claim:
    """What hours are that no word tells: those of a panel's sun, or of a run; none where a charge is spoken of."""
    if _by_night(scene, item) and "load" in scene.heads and "charger" not in scene.heads:
        return Claim("load.time", "role")
    panel = "panel" in scene.heads or any(in_peak_watts(other) for other in scene.quantities("WATT"))
    if panel and value <= 12 * 3600 and not _is_dark(scene):
        return Claim("solar.sun_hours", "near")
    here = scene.by_clause.get(scene.clause(item.start), frozenset())
    here -= {"word:charge"} if _charge_is_a_state(scene) else set()
    charged = here & {"word:charge", "word:setting", "word:winter"} and scene.word(item.end) not in OUTINGS
    if charged and "request:what_size" not in here:
        return NOTHING
    return Claim("load.time", "default")
