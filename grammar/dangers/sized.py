"""Heat that is a word for too many amps: "a 40 A unit on an 80 Ah AGM: too hot?" asks of a size."""

from __future__ import annotations

from grammar.dangers.text import Text
from grammar.lexicon.phrases import QUESTION, Hit

AMPS = frozenset({"amp", "amps"})
SIZES = frozenset({"ah", "amp", "amps"})
TOLD = frozenset(  # somebody's own, or something that is so
    (
        *("my", "our", "the", "this", "mine", "is", "its", "are", "was", "were", "gets", "got", "getting", "goes"),
        *("went", "feels", "felt", "runs", "ran", "has", "makes", "touch", "hand", "already", "still"),
    )
)
LEAST = 2  # sizes that are put beside each other


def is_of_size(hit: Hit, words: Text) -> bool:
    """Whether a sign stands in a question without a verb that puts amps beside amp hours."""
    first, last = words.sentences[hit.start]
    if words.words[last : last + 1] != (QUESTION,):
        return False
    asked = words.words[first:last]
    if not TOLD.isdisjoint(asked):
        return False
    sizes = [word for word in asked if word in SIZES]
    return len(sizes) >= LEAST and not AMPS.isdisjoint(sizes)
