"""Which amps these are by a word of their role: running, inrush, a limit, a fuse."""

from __future__ import annotations

from grammar.attach.charging_amps import CHARGES, MOST_CHARGE, TINY
from grammar.attach.limit_amps import DRAWING, PEAKS, STEADY, as_peak, is_limited, owner_of
from grammar.lexicon.vocabulary import Found
from grammar.scene.claims import (
    FIGURES,
    Claim,
    at_a_cold_start,
    by_group,
    by_role,
    close,
)
from grammar.scene.items import Item
from grammar.scene.near import around, gap
from grammar.scene.scene import Scene

BEFORE_AMPS = 4  # words from a charger to its amps
SMALLEST_PEAK = 40.0  # bare amps
TO_RATING = 1.6  # as far as a rating's word claims amps
COLD_STARTS = frozenset({"start", "starts", "starting"})
NEXT, LEADS_TO = 4, 4  # words from a figure to the word that is the next one's, and from that to it
TO_LIMIT = 0.7
RUNNING = frozenset({"run", "runs", "running", "normal", "normally"})
CUTS = frozenset({"cuts", "trips", "stops", "cut", "trip", "limits", "switches", "shuts"})
EACH = frozenset({"each", "apiece", "individually"})
STEADILY = frozenset({"continuous", "continuously", "cont", "constant", "sustained"})
LATER = frozenset({"after", "afterwards", "thereafter"})  # "600 A of kick, 400 after"
NOMINALLY = frozenset({"nom", "nominal", "rated", "running", "run", "."})
JOINING = frozenset(["and", ",", ";", "but", "then"])


def by_strong_role(scene: Scene, item: Item, value: float) -> Claim | None:
    """Amps that a word names; whose peak or limit it is depends on what stands nearest."""
    if _follows_running(scene, item) or _of_short_limit(scene, item):
        return Claim("load.peak" if _follows_running(scene, item) else "battery.peak_current", "role")
    claim = _unless_started(scene, item, by_role(scene, item, value))
    if claim is None and (claim := _cut_off(scene, item, value)):
        return claim
    if claim and claim.fact in PEAKS and _names_the_next(scene, item):
        steady = {"load": "load.current", "": "load.current", "bms": "battery.max_current"}.get(owner_of(scene, item))
        return Claim(steady, "role") if steady else None
    if claim and claim.fact in PEAKS:
        small = item.dim == "NUM" and value < SMALLEST_PEAK  # "engine 10 pk" is horsepower
        return None if small or _on_a_switch(scene) else _of_start(scene, item, claim)
    if claim and claim.fact == "battery.max_current" and value <= TINY:  # "30 mA permanent for the alarm"
        return None
    if claim and claim.fact == "battery.max_current" and value <= MOST_CHARGE and _of_charger(scene, item):
        return Claim("charger.current", "role")
    if claim and claim.fact == "battery.max_current" and scene.lithium and _is_named_limit(scene, item):
        return claim
    each = scene.lithium and scene.word(item.start - 1) in EACH  # of several batteries, whatever load is named before
    owned = not each and (owner_of(scene, item) == "load" or scene.word(item.start - 1) == "running")
    of_load = not is_limited(scene, item) or owned
    if claim and claim.fact == "battery.max_current" and of_load:
        given = by_group(scene, item)
        own = given is not None and given.fact in ("alternator.current", "drain.current")
        if not own and value <= MOST_CHARGE and scene.likely[:1] == CHARGES and "load" not in scene.heads:
            return Claim("charger.current", "role")
        return given if own else Claim("load.current", "role")
    return claim


def _unless_started(scene: Scene, item: Item, claim: Claim | None) -> Claim | None:
    """The claim, but a first instant where a load is what starts in the cold."""
    rated = claim is not None and claim.fact == "battery.cca"
    return Claim("load.peak", "role") if rated and _starts_a_load(scene, item) else claim


def _starts_a_load(scene: Scene, item: Item) -> bool:
    """Whether a cold start is a load's, whose amps are no rating: "the thruster 260 A, 400 A cold start"."""
    rated = [found for found in around(scene.roles, item, scene.role_starts) if found.concept == "battery.cca"]
    near = [found for found in rated if gap(scene, item, found.start, found.end) <= TO_RATING]
    if not near or not COLD_STARTS.issuperset(scene.word(found.end - 1) for found in near):
        return False
    before = [head for head in around(scene.owners, item, scene.owner_starts) if head.end <= item.start]
    return at_a_cold_start(scene, near[0].start) or (bool(before) and before[-1].head == "load")


def _of_short_limit(scene: Scene, item: Item) -> bool:
    """Whether it is what a battery allows for moments, by its name: "its kick limit 400", "300 A surge limit"."""
    limits = (
        found
        for found in around(scene.roles, item, scene.role_starts)
        if found.concept == "battery.peak_current" and scene.word(found.end - 1) == "limit"
    )
    return any(gap(scene, item, found.start, found.end) <= TO_LIMIT for found in limits)


def _of_charger(scene: Scene, item: Item) -> bool:
    """Whether a charger stands right before: "shore charger holds a steady 40 A"."""
    near = (head for head in scene.head_items if 0 <= item.start - head.end <= BEFORE_AMPS)
    return any(head.head == "charger" for head in near) and "bms" not in scene.heads


def _is_named_limit(scene: Scene, item: Item) -> bool:
    """Whether lithium's amps are called a limit, or stand beside those of a load."""
    steady = scene.word(item.start - 1) in STEADY and "limit" in scene.vocabulary
    return scene.word(item.start - 1) == "limit" or steady or _beside_a_draw(scene, item) or _of_known(scene, item)


def _of_known(scene: Scene, item: Item) -> bool:
    """Whether amps for good stand beside lithium's amp-hours and a model whose draw is known: "80 Ah lithium for the
    Pike, 160 A continuous"."""
    named = any(one.kind == "model" for one in scene.items) and bool(scene.quantities("AH"))
    drawn = any(scene.word(found.start) in DRAWING for found in scene.roles if found.concept == "load.current")
    return named and not drawn and scene.word(item.end) in STEADILY


def _beside_a_draw(scene: Scene, item: Item) -> bool:
    """Whether the load has a figure of its own: "it's rated 100 A continuous and the thruster takes 240"."""
    if scene.word(item.end) not in STEADILY:
        return False
    drawn = [found for found in scene.roles if found.concept == "load.current" and scene.word(found.start) in DRAWING]
    return any(other.start == found.end for found in drawn for other in scene.quantities(*FIGURES) if other is not item)


def _of_start(scene: Scene, item: Item, claim: Claim) -> Claim:
    """What amps near a word of starting are: those of running, or whose peak."""
    if _names_next(scene, item) or _is_steady(scene, item):
        return Claim("load.current", "role")
    if any(_runs(scene, other) for other in scene.quantities(*FIGURES)):
        return Claim("load.peak", "role")
    return as_peak(scene, item, claim)


def _on_a_switch(scene: Scene) -> bool:
    """Whether "switch on" is where a charger's switch stands, no first instant: "switch on AGM"."""
    kinds = (item for item in scene.items if item.fact in ("battery.chemistry", "charger.setting"))
    return any([scene.word(item.start - 2), scene.word(item.start - 1)] == ["switch", "on"] for item in kinds)


def _cut_off(scene: Scene, item: Item, value: float) -> Claim | None:
    """Amps at which a management system switches off: "the BMS cuts at 300", "bms trips above 150 A"."""
    if value < SMALLEST_PEAK or scene.word(item.start - 1) not in ("at", "above", "over"):
        return None
    cuts = scene.word(item.start - 2) in CUTS or scene.word(item.start - 3) in CUTS
    systems = [head for head in scene.head_items if head.head == "bms" and 0 <= item.start - head.end <= 4]
    return Claim("battery.max_current", "role") if cuts and systems else None


def _follows_running(scene: Scene, item: Item) -> bool:
    """Whether it is the second of a load's two figures: the 280 of "190 A / start 280 A"."""
    before = scene.items[max(0, item.at - 3) : item.at]
    starts = scene.word(item.start - 1) in ("start", "starting")
    return starts and len(before) == 3 and before[0].dim == "AMP" and before[1].name in ("/", ",", ";")


def _names_next(scene: Scene, item: Item) -> bool:
    """Whether the word of starting behind it is that of the next figure: the 190 of "190 A / start 280 A"."""
    later = scene.items[item.at + 1 : item.at + 4]
    if len(later) != 3 or later[0].name not in ("/", ",", ";") or later[2].dim != "AMP":
        return False
    return not close(scene, item, "load.peak", reach=1.0) or scene.word(item.start - 1) in NOMINALLY


def _names_the_next(scene: Scene, item: Item) -> bool:
    """Whether the word of a peak leads to the figure after it: the 170 of "wants 170 and kicks with 260"."""
    words = [
        found
        for found in around(scene.roles, item, scene.role_starts)
        if found.concept in PEAKS and item.end < found.start <= item.end + NEXT
    ]
    if not words and (word := _right_behind(scene, item)):
        nexts = [other for other in scene.quantities(*FIGURES) if other.start == word.end]
        return bool(nexts) and item.dim == "AMP" and not _runs(scene, nexts[0])  # "300 A inrush 450"
    if not words or close(scene, item, *PEAKS, reach=0.1):
        return False
    if not JOINING & {scene.word(at) for at in range(item.end, words[0].start)}:
        return False
    after = [other for other in scene.measured if 0 <= other.start - words[0].end <= LEADS_TO]
    between = {scene.word(at) for at in range(words[0].end, after[0].start)} if after else JOINING
    return not between & JOINING and after[0].dim in FIGURES


def _right_behind(scene: Scene, item: Item) -> Found | None:
    """The word of a peak that stands between a figure and the next one."""
    near = around(scene.roles, item, scene.role_starts)
    return next((found for found in near if found.concept == "load.peak" and found.start == item.end), None)


def _is_steady(scene: Scene, item: Item) -> bool:
    """Whether amps near a word of starting are those of running: "240 at start, 160 running", "running 320 A"."""
    runs_at = scene.word(item.start - 2) in RUNNING and scene.word(item.start - 1) in ("at", "on", "with")
    if runs_at or scene.word(item.start - 1) in RUNNING or scene.word(item.end) in RUNNING:
        return not (close(scene, item, "load.peak", reach=0.1) or _at_the_kick(scene, item))
    after = scene.word(item.end) in LATER and scene.word(item.end + 1) in ("", ".", ",", "?", ";")
    return after and any(other.at < item.at for other in scene.quantities(*FIGURES))


def _at_the_kick(scene: Scene, item: Item) -> bool:
    """Whether it is the second figure and at the start: the 400 of "150 A running 400 at kick-in"."""
    at = item.end + 1 + (scene.word(item.end + 1) == "the")
    kicks = [found for found in scene.roles if found.concept == "load.peak" and found.start == at]
    follows = any(other.start == found.end for found in kicks for other in scene.quantities(*FIGURES))
    before = any(other.at < item.at for other in scene.quantities("AMP"))
    return scene.word(item.end) in ("at", "on") and bool(kicks) and before and not follows


def _runs(scene: Scene, item: Item) -> bool:
    """Whether a bare number is what a load runs at: the "340 run" of "500 A peak / 340 run"."""
    return scene.word(item.end) in RUNNING
