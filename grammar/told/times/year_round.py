"""A lay-up from a month to the same month: "from May to the May after"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.told.times.dates import MONTHS

FACT, DAYS = "storage.time", 365.0
ROUND = re.compile(
    rf"\b(?P<month>{'|'.join(name for name, _ in MONTHS)}) (?:to|till|until|through to) (?:the )?(?:next |following )?"
    r"(?P=month)\b(?: (?:after|next|following|again))?",
    re.IGNORECASE,
)


def year_round(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """A year, where no other time is told."""
    found = None if any(item.fact == FACT for item in stated) else ROUND.search(scene.text)
    if found:
        yield Stated(FACT, DAYS, "day", found[0], found.span(), how="default")
