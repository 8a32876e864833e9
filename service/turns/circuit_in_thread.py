"""What a later turn asks of a circuit that its own words do not tell: another cable tried, what one may carry."""

from __future__ import annotations

import re

from grammar.reading import Message
from grammar.text.patterns import regex
from service.routing.ordered import orders
from service.told import ampacity_asked
from service.topic import CIRCUIT
from service.turns.thread import Thread

SIZES = ampacity_asked.SIZES
AMPS = frozenset({"load.current", "load.model", "load.power", "charger.current"})
CARRIES = "detail:carries"
WEIGHED = regex(  # a cable that is only thought of: "16 mm2 then?", "what if I only have 10"
    r"\?|\b(?:then|instead|rather|what (?:about|if)|how about|only ha(?:ve|s))\b"
    r"|\b(?:will|would|can|could|does|do) \S{1,12}\b",
    re.IGNORECASE,
)
ON_IT = regex(r"\b(?:on|through|in|over|with) (?:it|that|this|those|them)\b|\bok(?:ay)?\b|\?", re.IGNORECASE)
SHOULD_BE = regex(
    r"\W*(?:(?:and|so|ok|then|but|right)\W+)*what(?: size| gauge| thickness)? (?:should|must|ought|would) "
    r"(?:it|that|they)(?: to)? (?:be|do)(?: then| instead)?\W*",
    re.IGNORECASE,
)
WHAT_BMS = regex(
    r"\W*(?:(?:and|so|ok|then|but|right)\W+)*(?:what|which|how (?:big|strong|large))(?: size)?(?: of)?(?: an?)? bms\b",
    re.IGNORECASE,
)
RUNS_IT = regex(
    r"\b(?:on|with|off|from) (?:it|that|this|them|those)\b|\b(?:enough|do|cope) for\b|\bwill (?:it|that) run\b",
    re.IGNORECASE,
)
OF_A_SIZE = frozenset({"rating-convert", "cable-size", "voltage-drop", "fuse-size"})


def another_cable(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "16 mm2 then?" of a run whose cable was asked for beside its fuse or its converter: whether that one will do."""
    told = {item.fact for item in message.stated}
    of_it = set(thread.topics) <= CIRCUIT | {"dc-dc"} and {"dc-dc", "cable-size"} & set(thread.topics)
    run = "cable.length" in thread.facts and AMPS & thread.facts.keys()
    own = message.says("about:loss") or message.says("note:other_desk") or orders(message)  # a question of its own
    if own or not (told and told <= SIZES and of_it and run and WEIGHED.search(message.text)):
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


def size_then(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "What should it be?" of a cable whose loss was asked: the size."""
    lost = "voltage-drop" in thread.topics and not {"cable-size", "run-check"} & set(thread.topics)
    return ("cable-size",) if lost and not message.stated and SHOULD_BE.fullmatch(message.text) else ()


def fuse_of_the_panel(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Does it need a fuse?", "fuse for panel" after what a panel brings: its fuse."""
    return ("fuse-size",) if thread.topics == ("solar",) and message.says("detail:fuse_word") else ()


def what_bms(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "What BMS then?" of a lithium battery that is too weak: how strong it must be."""
    known = {"run-check", "bank-size"} & set(thread.topics) and {"load.model", "load.current"} & thread.facts.keys()
    return ("bank-size",) if known and not message.stated and WHAT_BMS.match(message.text) else ()


def run_by_it(message: Message, thread: Thread) -> tuple[str, ...]:
    """ "Pike on it?" of cranking amps that were converted or weighed in the cold: whether it runs that."""
    told = {item.fact for item in message.stated}
    load = bool(told) and all(fact.startswith("load.") for fact in told) and RUNS_IT.search(message.text)
    rated = {"battery.cca", "battery.ca"} & thread.facts.keys()
    return ("run-check",) if load and rated and {"cold-cranking", "rating-convert"}.issuperset(thread.topics) else ()


RULES = (another_cable, may_carry, amps_on_it, size_then, fuse_of_the_panel, what_bms, run_by_it)
