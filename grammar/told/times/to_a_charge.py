"""The charge at which a time or a count of bursts ends: "mins to 50 %", "how many bursts until 20 %"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

TIMES = frozenset(["min", "mins", "minutes", "hr", "hrs", "hours", "days", "weeks", "time", "long", "last"]) | {
    *("trips", "outings", "dockings", "sessions", "sails", "bursts"),
}
ASKED_BEFORE = 8  # words before "to 50 %" in which "how long" stands
CHARGED = frozenset({"charge", "charged", "charging", "charger", "fill", "full", "when", "if", "at"})


def ends_at(scene: Scene, item: Item) -> bool:
    """Whether a percentage is where a time ends, not where the battery stands: "mins to 50 %", "how many till 80 %"."""
    if scene.word(item.start - 1) not in ("to", "till", "until"):
        return False
    first, last = scene.clauses[scene.clause(item.start)].start, item.start - 1
    how = next((at for at in range(last - 1, max(first, last - ASKED_BEFORE) - 1, -1) if scene.word(at) == "how"), last)
    between = {scene.word(at) for at in range(how + 2, last)}
    asked = scene.word(how + 1) in ("long", "many") and not between & CHARGED
    return asked or scene.word(item.start - 2) in TIMES
