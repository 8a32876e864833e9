"""Whose sign it is: the heat of a nut is no heat of the battery beside it, and a fuse that popped is no battery."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from grammar.dangers.text import Text
from grammar.lexicon.phrases import ENDS, Hit

BACK = 18  # words before a sign in which its subject is looked for
ON = frozenset({"on", "to", "against", "at", "from", "in", "inside", "off", "of"})  # lead from a sign to what it is of
REACH = 4  # words from such a word to the thing itself: "on the old main fuse"
PLACE = frozenset(  # lead from a thing to where it is: "the fuse by the battery"
    (
        *("by", "beside", "near", "to", "on", "at", "under", "behind", "above", "below", "off", "of", "from"),
        *("over", "with", "between", "for", "onto", "against"),
    )
)
ARTICLES = frozenset({"the", "my", "our", "a", "an", "his", "her", "their", "your", "each", "every", "this", "that"})
ANOTHER = frozenset({"but", "while", "whereas", "heard", "hear", "hears", "hearing", "noise", "sound", "sounds"})
SOUND = frozenset({"fine", "ok", "okay", "good", "cold", "cool", "intact", "whole", "new", "not", "isnt", "wasnt"})
PLACED = 3  # words before a battery in which it is said to be a place: "by the bow battery"
JOINED = 3  # words before a thing in which another is joined to it
AFTER = 3  # words after a thing in which it is said to be sound


@dataclass(frozen=True, slots=True)
class Things:
    """Where the things of a text stand: batteries, and what is wired to them."""

    batteries: Collection[int]
    wiring: Collection[int]


def owned(
    hit: Hit, families: Mapping[str, Mapping[str, str]], places: Mapping[str, Collection[int]], words: Text
) -> Hit | None:
    """The sign as its own subject has it: of a hot nut that of a hot joint; None where it is then no danger.

    `families`: by family, that of a sign whose subject is a joint, by a class that it has a word of ("any": all).
    """
    by_class = families.get(hit.name.split("/")[0], {}).items()
    own = (family for name, family in by_class if name == "any" or not set(hit.at).isdisjoint(places.get(name, ())))
    family = next(own, None)
    things = Things(places.get("battery", ()), places.get("wiring", ()))
    if family is None or not _is_of_wiring(hit, words, things):
        return hit
    return Hit(family, hit.at) if family else None


def _is_of_wiring(hit: Hit, words: Text, things: Things) -> bool:
    """Whether the nearest thing that a sign can be of is a cable, a joint or a fuse, and no battery.

    What follows it decides first ("too hot to keep a finger on the nut"), then what stands before it; a battery that
    only tells where the thing is ("the holder next to the battery") is passed over.
    """
    following = _following(hit.end, words, things)
    return following == "wiring" or (not following and _before(hit.end, words, things) == "wiring")


def _following(end: int, words: Text, things: Things) -> str:
    """What the words after a sign name, led to by "on the"; "" for nothing."""
    if words.words[end : end + 1] == () or words.words[end] not in ON:
        return ""
    for at in range(end + 1, min(end + 1 + REACH, len(words.words))):
        if words.words[at] in ENDS or at in words.commas:
            break
        if kind := _kind(at, things):
            return kind
    return ""


def _before(end: int, words: Text, things: Things) -> str:
    """The subject that stands before the end of a sign; "" where none does."""
    first = max(words.sentences[end - 1][0], end - BACK)
    for at in range(end - 1, first - 1, -1):
        if words.words[at] in ANOTHER:
            break
        kind = _kind(at, things)
        if kind == "battery" and _is_a_place(at, words):
            continue
        if kind == "wiring" and _is_one_of_both(at, words, things):
            return "battery"
        if kind == "wiring" and not SOUND.isdisjoint(words.words[at + 1 : at + 1 + AFTER]):
            continue
        if kind:
            return kind
    return ""


def _kind(at: int, things: Things) -> str:
    if at in things.wiring:
        return "wiring"
    if at in things.batteries:
        return "" if at + 1 in things.wiring else "battery"  # "battery post"
    return ""


def _is_one_of_both(at: int, words: Text, things: Things) -> bool:
    """Whether a battery is named with it: "the battery and the fuse both popped"."""
    row = next((place for place in range(at - 1, at - 1 - JOINED, -1) if place > 0 and words.words[place] == "and"), 0)
    return row > 0 and _kind(row - 1, things) == "battery" and not _is_a_place(row - 1, words)


def _is_a_place(at: int, words: Text) -> bool:
    """Whether a battery only tells where something is: "by the battery", "next to the lithium bank"."""
    for back in range(1, min(at, PLACED) + 1):
        word = words.words[at - back]
        if word in PLACE:
            return True
        if word not in ARTICLES and back > 1:
            return False
    return False
