"""Which amps these are: the load's, its first instant's, a charger's, a fuse's, a drain's, a limit of the battery."""
from __future__ import annotations

from grammar.attach import NOTHING, Claim, by_group, by_nearness, by_role
from grammar.near import around, gap
from grammar.scene import Item, Scene

WEAK_CHARGE = 0.4  # of the amp-hours: a charger hardly gives more
MOST_CHARGE = 60.0
MOST_DRAIN = 5.0
SMALLEST_CRANKING = 300.0
SHORT = 60.0  # seconds that a peak may last
ONLY_BESIDE = frozenset({"fuse", "battery"})  # named further away they claim no amps
PEAKS = ("load.peak", "battery.peak_current")


def amps(scene: Scene, item: Item, value: float) -> Claim | None:
    """The fact that a number of amps states."""
    claim = by_role(scene, item, value)
    if claim and claim.fact in PEAKS:
        return _peak(scene, item, claim)
    if claim is None and _for_seconds(scene, item) and _owner(scene, item) in ("battery", "bms"):
        return Claim("battery.peak_current", "role")
    claim = claim or by_group(scene, item) or by_role(scene, item, value, weak=True)
    claim = claim or by_nearness(scene, item, but=ONLY_BESIDE)
    if claim is None:
        return _by_topic(scene, item, value)
    if claim.fact == "load.current" and scene.sagging and claim.how == "near":
        return Claim("reading.current", "range")
    if claim.fact == "battery.ca" and value < SMALLEST_CRANKING:
        return _by_topic(scene, item, value)
    return claim


def _peak(scene: Scene, item: Item, claim: Claim) -> Claim:
    """A first instant is the load's, a bare peak is the nearest owner's."""
    owner = _owner(scene, item)
    if claim.fact == "load.peak":
        return claim if owner != "bms" else Claim("battery.peak_current", "role")
    return Claim("load.peak" if owner in ("load", "") else "battery.peak_current", "role")


def _owner(scene: Scene, item: Item) -> str:
    """Which of battery, management system and load stands nearest; "" for none."""
    nearest: tuple[float, str] = (12.0, "")
    for head in around(scene.owners, item, scene.owner_starts):
        name = head.head if head.head in ("bms", "load") else "battery"
        nearest = min(nearest, (gap(scene, item, head.start, head.end), name))
    if not nearest[1] and {"battery", "bms"} & (scene.heads | scene.facts):
        return "battery" if "load" not in scene.heads else ""
    return nearest[1]


def _for_seconds(scene: Scene, item: Item) -> bool:
    """Whether the amps are allowed for some seconds: "300 A for 5 s"."""
    for after in scene.items[item.at + 1 : item.at + 3]:
        if after.dim == "TIME" and after.quantity.unit == "second" and float(after.quantity.value) <= SHORT:
            return True
    return False


def _by_topic(scene: Scene, item: Item, value: float) -> Claim | None:
    """No head at all: what the message is about decides."""
    if scene.sagging:
        return Claim("reading.current", "range")
    hours = max((float(part.quantity.value) for part in scene.quantities("AH")), default=0.0)
    small = value <= MOST_CHARGE and (not hours or value <= WEAK_CHARGE * hours)
    if small and "load" not in scene.heads and scene.about("word:charge", "word:setting"):
        return Claim("charger.current", "default")
    if "drain" in scene.heads and value <= MOST_DRAIN:
        return Claim("drain.current", "default")
    if small and {"charger", "dcdc"} & scene.heads and "load" not in scene.heads and not scene.about("request:enough"):
        return Claim("charger.current", "default")
    if "engine" in scene.heads and "load" not in scene.heads:
        return NOTHING
    return Claim("load.current", "default")
