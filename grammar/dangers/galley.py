"""Smoke of a galley or a candle: "lit a candle, smoke everywhere", "the kettle was smoking". No battery's."""

from __future__ import annotations

from collections.abc import Collection

from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

LIT = frozenset({"lit", "lighting", "burning", "burned", "burnt", "blew"})
FLAMES = frozenset({"candle", "candles", "incense", "joss", "tealight", "tealights"})
POTS = frozenset({"kettle", "toast", "toaster", "frying", "pan", "oven", "bacon", "grill", "pizza"})
LEAD = frozenset({"was", "is", "were", "started", "has", "been", "kept", "a", "bit", "of"})  # from it to its smoke
BACK, AFTER = 12, 4  # words before and after a sign in which its cause and a thing of the circuit are looked for


def is_of_the_galley(hit: Hit, electric: Collection[int], words: Text) -> bool:
    """Whether smoke has a flame or a pot as its cause, and no part of the circuit is named near it."""
    first, last = words.sentences[hit.start]
    begins, ends = max(first, hit.start - BACK), min(last, hit.end + AFTER)
    if any(first <= at < ends for at in electric):
        return False
    before = words.words[begins : hit.start]
    if not FLAMES.isdisjoint(before) and not LIT.isdisjoint(before):
        return True
    return any(
        word in POTS and LEAD.issuperset(words.words[begins + at + 1 : hit.start]) for at, word in enumerate(before)
    )
