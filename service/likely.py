"""The usual replies to a fact that several topics ask back, each with the value that it stands for."""

from __future__ import annotations

from service.case import Value

Replies = tuple[tuple[str, Value], ...]

KIND: Replies = (("wet-cell", "flooded"), ("AGM", "agm"), ("gel", "gel"), ("lithium", "lfp"))
KIND_BY_CAPS: Replies = (("wet-cell, with caps", "flooded"), *KIND[1:])  # where water or its place hangs on it
FROM_THE_ENGINE: Replies = (("a DC-to-DC charger", "dc-dc"), ("a switch or relay only", "alternator"))
CAPACITY: Replies = (("70 Ah", 70.0), ("100 Ah", 100.0), ("200 Ah", 200.0))
INSULATION: Replies = (("105 °C or more", 105.0), ("90 °C", 90.0), ("75 °C", 75.0), ("60 °C", 60.0))
