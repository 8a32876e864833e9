"""Batteries joined for more volts than one has: "two batteries chained for 24 volts"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene

FACT = "bank.layout"
FEW = 3  # with more of 12 V, the volts do not tell how they are joined
JOINED = re.compile(
    r"\b(?:batter(?:ies|ys)|agms|gels|wets|twelves|12s|accus|lithiums|pair)\b[^.?!;]{0,24}?"
    r"\b(?P<how>(?:chained|strung|coupled|hooked|ganged|linked|joined|connected|married|tied|stacked)"
    r"(?: up| together| on)*(?: for| to make| to give| into| making| giving)(?: up| me| us| a| one)*"
    r" (?:24|twenty[- ]four|36|48)(?: ?-?v(?:olts?)?)?)(?![\d.]| ?(?:a|ah|amps?|hours?)\b)",
    re.IGNORECASE,
)
OPEN = re.compile(
    r"\b(?:can|could|may|should|if|must|whether|shall|would|not|never|want|wants)\b[^.?!;]*$", re.IGNORECASE
)


def linked_for(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """That batteries stand in series, where it is told for which volts they are joined, and not only asked."""
    if any(item.fact == FACT for item in stated) or (found := JOINED.search(scene.text)) is None:
        return
    many = [item.value for item in stated if item.fact == "battery.count" and isinstance(item.value, float)]
    if (many and max(many) > FEW) or OPEN.search(scene.ahead(found.start("how"))):
        return
    yield Stated(FACT, "series", "", found["how"], found.span("how"), how="grammar")
