"""A second question that is put in few words beside the first: "..., and what should have been fitted?", "keep it?".

asked_beside.toml holds the words, a row for each topic and those that it is asked beside.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence, Set
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from grammar.files import toml
from grammar.reading import Message
from grammar.text.patterns import regex
from service.routing.listed import SENTENCE

ANY = "*"  # in the place of the topics that one is asked beside
ROWS = Path(__file__).with_suffix(".toml")
HOW_LONG = regex(r"\bhow (?:long|many|much|far|often|big)\b[^,.?!;]{0,40}$", re.IGNORECASE)
ORDERS = regex(  # what asks without a mark
    r"\b(?:name|tell|give|quote|express|convert|say)\b|\bmeaning what\b"
    r"|^\W*(?:(?:and|or|so|but|also|plus|then) )*(?:what|which|how|where|when|why|who|is|are|does|do|can|could|will"
    r"|would|should|shall|may|might|must|whether|if)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Row:
    """How a topic is asked beside others: by any of the words, where of each set of `told` one fact is told."""

    topic: str
    beside: frozenset[str]
    expressions: Sequence[str]
    words: re.Pattern[str]  # any of the expressions
    told: Sequence[frozenset[str]]
    untold: frozenset[str]
    whether: bool  # the words count only where no "how long" stands before them


@cache
def rows() -> tuple[Row, ...]:
    """The rows of the table. Raises KeyError for one that lacks its topic, its words or what it stands beside."""
    return tuple(
        Row(
            row["topic"],
            frozenset(row["beside"]),
            tuple(row["words"]),
            regex("|".join(row["words"]), re.IGNORECASE),
            tuple(map(frozenset, row.get("told", ()))),
            frozenset(row.get("untold", ())),
            row.get("whether", False),
        )
        for row in toml(ROWS)["row"]
    )


def asked_beside(message: Message, found: Set[str]) -> set[str]:
    """The topics that a message asks in few words beside those that were found."""
    told = {item.fact for item in message.stated}
    return {row.topic for row in rows() if row.topic not in found and holds(row, message.text, found, told)}


def holds(row: Row, text: str, found: Set[str], told: Set[str]) -> bool:
    """Whether a text asks the topic of a row, beside those found and with these facts told."""
    if not found or not (found <= row.beside or ANY in row.beside):
        return False
    if told & row.untold or any(told.isdisjoint(facts) for facts in row.told):
        return False
    return any(not (row.whether and HOW_LONG.search(text, 0, at)) for at in _asked(row.words, text))


def _asked(words: re.Pattern[str], text: str) -> Iterator[int]:
    """Where the words stand in what asks: a sentence with its mark, a last one without an end, an order, or any where
    the message has no mark."""
    marked = "?" in text
    for hit in words.finditer(text):
        sentence = next((one[0] for one in SENTENCE.finditer(text) if one.start() <= hit.start() < one.end()), "")
        if not marked or "?" in hit[0] or "?" in sentence or sentence[-1:] not in ".!" or ORDERS.search(sentence):
            yield hit.start()
