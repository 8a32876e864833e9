"""Wood that swelled with the wet: "the oak tray under the batteries has swollen in the rain". No battery's swelling."""

from __future__ import annotations

from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

SWELLED = frozenset({"swollen", "swelled", "swells", "swell", "swelling"})
WOOD = frozenset(
    (
        *("oak", "ply", "plywood", "wooden", "wood", "teak", "timber", "pine", "mdf", "chipboard", "ash", "mahogany"),
        *("elm", "larch", "iroko", "beech", "board", "boards", "planks"),
    )
)
JOINERY = frozenset(
    ("tray", "trays", "box", "shelf", "lid", "door", "hatch", "floor", "locker", "drawer", "sole", "cradle", "holder")
)
WET = frozenset({"damp", "wet", "rain", "rains", "moisture", "spray", "flood", "soaking", "soaked"})
PLACED = frozenset({"under", "beneath", "below", "for", "round", "around", "over", "beside", "behind", "above", "of"})
OF_IT = 5  # words of what tells which one: "under our two batteries"
SAID = frozenset(
    ("has", "have", "had", "is", "was", "got", "badly", "really", "all", "also", "just", "rather", "itself", "been")
)
CAUSE = 6  # words after it in which the wet is named
NAMES = frozenset(  # stand before it, at the head of its clause: "and our old oak"
    (
        *("the", "my", "our", "his", "her", "a", "this", "that", "its", "their", "old", "new", "little", "marine"),
        *("battery", "bow", "stern", "engine", "thruster", "wooden"),
    )
)
HEADS = frozenset({"and", "but", "as", "because", "since", "so", "now", "when", "after", "if", "thinks", "hi", "hello"})
WHOSE = frozenset({"which", "that", "who", "and", "but", "with"})  # what swelled may then be the battery


def is_of_wood(hit: Hit, words: Text) -> bool:
    """Whether what swelled is woodwork, by its wood or by the wet that did it, and no battery can be its subject."""
    swelled = next((at for at in hit.at if words.words[at] in SWELLED), None)
    if swelled is None:
        return False
    first, last = words.sentences[swelled]
    first = max((at for at in words.commas if first < at <= swelled), default=first)
    end = swelled
    while end > first and words.words[end - 1] in SAID:
        end -= 1
    thing = _thing(first, end, words)
    if thing is None or not _is_subject(first, thing, words):
        return False
    wet = not WET.isdisjoint(words.words[swelled : min(last, swelled + 1 + CAUSE)])
    of_wood = not WOOD.isdisjoint(words.words[max(first, thing - 2) : thing])
    return of_wood or (wet and words.words[thing] != "box")


def _thing(first: int, end: int, words: Text) -> int | None:
    """The place of the woodwork that ends before `end`, or that a battery only tells apart: "the tray under my gel"."""
    if end > first and words.words[end - 1] in JOINERY:
        return end - 1
    for at in range(end - 2, max(first, end - 2 - OF_IT), -1):
        if words.words[at] in PLACED and words.words[at - 1] in JOINERY:
            return at - 1 if WHOSE.isdisjoint(words.words[at:end]) else None
    return None


def _is_subject(first: int, thing: int, words: Text) -> bool:
    """Whether it begins its clause: in "the battery in the oak tray has swollen" it is only a place."""
    at = thing
    while at > first and words.words[at - 1] in NAMES | WOOD:
        at -= 1
    return at == first or words.words[at - 1] in HEADS
