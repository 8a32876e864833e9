"""What a later turn asks of a battery and its load, or of what charges it, that its own words do not tell."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex
from service.kinds import LITHIUM
from service.routing.asking import asks_outright
from service.told import fuse_habits
from service.turns.again import KIND
from service.turns.thread import Thread

LOADS = frozenset({"load.model", "load.current"})
RATED = frozenset({"battery.capacity", "battery.cca", "battery.ca", "battery.max_current", "battery.peak_current"})
IN_GENERAL = ({"battery-duty"}, {"battery-type"})  # topics that speak of no battery aboard
OTHERS = frozenset({"battery.weight", "battery.age", "storage.time", "charger.current", "ambient.temperature"})
CHARGING = frozenset({"charger-size", "charge-time", "charger-setting", "charger-banks", "dc-dc"})
HOW_BIG = regex(
    r"\W*(?:(?:and|so|ok|then|but)\W+)*(?:how (?:big|large|strong|many amps)|what size)"
    r"(?: (?:then|must it be|should it be|a one|of one|one|should i get))*\W*",
    re.IGNORECASE,
)
SAME_CHARGER = regex(
    r"\b(?:same|old|existing|that) charger\b[^.?!;]{0,16}"
    r"\b(?:ok(?:ay)?|fine|good|do|work|stay|keep|suit\w*|all ?right)\b",
    re.IGNORECASE,
)


def told_of_theirs(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "It's a Pike", "the label says 160 A continuous" after a choice of kinds or duties: whether theirs runs it, once
    the battery and its load are both told."""
    told = {item.fact for item in message.stated if item.of == 1}
    known = told | thread.facts.keys()
    both = LOADS & known and RATED & known and not any(item.of == 2 and item.fact in RATED for item in message.stated)
    tells = told & (LOADS | RATED) and not told & OTHERS and not asks_outright(message)
    return ("run-check",) if set(thread.topics) in IN_GENERAL and both and tells else ()


def cut_off(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "It's a Pike" of a thruster that stops after some seconds on lithium: what the battery allows."""
    told = {item.fact for item in message.stated}
    known = told | thread.facts.keys()
    kind = next((item.value for item in message.stated if item.fact == KIND), None) or (
        thread.facts[KIND].value if KIND in thread.facts else None
    )
    read = any(fact.startswith("reading.") for fact in known)
    stops = kind in LITHIUM and "load.burst" in known and LOADS & known and RATED & known and not read
    return ("run-check",) if thread.topics == ("load-voltage",) and stops and told & (LOADS | RATED | {KIND}) else ()


def how_big_a_converter(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "How big?" of a DC-to-DC charger that was weighed, its alternator told: the amps that it may give."""
    kind = thread.facts.get("charger.kind")
    converter = kind is not None and kind.value == "dc-dc" and "alternator.current" in thread.facts
    asks = CHARGING & set(thread.topics) and not message.stated and HOW_BIG.fullmatch(message.text)
    return ("dc-dc",) if converter and asks and not LOADS & thread.facts.keys() else ()


def same_charger(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Same charger ok?" of another kind of battery than the one it was on: its setting."""
    kind = thread.facts.get(KIND)
    charged = CHARGING & set(thread.topics) and kind is not None and kind.value in LITHIUM
    return ("charger-setting",) if charged and not message.stated and SAME_CHARGER.search(message.text) else ()


def of_its_fuse(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Isn't a BMS enough?", "where does it go?" of a fuse that was spoken of: the same fuse."""
    asks = fuse_habits.bms_enough(message.text) or fuse_habits.where_it_goes(message.text)
    return ("fuse-size",) if thread.topics == ("fuse-size",) and not message.stated and asks else ()


RULES = (told_of_theirs, cut_off, how_big_a_converter, same_charger, of_its_fuse)
