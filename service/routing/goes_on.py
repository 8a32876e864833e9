"""Whether a message goes on with the thread: it replies, puts a fact right, or has no question of its own."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from grammar.reading import Message
from grammar.text.patterns import regex
from service.routing.as_told import TIMES
from service.routing.asking import OPENERS, asks, asks_outright
from service.routing.of_the_last import volts_there
from service.routing.one_circuit import only_tells
from service.routing.supply_as_told import KIND
from service.routing.tally import HAZARD, Bars, Tally

FEW = 10  # words
WRONG = regex(r"\b(?:label|sticker|i|we|he|she|they|seller|shop) (?:was|is|were) wrong\b|\bmislabel", re.IGNORECASE)
SEASONS = frozenset(
    (
        *("winter", "summer", "spring", "autumn", "layup", "lay", "season", "january", "february", "march", "april"),
        *("june", "july", "august", "september", "october", "november", "december"),
    )
)
WHEN = frozenset(  # "in lay-up?", "and over the winter?": when, and nothing else
    (
        *("and", "or", "but", "then", "ok", "what", "about", "how", "come", "in", "over", "for", "through", "during"),
        *("all", "the", "a", "mid", "high", "full", "this", "next", "up", "off", "too", "time", "till", "until", "to"),
    )
)
UNDER = frozenset(
    (
        *("under", "with", "on", "cover", "covered", "canvas", "tarp", "tarpaulin", "tent", "canopy", "shed", "barn"),
        *("an", "my", "our", "its", "her", "boat", "boom", "beneath", "wraps", "wrap", "shrink", "of", "easter"),
    )
)
POLITE = ("note:thanks", "note:greeting", "note:small_talk")
APART = (*POLITE, "note:other_desk", "note:foreign", "note:not_ours")  # never a thread that goes on
BRIEF = 12  # words
INSTEAD = {"battery.ca": "battery.cca"}  # told where the other is asked for: "no CCA on it, just MCA 690"
STILL = 12  # points of a topic before that a short message goes on with, beside its own


def of_a_season(message: Message, context: Iterable[str]) -> bool:
    """Whether a message names a season and no more, where a panel was spoken of: "in lay-up?".

    What covers the panel then tells of it as well: "and November to March under a cover".
    """
    words = {word for word in message.words if word.isalpha()}
    if "solar" not in context or SEASONS.isdisjoint(words):
        return False
    rest = words - SEASONS - WHEN
    return not rest or (message.says("detail:under_cover") and rest <= UNDER)


def mends_the_kind(message: Message) -> bool:
    """Whether it only puts right what kind the battery is: "they are agm, label was wrong"."""
    told = {item.fact for item in message.stated}
    return (
        told == {KIND} and "?" not in message.words and len(message.words) <= FEW and bool(WRONG.search(message.text))
    )


def lasts(message: Message, best: str, context: Iterable[str]) -> bool:
    """Whether "and how long would it do a Minnow" asks a time where nothing of the kind was spoken of."""
    return best in TIMES and TIMES.isdisjoint(context) and message.says("request:how_long")


def still_open(context: Sequence[str]) -> list[str]:
    """The topics of the turn before that a new fact can change: what a word means stands, beside any other question."""
    return [topic for topic in context if topic != "meaning"] or list(context)


def replies(message: Message, asked: Iterable[str]) -> bool:
    """Whether a message tells what was asked back, and asks nothing itself."""
    told = {item.fact for item in message.stated} | {INSTEAD.get(item.fact, "") for item in message.stated}
    if told.isdisjoint(asked) or asks_outright(message):
        return False
    return message.words[0] not in OPENERS and not any(message.says(name) for name in APART)


def reply_first(message: Message, asked: Iterable[str]) -> int:
    """How many clauses at its start tell what was asked back, before a message asks something of its own."""
    told = [item.span[0] for item in message.stated if item.fact in asked and item.span]
    first = next((row for row, clause in enumerate(message.clauses) if clause.asks), 0)
    if not first or not told or message.clauses[first].span[0] <= min(told):
        return 0
    return 0 if any(message.says(name) for name in APART) else first


def goes_on(message: Message, ranking: Sequence[Tally], bars: Bars, context: Iterable[str] = ()) -> bool:
    """Whether a message in a thread has no question of its own: a bare value, "and at minus 10?", "same but 24 V"."""
    first = next(item for item in ranking if item.topic != HAZARD)
    if mends_the_kind(message) or of_a_season(message, context):
        return True
    if volts_there(message, context):
        return False
    if only_tells(message, first.topic, context) and not any(message.says(name) for name in APART):
        return True
    if any(message.says(name) for name in APART) or (first.total > bars.own and first.topic != "unclear"):
        return False
    if lasts(message, first.topic, context):
        return False
    short = len(message.words) <= BRIEF and message.says("note:ellipsis")
    return short or not asks(message)


def leads_on(message: Message, ranking: Sequence[Tally], context: Iterable[str]) -> bool:
    """Whether the thread's topic leads, though under the bar, and a fact is told: "2/0 is in there, is that ok?"."""
    return bool(message.stated) and best_of(ranking) in context


def best_of(ranking: Sequence[Tally]) -> str:
    """The topic with the most points, a hazard aside."""
    return next(item.topic for item in ranking if item.topic != HAZARD)


def still_asked(message: Message, ranking: Sequence[Tally], topic: str) -> bool:
    """Whether a short "and a second one in parallel?", which has a topic of its own, goes on with the one before."""
    total = next((item.total for item in ranking if item.topic == topic), 0)
    return total >= STILL and len(message.words) <= BRIEF and message.says("note:ellipsis")
