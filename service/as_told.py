"""A topic that the facts of a message are those of, where its words alone point elsewhere."""

from __future__ import annotations

import re
from collections.abc import Iterable, Set

from grammar.reading import Message
from service.kinds import LITHIUM

POWER, STRENGTH = "load.power", frozenset({"battery.cca", "battery.ca", "battery.max_current"})
WHETHER = frozenset(
    (
        *("will", "would", "wants", "does", "do", "works", "work", "if", "first", "second"),
        *("should", "possible", "or", "go", "goes", "turn", "push", "runs", "mind", "any", "what"),
    )
)
LOADS = frozenset({"load.current", "load.model", "load.power", "load.peak"})
KIND, FEW = "battery.chemistry", 10  # words
WRONG = re.compile(
    r"\b(?:label|sticker|i|we|he|she|they|seller|shop) (?:was|is|were) wrong\b|\bmislabel", re.IGNORECASE
)
TIMES = frozenset({"run-time", "charge-time", "standing-drain"})
CIRCUIT = frozenset({"cable-size", "fuse-size", "voltage-drop"})
SUPPLY = frozenset({"bank-size", "run-check"})  # "what CCA for it?" and then "got 2 x 500 in parallel"
SAVED = "detail:saved"
MINUTES = "detail:to_rc"  # reserve minutes are wanted of amp-hours
PUT_ON = re.compile(
    r"\b(?:can|may|could|should|ok to|safe to)\b[^.?!]*"
    r"\b(?:put|leave|hook|connect|clip|plug|use|keep)\b[^.?!]*\bcharger\b",
    re.IGNORECASE,
)
SO_MANY = re.compile(r"\bhow many\b[^.?!]*\b(?:parallel|side by side|abreast)\b", re.IGNORECASE)
LASTING = ("request:how_long", "request:how_many")
SIZING = ("request:what_size", "request:how_many")
APPROVAL = ("request:is_good", "request:enough")
MAY = (*APPROVAL, "request:may_i")
SIZES, TO_OTHER = frozenset({"cable.gauge", "cable.area"}), ("detail:to_mm2", "detail:to_awg")
ITS_MCA = re.compile(r"\b(?:its|the|that|in|how many|how much)\W+m?ca\b|\bm?ca\W+(?:be|is that|would)\b", re.IGNORECASE)
STRAIGHT = re.compile(r"\b(?:straight|direct(?:ly)?)\b", re.IGNORECASE)  # onto the battery, with nothing between
UNLIKE = ("detail:mixed_age", "detail:mixed_size", "detail:mixed_kind", "detail:join")


def by_what_is_told(message: Message, found: Set[str], context: Iterable[str] = ()) -> str:
    """The topic that takes the place of those found: watts and no battery ask how many amps, a battery's amps whether
    it will do, "how many bursts" not whether it runs, "how many in parallel" how big a bank, "8.2 V, can it be saved"
    how good that is. "" where they stand."""
    told = {item.fact for item in message.stated}
    if _of_charging(message, found, told):
        return "charger-setting"
    if found <= {"unclear"} and "reading.voltage" in told and message.says(SAVED):
        return "rest-voltage"
    if _of_a_rating(message, found, told):
        return "rating-convert"
    if found == {"replacement"} and message.says("request:may_i") and any(map(message.says, UNLIKE)):
        return "bank-wiring"  # "may they be of different age, one is 4 years old?"
    if found == {"run-check"} and told & STRENGTH and SO_MANY.search(message.text):
        return "bank-size"
    if found == {"run-check"} and POWER in told and not any(name.startswith("battery.") for name in told):
        return "rating-convert" if message.says("detail:to_amps") and not message.says("thing:battery") else ""
    if found == {"run-check", "run-time"} and not _whether(message):
        return "run-time" if any(map(message.says, LASTING)) else ""
    if found == {"bank-wiring"}:
        return "run-check" if _of_the_supply(message, told, set(context)) else ""
    if found == {"bank-size"} and told & STRENGTH and not any(map(message.says, SIZING)):
        return "run-check" if any(map(message.says, APPROVAL)) else ""
    return ""


def _of_charging(message: Message, found: Set[str], told: Set[str]) -> bool:
    """ "A 115 A alternator straight onto a 280 Ah lithium, is it ok?", "can I put a 20 A charger on my AGM?"."""
    alternator = "alternator.current" in told or message.says("thing:alternator")
    straight = {"battery-type"} <= found <= {"dc-dc", "battery-type"} and bool(STRAIGHT.search(message.text))
    if (straight or found <= {"run-check", "unclear"}) and alternator and not told & LOADS and _lithium(message):
        return True
    asked = bool(PUT_ON.search(message.text)) or message.says("word:setting")
    return found <= {"unclear"} and KIND in told and not message.dangers and asked


def _of_the_supply(message: Message, told: Set[str], context: Set[str]) -> bool:
    """Whether batteries that are put together are to do what was asked before: "got 2 x 500 in parallel"."""
    if any(map(message.says, ("request:what_get", "request:may_i", *UNLIKE))):
        return False
    joined = bool(SUPPLY & context) and bool(told & {*STRENGTH, "battery.count", "bank.layout"})
    return joined or bool(CIRCUIT & context and told & STRENGTH)


def _of_a_rating(message: Message, found: Set[str], told: Set[str]) -> bool:
    """ "4 AWG in mm2?", "in reserve minutes?", and of a battery whose CCA was told "what would its MCA be?"."""
    if found <= {"run-time", "unclear"} and "battery.capacity" in told and message.says(MINUTES):
        return True
    if found and found <= {"cable-size", "meaning"} and told and told <= SIZES and any(map(message.says, TO_OTHER)):
        return True
    return found == {"meaning"} and "battery.cca" in told and bool(ITS_MCA.search(message.text))


def _lithium(message: Message) -> bool:
    """Whether the battery is told to be lithium."""
    return any(item.fact == "battery.chemistry" and item.value in LITHIUM for item in message.stated)


def mends_the_kind(message: Message) -> bool:
    """Whether it only puts right what kind the battery is: "they are agm, label was wrong"."""
    told = {item.fact for item in message.stated}
    return (
        told == {KIND} and "?" not in message.words and len(message.words) <= FEW and bool(WRONG.search(message.text))
    )


def lasts(message: Message, best: str, context: Iterable[str]) -> bool:
    """Whether "and how long would it do a Minnow" asks a time where nothing of the kind was spoken of."""
    return best in TIMES and TIMES.isdisjoint(context) and message.says("request:how_long")


def _whether(message: Message) -> bool:
    """Whether a message also asks if something will do, in whatever way: "does it go, and how many minutes of go?"."""
    return not WHETHER.isdisjoint(message.words) or any(map(message.says, MAY))
