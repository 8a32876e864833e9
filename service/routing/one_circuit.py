"""A cable, its fuse and its loss are one circuit: which of them a message asks about, and which it only tells of."""

from __future__ import annotations

import re
from collections.abc import Iterable, Set

from grammar.reading import Message
from grammar.text.patterns import regex
from service.routing.asking import asks_outright
from service.told import ampacity_asked, longest_run
from service.topic import CIRCUIT

SIZED = frozenset({"cable.gauge", "cable.area"})
LOADS = frozenset({"load.current", "load.model", "load.power"})
OTHERS = ("battery.", "fuse.", "charger.", "reading.")  # facts of things that may be asked about as well
WHICH = ("request:what_size", "request:which", "about:how_big")
FUSES = ("thing:fuse", "about:fuse")
NEXT = 4  # characters: "what size of fuse"
THINGS = ("thing:battery", "thing:fuse", "about:fuse", "thing:charger", "about:loss")
AMPS_ASKED = regex(r"(?<!no )(?<!\d )(?<!\d)\b(?:amps?|amperes?)\b", re.IGNORECASE)  # "4 kW, 24 V. amps please"
CONVERTS = ("request:convert", "detail:to_", "request:how_many", "request:what_is", "about:convert")
CARRIES = "detail:carries"
CABLES = frozenset({"thing:cable", "about:cable", "about:loss"})
LOSS_ASKED = regex(
    r"(?:^|[.?!;\n]) *(?:volts?|voltage)? ?(?:lost|loss|drop)(?:,? (?:please|pls))? ?[:–-]|"
    r"\b(?:what|how (?:much|many volts|big|large))\b[^.?!;]{0,24}\b(?:drop|loss|loses?|lost|volts lost)\b",
    re.IGNORECASE,
)
SIZE_ASKED = regex(
    r"\b(?:enough|ok|okay|fine|good|suitable|sufficient|thick\w*|thin\w*|(?:what|which) (?:size|cable|gauge)"
    r"|will (?:it|that|this) do|right size|too (?:small|long))\b",
    re.IGNORECASE,
)
FUSE_ORDERED = regex(  # "breaker for the windlass please", "fuse size, 95 mm2"
    r"(?:^|[.?!;\n]) *(?:(?:an?|the|main) )?(?:fuse|breaker)(?: (?:size|rating|value))?"
    r"(?: (?:needed|wanted|pls|please))?"
    r"(?: for\b| ?[,:–-])[^.?!;]{0,40}",
    re.IGNORECASE,
)
ALLOWED = regex(  # the loss that a cable is to be chosen for
    r"\b(?:loss|drop) (?:of \S+ )?(?:is |at most |to be )?(?:allowed|permitted|tolerated|accepted|acceptable|max\w*)\b"
    r"|\b(?:allow\w*|accept\w*|permit\w*|tolerat\w*|max\w*|within|at most|for|with)(?: \w+)? [\d.]+ ?(?:%|per ?cent|pc)"
    r" (?:volt(?:age)? )?(?:loss|drop)\b",
    re.IGNORECASE,
)
FROM = regex(r"\bfrom (?:the |my |our |its )?(?:house |start(?:er)? |thruster |battery )?$", re.IGNORECASE)
TO_OTHER = ("detail:to_mm2", "detail:to_awg")
BOTH_ENDS = frozenset({"reading.load_voltage", "reading.load_voltage_at_load"})  # of a running load, battery and motor
ENOUGH = ("request:enough", "request:is_good", "request:may_i")


def only_tells(message: Message, best: str, context: Iterable[str]) -> bool:
    """Whether a message tells more of a circuit that was asked about: "3.5 m one way, in the engine space", or that it
    is not known: "no idea what cable it is"."""
    if best not in CIRCUIT or CIRCUIT.isdisjoint(context):
        return False
    unknown = message.says("note:no_idea") and "?" not in message.words
    return unknown or (bool(message.stated) and not asks_outright(message))


def of_the_cable(message: Message, topics: Iterable[str]) -> bool:
    """Whether "is 2/0 enough for it" asks of a cable: it is named, and nothing else that could be meant."""
    told = {item.fact for item in message.stated}
    others = any(fact.startswith(OTHERS) for fact in told) or any(map(message.says, THINGS))
    asked = bool(SIZED & told) and bool(LOADS & told) and any(map(message.says, ENOUGH))
    carries = message.says(CARRIES) or ampacity_asked.of_a_size(message.text, told)
    if SIZED & told and carries and not any(map(message.says, TO_OTHER)):  # "what does 4/0 carry"
        return not others and set(topics) <= {"run-check", "fuse-size", "rating-convert", "weight"}
    return asked and not others and set(topics) <= {"run-check", "fuse-size"}


def unasked(message: Message, topics: Iterable[str]) -> set[str]:
    """The topics among these that a message about a circuit only tells of: a sum on the way, a cable that is there."""
    names, told = set(topics), {item.fact for item in message.stated}
    idle = set()
    converts = any(cue.name.startswith(CONVERTS) for cue in message.cues) or AMPS_ASKED.search(message.text)
    if "rating-convert" in names and names & CIRCUIT and not converts:
        idle.add("rating-convert")
    if {"run-check", "cable-size"} <= names and _only_told(message, SIZED, CABLES):
        idle.add("cable-size")
    approval = any(cue.name in ENOUGH and cue.text.lower() != "right" for cue in message.cues)  # "right on the post"
    only_fuse = (
        (_which_fuse(message) or _fuse_ordered(message)) and not approval and not longest_run.asked(message.text, told)
    )
    if {"cable-size", "fuse-size"} <= names and SIZED & told and only_fuse:
        idle.add("cable-size")
    loss_alone = LOSS_ASKED.search(message.text) and not SIZE_ASKED.search(message.text)
    if {"cable-size", "voltage-drop"} <= names and told >= {"cable.length"} and SIZED & told and loss_alone:
        idle.add("cable-size")  # "50 mm2, 4 m, 183 A: what voltage drop should I expect?"
    if {"cable-size", "voltage-drop"} <= names and not SIZED & told and _loss_allowed(message):
        idle.add("voltage-drop")  # "5 % loss allowed, 45 A, 12 m: which mm2?"
    if {"load-voltage", "voltage-drop"} <= names and told >= BOTH_ENDS and not told & {*SIZED, "cable.length"}:
        idle.add("voltage-drop")  # the volts at both ends tell the loss, and no cable is there to reckon it by
    return idle | far_end(message, names)


def far_end(message: Message, names: Set[str]) -> set[str]:
    """The size of a battery that is named for the length of the cable alone: "cable and fuse, 10 m from the bank"."""
    if "bank-size" not in names or not names & CIRCUIT:
        return set()
    ends = [message.text[: cue.span[0]] for cue in message.cues if cue.name in ("thing:battery", "thing:bank")]
    return {"bank-size"} if ends and all(FROM.search(before) for before in ends) else set()


def _only_told(message: Message, facts: Set[str], words: Iterable[str]) -> bool:
    """Whether such a fact is told, and no clause that asks speaks of the thing: "70 mm2 cable, 4 m each way"."""
    told = [item.span[0] for item in message.stated if item.fact in facts and item.span]
    spoken = [cue.span[0] for cue in message.cues if cue.name in words]
    asking = [clause.span for clause in message.clauses if clause.asks]
    return bool(told) and not any(start <= at < end for start, end in asking for at in (*told, *spoken))


def _loss_allowed(message: Message) -> bool:
    """Whether a loss is only told as the one that a cable may have."""
    return ALLOWED.search(message.text) is not None and not LOSS_ASKED.search(message.text)


def _fuse_ordered(message: Message) -> bool:
    """Whether a fuse is named as what is wanted, and nothing is asked of a cable."""
    ordered = FUSE_ORDERED.search(message.text)
    cables = (item.start() for item in SIZE_ASKED.finditer(message.text))
    return ordered is not None and not any(True for _ in cables) and "?" not in message.text


def _which_fuse(message: Message) -> bool:
    """Whether a size is asked for once, and it is the fuse's: "what size fuse", "which breaker"."""
    asks = [cue.span for cue in message.cues if cue.name in WHICH]
    fuses = [cue.span[0] for cue in message.cues if cue.name in FUSES]
    return bool(asks) and all(any(start <= at <= end + NEXT for at in fuses) for start, end in asks)
