"""Mends typing slips, but only towards short lists of trade and danger words: "litihum" is lithium, "leaving" stays.

One slip is mended: a letter that is swapped with the next, lost, doubled or another. A g that is dropped at the end
("runnin") is put back to any word of the lexicon. The ordinary English words that
are so near to one on the lists are on a list of their own, and stay as they are. A space left out is put back where
both halves are words of the lexicon and one of them is on the lists.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Container
from functools import cache
from typing import Any

from grammar.files import TABLES, toml

SHORTEST, LONGEST = 5, 24  # shorter words are one letter from too many others; longer ones are no words
SHORTEST_HALF = 4  # letters on either side of a space put back
HALF_WORDS = frozenset(("over", "under", "semi", "auto", "multi", "hydro", "para", "less", "able", "like", "wise"))
KEYS = {"repair", "dangers", "halves", "ordinary", "fixed", "spoken"}


@cache
def _lists() -> dict[str, Any]:
    lists = toml(TABLES / "spelling.toml")
    if set(lists) != KEYS:
        raise ValueError(f"spelling.toml: it holds {sorted(lists)}, it must hold {sorted(KEYS)}")
    return lists


def targets() -> tuple[str, ...]:
    """The words that slips are mended towards."""
    return (*_lists()["repair"], *_lists()["dangers"])


@cache
def _by_letter() -> dict[str, list[str]]:
    found = defaultdict(list)
    for word in targets():
        found[word[0]].append(word)
    return dict(found)


@cache
def _as_they_stand() -> dict[str, str]:
    return {**_lists()["fixed"], **_lists()["spoken"]}


@cache
def _right() -> frozenset[str]:
    return frozenset((*targets(), *_lists()["ordinary"]))


@cache
def _halves() -> frozenset[str]:
    return frozenset((*_lists()["repair"], *_lists()["halves"]))


def mended(word: str, known: Container[str], names: tuple[str, ...] = ()) -> str:
    """The word meant by a slip, two words where the space between was left out, else the word itself.

    `known` are words that are right as they stand; `names` are further targets, such as the house's models.
    """
    if word in _as_they_stand():
        return _as_they_stand()[word]
    if not SHORTEST <= len(word) <= LONGEST or not (word.isascii() and word[0].isalpha()):  # "câble" is French
        return word
    if word in known or word in _right() or word.removesuffix("s") in names:
        return word
    if word.endswith("in") and word + "g" in known:  # "chargin", "settin": as it is spoken
        return word + "g"
    return _closest(word, names) or _parted(word, known) or word


@cache
def _distance() -> Any:
    from rapidfuzz.distance import OSA  # only a text with an unknown long word pays for it

    return OSA.distance


def _closest(word: str, names: tuple[str, ...]) -> str:
    """The target one slip away; "" for none. The first letter is right, or swapped with the second."""
    near = [*_by_letter().get(word[0], ()), *(name for name in names if name[0] == word[0])]
    if word[1] != word[0]:
        near += [target for target in _by_letter().get(word[1], ()) if target[1] == word[0]]
    found = (
        target
        for target in near
        if abs(len(target) - len(word)) <= 1
        and _digits(target) == _digits(word)
        and _distance()(word, target, score_cutoff=1) <= 1
    )
    return next(found, "")


def _digits(word: str) -> str:
    """The digits of a word, which no slip changes: "livepo4" may be lifepo4, "lifepo5" may not."""
    return "" if word.isalpha() else "".join(filter(str.isdigit, word))


def _parted(word: str, known: Container[str]) -> str:
    """The two words of one in which the space was left out; "" for none."""
    if not word.isalpha():
        return ""
    for at in range(SHORTEST_HALF, len(word) - SHORTEST_HALF + 1):
        left, right = word[:at], word[at:]
        if not HALF_WORDS.isdisjoint((left, right)):  # "overcharge" is one word
            continue
        if (left in _halves() and right in known) or (right in _halves() and left in known):
            return f"{left} {right}"
    return ""
