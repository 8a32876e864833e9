"""A message cut in two between two questions: what each part says for its own topic, wherever the best cut is."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

Points = Callable[[str], tuple[int, int]]  # of a sign for one topic: in its own clause, anywhere in the part


def parted(rows: Sequence[Mapping[str, int]], one: Points, other: Points) -> int:
    """The points of two topics together where the cut is best, without what each begins with.

    `rows`: the signs of each clause with their places. What cannot be cut counts for both whole, as one would read it
    who finds both questions in the same words.
    """
    signs = sorted((at, number, name) for number, row in enumerate(rows) for name, at in row.items())
    ahead = [_growing(signs, points) for points in (one, other)]
    back = [_growing(signs[::-1], points)[::-1] for points in (one, other)]
    cuts = [at for at in range(1, len(signs)) if signs[at - 1][0] < signs[at][0]]
    if not cuts:
        return sum(points[-1] for points in ahead) if signs else 0
    return max(max(ahead[0][at - 1] + back[1][at], ahead[1][at - 1] + back[0][at]) for at in cuts)


def _growing(signs: Sequence[tuple[int, int, str]], points: Points) -> list[int]:
    """The points of the part of a message that ends with each sign: its best clause, and what counts anywhere."""
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
