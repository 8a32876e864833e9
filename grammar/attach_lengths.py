"""Which lengths are the run of a cable, and whether they were measured there and back."""

from __future__ import annotations

from grammar.attach import NOTHING, Claim, beside, by_group, close
from grammar.items import Item
from grammar.scene import Scene

METRIC_SIZES = frozenset(
    {0.75, 1.0, 1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 50.0, 70.0, 95.0, 120.0, 150.0, 185.0, 240.0}
)
SHORT = 4  # words: an answer to "how far is it?"


def lengths(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that a length states; `value` in its own unit. A boat's length is no fact."""
    if item.quantity.kind == "boat_length":
        return NOTHING
    claim = by_group(scene, item)
    if claim is not None and claim.fact == "-" and beside(scene, item, "boat", reach=0.3):
        return claim
    cabled = close(scene, item, "cable.length", "length_total", "length_one_way", reach=3)
    if claim is None and not cabled and beside(scene, item, "boat", reach=1.6):
        return NOTHING
    if claim is not None and (claim.fact == "cable.length" or not cabled):
        return claim
    if item.dim == "INCH" and not cabled and not beside(scene, item, "cable", reach=4):
        return NOTHING
    told = scene.about("role:length_one_way", "role:length_total") and len(scene.quantities("LENGTH")) == 1
    if cabled or told:
        return Claim("cable.length", "role")
    if beside(scene, item, "cable", reach=9) or scene.quantities("GAUGE", "AREA", "AMP", "MM"):
        return Claim("cable.length", "near")
    if (
        len(scene.tokens) <= SHORT
        or {"cable", "load", "battery", "fuse", "panel"} & scene.heads
        or scene.about("word:loss")
    ):
        return Claim("cable.length", "default")
    return NOTHING


def there_and_back(scene: Scene, item: Item) -> bool:
    """Whether a length was measured there and back, so that half of it is the run."""
    return close(scene, item, "length_total", reach=3.5) and not close(scene, item, "length_one_way", reach=1.2)


def millimetres(scene: Scene, item: Item, value: float) -> Claim | None:
    """Millimetres that name a size of cable: "70mm cable". Other millimetres are no fact."""
    if value not in METRIC_SIZES:
        return NOTHING
    if beside(scene, item, "cable", reach=3):
        return Claim("cable.area", "near")
    if {"space", "terminal"} & scene.heads or scene.about("word:fit"):
        return NOTHING
    if scene.quantities("AMP", "LENGTH") or "cable" in scene.heads or "load" in scene.heads:
        return Claim("cable.area", "range")
    return NOTHING
