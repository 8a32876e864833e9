"""A message cut in two between two questions: what each part says for its own topic, wherever the best cut is."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import NamedTuple

Placed = tuple[int, int, str]  # a sign: its place, its clause, its name


class Growth(NamedTuple):
    """The points of one topic in the part of a message that ends with each sign, and in that which begins with it."""

    ahead: list[int]
    back: list[int]


def in_order(rows: Iterable[Mapping[str, int]]) -> list[Placed]:
    """The signs of a message by their places. `rows`: those of each clause."""
    return sorted((at, number, name) for number, row in enumerate(rows) for name, at in row.items())


def growth(signs: Sequence[Placed], points: Callable[[str], tuple[int, int]]) -> Growth:
    """How the points of a topic grow from either end. `points`: of a sign, in its clause and anywhere in the part."""
    return Growth(_growing(signs, points), _growing(signs[::-1], points)[::-1])


def parted(signs: Sequence[Placed], one: Growth, other: Growth) -> int:
    """The points of two topics together where the cut is best, without what each begins with.

    What cannot be cut counts for both whole, as one would read it who finds both questions in the same words.
    """
    cuts = [at for at in range(1, len(signs)) if signs[at - 1][0] < signs[at][0]]
    if not cuts:
        return one.ahead[-1] + other.ahead[-1] if signs else 0
    return max(max(one.ahead[at - 1] + other.back[at], other.ahead[at - 1] + one.back[at]) for at in cuts)


def _growing(signs: Iterable[Placed], points: Callable[[str], tuple[int, int]]) -> list[int]:
    """The points of the part up to each sign: its best clause, and what counts anywhere."""
    seen: set[str] = set()
    shared, here, clause = 0, 0, -1
    before: tuple[int, ...] = ()  # the best of the clauses before, if any
    found = []
    for _, number, name in signs:
        own, anywhere = points(name)
        if number != clause:
            before = (max(*before, here),) if before else (here,) if clause >= 0 else ()
            here, clause = 0, number
        here += own
        if name not in seen:
            seen.add(name)
            shared += anywhere
        found.append(shared + max((here, *before)))
    return found
