"""What is only quoted: limits to be chosen between, "is it 3 % or 10 %"; volts of any battery, "full is 12.7"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from grammar.items import Item
from grammar.scene import Scene

RULE = frozenset({3.0, 10.0})  # percent that a cable may lose, by what it feeds
CHOOSING = frozenset({"or", "vs", "versus", "which", "whichever", "either", "counts", "applies", "some", "others", "/"})

OF_ANY = re.compile(
    r"\b(?:full|flat|empty|dead) (?:is|at|from|means|=|would be|should be|should read)"
    r" (?:about |around |at |under |over |only )?$",
    re.IGNORECASE,
)


def own_readings(scene: Scene, readings: Sequence[Item]) -> list[Item]:
    """The readings without volts that are told of any battery, where one is left: "13.15 V; lead is full at 12.7"."""
    own = [item for item in readings if not OF_ANY.search(scene.text[: scene.span(item.start, item.end)[0]])]
    return own or list(readings)


def quotes_both_limits(scene: Scene) -> bool:
    """Whether both limits of the rule are named and one of them is to be chosen, so that neither is stated."""
    told = {one.value for item in scene.quantities("PERCENT") if item.part is not None for one in item.part.quantities}
    return told == RULE and bool(CHOOSING & scene.vocabulary)
