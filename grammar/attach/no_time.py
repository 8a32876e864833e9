"""Times that are of no battery and no load: hours of opening, of work, of people, years on a boat."""

from __future__ import annotations

import re

from grammar.attach.plural_times import joined_in_series, plural_time
from grammar.attach.stays import (
    STORED,
    reading_before,
)
from grammar.scene.claims import NOTHING, Claim, close
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.times import charged, motoring, outings, rates
from grammar.told.times.left_alone import rested_before
from grammar.told.words import ahead_of

TOOK = frozenset({"took", "takes", "cost"})
EMPTIED = frozenset({"flat", "dead", "dies", "empty", "died", "drained", "drains"})
IN, AWAY = (
    frozenset({"in", "within"}),
    frozenset({"back", "home", "return", "away", "before", "sail", "leave"}),
)
PEOPLE = frozenset({"us", "me", "him", "her", "them"})  # "it took us 2 hours to get off"
OR_MOST = regex(r"^\W{0,3}(?:(?:and|or|to) )?(?:max\w*|cca|mca|ah|amps?|volts?)\b", re.IGNORECASE)
NO_RUN = regex(  # hours that are somebody's work, opening or way, no load's
    r"\b(?:open|staffed|manned|work(?:s|ed|ing)?)(?: for| about)? $",
    re.IGNORECASE,
)
NOT_OF_LOAD = regex(
    r"^ ?-?(?:(?:emergency |help |repair |call[- ]?out )?(?:line|service|helpline|shift|week)\b"
    r"|(?:away )?from (?:the|a|any|home)\b(?! (?:\w+ )?(?:batter|bank|agm|gel|wet|lithium|cells))"
    r"|(?:away|drive|sail) (?:from|to)\b)",
    re.IGNORECASE,
)
LONG = frozenset({"day", "week", "month", "year"})


def _of_people(scene: Scene, item: Item) -> bool:
    after = scene.text[scene.span(item.start, item.end)[1] :]
    return NO_RUN.search(ahead_of(scene, item)) is not None or NOT_OF_LOAD.match(after) is not None


def _is_least(scene: Scene, item: Item, after: str) -> bool:
    """Whether "A min" are the least amps, and no minute: "charger A min/max", "which A min CCA"."""
    typed = item.quantity.text.split()
    if len(typed) != 2 or typed[0].lower() != "a" or typed[1].lower() != "min":
        return False
    return OR_MOST.match(after) is not None or (typed[0] == "A" and item.start > 0)


def _by_a_timer(scene: Scene, item: Item) -> bool:
    """Whether a timer lets a charger run so long: "left on a timer, two hours a day"."""
    daily = scene.word(item.end) in ("a", "per", "each") and scene.word(item.end + 1) == "day"
    return daily and "timer" in scene.vocabulary


def _while_other(scene: Scene, item: Item, value: float, after: str) -> bool:
    """Whether the engine runs so long, a charge goes on so long, or a lesson in which the thruster is only pushed; or
    whether a capacity is rated by it."""
    between = scene.text, ahead_of(scene, item), after
    if motoring.is_motoring(*between) or outings.is_outing(*between) or charged.is_charge(*between[1:]):
        return True
    return item.quantity.unit == "hour" and rates.is_rate(value / 3600, *between[1:])


def no_time(scene: Scene, item: Item, value: float) -> Claim | None:
    """What only looks like a time: "2s", "three 50s", "in a day", "open 24 hours"."""
    if item.quantity.unit == "hour" and (_of_people(scene, item) or _by_a_timer(scene, item)):
        return NOTHING
    after = scene.text[scene.span(item.start, item.end)[1] :]
    short = item.quantity.unit in ("minute", "hour")
    if short and (_while_other(scene, item, value, after) or _is_least(scene, item, after)):
        return NOTHING
    if joined_in_series(scene, item):
        return Claim("bank.layout", "grammar")
    a_day = item.quantity.text.lower().startswith(("a ", "an ", "the ", "day"))
    if item.quantity.unit == "day" and a_day and value < STORED:  # not "a hundred days"
        if rested_before(scene, item):
            return None
        read = scene.word(item.start - 1) == "after" and reading_before(scene, item)  # "it holds 12.6 after a day"
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
    return plural_time(scene, item)
