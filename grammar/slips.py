"""Puts what the speller mends into the words of a message: each keeps its place in the text as typed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar import spelling
from grammar.tokens import Token
from grammar.vocabulary import lexicon

SHORTEST_NAME = 5  # letters of a model's name that a slip is mended towards


def mended(tokens: Sequence[Token], models: Sequence[str] = ()) -> list[Token]:
    """The words with slips mended; one that was two words makes two."""
    names = tuple(word for model in models for word in model.lower().split() if len(word) >= SHORTEST_NAME)
    return [word for token in tokens for word in _words(token, names)]


def _words(token: Token, names: tuple[str, ...]) -> Iterator[Token]:
    meant = spelling.mended(token.word, lexicon().words, names)
    left, space, right = meant.partition(" ")
    if meant == token.word or (space and token.end - token.start != len(token.word)):  # with an apostrophe: no matter
        yield token
    elif space:
        middle = token.start + len(left)
        yield Token(left, token.start, middle, mended=True)
        yield Token(right, middle, token.end, mended=True)
    else:
        yield Token(meant, token.start, token.end, mended=True)
