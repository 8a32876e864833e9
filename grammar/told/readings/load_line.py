"""A load test told in a line of figures, without a word for it: "750 CCA, 375 A 15 s, 9.4 V"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

LEAST = 40.0  # amps of a load test
LONGEST = 30.0  # seconds
SHARE = (0.44, 0.56)  # of the CCA
OTHERS = frozenset({"load", "charger", "dcdc", "alternator", "panel", "fuse"})
LIMITS = frozenset({"peak", "max", "maximum", "continuous", "cont", "burst", "limit", "bms"})


def tested_amps(scene: Scene) -> Item | None:
    """The amps of such a line: half of the CCA that is told, or some seconds of them; None where there are none."""
    if scene.lithium or scene.heads & OTHERS or not LIMITS.isdisjoint(scene.vocabulary):
        return None
    rated = [float(item.quantity.value) for item in scene.quantities("CCA")]
    for item in scene.quantities("AMP"):
        amps = float(item.quantity.value)
        if amps < LEAST or item.quantity.unit != "ampere":
            continue
        half = any(SHARE[0] * cca <= amps <= SHARE[1] * cca for cca in rated)
        if half or _for_seconds(scene, item):
            return item
    return None


def _for_seconds(scene: Scene, item: Item) -> bool:
    """Whether some seconds stand beside these amps: "375 A 15 s", "15 s at 400 A", "300 amps for 15 sec"."""
    return any(
        other.quantity.unit == "second" and float(other.quantity.value) <= LONGEST and abs(other.at - item.at) <= 2
        for other in scene.quantities("TIME")
    )
