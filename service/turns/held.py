"""What a conversation was told once and no fact holds: that a battery has no caps, how it did in a test, a cover,
the season, that the load hangs on the engine's battery.

It stays true in later turns, until they tell otherwise or speak of another battery.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable

from grammar.reading import Message
from grammar.text.patterns import regex
from service.judgements import case_sizes
from service.told import charger_settings, its_years, seasons, tray
from service.topic import CIRCUIT
from service.turns.thread import Thread

NO_CAPS, HAS_CAPS = "detail:no_caps", "detail:has_caps"
PASSED, FAILED = "detail:passed_test", "detail:failed_test"
COVERED, UNCOVERED = "detail:under_cover", "detail:uncovered"
WINTER = "detail:winter"  # until another season is named
SEASONS = (seasons.SUMMER, seasons.WINTER)  # the one that was said last, in whatever words
OTHERWISE = {
    NO_CAPS: HAS_CAPS,
    HAS_CAPS: NO_CAPS,
    PASSED: FAILED,
    FAILED: PASSED,
    COVERED: UNCOVERED,
    UNCOVERED: COVERED,
    "detail:engine_battery": "detail:own_battery",
    "whose:start_battery": "detail:own_battery",
}
MCA = "role:battery.ca"
POSTS = "role:at_battery"
BLOWS = "detail:blows"  # of a fuse, as long as its circuit is what is spoken of
FIND, MOTOR = "detail:find_kind", ("detail:weak_motor", "detail:dead_motor")
HELD = frozenset({*OTHERWISE, WINTER, *SEASONS})
AGE = "battery.age"
OTHER_BOAT = "note:other_boat"
TESTED = frozenset({PASSED, FAILED})
AGED = PASSED  # where a test is let go as of another battery, its year goes too
IN_SEASON = regex(r"\b(?:summer|spring|june|july|august|in season|sailing)\b", re.IGNORECASE)  # covers are off
PLACES = frozenset(  # where and which way up a battery stands: a later turn that names one asks of that alone
    f"detail:{name}"
    for name in (
        "cabin",
        "sleep_beside",
        "engine_heat",
        "petrol_near",
        "gas_bottles",
        "on_side",
        "upside_down",
        "concrete",
    )
)
DISCONNECT, DRAINED = "detail:disconnect", frozenset({"role:drain.current", "thing:drain"})
PETROL, DIESEL = "detail:petrol_near", regex(r"^(?!.*\bpetrol\b).*\bdiesel\b", re.IGNORECASE | re.DOTALL)
WATCHED, LEFT_ALONE = "detail:watched", frozenset({"detail:left_on", "detail:held"})
OTHER_ONE = regex(r"\b(?:other|second|next) (?:one|of (?:them|the two))\b", re.IGNORECASE)


def held(thread: Thread, own: Iterable[str], text: str = "") -> tuple[str, ...]:
    """The cues of earlier turns that still hold beside a turn's own; one of a pair is tested for itself."""
    if not HELD.intersection(thread.cues):
        return ()
    told, past = set(own), TESTED if OTHER_ONE.search(text) else frozenset()
    past |= {COVERED, WINTER} if IN_SEASON.search(text) else set()
    kept = (cue for cue in (*OTHERWISE, WINTER) if cue in thread.cues and OTHERWISE.get(cue) not in told)
    return (*(cue for cue in kept if cue not in past), *_season(thread, text))


def of_its_charger(thread: Thread) -> tuple[str, ...]:
    """The cues of the settings that the charger of the thread was told to have."""
    return tuple(name for name in thread.cues if name.startswith(charger_settings.OFFERS_IT))


def of_its_place(thread: Thread, own: Collection[str]) -> tuple[str, ...]:
    """The cues of the tray that was measured last and of the case in it; on another boat they are others."""
    kept = (tuple(name for name in thread.cues if name.startswith(kind)) for kind in (tray.KEPT, case_sizes.STANDS))
    return () if OTHER_BOAT in own else tuple(name for names in kept for name in names[-1:])


def _season(thread: Thread, text: str) -> tuple[str, ...]:
    """The cues of the season that was said last, where this message names none."""
    told = () if seasons.said(text) else tuple(name for name in SEASONS if name in thread.cues)
    return (*told, WINTER) if seasons.WINTER in told and WINTER not in thread.cues else told


def still_told(thread: Thread, own: Collection[str]) -> tuple[str, ...]:
    """What was told of a weak motor, and that the kind of battery is looked for, until something else is asked; that
    amps told before were MCA; that a fuse blew; and that volts were read at the battery."""
    blown = (BLOWS,) if BLOWS in thread.cues and set(thread.topics) <= CIRCUIT and BLOWS not in own else ()
    rated = (MCA,) if MCA in thread.cues and "battery.ca" in thread.facts and MCA not in own else ()
    posts = (POSTS,) if POSTS in thread.cues and "reading.load_voltage" in thread.facts and POSTS not in own else ()
    finding = FIND in own or (FIND in thread.cues and not any(name.startswith("request:") for name in own))
    return (*rated, *blown, *posts, *(cue for cue in (FIND, *MOTOR) if finding and cue in thread.cues))


def let_go(cues: Iterable[str], names: Collection[str] = (*OTHERWISE, WINTER, *SEASONS)) -> tuple[str, ...]:
    """The cues of a thread without those that spoke of a battery no longer spoken of."""
    return tuple(cue for cue in cues if cue not in names and not (AGED in names and cue.startswith(its_years.YEAR)))


CHARGED = frozenset(f"detail:{name}" for name in ("flat_one", "half_charged", "full_one", "from_half"))
READS = regex(r"\b(?:reads?|shows?|says|is at|sits at|measured|got)\b[^.?!;\d]{0,12}\b\d{1,2}[.,]\d", re.IGNORECASE)
SAME_AGE = regex(r"\b(?:same|equal|one|identical) ages?\b|\bas old as each other\b|\bboth new\b", re.IGNORECASE)


def elsewhere(own: Iterable[str], old: Iterable[str], text: str = "") -> tuple[str, ...]:
    """The details of the last question without its places, where another one is named: "and under my bunk?"; without
    petrol, where the engine turns out to be a diesel; no longer disconnected, where something is told to stay on; no
    longer left on, where somebody will watch; no longer full or flat in words, where volts are read."""
    no_petrol = (PETROL,) if DIESEL.search(text) else ()
    watched = LEFT_ALONE if WATCHED in own else ()
    drained = (DISCONNECT,) if not DRAINED.isdisjoint(own) and DISCONNECT not in own else ()
    read = CHARGED if READS.search(text) else frozenset()
    aged = ("detail:mixed_age",) if SAME_AGE.search(text) else ()
    drained = (*drained, *read, *aged)
    return let_go(old, {*(PLACES if not PLACES.isdisjoint(own) else no_petrol), *drained, *watched})


def aged_otherwise(message: Message, thread: Thread) -> bool:
    """Whether an age is told that is not the one told before: of another battery, which was not tested with it."""
    before = thread.facts.get(AGE)
    return before is not None and any(item.fact == AGE and item.value != before.value for item in message.stated)
