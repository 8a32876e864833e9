"""A share that follows its unit: "three years and half", "two hours and a quarter", "6 m and a half"."""

from __future__ import annotations

import re

from grammar.scene.items import Item
from grammar.scene.scene import Scene

DIMS = frozenset({"TIME", "LENGTH"})
SHARES = {"half": 0.5, "quarter": 0.25}
FOLLOWS = re.compile(
    r" and (?:an? )?(half|quarter)(?=\W*$|[.,;:?!)]| (?:old|ago|now|long|of|each|one|in|is|it|they|she|the)\b)",
    re.IGNORECASE,
)


def share_after(scene: Scene, item: Item) -> float:
    """The part of one unit that is told behind a figure; 0 for none. "Four years and half full" has none."""
    if item.dim not in DIMS or item.part is None or len(item.part.quantities) != 1:
        return 0.0
    found = FOLLOWS.match(scene.text, item.part.span[1])
    return SHARES[found[1].lower()] if found else 0.0
