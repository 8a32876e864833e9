"""The difference of one cell from its own battery's others: "five at 1.255, one at 1.180", the next one at 1.260."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene

SPREAD = "reading.gravity_spread"
GRAVITY = r"1[.,][0-3]\d{1,2}"
READ = r"(?: (?:cells?|of them|others?|ones?))?,? (?:all )?(?:at|reads?|shows?|gives?|is|are|stands? at)(?: about)?"
ODD_ONE = re.compile(
    rf"\b(?:five|5|two|the others?|the rest|most){READ} (?P<most>{GRAVITY})\b[^.?!;\d]{{0,24}}?"
    rf"\b(?:one|a single|the (?:last|sixth|third|odd|other|bad)(?: one)?){READ} (?P<odd>{GRAVITY})\b",
    re.IGNORECASE,
)
SAME = 0.0005


def odd_cell(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """How far the odd cell is from its neighbours, where the cells of another battery are told too."""
    found = ODD_ONE.search(scene.text)
    cells = [item for item in stated if item.fact == "reading.gravity"]
    if found is None or not cells or any(item.fact == SPREAD for item in stated):
        return
    most, odd = (float(found[name].replace(",", ".")) for name in ("most", "odd"))
    if abs(most - odd) > SAME:
        yield Stated(SPREAD, round(abs(most - odd), 4), "", found[0], found.span(), how="grammar")
