"""Mends typing slips, but only towards a short list of trade names: "litihum" is lithium, "leaving" stays as it is."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Container
from functools import cache
from pathlib import Path
from typing import Any

from grammar.files import toml

SHORTEST = 6  # shorter words are one letter from too many others


@cache
def _lists() -> dict[str, Any]:
    lists = toml(Path(__file__).with_name("spelling.toml"))
    if strange := set(lists) - {"repair", "ordinary", "fixed"}:
        raise ValueError(f"spelling.toml: unknown key {sorted(strange)}, known are repair, ordinary and fixed")
    return lists


@cache
def _targets() -> dict[str, list[str]]:
    targets = defaultdict(list)
    for word in _lists()["repair"]:
        targets[word[0]].append(word)
    return dict(targets)


@cache
def _ordinary() -> frozenset[str]:
    return frozenset(_lists()["ordinary"])


def mended(word: str, known: Container[str], names: tuple[str, ...] = ()) -> str:
    """The trade word meant by a slip of one letter (swapped, lost, doubled or other), else the word itself.

    `known` are words that are right as they stand; `names` are further targets, such as the house's models.
    """
    fixed: dict[str, str] = _lists()["fixed"]
    if word in fixed:
        return fixed[word]
    if len(word) < SHORTEST or word in known or word in _ordinary() or not word.isalpha():
        return word
    targets = [*_targets().get(word[0], ()), *(name for name in names if name[0] == word[0])]
    return _closest(word, tuple(targets))


@cache
def _distance() -> Any:
    from rapidfuzz.distance import OSA  # only a text with an unknown long word pays for it

    return OSA.distance


def _closest(word: str, targets: tuple[str, ...]) -> str:
    near = [target for target in targets if abs(len(target) - len(word)) <= 1]
    return next((target for target in near if _distance()(word, target, score_cutoff=1) <= 1), word)
