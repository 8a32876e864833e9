"""What 12 V off one battery of a bank is for: a radio on a tap tells nothing of where a converter takes its volts."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence, Set

from grammar.lexicon.clauses import Stretch
from grammar.lexicon.vocabulary import Found

PART, TAP = ("detail", "part_of_bank"), ("detail", "tap")
IT = frozenset({"it", "its", "it's", "that", "this", "which", "they", "these"})
CONVERTER, CONSUMER = ("thing", "dcdc"), ("about", "consumer")


def for_its_own(found: list[Found], clauses: Sequence[Stretch], words: Sequence[str]) -> list[Found]:
    """The phrases without "one of the two" where a question of its own asks to tap that battery: for a consumer that it
    names, or before another one speaks of a converter that "it" does not feed."""
    if not any(_name(item) == PART for item in found):
        return found
    first = min((item.start for item in found if _name(item) == CONVERTER), default=-1)
    gone: set[Found] = set()
    for clause in clauses:
        here = found[_place(found, clause.start) : _place(found, clause.end)]
        if clause.asks and _taps({_name(item) for item in here}, clause.end, first, clauses, words):
            gone.update(item for item in here if _name(item) == PART)
    return [item for item in found if item not in gone]


def _name(item: Found) -> tuple[str, str]:
    return item.kind, item.concept


def _place(found: Sequence[Found], at: int) -> int:
    return bisect_left(found, at, key=lambda item: item.start)


def _taps(
    here: Set[tuple[str, str]], end: int, converter: int, clauses: Sequence[Stretch], words: Sequence[str]
) -> bool:
    """Whether a clause that ends here asks to tap one of the bank for something else."""
    if not {PART, TAP} <= here or CONVERTER in here:
        return False
    if CONSUMER in here:
        return True
    after = (one for one in clauses if end <= one.start <= converter < one.end)
    return any(IT.isdisjoint(words[one.start : converter]) for one in after)
