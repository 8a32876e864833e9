"""Which machine a sign tells of: a cooler that starts by itself is no thruster that will not stop."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

BACK = 12  # words before a sign in which its subject is looked for
PRONOUNS = frozenset({"it", "its", "she", "shes", "thing", "they"})
RELATIVE = frozenset({"that", "which"})  # "a cycle that it runs on its own": what it runs is the cycle
PARTS = frozenset(  # after "thruster" they make it another thing: "the thruster battery"
    (
        *("battery", "batteries", "bank", "circuit", "fuse", "cable", "cables", "charger", "agm", "agms", "gel"),
        *("lithium", "breaker", "locker", "compartment", "supply", "feed", "side"),
    )
)


@dataclass(frozen=True, slots=True)
class Machines:
    """The classes of words for the machine that a family of signs is of, and for others that do the like."""

    own: str
    others: str


def is_of_another(hit: Hit, of: Machines, places: Mapping[str, Sequence[int]], words: Text) -> bool:
    """Whether the nearest thing named before a sign is another machine, and no word of the sign itself names the own.

    A pronoun may be either: then the sign is of the own machine, unless the text names that only by its battery, or the
    pronoun runs another.
    """
    named = places.get(of.own, ())
    own = frozenset(at for at in named if PARTS.isdisjoint(words.words[at + 1 : at + 2]))
    if not own.isdisjoint(hit.at):
        return False
    others = frozenset(places.get(of.others, ()))
    return _nearest(hit, own, others, words, bool(own) or not named) == "other"


def _nearest(hit: Hit, own: Collection[int], others: Collection[int], words: Text, may_be_own: bool) -> str:
    first = max(words.sentences[hit.start][0], hit.start - BACK)
    for at in range(hit.start - 1, first - 1, -1):
        runs_another = words.words[at - 1] in RELATIVE and at - 2 in others
        if at in own or (may_be_own and words.words[at] in PRONOUNS and not runs_another):
            return "own"
        if at in others:
            return "other"
    return ""
