"""A charger that goes by its bare figure: "from half empty on a 30?", "how many hours back to full off a 15"."""

from __future__ import annotations

import re

from grammar.scene.items import Item
from grammar.scene.scene import Scene

LEAST, MOST = 2.0, 60.0  # amps
ON = frozenset({"on", "off", "with", "from"})
ARTICLES = frozenset({"a", "an", "my", "the", "our"})
FILLED = re.compile(
    r"\b(?:full|fill\w*|refill\w*|recharg\w*|charg\w*|brim\w*|topped|top up|surface|restor\w*"
    r"|from (?:half|flat|empty|a quarter))\b",
    re.IGNORECASE,
)
WHEN = re.compile(r"\b(?:when|how long|how many hours|what time|how soon|hours)\b", re.IGNORECASE)
THINGS = frozenset({"load", "alternator", "panel", "fuse", "cable", "drain"})


def on_one(scene: Scene, item: Item, value: float) -> bool:
    """Whether a battery is filled on it: an article stands before, nothing behind, and a time to fill is asked."""
    if item.dim != "NUM" or not LEAST <= value <= MOST or scene.heads & THINGS or scene.quantities("AMP"):
        return False
    if scene.word(item.start - 1) not in ARTICLES or scene.word(item.start - 2) not in ON:
        return False
    after = scene.after(item)
    if after is not None and after.kind != "mark" and after.name not in ("and", "or", "how", "when"):
        return False
    sized = scene.quantities("AH") or any(old.fact == "battery.capacity" for old in scene.said)
    sized = sized or any(item.fact == "battery.chemistry" for item in scene.items)
    return bool(sized) and FILLED.search(scene.text) is not None and WHEN.search(scene.text) is not None
