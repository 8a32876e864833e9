"""Whether the amps beside a battery are taken out of it: asked is how long it lasts or what can be got from it."""

from __future__ import annotations

import re

from grammar.scene.items import Item
from grammar.scene.scene import Scene

CHARGERS = frozenset({"charger", "dcdc", "alternator", "panel"})
FILLED = re.compile(
    r"\b(?:full|fill\w*|refill\w*|recharg\w*|charg\w*|topped|shore|quay|mains|takes?|taken|into|soak|absorb|accepts?"
    r"|restore|back (?:up|to|in|by|at|from|on)|get there)\b",
    re.IGNORECASE,
)
TAKEN_OUT = re.compile(
    r"\b(?:squeeze|wring|milk|coax|get|pull|draw|suck|drag|drain|have|run)\w*\b[^.?!;,]{0,14}"
    r"\b(?:out of|from|off)\b(?! (?:flat|empty|zero|half))"
    r"|\bleft (?:in|of)\b"
    r"|\b(?:will|does|do|would|can|could|should|might|to|it|she|he|they|that)\s+(?:[\w-]+ ){0,4}"
    r"(?:last(?! (?:night|week|year|month|time|summer|winter))|endure|survive|hold out|live|play|breathe out)\b"
    r"|\blasts\b|\bhow far\b[^.?!;]{0,30}\bgo\b"
    r"|\bbefore (?:it|she|he|they)\b[^.?!;,]{0,12}\b(?:dark|flat|dead|empty|dies|gives up|runs? out|drops? dead)\b",
    re.IGNORECASE,
)
GOES_IN = frozenset({("going", "in"), ("goes", "in"), ("go", "in"), ("fed", "in"), ("put", "in"), ("sent", "in")})
SHORE = frozenset({"shore", "mains", "quay", "charger", "chargers", "charging", "charge"})
STINT = frozenset({"shift", "duty", "stint", "watch", "vigil", "appetite", "habit", "diet", "thirst"})


def spent(scene: Scene, item: Item) -> bool:
    """Whether amps empty a battery: "at 14 A, what can I squeeze out of 120 Ah", "its nine-amp shift"."""
    if CHARGERS & scene.heads or not _of_a_battery(scene):
        return False
    taken = scene.word(item.end) in STINT or TAKEN_OUT.search(scene.text) is not None
    return taken and FILLED.search(scene.text) is None


def through_a_cable(scene: Scene, item: Item) -> bool:
    """Whether amps that "go in" do so at a cable's end: "4 AWG, 16 ft, ninety amps going in"."""
    cabled = scene.quantities("LENGTH") and scene.quantities("GAUGE", "AREA")
    goes_in = (scene.word(item.end), scene.word(item.end + 1)) in GOES_IN
    return goes_in and bool(cabled) and not CHARGERS & scene.heads and not SHORE & scene.vocabulary


def _of_a_battery(scene: Scene) -> bool:
    return bool(scene.quantities("AH")) or any(old.fact == "battery.capacity" for old in scene.said)
