"""A bare verb that is asked is only feared: "wets on the charger for weeks. boil dry?" tells of nothing that is so."""

from __future__ import annotations

from grammar.dangers.text import Text
from grammar.lexicon.phrases import QUESTION, Hit

VERBS = frozenset(  # as they stand after "will it": no noun that could name what is there ("leak?", "smoke?")
    ("boil", "burst", "explode", "overheat", "swell", "bulge", "melt", "freeze", "ignite", "burn", "cook", "overcharge")
)
AFTER = 3  # words from the sign to the question's end: "boil dry on me?"


def is_feared(hit: Hit, words: Text) -> bool:
    """Whether its sentence or clause begins with such a verb, without a subject, and is asked."""
    _, last = words.sentences[hit.end - 1]
    if words.words[last : last + 1] != (QUESTION,) or last - hit.end > AFTER:
        return False
    return any(words.words[at] in VERBS and words.begins(at) for at in hit.at)
