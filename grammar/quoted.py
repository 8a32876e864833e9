"""Limits that are only quoted, to be chosen between: "is it 3 % or 10 %", "I read 3 % here and 10 % there"."""

from __future__ import annotations

from grammar.scene import Scene

RULE = frozenset({3.0, 10.0})  # percent that a cable may lose, by what it feeds
CHOOSING = frozenset({"or", "vs", "versus", "which", "whichever", "either", "counts", "applies", "some", "others", "/"})


def quotes_both_limits(scene: Scene) -> bool:
    """Whether both limits of the rule are named and one of them is to be chosen, so that neither is stated."""
    told = {one.value for item in scene.quantities("PERCENT") if item.part is not None for one in item.part.quantities}
    return told == RULE and bool(CHOOSING & scene.vocabulary)
