"""Whether a text tells that something was mended: "we had it replaced", and not "must I get it repaired"."""

from __future__ import annotations

from collections.abc import Sequence

DONE = frozenset(
    (
        *("replaced", "repaired", "fixed", "mended", "changed", "swapped", "rewired", "overhauled", "sorted"),
        *("cured", "solved", "renewed", "fitted", "installed"),
    )
)
TO_DO = frozenset({"get", "be", "have", "getting", "being", "needs", "need", "not", "never", "isnt", "wasnt", "it"})
GOT = frozenset({"had", "got"})  # before "it replaced"


def was_mended(words: Sequence[str]) -> bool:
    """Whether any word tells of a repair that was made.

    >>> was_mended("it stuck and we had it replaced".split()), was_mended("it stuck should i get it replaced".split())
    (True, False)
    """
    return any(word in DONE and _made(words[max(0, at - 2) : at]) for at, word in enumerate(words))


def _made(before: Sequence[str]) -> bool:
    return not GOT.isdisjoint(before) or TO_DO.isdisjoint(before)
