"""A charger that is on, or was just now, and is not only named: "since the charger runs", "the charger is still on"."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

BEFORE = frozenset({"on", "when", "whenever", "while", "whilst", "since", "after"})
ON = frozenset({"on", "in", "running", "runs", "run", "ran", "goes", "going", "works", "working", "starts", "started"})
OFF = frozenset({"off", "unplugged", "disconnected", "not", "never"})
FEW = 3  # words


def on(words: Sequence[str], chargers: Iterable[int]) -> list[int]:
    """Which of the chargers, by the places of their words, are told to be on.

    >>> on("the charger is still running".split(), [1]), on("is a 20 A charger enough".split(), [4])
    ([1], [])
    >>> on("fishy since the charger went on".split(), [3]), on("the charger is off since May".split(), [1])
    ([3], [])
    """
    return [at for at in chargers if not OFF & set(words[at + 1 : at + 1 + FEW]) and _is_on(words, at)]


def _is_on(words: Sequence[str], at: int) -> bool:
    return not (BEFORE.isdisjoint(words[max(0, at - 2) : at]) and ON.isdisjoint(words[at + 1 : at + 1 + FEW]))
