"""The load that a reading names: "8.4 with the thruster going", "10.1 while the windlass runs"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene

KIND, STATE = "load.kind", "reading.state"
NAMED = re.compile(r"\b(thruster|windlass)\b", re.IGNORECASE)


def load_of_reading(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """The kind of a load that stands inside the words for "under load"."""
    if any(item.fact in (KIND, "load.model") for item in stated):
        return
    for item in stated:
        if item.fact == STATE and (found := NAMED.search(item.text)):
            start = item.span[0] + found.start()
            yield Stated(KIND, found[0].lower(), "", found[0], (start, start + len(found[0])), how="default")
            return
