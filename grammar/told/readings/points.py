"""What lies between a battery's cells, told in points: "forty points between best and worst", "50 points apart"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex

FACT = "reading.gravity_spread"
TENS = "ten|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety"
POINTS = regex(
    rf"\b(?P<points>\d{{1,3}}|(?:{TENS})(?:[- ]five)?|five|fifteen) (?:gravity )?points "
    r"(?:between|apart|of (?:difference|spread)|difference|spread|lower|down|adrift|behind|below|under|off|from)\b",
    re.IGNORECASE,
)
LEAST, MOST = 3.0, 150.0
A_POINT = 0.001
WEIGHED = frozenset({"cell", "cells", "hydrometer", "gravity", "sg", "float"})


def points(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """The difference of the cells, where gravity is spoken of."""
    told = {item.fact for item in stated}
    spoken = "reading.gravity" in told | {old.fact for old in scene.said} or bool(WEIGHED & scene.vocabulary)
    found = POINTS.search(scene.text) if spoken and FACT not in told else None
    if found is None:
        return
    number = value(found["points"].lower())
    if LEAST <= number <= MOST:
        yield Stated(FACT, round(number * A_POINT, 4), "", found[0], found.span(), how="default")
