"""A short turn that asks of the next part of the same boat: "charger for it?", "so the battery then, still enough?"."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex
from service.turns.thread import Thread

LOAD = frozenset({"load.current", "load.model", "load.power"})
STRENGTH = frozenset({"battery.cca", "battery.ca", "battery.max_current"})
OF_PARTS = frozenset({"fuse-size", "cable-size", "voltage-drop", "charger-size", "charger-setting", "charger-banks"})
PARTS = {  # the topic that sizes a part; what was told that it is sized by; what tells the part itself
    "charger": ("charger-size", frozenset({"battery.capacity", "battery.energy"}), frozenset({"charger.current"})),
    "fuse": ("fuse-size", LOAD, frozenset({"fuse.rating"})),
    "cable": ("cable-size", LOAD, frozenset({"cable.gauge", "cable.area"})),
}
BOTH_ENDS = frozenset({"reading.load_voltage", "reading.load_voltage_at_load"})
FOR_IT = regex(
    r"(?:^|[.,;:!?] ?|\b(?:and|ok|okay|so|then|now|a|the|what|which|right) )(?P<part>charger|fuse|cable)"
    r" (?:(?:size|amps) )?(?:for|to suit|to go with|to match)"
    r" (?:it|that|this|them|those|these|(?:that|this|the) (?:one|battery|bank|pair|lot|motor|thruster|windlass))"
    r"(?: then| please| now)?\W*$",
    re.IGNORECASE,
)
STILL_ENOUGH = regex(
    r"\b(?:the|my|our|that|this|his|her) batter(?:y|ies)\b[^?]{0,24}?\b(?:(?:still |is it |are they )+(?:strong |big )?"
    r"(?:enough|ok(?:ay)?|fine|good|up to it|all ?right)|(?:will|would|does|can|do) (?:it|they) (?:still )?"
    r"(?:do|cope|manage|hold|run it|turn it|work))\b",
    re.IGNORECASE,
)


def sized_for_it(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "The bigger one, he says. Charger for it?": the size of a part that was not told yet, by what was."""
    found = FOR_IT.search(message.text)
    if found is None:
        return ()
    topic, by, itself = PARTS[found["part"].lower()]
    told = {item.fact for item in message.stated} | thread.facts.keys()
    return (topic,) if told & by and not told & itself else ()


def battery_again(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "So the battery then, still enough?" after its fuse or cable: whether it runs the load that was told."""
    parts = bool(thread.topics) and OF_PARTS.issuperset(thread.topics)
    known = parts and STRENGTH & thread.facts.keys() and LOAD & thread.facts.keys()
    return ("run-check",) if known and not message.stated and STILL_ENOUGH.search(message.text) else ()


def read_at_both_ends(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "10.1 at the thruster, 11.4 at the battery" after what a cable should lose: what it loses in truth."""
    told = {item.fact for item in message.stated}
    circuit = bool(thread.topics) and {"voltage-drop", "cable-size"}.issuperset(thread.topics)
    return ("load-voltage",) if circuit and told >= BOTH_ENDS else ()


def joined_then(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "In series then" of two that were read one by one: whether they may be joined so."""
    told = {item.fact for item in message.stated}
    known = "bank.layout" not in thread.facts and "battery.count" in thread.facts
    return ("bank-wiring",) if told == {"bank.layout"} and known and thread.topics == ("rest-voltage",) else ()


RULES = (sized_for_it, battery_again, read_at_both_ends, joined_then)
