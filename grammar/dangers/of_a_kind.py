"""A "flooded" that only names the kind of a battery, set apart from it: "dinghy battery (flooded)"."""

from __future__ import annotations

from collections.abc import Collection

from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

KIND = "flooded"


def is_of_a_kind(hit: Hit, batteries: Collection[int], words: Text) -> bool:
    """Whether the sign ends with that word, in brackets or between commas right behind a battery."""
    at = hit.end - 1
    closed = hit.end in words.commas or hit.end == words.sentences[hit.start][1]
    return words.words[at] == KIND and at in words.commas and at - 1 in batteries and closed
