"""Volts that go down under load are no battery that goes off: "goes from 13.2 down to 11.9 when I push"."""

from __future__ import annotations

from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

DOWN, BY = "down", "by"
LEADS = frozenset(
    {"to", "from", "at", "around", "about", "as", "far", "roughly", "nearly", "almost", "only", "v", "volt", "volts"}
)
LOW = "0"  # what a text's "#low" stands for
LEAST, MOST = 9.0, 60.0  # V: what goes lower may well have switched off, what is more is no volts
OFF = frozenset(
    {"off", "out", "dead", "zero", "nothing", "trips", "tripped", "dies", "shuts", "cuts", "blank", "dark", "itself"}
)


def is_a_dip(hit: Hit, words: Text) -> bool:
    """Whether a sign goes by "down" alone, and that is followed by the volts it goes to or from."""
    downs = [at for at in hit.at if words.words[at] == DOWN]
    first, last = words.sentences[hit.start]
    if not downs or not OFF.isdisjoint(words.words[first:last]):
        return False
    return all(_volts_after(at, words) for at in downs)


def _volts_after(at: int, words: Text) -> bool:
    """Whether volts follow, with nothing but "to" or "from" and their like between, and none of them is too low."""
    if words.words[at + 1 : at + 2] == (BY,):
        return _number(" ".join(words.words[at + 2 : at + 3])) is not None
    found: list[float] = []
    for word in words.words[at + 1 :]:
        if (value := _number(word)) is not None:
            found.append(value)
        elif word not in LEADS:
            break
    return bool(found) and all(LEAST <= value <= MOST for value in found)


def _number(word: str) -> float | None:
    try:
        return float(LOW if word == "#low" else word.rstrip("v").replace(",", "."))
    except ValueError:
        return None
