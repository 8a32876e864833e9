"""Figures that are denied: "24 not 12 volts", "I said 12, it's 24"."""

from __future__ import annotations

from grammar.lexicon.vocabulary import Found
from grammar.scene.items import Item
from grammar.scene.near import around
from grammar.scene.scene import Scene

SAID = frozenset({"said", "wrote"})
METERS = frozenset(  # what says volts and corrects nothing: "it said 12.3 and it's a wet one"
    {
        "it",
        "meter",
        "multimeter",
        "voltmeter",
        "tester",
        "display",
        "screen",
        "gauge",
        "needle",
        "this",
        "that",
        "thing",
    }
)
CORRECTED = 5  # words after a figure in which the right one follows
ITS = frozenset({"its", "is", "meant", "actually", "should"})
DENIED_BEFORE = 3  # words between "not" and the figure it denies, less one
DENYING = frozenset({"not", "rather", "instead"})
NONE: frozenset[str] = frozenset()
UNKNOWN = frozenset({"unknown", "unkown", "unclear"})
TELLING = frozenset({"stated", "given", "known", "told", "listed", "shown", "specified", "printed", "mentioned"})
PEAKS = frozenset({"load.peak", "battery.peak_current"})
BETWEEN = frozenset(["a", "an", "the", "my", "at", "of", "about", "for", "with", "really", "just"])
ABSENT = frozenset({"here", "aboard", "available", "onboard", "anywhere", "side", "supply", "fitted"})
REPLACED = {  # "lithium instead of my 34 kg gel": the gel's weight holds, and so does the case that stood there
    "WEIGHT": frozenset({"instead", "rather"}),
    "GROUP": frozenset({"instead"}),
}


def denied(scene: Scene, item: Item) -> bool:
    """Whether a figure is one that does not hold: "24 not 12 volts", "I said 12, it's 24"."""
    if item.dim == "COUNT":
        return False
    if scene.word(item.start - 1) in SAID and _is_put_right(scene, item):
        return True
    if item.dim == "VOLT" and scene.word(item.start - 1) in ("no", "without") and scene.word(item.end) in ABSENT:
        return True  # "no 24 V here, 12 V only"
    return any(
        found.end <= item.start <= found.end + DENIED_BEFORE - 1
        and all(scene.word(at) in BETWEEN for at in range(found.end, item.start))
        for found in around(scene.denials, item, scene.denial_starts)
        if scene.word(found.start) in DENYING - REPLACED.get(item.dim, NONE)
        and scene.word(found.start - 1) not in ("or", "why")  # "why not a 500?"
    )


def _is_put_right(scene: Scene, item: Item) -> bool:
    """Whether somebody said this figure and tells what it is instead: "I said 12, it's 24", "I said 12 and it's 24"."""
    follow = range(item.end, item.end + 3)
    if scene.word(item.start - 2) in METERS or not ITS & {scene.word(at) for at in follow}:
        return False
    after = range(item.end + 1, min(item.end + 1 + CORRECTED, len(scene.at_word)))
    return scene.word(item.end) != "and" or any(scene.at_word[at].dim for at in after)


def is_missing(scene: Scene, found: Found) -> bool:
    """Whether a role is named for what nobody tells: "150 A, kick unknown", "peak not stated", "no peak given"."""
    after = scene.word(found.end)
    if after in UNKNOWN or (after in ("not", "isnt") and scene.word(found.end + 1) in TELLING):
        return True
    return found.concept in PEAKS and scene.word(found.start - 1) in ("no", "without") and after in TELLING
