"""Lithium that is only weighed against another kind: "-8 for weeks, does that rule lithium out?" charges none there."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from grammar.dangers.text import Text

OTHERS = frozenset({"agm", "agms", "gel", "gels", "wet", "wets", "flooded", "lead"})
OWN = frozenset(("my", "our", "the", "his", "her", "their", "your", "both", "each", "new"))  # one that is there
NEXT = frozenset(("this", "that", "these", "those", "on"))  # so it is right after these: "that lithium", "on lithium"
DOES = frozenset(  # after the kind they tell what one that is there does: "lithium charges at -10 every night"
    ("charges", "charged", "charging", "gets", "is", "takes", "sits", "hangs", "has", "lives", "stays", "goes", "went")
)
HAPPENED = frozenset(  # what has been done or goes on now is not weighed
    (
        *(
            "was",
            "were",
            "been",
            "had",
            "did",
            "has",
            "hes",
            "shes",
            "yesterday",
            "last",
            "ago",
            "overnight",
            "tonight",
        ),
        *("now", "currently", "already", "left", "kept", "took", "bought", "fitted", "mine", "ours", "ran", "just"),
        *("still", "since", "today", "again", "twice", "ive", "weve", "forgot", "plugged", "charger", "reads", "shows"),
    )
)
ASKED = (  # asks for a kind, whatever stands beside the kind
    *(("rule",), ("rules",), ("suitable",), ("salesman",), ("sensible",), ("go", "for"), ("choose",), ("better",)),
    *(("which", "kind"), ("which", "type"), ("what", "kind"), ("what", "type"), ("which", "battery"), ("an", "option")),
)
AHEAD = 3  # words before the kind in which its owner is named


def may_be_chosen(words: Text) -> bool:
    """Whether a message could ask for a kind at all, as far as its words tell without looking for the kinds."""
    told = frozenset(words.words)
    return HAPPENED.isdisjoint(told) and ("or" in told or _is_asked(words.words))


def is_chosen(lithium: Collection[int], words: Text) -> bool:
    """Whether a message asks if the kind or which kind it should be, and tells of none that is there or was charged.

    `lithium`: where the words for that kind stand.
    """
    if not lithium or not may_be_chosen(words):
        return False
    if any(_is_there(at, words.words) for at in lithium):
        return False
    return any(_is_beside_another(at, words.words) for at in lithium) or _is_asked(words.words)


def _is_there(at: int, words: Sequence[str]) -> bool:
    """Whether the kind is that of a battery of the writer's."""
    before, after = words[max(0, at - AHEAD) : at], words[at + 1 : at + 2]
    return not OWN.isdisjoint(before) or not NEXT.isdisjoint(before[-1:]) or not DOES.isdisjoint(after)


def _is_beside_another(at: int, words: Sequence[str]) -> bool:
    """Whether "or" joins the kind to another: "AGM or LFP"."""
    before, after = words[max(0, at - 2) : at], words[at + 1 : at + 3]
    return any("or" in side and not OTHERS.isdisjoint(side) for side in (before, after))


def _is_asked(words: Sequence[str]) -> bool:
    pairs = {tuple(words[at : at + size]) for at in range(len(words)) for size in (1, 2)}
    return not pairs.isdisjoint(ASKED)
