"""What the words around a quantity tell of it: "12 V system", "24 foot boat", "3 % drop", "80 % charged"."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache

from grammar.files import TABLES, toml
from grammar.reading import Part, Quantity

WORD = re.compile(r"[a-z']+(?:-[a-z]+)*")
REACH = 3  # the word that tells is at most the third one


@dataclass(frozen=True, slots=True)
class Around:
    """The words that give quantities of some dimensions a kind."""

    kind: str
    values: frozenset[float]
    after: frozenset[str]
    before: re.Pattern[str]


@cache
def kinds() -> dict[str, list[Around]]:
    """The words that tell a kind, by dimension. Raises KeyError where kinds.toml lacks a key."""
    by_dim: dict[str, list[Around]] = {}
    for row in toml(TABLES / "kinds.toml")["kind"]:
        before = re.compile(rf"(?<![a-z])(?:{'|'.join(map(re.escape, row['before']))})$")
        around = Around(row["kind"], frozenset(row.get("values", ())), frozenset(row["after"]), before)
        for dim in row["dims"]:
            by_dim.setdefault(dim, []).append(around)
    return by_dim


@cache
def listed(name: str) -> frozenset[str]:
    """A list of words of kinds.toml."""
    return frozenset(toml(TABLES / "kinds.toml")["words"][name])


def with_kind(plain: str, part: Part) -> Part:
    """The quantity with the kind that the words before or after it tell."""
    words = following(plain, part.span[1])
    before = leading(plain, part.span[0], 30)
    for around in kinds().get(part.dim, ()):
        if around.values and part.quantities[0].value not in around.values:
            continue
        if among(words, around.after) or around.before.search(before):
            return replace(part, quantities=tuple([replace(one, kind=around.kind) for one in part.quantities]))
    return part


def leading(plain: str, start: int, length: int) -> str:
    """The text right before a place."""
    return plain[max(0, start - length) : start].rstrip(" -~")


def following(plain: str, end: int) -> list[str]:
    """The words right after a place, up to a mark or a number."""
    words = []
    for word in plain[end : end + 60].lstrip("- ").split(" ")[:5]:
        bare = word.rstrip(".,;:!?)")
        if not WORD.fullmatch(bare):
            break
        words.append(bare)
        if bare != word:
            break
    return words


def among(words: list[str], wanted: frozenset[str]) -> bool:
    """Whether one of the wanted words or phrases is near, with nothing between that begins something else."""
    for at in range(min(REACH, len(words))):
        if any(" ".join(words[at : at + size]) in wanted for size in (3, 2, 1)):
            return True
        if words[at] in listed("stops"):
            return False
    return False


def quantity(part: Part, value: float | str, unit: str, kind: str, dim: str) -> Part:
    """The part, read as another quantity."""
    return Part("quantity", "", part.span, dim, (Quantity(value, unit, kind, "", part.span),))
