"""A charger of three stages and more, which drops to float by itself: "it's a 7-stage one"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

KIND = "charger.kind"
STAGES = regex(r"\b(?:[3-9]|three|four|five|six|seven|eight|nine)[- ]?(?:stage|step|phase)s?\b", re.IGNORECASE)


def staged(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """That a charger is a smart one, by its stages; nothing where its kind is told."""
    if "charger" not in scene.heads or any(item.fact == KIND for item in stated):
        return
    if found := STAGES.search(scene.text):
        yield Stated(KIND, "smart", "", found[0], found.span(), how="token")
