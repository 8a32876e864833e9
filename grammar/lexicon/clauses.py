"""Cuts a message into clauses and says which of them ask. A telling clause gives facts, never a question."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from grammar.lexicon.vocabulary import Found
from grammar.reading import Clause
from grammar.text.tokens import Token, ends

REACH = 4  # a request or an opener this many words after a comma or "and" begins a clause of its own


@dataclass(frozen=True, slots=True)
class Stretch:
    """A clause by its words: from `start` up to `end`, the last one not included."""

    start: int
    end: int
    asks: bool


def stretches(text: str, tokens: Sequence[Token], found: Sequence[Found]) -> list[Stretch]:
    """The clauses of a message. Where none asks (shorthand), all of them do."""
    requests = {item.start for item in found if item.kind == "request"}
    openers = {item.start for item in found if item.kind == "clause" and item.concept == "opener"}
    joiners = {item.start for item in found if item.kind == "clause" and item.concept == "joiner"}
    cut: list[Stretch] = []
    begin = 0
    for at, token in enumerate(tokens):
        over = ends(tokens, at, text)
        joined = token.word == "," or at in joiners
        if over or (
            joined
            and at > begin
            and any(place in requests or place in openers for place in range(at + 1, at + 1 + REACH))
            and any(place in requests for place in range(begin, at))
        ):
            end = at + 1 if over or token.word == "," else at
            if end > begin:
                cut.append(Stretch(begin, end, _asks(tokens, begin, end, requests, openers)))
            begin = end
    if begin < len(tokens):
        cut.append(Stretch(begin, len(tokens), _asks(tokens, begin, len(tokens), requests, openers)))
    if not any(item.asks for item in cut):
        cut = [Stretch(item.start, item.end, True) for item in cut]
    return cut


def _asks(tokens: Sequence[Token], start: int, end: int, requests: set[int], openers: set[int]) -> bool:
    if tokens[end - 1].word == "?" or any(place in requests for place in range(start, end)):
        return True
    first = next((place for place in range(start, end) if tokens[place].word.isalnum()), start)
    return first in openers


def as_clauses(tokens: Sequence[Token], cut: Sequence[Stretch]) -> tuple[Clause, ...]:
    """The clauses by their place in the text."""
    return tuple(Clause((tokens[item.start].start, tokens[item.end - 1].end), item.asks) for item in cut)
