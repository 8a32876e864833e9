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
RUNS = re.compile(r"(?:runs?|powers?|drives?|feeds?|supply|supplies|pulls?|carry) ", re.IGNORECASE)
ABLE = frozenset({"can", "could", "able", "enough", "ok", "may", "might", "let", "to"})
ORDINAL = frozenset({"", "a", "the", "and", "my", "with", "or"})  # before "second" where it counts no time
LOADS = frozenset({"load.current", "load.model", "load.power", "load.peak"})
KIND, FEW = "battery.chemistry", 10  # words
WRONG = re.compile(
    r"\b(?:label|sticker|i|we|he|she|they|seller|shop) (?:was|is|were) wrong\b|\bmislabel", re.IGNORECASE
)
TIMES = frozenset({"run-time", "charge-time", "standing-drain"})
CIRCUIT = frozenset({"cable-size", "fuse-size", "voltage-drop"})
SUPPLY = frozenset({"bank-size", "run-check"})  # "what CCA for it?" and then "got 2 x 500 in parallel"
ANY_CABLE = frozenset({"cable.area", "cable.gauge", "cable.length", "cable.drop"})
LIMITS = "detail:which_limit"
SAVED = "detail:saved"
MINUTES = "detail:to_rc"  # reserve minutes are wanted of amp-hours
SO_MANY = re.compile(r"\bhow many\b[^.?!]*\b(?:parallel|side by side|abreast)\b", re.IGNORECASE)
LASTING = ("request:how_long", "request:how_many")
SIZING = ("request:what_size", "request:how_many")
APPROVAL = ("request:is_good", "request:enough")


def by_what_is_told(message: Message, found: Set[str], context: Iterable[str] = ()) -> str:
    """The topic that takes the place of those found: watts and no battery ask how many amps, a battery's amps whether
    it will do, "how many bursts" not whether it runs, "how many in parallel" how big a bank, "8.2 V, can it be saved"
    how good that is. "" where they stand."""
    told = {item.fact for item in message.stated}
    if (
        message.says(LIMITS)
        and found <= {"unclear", "battery-duty", "cable-size", "other-desk"}
        and not told & ANY_CABLE
    ):
        return "voltage-drop"  # "is it 3 % or 10 % for a windlass"
    if found <= {"run-check", "unclear"} and "alternator.current" in told and not told & LOADS and _lithium(message):
        return "charger-setting"  # "a 115 A alternator straight onto a 280 Ah lithium, is it ok?"
    if found <= {"unclear"} and "reading.voltage" in told and message.says(SAVED):
        return "rest-voltage"
    if found <= {"run-time", "unclear"} and "battery.capacity" in told and message.says(MINUTES):
        return "rating-convert"
    if found == {"run-check"} and told & STRENGTH and SO_MANY.search(message.text):
        return "bank-size"
    if found == {"run-check"} and POWER in told and not any(name.startswith("battery.") for name in told):
        return "rating-convert" if message.says("detail:to_amps") and not message.says("thing:battery") else ""
    if found == {"run-check", "run-time"} and not _whether(message):
        return "run-time" if any(map(message.says, LASTING)) else ""
    if found == {"bank-wiring"} and not any(map(message.says, ("request:what_get", "request:may_i"))):
        joined = not SUPPLY.isdisjoint(context) and bool(told & {*STRENGTH, "battery.count", "bank.layout"})
        return "run-check" if joined or (not CIRCUIT.isdisjoint(context) and told & STRENGTH) else ""
    if found == {"bank-size"} and told & STRENGTH and not any(map(message.says, SIZING)):
        return "run-check" if any(map(message.says, APPROVAL)) else ""
    return ""


def told_by_another(message: Message, found: Set[str]) -> set[str]:
    """The topics that another answer tells as well: what CCA is, where it is asked whether so many MCA are the same."""
    same = {"meaning", "rating-convert"} <= found and message.says("detail:same_as")
    return {"meaning"} if same else set()


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
    """Whether a message also asks if something will do, in whatever way: "does it go, and how many minutes of go?".

    "Two 90s run the thruster" only tells what runs it.
    """
    words = {
        word for word, before in zip(message.words, ("", *message.words), strict=False) if not _is_unit(word, before)
    }
    if not WHETHER.isdisjoint(words) or message.says("request:may_i"):
        return True
    approval = [cue for cue in message.cues if cue.name in APPROVAL]
    return any(not RUNS.match(cue.text) for cue in approval) or (bool(approval) and not ABLE.isdisjoint(words))


def _is_unit(word: str, before: str) -> bool:
    """Whether it is the second, or the goes, of "4 second goes"."""
    if word == "goes":
        return before in ("second", "sec", "s")
    return word == "second" and before not in ORDINAL
