"""Which amps are a limit of the battery: for good or for seconds, as a pair, on its label."""

from __future__ import annotations

from grammar.scene.claims import (
    FIGURES,
    Claim,
    close,
)
from grammar.scene.items import Item
from grammar.scene.near import around, gap
from grammar.scene.scene import Scene

GIVES = frozenset({"give", "gives", "deliver", "delivers", "supply", "supplies"})
STEADY = frozenset({"bms", "steady", "cont", "continuous", "continuously", "constant"})
SHORTLY = frozenset({"short", "brief", "briefly", "peak", "pk", "burst", "surge", "max"})
PAIR = 9  # pieces between two limits of one battery
SHORT = 60.0  # seconds that a peak may last
AFTER = 3.0  # an owner that follows is further away than one before
DRAWING = frozenset({"draw", "draws", "drawing", "averages", "averaging", "takes", "pulls", "uses"})
RUNNING = DRAWING | {"draw", "drew", "run", "runs", "running"}
OF_LOADS = frozenset({"thruster", "thrusters", "motor", "motors", "windlass", "its"})
LABELS = frozenset({"sticker", "label", "printed", "marked", "stamped"})
LEAD = frozenset({"flooded", "agm", "gel", "lead"})
BURSTS = frozenset({"burst", "bursts", "push", "pushes", "shove", "shoves", "nudge", "nudges", "goes", "dabs", "blips"})
EACH_GO = frozenset({("a", "go"), ("a", "push"), ("a", "time"), ("each", "time"), ("per", "go"), ("a", "lock")})
PEAKS = ("load.peak", "battery.peak_current")


def is_limited(scene: Scene, item: Item) -> bool:
    """Whether the batteries spoken of have a limit: a lithium's, or the one asked for."""
    if scene.lithium or "bms" in scene.heads or "battery.max_current" in scene.expected:
        return True
    return scene.lithium_known and scene.word(item.start - 1) not in ("max", "maximum")


def limit_pair(scene: Scene, item: Item) -> Claim | None:
    """Two limits of one battery: "100 A continuous, 200 for 5 sec"."""
    near = scene.items[max(0, item.at - PAIR) : item.at + PAIR + 1]
    others = [other for other in near if other is not item and other.dim in FIGURES]
    if named := _named_first(scene, item, [other for other in others if other.dim == "AMP"]):
        return named
    if scene.word(item.start - 1) in RUNNING:  # "the thruster draws 250 A for 6 seconds"
        return None
    owned = {"charger", "alternator", "dcdc", "panel"} & scene.heads
    if scene.lithium and not owned and scene.word(item.start - 1) in GIVES:
        return Claim("battery.max_current", "role")  # "each lithium may give 100 A"
    steady = close(scene, item, "battery.max_current", reach=2.0)
    if _slashed(scene, item):
        return Claim("battery.max_current", "role")
    if steady and any(_for_seconds(scene, other) for other in others if other.at > item.at):
        return Claim("battery.max_current", "role")
    if (_for_seconds(scene, item) or _after_seconds(scene, item)) and any(
        close(scene, other, "battery.max_current", reach=2.0) for other in others if other.at < item.at
    ):
        return Claim("battery.peak_current", "role")
    return None


def _named_first(scene: Scene, item: Item, others: list[Item]) -> Claim | None:
    """Two limits with their names in front: "BMS 150 A peak 300 A"."""
    before = scene.word(item.start - 1)
    if before in STEADY and any(scene.word(other.start - 1) in SHORTLY for other in others if other.at > item.at):
        return Claim("battery.max_current", "role")
    if before in SHORTLY and any(scene.word(other.start - 1) in STEADY for other in others if other.at < item.at):
        return Claim("battery.peak_current", "role")
    return None


def _slashed(scene: Scene, item: Item) -> bool:
    """Whether it is the first of "100 A/200 A 5 s": a limit for seconds stands behind the stroke."""
    later = scene.items[item.at + 1 : item.at + 4]
    if len(later) < 3 or later[0].name != "/" or later[1].dim not in FIGURES or not _is_short(later[2]):
        return False
    return is_limited(scene, item)


def peaks(scene: Scene, item: Item) -> bool:
    """Whether amps for some seconds are what a battery allows."""
    if not _for_seconds(scene, item):
        return False
    if close(scene, item, "load.current", reach=0.3) or _is_lead(scene) or _in_bursts(scene, item):
        return False
    told = any(fact.fact == "battery.max_current" for fact in scene.said) and "load" not in scene.heads
    return told or owner_of(scene, item) in ("battery", "bms") or "battery.peak_current" in scene.expected


def _in_bursts(scene: Scene, item: Item) -> bool:
    """Whether the only amps of a message are drawn in bursts that are to be counted: "180A, 8s bursts, how many"."""
    near = [one for one in scene.items[item.at + 1 : item.at + 3] if _is_short(one)]
    if any((scene.word(one.end), scene.word(one.end + 1)) in EACH_GO for one in near):
        return len(scene.quantities("AMP")) == 1
    bursts = any(scene.word(one.end) in BURSTS for one in near)
    return bursts and len(scene.quantities("AMP")) == 1 and scene.about("request:how_many", "request:how_long")


def _is_lead(scene: Scene) -> bool:
    """Whether lead batteries alone are spoken of: no limit for seconds stands on them."""
    kinds = {item.name for item in scene.items if item.fact == "battery.chemistry"}
    return bool(kinds) and kinds <= LEAD and "bms" not in scene.heads


def as_peak(scene: Scene, item: Item, claim: Claim) -> Claim:
    """A first instant is the load's, a bare peak is the nearest owner's, or the one that was asked for or told."""
    owner = owner_of(scene, item)
    told = {fact.fact for fact in scene.said} & set(PEAKS)
    spoken = "battery.peak_current" in scene.expected or told == {"battery.peak_current"}
    if not owner and claim.fact != "load.peak" and spoken:
        return Claim("battery.peak_current", "role")
    if claim.fact == "load.peak" and {"inrush", "rotor"} & {scene.word(item.start - 1), scene.word(item.end)}:
        return claim
    if claim.fact == "load.peak":
        return claim if owner != "bms" else Claim("battery.peak_current", "role")
    drawn = any(
        scene.word(found.start) in DRAWING and scene.clause(found.start) == scene.clause(item.start)
        for found in around(scene.roles, item, scene.role_starts)
        if found.end <= item.start
    )
    loads = owner in ("load", "") or (drawn and owner != "bms")  # "draw averages 18, spikes 55"
    if not drawn and _of_the_battery(scene):
        loads = False  # the house knows what its model takes: "a lithium one for the Minnow, 600 A peak on the sticker"
    return Claim("load.peak" if loads else "battery.peak_current", "role")


def _of_the_battery(scene: Scene) -> bool:
    """Whether the amps on a label are a lithium battery's limit, as the load is one of the house's models."""
    return scene.lithium and bool(LABELS & scene.vocabulary) and any(item.kind == "model" for item in scene.items)


def printed_limit(scene: Scene, claim: Claim | None) -> Claim | None:
    """What amps are; on a lithium battery's label its limit, where they would be those of a model of the house's."""
    load = claim is None or claim.fact in ("load.current", "battery.ca")
    return (
        Claim("battery.max_current", "default")
        if load and _of_the_battery(scene) and not _labels_the_load(scene)
        else claim
    )


def _labels_the_load(scene: Scene) -> bool:
    """Whether the label is the load's: "on the thruster's label"."""
    at = [place for place, token in enumerate(scene.tokens) if token.word in LABELS]
    return any(scene.word(place - back) in OF_LOADS for place in at for back in (1, 2))


def owner_of(scene: Scene, item: Item) -> str:
    """Which of battery, management system and load stands nearest; "" for none."""
    nearest: tuple[float, str] = (12.0, "")
    for head in around(scene.owners, item, scene.owner_starts):
        name = head.head if head.head in ("bms", "load") else "battery"
        far = gap(scene, item, head.start, head.end)
        nearest = min(nearest, (far + (AFTER if head.start > item.start and far > 0.5 else 0.0), name))
    for rated in around(scene.quantities("AH"), item, [other.start for other in scene.quantities("AH")]):
        far = gap(scene, item, rated.start, rated.end)
        nearest = min(nearest, (far + (AFTER if rated.start > item.start and far > 0.5 else 0.0), "battery"))
    if not nearest[1] and {"battery", "bms"} & (scene.heads | scene.facts):
        return "battery" if "load" not in scene.heads else ""
    return nearest[1]


def _for_seconds(scene: Scene, item: Item) -> bool:
    """Whether the amps are allowed for some seconds: "300 A for 5 s"."""
    return any(_is_short(after) for after in scene.items[item.at + 1 : item.at + 3])


def _after_seconds(scene: Scene, item: Item) -> bool:
    """The same, written before: "100 A, 30 s 150 A"."""
    before = scene.before(item)
    return before is not None and _is_short(before)


def _is_short(item: Item) -> bool:
    return item.dim == "TIME" and item.quantity.unit == "second" and float(item.quantity.value) <= SHORT
