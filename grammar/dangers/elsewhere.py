"""Heat of a thing ashore that is no part of a boat: "the car was smoking hot", "the pub was roasting hot"."""

from __future__ import annotations

from collections.abc import Collection

from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

THINGS = frozenset(
    (
        *(
            "car",
            "cars",
            "van",
            "bus",
            "train",
            "taxi",
            "coach",
            "tram",
            "pub",
            "cafe",
            "restaurant",
            "office",
            "church",
        ),
        *("classroom", "school", "gym", "tent", "curry", "soup", "tea", "coffee", "chips", "dinner", "lunch", "food"),
        *("pizza", "stew", "tarmac", "asphalt", "sand", "beach", "pavement", "road", "quay", "sauna", "town", "city"),
    )
)
IS = frozenset({"is", "was", "were", "are", "got", "gets", "felt", "feels", "became", "went"})
VERY = frozenset({"so", "absolutely", "really", "just", "simply", "truly", "still", "also", "all"})
ARTICLES = frozenset({"the", "a", "our", "my", "his", "her", "their", "this", "that"})
WITHIN = frozenset(  # before it they make it the place of what is hot: "the battery in the car was smoking hot"
    (
        *("in", "inside", "into", "of", "from", "by", "near", "beside", "behind", "under", "at", "on", "with", "off"),
        *("to", "for", "through", "across", "over"),
    )
)
HOT = frozenset({"smoking", "boiling", "roasting", "burning", "scalding", "blazing", "piping", "scorching", "baking"})

GOES_ON = frozenset(
    {"and", "so", "as", "like", "same", "with", "just", "the", "my", "our"}
)  # "..., and so was the gel"


def is_of_a_thing_ashore(hit: Hit, batteries: Collection[int], words: Text) -> bool:
    """Whether a sign is "hot" after such a word, said of a thing that has no battery of a boat, and none is named in
    its clause."""
    said = words.words
    hot = next((at for place in hit.at for at in (place, place + 1) if said[at - 1 : at + 1][1:] == ("hot",)), 0)
    first = words.sentences[hit.start][0]
    if hot - 1 <= first or said[hot - 1] not in HOT:
        return False
    verb = hot - 2
    while verb > first and said[verb] in VERY:
        verb -= 1
    if verb <= first or said[verb] not in IS or said[verb - 1] not in THINGS:
        return False
    clause = next((at for at in range(verb, first, -1) if at in words.commas), first)
    named = verb - 1 - (said[verb - 2] in ARTICLES)
    within = named > clause and said[named - 1] in WITHIN
    last = words.sentences[hit.start][1]
    end = next((at for at in range(hot + 1, last) if at in words.commas and said[at] not in GOES_ON), last)
    return not within and not any(clause <= at < end for at in batteries)
