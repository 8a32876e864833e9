"""What a bare number is by the thing named beside it: a battery, a charger, a load."""

from __future__ import annotations

from itertools import islice

from grammar.attach.batteries import before_label
from grammar.attach.beside_numbers import RATINGS, SMALLEST_LOAD, plain
from grammar.attach.charging_amps import taken_in
from grammar.attach.limit_amps import limit_pair, peaks
from grammar.attach.pairs import limits
from grammar.attach.role_amps import LATER, by_strong_role
from grammar.attach.second_sizes import LARGEST_CAPACITY, SMALLEST_CAPACITY
from grammar.scene.claims import TOUCHING, Claim, beside, by_group, by_nearness, by_role
from grammar.scene.items import Item
from grammar.scene.near import gap
from grammar.scene.scene import Scene
from grammar.text.standard import NOMINAL
from grammar.told.batteries.bare_sizes import is_joined
from grammar.told.batteries.capacities import GROUPS, MOST_OF_ONE, alike, is_size
from grammar.told.batteries.goes_by import goes_by
from grammar.told.chargers.charges import is_own_charger, of_charger
from grammar.told.currents.another_fuse import of_another
from grammar.told.currents.fuses import FUSES, fuse
from grammar.told.words import stops
from grammar.told.years.ages import is_age

GIVES = frozenset({"puts", "gives", "putting", "giving", "amps"})  # "amps out 30"
RUNNING = frozenset({"run", "running", "nominal"})  # "500 A peak / 340 run"
LARGEST_LEAD = 400  # amp-hours of one lead battery: an "AGM 880" has cranking amps
RATED = ("CCA", "CA", "RC")
SMALLEST_RATING = 40.0
MOST_SET = 100.0  # amps
OURS = frozenset({"a", "an", "the", "my", "our"})
GIVERS = frozenset({"charger", "dcdc", "alternator", "panel", "fuse"})


def by_name(scene: Scene, item: Item, value: float) -> Claim | None:
    """A number that its neighbours name: "115 gel", "a 30 charger", "the thruster takes 265", "12 boat"."""
    if any(test(scene, item, value) for test in (is_joined, _given_by, goes_by, alike)):
        return Claim("battery.capacity", "grammar")
    if any(test(scene, item, value) for test in (of_charger, is_own_charger)):
        return Claim("charger.current", "grammar")
    claim = _of_kind(scene, item, value) or fuse(scene, item, value)
    if claim is None and of_another(scene, item, value):
        claim = Claim("fuse.rating", "role")
    if claim is None and (taken_in(scene, item, value) or _puts_out(scene, item) or _is_set_to(scene, item, value)):
        claim = Claim("charger.current", "role")
    if claim is None and value <= 30 and is_age(scene, item):
        claim = Claim("battery.age", "role")
    if claim is None and value >= SMALLEST_CAPACITY:
        claim = _bare_amps(scene, item, value)
    if claim is not None:
        return claim
    if value in NOMINAL or value < 5 or beside(scene, item, "boat", "engine", reach=1):
        return None
    claim = by_strong_role(scene, item, value) or by_role(scene, item, value, weak=True) or _strict(scene, item)
    if claim is None and is_size(scene, item, value):
        return Claim("battery.capacity", "near")
    return claim or _near(scene, item, value) or _rated(scene, item, value)


def _given_by(scene: Scene, item: Item, value: float) -> bool:
    """Whether it is the battery that gives the amps: "150 A out of a 100, ten pushes", "the 110 feeds the fridge"."""
    before = [scene.word(item.start - back) for back in (1, 2, 3)]
    if before[0] not in OURS or GIVERS & scene.heads or not SMALLEST_CAPACITY <= value <= LARGEST_LEAD:
        return False
    if scene.word(item.end) in ("feeds", "powers"):
        return True
    ends = stops(scene, item, ("and", "with", "for", "till", "until", "before"))
    taken = before[1] in ("off", "from") or before[1:] == ["of", "out"]
    return taken and ends and bool(scene.quantities("AMP"))


def _puts_out(scene: Scene, item: Item) -> bool:
    """Whether it is what a charger gives: "my b2b puts out 30 at 24 volts"."""
    given = scene.word(item.start - 1) == "out" and scene.word(item.start - 2) in GIVES
    return given and bool({"charger", "dcdc", "alternator"} & scene.heads) and scene.word(item.end) != "v"


def _is_set_to(scene: Scene, item: Item, value: float) -> bool:
    """Whether a charger is set to so many amps: "dc-dc set at 30"."""
    set_to = scene.word(item.start - 2) in ("set", "dialled", "limited") and scene.word(item.start - 1) in ("at", "to")
    last = next((head.head for head in reversed(scene.head_items) if head.end <= item.start), "")
    return set_to and last in ("charger", "dcdc") and value <= MOST_SET and not scene.quantities("VOLT")


def _of_kind(scene: Scene, item: Item, value: float) -> Claim | None:
    """A battery's figure beside its kind or its label: "115 gel", "AGM, 31", "start 90 CCA 720"."""
    labelled = scene.before(item)
    if labelled is not None and labelled.dim == "CCA" and before_label(scene, labelled):
        return Claim("battery.cca", "role")
    after = scene.after(item)
    if after is not None and after.name == "of":  # "if it were 100 of lithium"
        after = scene.after(after)
    named = after is not None and (after.fact == "battery.chemistry" or after.name == "deep-cycle")
    if named and SMALLEST_CAPACITY <= value <= LARGEST_CAPACITY:
        return Claim("battery.capacity", "grammar")
    before = _told_before(scene, item)
    if before is not None and before.fact == "battery.chemistry" and before.at < item.at - 1 and value == 31.0:
        return Claim("battery.group", "grammar")  # "63 lbs, AGM, 31"
    if (
        before is not None
        and before.fact in ("battery.chemistry", "battery.charge", "battery.duty")
        and str(int(value)) not in GROUPS
        and SMALLEST_CAPACITY <= value <= (LARGEST_CAPACITY if scene.lithium else LARGEST_LEAD)
    ):
        return Claim("battery.capacity", "grammar")
    return Claim("battery.capacity", "near") if _beside_one(scene, item, value) else None


def _beside_one(scene: Scene, item: Item, value: float) -> bool:
    """Whether the volts of one battery lead to it: the "220" of "two 6 V 220 run 9 amps"."""
    before = scene.before(item)
    one = (
        before is not None
        and before.dim == "VOLT"
        and before.quantity.value in NOMINAL
        and bool(scene.by_dim.get("COUNT"))
    )
    runs = scene.word(item.end) in ("run", "runs") and any(other.at > item.at for other in scene.quantities("AMP"))
    return one and runs and is_size(scene, item, value)


def _told_before(scene: Scene, item: Item) -> Item | None:
    """The item before a number, over a bracket that opens or a comma: "golf carts (220)", "AGM, 95)"."""
    before, after = scene.before(item), scene.after(item)
    if before is None or item.at < 2:
        return before
    apart = before.name in ("(", ",") and (after is None or after.kind == "mark" or _at_volts(scene, after))
    if not apart and before.fact == "battery.duty":
        return None
    other = scene.items[item.at - 2]
    return other if apart and other.fact in ("battery.chemistry", "battery.duty") else before


def _at_volts(scene: Scene, after: Item) -> bool:
    """Whether the volts follow: the "at 24 V" of "the new one is AGM, 230 at 24 V"."""
    volts = scene.after(after)
    return after.name == "at" and volts is not None and volts.dim == "VOLT"


def _bare_amps(scene: Scene, item: Item, value: float) -> Claim | None:
    """Amps without their unit: the limits of a battery, "500 A peak / 340 run"."""
    if claim := limits(scene, item, value) or limit_pair(scene, item):
        return claim
    if value >= SMALLEST_LOAD and scene.word(item.end) in RUNNING | LATER and scene.quantities("AMP"):
        return Claim("load.current", "role")
    return Claim("battery.peak_current", "role") if peaks(scene, item) else None


def _rated(scene: Scene, item: Item, value: float) -> Claim | None:
    """The one number of a message that asks about a rating: "what is CCA, and is 800 of them plenty"."""
    if value < SMALLEST_RATING or any(scene.by_dim.get(dim) for dim in RATED):
        return None
    large = (other for other in scene.by_dim["NUM"] if plain(other) >= SMALLEST_RATING)
    if len(list(islice(large, 2))) > 1:
        return None
    spoken = (fact for fact in RATINGS if scene.about(f"role:{fact}") or scene.likely[:1] == (fact,))
    named = (fact for fact in spoken if RATINGS[fact][0] <= value <= RATINGS[fact][1])
    found = list(named)
    if len(found) > 1 and {"battery.cca", "battery.ca"} <= set(found):  # "what's CCA, what's MCA, mine says 840"
        return None
    fact = found[0] if found else None
    if fact is None or ("load" in scene.heads and beside(scene, item, "load", reach=2)):
        return None
    return Claim(fact, "near")


def _strict(scene: Scene, item: Item) -> Claim | None:
    """A head right beside a bare number, or tied to it."""
    sides = scene.sides.get(item.at)
    if sides is None or item.quantity.value in NOMINAL:
        return None
    left = sides.left
    beside_left = left is not None and gap(scene, item, left.start, left.end) <= TOUCHING
    beside_right = sides.right is not None and sides.right.at == item.at + 1
    if beside_left and left is not None and left.head == "charger" and item.dim == "NUM":  # "90 Ah, charger 15"
        after = scene.after(item)
        if after is None or after.kind == "mark":
            return Claim("charger.current", "near")
    large = float(item.quantity.value) >= SMALLEST_LOAD and beside_left
    claim = by_group(scene, item) if sides.tied or large or beside_right else None
    if claim and claim.fact == "battery.capacity" and not _is_capacity(item):
        return None
    return claim


def _is_capacity(item: Item) -> bool:
    value = float(item.quantity.value)
    return SMALLEST_CAPACITY <= value <= MOST_OF_ONE and f"{value:g}" not in GROUPS


def _near(scene: Scene, item: Item, value: float) -> Claim | None:
    """A bare number near the one thing that it can be of: a usual size of fuse, a large figure after a load."""
    reach = 8 if scene.word(item.end) in ("?", "for") else 4
    if value in FUSES and beside(scene, item, "fuse", reach=reach):
        return Claim("fuse.rating", "near")
    before = scene.before(item)
    if (
        value >= SMALLEST_LOAD
        and before is not None
        and beside(scene, item, "load", reach=2)
        and "fuse" not in scene.heads
    ):
        return by_nearness(scene, item, reach=2.0)
    return None
