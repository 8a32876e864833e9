"""What somebody says of a kind of battery is no sign of one aboard: "my mate reckons lithium trips its BMS"."""

from __future__ import annotations

from collections.abc import Collection

from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

SAYS = frozenset(
    (
        *("says", "say", "said", "reckons", "reckon", "reckoned", "swears", "insists", "claims", "claimed", "thinks"),
        *("believes", "told", "tells", "heard", "hear", "read", "warns", "warned"),
    )
)
OF_ANY = frozenset({"that", "a", "an", "any", "every", "all", "most", "of", "the", "bms"})  # lead to the kind
CIRCUIT = frozenset({"bms", "management"})  # "the BMS" may be that of one's own
LONGEST = 60  # words of a sentence that is looked at
LEAD = 5  # words that lead from who says so to the kind
OWN_OR_NOW = frozenset(  # what is told of one's own battery, or as something that has happened
    (
        *(
            "my",
            "mine",
            "our",
            "ours",
            "we",
            "us",
            "me",
            "he",
            "she",
            "his",
            "hers",
            "theirs",
            "today",
            "yesterday",
            "twice",
        ),
        *("again", "now", "still", "tonight", "times", "ago", "last", "was", "were", "did", "had"),
    )
)


def is_hearsay(hit: Hit, kinds: Collection[int], words: Text) -> bool:
    """Whether the sentence of a sign has somebody say so of a kind, "a lithium", and tells of no battery of one's own.

    `kinds`: where the words for that kind stand.
    """
    first, last = words.sentences[hit.start]
    if last - first > LONGEST:
        return False
    said = [at for at in range(first, hit.end) if words.words[at] in SAYS]
    if not said or not OWN_OR_NOW.isdisjoint(words.words[said[0] + 1 : last]):
        return False
    return any(_is_of_a_kind(at, kinds, words) for at in said)


def _is_of_a_kind(said: int, kinds: Collection[int], words: Text) -> bool:
    """Whether nothing but "that any" leads from a word of saying to the kind; "the lithium" is one that is there."""
    for at in range(said + 1, min(said + 2 + LEAD, len(words.words))):
        if at in kinds and words.words[at] not in CIRCUIT:
            return words.words[at - 1] != "the"
        if words.words[at] not in OF_ANY:
            return False
    return False
