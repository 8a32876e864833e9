"""Topics of supply among those found that are only told: a size that is known, a rating named for its load."""

from __future__ import annotations

import re
from collections.abc import Set

from grammar.reading import Message
from grammar.text.patterns import regex
from service.routing.one_circuit import CONVERTS
from service.routing.supply_as_told import LOADS, READ_FOR, STRENGTH

OF_THE_SAME = regex(  # "is 20 W enough, else what size?"
    r"\b(?:else|otherwise|if not)\b,? (?:then )?(?:what|which|how (?:big|large))(?: size)?\W*(?:$|[?.;])", re.IGNORECASE
)
SIZED = frozenset({"load.time", "load.burst", "battery.capacity", "battery.cca"})
JUDGED = ("request:is_good", "request:how_full", "put:good", "put:bad")
ENOUGH_OF = frozenset({"solar", "charger-size", "cable-size", "fuse-size"})  # each has a size of its own
BOX_SIZED = regex(  # "one of those boxes, and what size if so"
    r"\b(?:box(?:es)?|units?|converters?|chargers?|one)\b[^.?!]{0,24}\b(?:what|which) (?:size|rating)\b", re.IGNORECASE
)
HOW_MUCH = regex(r"\bhow (?:much|many)\b|\bwhat (?:would|does|do|is)\b|\bcomes? to\b", re.IGNORECASE)
IN_THE_COLD = regex(  # what is left of a rating: "how many amps at -8", "what does it give there"
    r"\bhow (?:much|many|strong|weak)\b|\b(?:what|which)\b"
    r"|\b(?:left|gives?|lose|lost|loses|share|per ?cent|strength|power|weaker|less|lively|dead|sluggish|slower"
    r"|suffers?|crank\w*)\b",
    re.IGNORECASE,
)
RUNS = regex(r"\b(?:runs?|running|turns?|drives?|power|cope|handle|start|strong|big) ?", re.IGNORECASE)
BIG = regex(r"\b(?:how (?:big|large|many)|size|sized|capacity|cca|ah)\b", re.IGNORECASE)


def not_asked(message: Message, found: Set[str], told: Set[str]) -> set[str]:
    """The size of a battery whose kind alone is to be chosen, and a reading from which a run is reckoned."""
    sized = message.says("request:what_size") or BIG.search(message.text) or told & SIZED
    if {"battery-type", "bank-size"} <= found and not sized:
        return {"bank-size"}  # "AGM or lithium for the Sturgeon: what would you go for"
    if "bank-size" in found and found & ENOUGH_OF and OF_THE_SAME.search(message.text):
        return {"bank-size"}  # "20 W enough for 0.1 A, else what size?" asks of the panel
    run = message.says("request:how_long") or "load.time" in told
    run = run and {"run-time", "rest-voltage"} <= found and "reading.voltage" in told
    return {"rest-voltage"} if run and not any(map(message.says, JUDGED)) else set()  # "shows 12.4, lasts the night?"


def only_told_of(message: Message, found: Set[str], told: Set[str]) -> set[str]:
    """The cold and the volts that only stand beside what is asked: whether it runs, whether a reading is good for it,
    whether it is time for a new one and whether it will freeze."""
    idle, one, text = set(), sum(clause.asks for clause in message.clauses) < 2, message.text
    runs = {"run-check", "cold-cranking"} <= found and bool(told & LOADS) and one
    if runs and "ambient.temperature" in told and not IN_THE_COLD.search(text):
        idle.add("cold-cranking")  # "it is -8, will 700 CCA turn a Pike?"
    if {"run-check", "rest-voltage"} <= found and one and READ_FOR.search(text) and not RUNS.search(text):
        idle.add("run-check")  # "is 12.5 V good for a Minnow's battery of 600 CCA?"
    if {"rest-voltage", "replacement", "freeze-point"} <= found and not any(map(message.says, JUDGED[:2])):
        idle.add("rest-voltage")  # "rests at 12.2, 5 years. Time for a new one? And will it freeze at -12?"
    return idle


def sized_already(message: Message, found: Set[str], told: Set[str]) -> set[str]:
    """How big a battery must be, where its size is told and the one asked for is of a box, or of the bank it makes."""
    if "bank-size" not in found or "battery.capacity" not in told or "load.time" in told:
        return set()
    box = "dc-dc" in found and BOX_SIZED.search(message.text)
    bank = {"bank-wiring", "run-time"} <= found and "battery.count" in told
    return {"bank-size"} if box or bank else set()


def rated_for_a_load(message: Message) -> bool:
    """Whether a rating is only told beside the load that it is for: "would the 900 MCA one push 200 A"."""
    told = {item.fact for item in message.stated}
    converts = any(cue.name.startswith(CONVERTS) for cue in message.cues) or HOW_MUCH.search(message.text)
    return bool(told & STRENGTH) and bool(told & LOADS) and not converts
