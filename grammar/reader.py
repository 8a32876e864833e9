"""Reads a message: quantities, names, cues, clauses and facts. Any text gives a Message."""

from __future__ import annotations

from collections.abc import Sequence

from grammar.attach_values import words_of
from grammar.clauses import as_clauses, stretches
from grammar.cues import as_cues
from grammar.dangers import find_dangers
from grammar.groups import groups
from grammar.items import items_of
from grammar.near import weights
from grammar.parts import parts
from grammar.reading import Message, Stated
from grammar.scene import Scene
from grammar.settle import settled
from grammar.spelling import mended
from grammar.tokens import Token, cut
from grammar.vocabulary import lexicon, model_names


def read(text: str, models: Sequence[str] = (), expecting: Sequence[str] = (), said: Sequence[Stated] = ()) -> Message:
    """What a text says. `models` are names of the house's catalogue; `expecting` the facts that the desk asked
    for last, which a bare value then states; `said` those of the conversation, newest first, which it may
    correct. Knows no rule and no topic; never raises for a text."""
    tokens = _mended(cut(text), tuple(models))
    words = [token.word for token in tokens]
    found = lexicon().find(words)
    clauses = stretches(text, tokens, found)
    pieces = parts(text)
    items = items_of(text, tokens, [*found, *model_names(tuple(models)).find(words)], pieces)
    asked = frozenset(expecting)
    scene = Scene(text, tokens, items, found, clauses, asked, weights(items), groups(items), tuple(said))
    stated = words_of(scene)
    return Message(
        text,
        quantities=tuple(quantity for part in pieces for quantity in part.quantities),
        stated=tuple(settled(scene, stated, expecting, said)),
        cues=as_cues(text, tokens, found),
        clauses=as_clauses(tokens, clauses),
        dangers=find_dangers(text),
        words=tuple(words),
        denied=stated.denied,
    )


def _mended(tokens: list[Token], models: tuple[str, ...]) -> list[Token]:
    known = lexicon().words
    names = tuple(word for model in models for word in model.lower().split() if len(word) > 4)
    for token in tokens:
        token.word = mended(token.word, known, names)
    return tokens
