"""Which amps fill a battery: a charger's, an alternator's, what is poured in."""

from __future__ import annotations

from grammar.attach.limit_amps import GIVES, LEAD
from grammar.scene.claims import (
    Claim,
    row_of,
)
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.told.words import stops

PRONOUNS = frozenset({"one", "unit"})
ENDS = ("how", "then", "when", "what")  # after an "if I get a 20 A", which names no thing
TAKEN = frozenset(
    {"take", "took", "taking", "use", "buy", "bought", "get", "got", "choose", "pick", "fit", "order", "put"}
)
BY_AMPS = frozenset({"charger", "dcdc", "fuse"})  # things that go by their amps
MOST_CHARGE = 60.0
TINY = 0.5  # amps that are hardly anything but a drain
SMALLEST_CRANKING = 300.0
POURS = frozenset(
    ["push", "pushes", "feed", "feeds", "shove", "shoves", "pour", "pours", "pump", "pumps", "stuff", "stuffs", "put"]
) | {"puts", "send", "sends", "cram", "get"}
SOURCES = frozenset({"genset", "generator", "gennie", "genny", "dock", "quay", "pedestal", "mains", "marina"})
IN_WHAT = frozenset({"it", "them", "her", "", ".", ",", "?", ";", "how", "when"})
INTO = 3  # words
OF_AMPS = frozenset({"alternator", "load", "charger", "dcdc", "fuse", "panel", "bms", "drain"})
FROM_ALTERNATOR = 9  # words
MOST_POURED = 200.0
AVERAGES = frozenset({"averages", "averaging", "average"})
ISOLATION = frozenset({"converter.common_negative", "charger.isolated"})
CHARGES = ("charger.current",)
TO_CHARGE = frozenset({"charge", "charging", "recharge"})
MOST_FILL = 150.0  # amps, where a capacity is told with them


def taken_in(scene: Scene, item: Item, value: float) -> bool:
    """Whether a battery is asked to take these amps, which charges it: "can the battery take a 60"."""
    before = [scene.at_word[at] for at in range(max(0, item.start - 4), item.start)]
    takes = [one for one in before if one.name in ("take", "takes", "accept")]
    if not takes or value > MOST_CHARGE or "load" in scene.heads:
        return False
    owner = scene.before(takes[-1])
    can = any(scene.word(at) in ("can", "may", "could", "will") for at in range(takes[-1].start - 4, takes[-1].start))
    return can and owner is not None and (owner.head == "battery" or owner.fact == "battery.chemistry")


def _poured_in(scene: Scene, item: Item, value: float) -> bool:
    """Whether they are given to a battery: "the genset can push 70 amps in", "the dock gives 10 A"."""
    if value > MOST_POURED or scene.facts & {"load.model"}:
        return False
    before = [scene.word(item.start - back) for back in (1, 2, 3)]
    if before[0] in ("up", "to", "about", "some"):
        before = before[1:]
    if before[0] in POURS and scene.word(item.end) in ("in", "into") and _into_battery(scene, item.end + 1):
        return True
    return before[0] in POURS | GIVES | {"put", "puts"} and bool(SOURCES & set(before[1:]))


def _into_battery(scene: Scene, at: int) -> bool:
    """Whether a battery is named there, or nothing: "in.", "into it", "into a 90 Ah gel", "into the 24"."""
    if scene.word(at) in IN_WHAT:
        return True
    near = [scene.at_word[place] for place in range(at, min(at + INTO, len(scene.tokens)))]
    return any(one.dim in ("AH", "VOLT") or one.head == "battery" or one.fact == "battery.chemistry" for one in near)


def the_one_told(scene: Scene, item: Item, value: float) -> Claim | None:
    """A battery that goes by its unlabelled amps: "the 700 amp one"; what "averages 28 A" is a load's."""
    if taken_in(scene, item, value) or _poured_in(scene, item, value):
        return Claim("charger.current", "role")
    alone = "runtime" in scene.vocabulary and not {"charger", "panel", "bms"} & scene.heads  # "8 A 105 Ah AGM runtime"
    if value > TINY and (scene.word(item.start - 1) in AVERAGES or (alone and len(scene.quantities("AMP")) == 1)):
        return Claim("load.current", "role")
    named = value >= SMALLEST_CRANKING and scene.word(item.end) in ("one", "ones")
    others = {"load.current", "load.peak", "fuse.rating"} & {*scene.expected, *scene.likely} or "fuse" in scene.heads
    kind = scene.at_word[item.end] if item.end < len(scene.tokens) else item  # "my 1000 amp AGM"
    named = named or (kind.fact == "battery.chemistry" and kind.name in LEAD and value >= SMALLEST_CRANKING)
    return Claim("battery.ca", "grammar") if named and not others else None


def of_named_charger(scene: Scene, item: Item, value: float) -> Claim | None:
    """A charger that goes by its amps: "a 30 amp one off the alternator", "how long on a 10 amp"."""
    if named := _by_pronoun(scene, item):
        return named
    if value > MOST_CHARGE:
        return None
    sides = scene.sides.get(item.at)
    right = sides.right.head if sides is not None and sides.right is not None else ""
    one = scene.word(item.end) in ("one", "unit")
    if one and scene.likely[:1] == CHARGES and not scene.heads - {"charger", "dcdc", "battery", "meter"}:
        return Claim("charger.current", "grammar")  # "and how long would a 30 amp one take"
    if one and scene.facts & ISOLATION:  # "isolated or not, what fuse for a 20 amp one"
        return Claim("charger.current", "grammar")
    given = [scene.word(at) for at in range(item.end + 1, item.end + 4)]
    if one and {"of", "off", "from"} & set(given) and "alternator" in scene.heads:
        return Claim("charger.current", "grammar")
    if one and scene.quantities("PERCENT") and scene.word(item.start - 1) in ("a", "the", "my"):
        return Claim("charger.current", "grammar")
    on_it = scene.word(item.start - 2) == "on" and scene.word(item.start - 1) in ("a", "the", "my")
    asked_so = scene.about("request:how_long") and right not in ("load", "fuse", "cable")
    return Claim("charger.current", "grammar") if on_it and asked_so and item.name.endswith("amp") else None


def _by_pronoun(scene: Scene, item: Item) -> Claim | None:
    """What "if I take a 20 A one" or "if I get a 20 A, how long" is: the charger, converter or fuse that was named last
    before."""
    verbs = {scene.word(item.start - back) for back in (1, 2, 3)}
    if (
        not (scene.word(item.end) in PRONOUNS or stops(scene, item, ENDS))
        or not verbs & TAKEN
        or scene.word(item.start - 1) not in ("a", "an", "the")
    ):
        return None
    named = [head for head in scene.head_items if head.end <= item.start and head.head in BY_AMPS]
    fact = row_of(named[-1], "AMP") if named else ""
    return Claim(fact, "grammar") if fact else None


def alternator_of(scene: Scene, item: Item) -> Claim | None:
    """Amps that end what is said of an alternator: "same alternator, straight on to it, 90 amps"."""
    before = [head for head in scene.head_items if head.end <= item.start and head.head in OF_AMPS]
    if not before or before[-1].head != "alternator" or item.start - before[-1].end > FROM_ALTERNATOR:
        return None
    between = scene.items[before[-1].at + 1 : item.at]
    ends = any(other.name == "end" or other.dim for other in between)
    apart = scene.word(item.start - 1) in (",", "is", "(", "of") or [
        scene.word(item.end),
        scene.word(item.end + 1),
    ] == [
        "of",
        "it",
    ]
    article = scene.word(item.start - 1) in ("a", "an", "only") and scene.word(item.start - 2) in ("is", "its", "it's")
    return Claim("alternator.current", "role") if (apart or article) and not ends else None


def charged_here(scene: Scene, item: Item, value: float) -> bool:
    """Whether the clause speaks of charging and of no load."""
    here = scene.by_clause.get(scene.clause(item.start), frozenset())
    most = MOST_FILL if scene.word(item.start - 1) in ("with", "at") and scene.vocabulary & TO_CHARGE else MOST_CHARGE
    return value <= most and "word:charge" in here and not here & {"head:load", "head:drain", "head:alternator"}
