"""The load that is named inside the words of a reading: "9.3 with the thruster going" tells of a thruster."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene

KIND = "load.kind"
THRUSTER = re.compile(r"\bthruster\b", re.IGNORECASE)


def driven(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """The kind of load that runs during a reading, where no other words tell it."""
    facts = {item.fact for item in stated}
    if KIND in facts or "load.model" in facts or any(old.fact in (KIND, "load.model") for old in scene.said):
        return
    for item in stated:
        found = THRUSTER.search(item.text) if (item.fact, item.value) == ("reading.state", "load") else None
        if found is not None:
            start = item.span[0]
            yield Stated(KIND, "thruster", "", found[0], (start + found.start(), start + found.end()), how="token")
            return
