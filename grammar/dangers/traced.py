"""A smell that was traced to something else and is over: "the egg smell in May was the loo hose, replaced since"."""

from __future__ import annotations

from grammar.dangers.mended import was_mended
from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

WAS = (("was",), ("were",), ("came", "from"), ("to", "be"), ("traced", "to"), ("down", "to"), ("caused", "by"))
CAUSES = frozenset(
    (
        *("tank", "tanks", "hose", "hoses", "pipe", "toilet", "loo", "heads", "bilge", "bilges", "drain", "drains"),
        *("sink", "holding", "blackwater", "sewage", "pumpout", "seaweed", "bin", "fridge", "sump", "macerator"),
    )
)
GONE = (("all", "gone"), ("gone", "since"), ("has", "gone"), ("long", "gone"), ("is", "gone"), ("not", "since"))
DOUBTS = frozenset(  # in its sentence: the cause is only guessed
    (
        *("probably", "maybe", "perhaps", "thought", "think", "guess", "guessed", "suppose", "assume", "not"),
        *("presume", "presumably", "reckon", "reckons", "reckoned", "said", "says", "but", "or", "possibly", "might"),
        *("blamed", "blame", "hoped", "either", "partly", "also", "and", "assumed"),
    )
)
COMES_BACK = frozenset(  # anywhere: it is there again
    ("still", "again", "back", "returned", "returns", "comes", "keeps", "now", "today", "stinks", "smells", "reeks")
)
BATTERY = frozenset({"battery", "batteries", "bank", "charger", "locker", "cells", "accu", "agm", "gel", "lithium"})
REACH = 8  # words from the sign to what it was, and from there to its cause
CAUSE = 4


def is_traced(hit: Hit, words: Text) -> bool:
    """Whether a past smell has a named cause that holds no battery, which was mended, and nothing tells of it again."""
    first, last = words.sentences[hit.start]
    if not COMES_BACK.isdisjoint(words.words):
        return False
    cause = _cause(hit.end, last, words)
    if cause is None or not DOUBTS.isdisjoint(words.words[first:cause]):
        return False
    stop = next((at for at in range(cause + 1, last) if at in words.commas), last)
    if not BATTERY.isdisjoint(words.words[cause:stop]):  # "the loo hose and one battery"
        return False
    after = words.words[cause:]
    pairs = {tuple(after[at : at + 2]) for at in range(len(after))}
    return was_mended(after) or not pairs.isdisjoint(GONE)


def _cause(end: int, last: int, words: Text) -> int | None:
    """The place of the cause that a verb of the past, or a colon, names after the sign."""
    for at in range(end, min(end + REACH, last)):
        told = any(words.words[at : at + len(verb)] == verb for verb in WAS)
        if not told and not (at in words.commas and at > end):
            continue
        named = range(at, min(at + 2 + CAUSE, last))
        found = next((place for place in named if words.words[place] in CAUSES), None)
        if found is not None and BATTERY.isdisjoint(words.words[end:found]):
            return found
    return None
