"""What is only quoted: limits to be chosen between, "is it 3 % or 10 %"; volts of any battery, "full is 12.7"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from grammar.items import Item
from grammar.reading import Stated
from grammar.scene import Scene

RULE = frozenset({3.0, 10.0})  # percent that a cable may lose, by what it feeds
CHOOSING = frozenset({"or", "vs", "versus", "which", "whichever", "either", "counts", "applies", "some", "others", "/"})

OF_ANY = re.compile(
    r"\b(?:full|flat|empty|dead) (?:is|at|from|means|=|would be|should be|should read)"
    r" (?:about |around |at |under |over |only )?$",
    re.IGNORECASE,
)

BY = r"(?:label|sticker|maker|manufacturer|manual|data ?sheet|leaflet|booklet|sheet|case)"
MOST = r"(?:max(?:imum|\.)?(?: of)?|no more than|(?:not|never) (?:over|above|more than)|at most|limit(?: of| is)?)"
BEFORE_LIMIT = rf"\b{BY}\b[^.?!;]{{0,50}}?\b{MOST} ?"  # "the label on the battery says max "
LIMIT = re.compile(f"{BEFORE_LIMIT}$", re.IGNORECASE)


def without_limits(scene: Scene, stated: Sequence[Stated]) -> list[Stated]:
    """What is told without the volts that a label allows, where a charger's own are left: "14.7; label max 14.4"."""
    given = [item for item in stated if item.fact == "charger.voltage"]
    limits = [item for item in given if LIMIT.search(scene.ahead(item.span[0]))]
    return [item for item in stated if item not in limits] if len(limits) < len(given) else list(stated)


def own_readings(scene: Scene, readings: Sequence[Item]) -> list[Item]:
    """The readings without volts that are told of any battery, where one is left: "13.15 V; lead is full at 12.7"."""
    own = [item for item in readings if not OF_ANY.search(scene.ahead(scene.span(item.start, item.end)[0]))]
    return own or list(readings)


def quotes_both_limits(scene: Scene) -> bool:
    """Whether both limits of the rule are named and one of them is to be chosen, so that neither is stated."""
    told = {one.value for item in scene.quantities("PERCENT") if item.part is not None for one in item.part.quantities}
    return told == RULE and bool(CHOOSING & scene.vocabulary)
