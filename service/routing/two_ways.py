"""A choice between two ways, of which the words name one topic alone: the other way is judged as well; and a battery
that slides about, beside whatever is asked of it."""

from __future__ import annotations

import re
from collections.abc import Set

from grammar.reading import Message
from grammar.text.patterns import regex
from service.judgements.joining import PARTS
from service.told import charged_apart, charged_in_frost, charger_left_on, longest_run, loose, taken_home

CHARGER, LAID_UP, WIRING, RUNS, FIXED = "charger-setting", "storage", "bank-wiring", "run-check", "mounting"
COLD = "ambient.temperature"
FREEZES = "freeze-point"  # says as well that lithium is not charged in frost
IN_FROST = "lfp-charged-below-freezing"  # a danger, where it is more than asked of
OF_FROST = frozenset(
    {CHARGER, FREEZES, "charger-size", "charge-time", "charger-banks", "dc-dc", "solar"}
)  # each tells it
BANKS, CABLE, LOADED = "charger-banks", "cable-size", frozenset({"run-check", "bank-size", "fuse-size", "run-time"})
RATED = frozenset({"battery.cca", "battery.max_current"})
HELD = frozenset({"battery.capacity"})
SHORTEST = 60.0  # seconds that a battery may not last; shorter ones are of a peak, or how long it ran till it stopped
LASTS, TIMED = "run-time", frozenset({"load.time", "battery.capacity"})
FOR_SO_LONG = regex(r"\b(?:for|do|does|manage|last|lasts|run|use|of|another)\b(?: \w+){0,2} ?$", re.IGNORECASE)
BY_TIME = frozenset({"charge-time", "standing-drain", LAID_UP})  # whose time it may be
STAYS_ON = regex(  # "is a 10 A trickle charger safe to leave", beside how to lay it up
    r"\b(?:safe|ok|okay|fine|all ?right|may|can|allowed|dangerous)\b[^.?!;]{0,60}"
    r"\b(?:leave|left|stay|stays|keep|kept)\b",
    re.IGNORECASE,
)
SIZES = frozenset({"cable.area", "cable.gauge"})
WHICH_SIZE = regex(  # of two cables that are named: "who's right", "which of them"
    r"\bwho(?:['’]?s| is| has(?: it)?)(?: the)? right\b|\bwhich(?: (?:one|size|of (?:them|the two|those)))\b",
    re.IGNORECASE,
)
LOADS = frozenset({"load.current", "load.model", "load.power", "load.peak"})


def other_way(message: Message, found: Set[str]) -> set[str]:
    """The topics of the way that is weighed against the one found."""
    more = _of_a_run(message, found) if RUNS in found else set()
    if WIRING in found and _several(message, RATED) and any(item.fact in LOADS for item in message.stated):
        more.add(RUNS)
    if found - {"unclear"} and loose.moves(message.text):
        more.add(FIXED)
    if found & LOADED and charged_apart.asked(message.text):  # "and do I charge it separately from the house bank?"
        more.add(BANKS)
    told = {item.fact for item in message.stated}
    if found & LOADED and _of_a_cable(message, found, told):
        more.add(CABLE)
    if found & {CHARGER, LAID_UP} and _left_on_or_taken(message):
        more |= {CHARGER, LAID_UP}
    if (IN_FROST, "planned") in _signs(message):
        more |= _charged_in_frost(message, found)
    if found - {"unclear"} and COLD in told and taken_home.asked(message.text):
        more.add(LAID_UP)  # "it shows 12.7; must it come home, we have -8 here"
    if LAID_UP in found and message.says("detail:unregulated") and STAYS_ON.search(message.text):
        more.add(CHARGER)
    return more - found


def _of_a_run(message: Message, found: Set[str]) -> set[str]:
    """What is judged beside whether it runs: one large battery against several, the minutes it is to run."""
    joined = {WIRING} if _several(message, HELD) else set()
    return joined | ({LASTS} if timed(message) and not found & BY_TIME else set())


def timed(message: Message) -> bool:
    """Whether a battery of known Ah is to run a load for a time: "will a 90 Ah run the Minnow for 15 minutes"."""
    told = {item.fact: item for item in message.stated}
    if not (told.keys() >= TIMED and told.keys() & LOADS) or any(item.of == 2 for item in message.stated):
        return False
    time = told["load.time"]
    long = isinstance(time.value, float) and time.value >= SHORTEST
    return long and FOR_SO_LONG.search(message.text[: time.span[0]]) is not None


def _charged_in_frost(message: Message, found: Set[str]) -> set[str]:
    """Whether lithium may be charged in frost, beside a lay-up or what tells nothing of it: "how heavy is it? May it be
    charged in frost?"."""
    laid_up = LAID_UP in found and FREEZES not in found
    untold = found - {"unclear"} and not found & OF_FROST and charged_in_frost.asked(message.text)
    return {CHARGER} if laid_up or untold else set()


def _signs(message: Message) -> set[tuple[str, str]]:
    return {(item.family, item.status) for item in message.dangers}


def _several(message: Message, figures: Set[str]) -> bool:
    """Whether one large battery and several small ones are weighed, each with such a figure."""
    rated = {item.of for item in message.stated if item.fact in figures}
    parted = any(item.fact == "battery.count" and item.of == 2 and PARTS.match(item.text) for item in message.stated)
    return parted and rated == {1, 2}


def _of_a_cable(message: Message, found: Set[str], told: set[str]) -> bool:
    """ "2) how far may it be with 70 mm2"; "the web says 25 mm2, my mate says 35. Who is right, and the fuse?"."""
    two = "cable.length" in told and {item.of for item in message.stated if item.fact in SIZES} == {1, 2}
    which = two and "fuse-size" in found and WHICH_SIZE.search(message.text) is not None
    return which or longest_run.asked(message.text, told)


def _left_on_or_taken(message: Message) -> bool:
    """Whether a plain charger is left on one way, and batteries are charged now and then the other way."""
    plain = any(item.fact == "charger.kind" and item.value in charger_left_on.PLAIN for item in message.stated)
    plain = plain or message.says("detail:unregulated")
    return plain and charger_left_on.or_taken_home(message.text)
