"""What 12 V off one battery of a bank is for: a radio on a tap tells nothing of where a converter takes its volts."""

from __future__ import annotations

from collections.abc import Sequence

from grammar.lexicon.clauses import Stretch
from grammar.lexicon.vocabulary import Found

PART, TAP = ("detail", "part_of_bank"), ("detail", "tap")
IT = frozenset({"it", "its", "it's", "that", "this", "which", "they", "these"})
CONVERTER, CONSUMER = ("thing", "dcdc"), ("about", "consumer")


def for_its_own(found: list[Found], clauses: Sequence[Stretch], words: Sequence[str]) -> list[Found]:
    """The phrases without "one of the two" where a question of its own asks to tap that battery: for a consumer that it
    names, or before another one speaks of a converter that "it" does not feed."""
    parts = [item for item in found if (item.kind, item.concept) == PART]
    if not parts:
        return found
    gone = {id(item) for item in parts for clause in clauses if _taps(item, clause, found, clauses, words)}
    return [item for item in found if id(item) not in gone]


def _taps(
    part: Found, clause: Stretch, found: Sequence[Found], clauses: Sequence[Stretch], words: Sequence[str]
) -> bool:
    """Whether this clause names the part, and asks of a tap for something else."""
    if not (clause.asks and clause.start <= part.start < clause.end):
        return False
    here = {(item.kind, item.concept) for item in found if clause.start <= item.start < clause.end}
    if TAP not in here or CONVERTER in here:
        return False
    if CONSUMER in here:
        return True
    first = min((item.start for item in found if (item.kind, item.concept) == CONVERTER), default=-1)
    after = (one for one in clauses if clause.end <= one.start <= first < one.end)
    return any(IT.isdisjoint(words[one.start : first]) for one in after)
