"""Batteries that were split are taken apart, each read by itself: "12.72 and 12.05, split and left overnight"."""

from __future__ import annotations

from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

SPLIT = "split"
GOES_ON = frozenset({"up", "apart", "and", "then", "overnight", "for", "from", "the", "them", "both", "my", "our", "a"})
BEFORE = frozenset({"and", "is", "has", "are", "have", "its", "was", "but", "also"})  # "12.7 and 12.1 and split"
BODY = ("case", "casing", "side", "lid", "top", "bottom", "edge", "corner", "seam", "jar", "plastic")
SIGNS = (
    *("leak", "acid", "drip", "crack", "wet", "puddle", "burst", "frost", "froz", "ice", "weep", "smell", "swoll"),
    *("bulg", "hot", "melt"),
)
LEAST, MOST = 9.0, 60.0  # V
BOTH = 2


def is_of_a_parted_bank(hit: Hit, words: Text) -> bool:
    """Whether "split" is what was done to two batteries that were read, and no case is named and no other sign."""
    at = next((place for place in hit.at if words.words[place] == SPLIT), None)
    if at is None or any(word.startswith((*BODY, *SIGNS)) for word in words.words):
        return False
    before, after = words.words[max(0, at - 1) : at], words.words[at + 1 : at + 2]
    goes_on = BEFORE.isdisjoint(before) and not GOES_ON.isdisjoint(after)
    return goes_on and _readings(words) >= BOTH


def _readings(words: Text) -> int:
    """How many figures of the text are volts of a battery, as a meter shows them."""
    typed = (word.rstrip("v") for word in words.words if "." in word)
    return sum(word.replace(".", "", 1).isdecimal() and LEAST <= float(word) <= MOST for word in typed)
