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
from grammar.slips import mended
from grammar.tokens import cut, unlinked
from grammar.vocabulary import lexicon, model_names

MOST_WORDS = 3600  # and marks: the longest mail that is taken has fewer; of anything else the beginning is enough


def read(
    text: str,
    models: Sequence[str] = (),
    expecting: Sequence[str] = (),
    said: Sequence[Stated] = (),
    likely: Sequence[str] = (),
) -> Message:
    """What a text says. `models` are names of the house's catalogue; `expecting` the facts that the desk asked
    for last, which a bare value then states; `said` those of the conversation, newest first, which it may
    correct; `likely` the facts that the things asked about last go by, as a fuse does by its amps.
    Knows no rule and no topic; never raises for a text."""
    plain = unlinked(text)
    tokens = mended(cut(text)[:MOST_WORDS], models)
    words = [token.word for token in tokens]
    found = lexicon().find(words)
    clauses = stretches(plain, tokens, found)
    end = tokens[-1].end if len(tokens) >= MOST_WORDS else len(plain)
    pieces = parts(plain[:end], [(token.start, token.end, token.word) for token in tokens if token.mended])
    items = items_of(text, tokens, [*found, *model_names(tuple(models)).find(words)], pieces)
    asked = frozenset(expecting)
    scene = Scene(text, tokens, items, found, clauses, asked, weights(items), groups(items), tuple(said), tuple(likely))
    stated = words_of(scene)
    return Message(
        text,
        quantities=tuple(quantity for part in pieces for quantity in part.quantities),
        stated=tuple(settled(scene, stated, expecting, said)),
        cues=as_cues(text, tokens, found),
        clauses=as_clauses(tokens, clauses),
        dangers=find_dangers(plain, said),
        words=tuple(words),
        denied=stated.denied,
        implausible=tuple(scene.implausible),
    )
