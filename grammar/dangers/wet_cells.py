"""A wet battery told by its size is under no water: "2nd boat: 200 flooded, 18 A charger"."""

from __future__ import annotations

from grammar.dangers.text import Text
from grammar.lexicon.phrases import ENDS, Hit

FLOODED = "flooded"
SIZES = (20.0, 300.0)  # amp-hours
UNITS = ("ah", "a")
NUMBERED = frozenset({"boat", "berth", "pier", "pontoon", "dock", "slip", "number", "no", "hull"})  # "boat 120 flooded"
AFTER = frozenset(  # what may stand behind it, where no comma or end does
    {"at", "and", "with", "battery", "batteries", "bank", "is", "has", "charger", "charged", "on", "for", "too", "also"}
)
WATER = frozenset(  # the text tells of water aboard
    (
        *("water", "sea", "seawater", "salt", "saltwater", "brine", "bilge", "bilges", "storm", "rain", "tide", "sank"),
        *("leak", "leaked", "leaking", "wave", "waves", "river", "lake", "harbour", "sunk", "swamped", "drowned"),
        *("submerged", "underwater", "soaked", "pump", "pumped", "night", "overnight", "yesterday", "flood", "dry"),
    )
)


def is_of_a_size(hit: Hit, words: Text) -> bool:
    """Whether its "flooded" stands behind the amp-hours of a battery, and nothing in the text tells of water."""
    at = next((at for at in hit.at if words.words[at] == FLOODED), None)
    if at is None or not WATER.isdisjoint(words.words):
        return False
    size = at - 1 - (words.words[at - 1] in UNITS)
    number = words.words[size] if size >= 0 else ""
    if not number.isdigit() or not SIZES[0] <= float(number) <= SIZES[1]:
        return False
    if size not in words.commas and not NUMBERED.isdisjoint(words.words[max(0, size - 1) : size]):
        return False
    after = words.words[at + 1] if at + 1 < len(words.words) else ""
    return not after or after in ENDS or after in AFTER or at + 1 in words.commas
