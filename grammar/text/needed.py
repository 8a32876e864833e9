"""What a text must hold for a regular expression to match in it: "frozen" or "froze" for r"\\b(?:frozen|froze) solid".

To look for a few words is some twenty times as fast as to try an expression at every place, and most expressions are
asked of texts that have none of their words.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from re import _constants as ops  # what `re` itself takes an expression apart with
from re import _parser as parser
from typing import Any

REPEATS = frozenset({ops.MAX_REPEAT, ops.MIN_REPEAT, ops.POSSESSIVE_REPEAT})
AHEAD = 1  # the direction of a lookahead

Pieces = frozenset[str]


def needed(pattern: str, flags: int) -> Pieces | None:
    """The pieces of text one of which stands in every text with a match, folded; None where none need stand there.

    Raises re.error for a pattern that is none.

    >>> sorted(needed(r"\\b(?:frozen|froze) solid", 2)), needed(r"\\d+", 0)
    ([' solid'], None)
    """
    return _of_row(parser.parse(pattern, flags))


@lru_cache(maxsize=16)  # one text is asked by many expressions
def folded(text: str) -> str:
    """A text as pieces are sought in it: without the difference of capitals, as IGNORECASE sees it."""
    plain = text.casefold()
    return plain if plain.isascii() else plain.replace("ı", "i").replace("i\u0307", "i")  # Turkish; "İ" folds so


def _of_row(row: Iterable[tuple[Any, Any]]) -> Pieces | None:
    """Of several things in a row the most telling: longer pieces before single letters, then fewer of them."""
    found: list[Pieces] = []
    letters = ""
    for op, about in row:
        if op is ops.LITERAL:
            letters += chr(about)
        elif op is not ops.AT:  # the edge of a word parts no letters
            found += [frozenset({folded(letters)})] if letters else []
            letters = ""
            if pieces := _of_one(op, about):
                found.append(pieces)
    found += [frozenset({folded(letters)})] if letters else []
    return max(found, key=lambda pieces: (min(map(len, pieces)) > 1, -len(pieces)), default=None)


def _of_one(op: Any, about: Any) -> Pieces | None:
    if op is ops.SUBPATTERN:
        return _of_row(about[-1])
    if op is ops.BRANCH:
        ways = [_of_row(way) for way in about[1]]
        return frozenset().union(*(way for way in ways if way)) if all(ways) else None
    if op in REPEATS:
        least, _, row = about
        return _of_row(row) if least else None
    if op is ops.ASSERT and about[0] == AHEAD:
        return _of_row(about[1])
    if op is ops.ATOMIC_GROUP:
        return _of_row(about)
    return None
