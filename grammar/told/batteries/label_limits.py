"""The two limits on a lithium battery's label, told in a later message: "200 A continuous, 400 peak"."""

from __future__ import annotations

from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene

LIMIT, PEAK, OF_LOAD = "battery.max_current", "battery.peak_current", "load.peak"
LITHIUM = ("lfp", "lithium-other")


def label_limits(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, a peak as the battery's where its load was told of before and the message names none."""
    told = {old.fact: old.value for old in scene.said if old.of == 1}
    if told.get("battery.chemistry") not in LITHIUM or "load" in scene.heads or PEAK in {item.fact for item in stated}:
        return stated
    limits = [item for item in stated if item.fact == LIMIT]
    known = "load.model" in told or (limits and "load.current" in told)
    if not known or any(item.fact in ("load.current", "load.model") for item in stated):
        return stated
    if len(limits) > 1:  # "250 A cont, 450 A max"
        peak = max(limits, key=lambda item: float(item.value))
        return [replace(item, fact=PEAK, of=1) if item is peak else item for item in stated]
    return [replace(item, fact=PEAK) if item.fact == OF_LOAD else item for item in stated]
