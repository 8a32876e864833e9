"""What a later turn asks of a circuit that its own words do not tell: another cable tried, what one may carry."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex
from service.told import ampacity_asked
from service.topic import CIRCUIT
from service.turns.thread import Thread

SIZES = ampacity_asked.SIZES
AMPS = frozenset({"load.current", "load.model", "load.power", "charger.current"})
CARRIES = "detail:carries"
WEIGHED = regex(  # a cable that is only thought of: "16 mm2 then?", "what if I only have 10"
    r"\?|\b(?:then|instead|rather|what (?:about|if)|how about|(?:will|would|can|could|does|do) \S{1,12}|only ha(?:ve|s))\b",
    re.IGNORECASE,
)
ON_IT = regex(r"\b(?:on|through|in|over|with) (?:it|that|this|those|them)\b|\bok(?:ay)?\b|\?", re.IGNORECASE)
OF_A_SIZE = frozenset({"rating-convert", "cable-size", "voltage-drop", "fuse-size"})


def another_cable(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "16 mm2 then?" of a run whose cable was asked for beside its fuse or its converter: whether that one will do."""
    told = {item.fact for item in message.stated}
    of_it = set(thread.topics) <= CIRCUIT | {"dc-dc"} and {"dc-dc", "cable-size"} & set(thread.topics)
    run = "cable.length" in thread.facts and AMPS & thread.facts.keys()
    if not (told and told <= SIZES and of_it and run and WEIGHED.search(message.text)):
        return ()
    return ("cable-size", *(name for name in ("fuse-size", "voltage-drop") if name in thread.topics))


def may_carry(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "And its ampacity?", "in the engine space?" of a cable whose size was told: what it may carry."""
    told = {item.fact for item in message.stated}
    known = SIZES & (told | thread.facts.keys()) and bool(thread.topics) and OF_A_SIZE.issuperset(thread.topics)
    asks = message.says(CARRIES) or ampacity_asked.AMPS.search(message.text)
    return ("cable-size",) if known and asks and told <= ampacity_asked.OF_A_CABLE else ()


def amps_on_it(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "300 A on it ok?" of a cable whose size was told, and no battery: whether it may carry that."""
    told = {item.fact for item in message.stated}
    cable = bool(thread.topics) and {"rating-convert", "cable-size"}.issuperset(thread.topics)
    known = SIZES & thread.facts.keys() and not any(fact.startswith(("battery.", "load.")) for fact in thread.facts)
    return ("cable-size",) if cable and known and told == {"load.current"} and ON_IT.search(message.text) else ()


RULES = (another_cable, may_carry, amps_on_it)
