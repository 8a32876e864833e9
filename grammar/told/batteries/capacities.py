"""Which bare numbers are a battery's amp-hours: "80 each", "12 V 100", "25 A into 110", "the 88 in there"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.near import gap
from grammar.scene.scene import Scene
from grammar.told.batteries.goes_by import LEAST_ALONE, MOST_ALONE

GROUPS = frozenset(
    {"22", "24", "25", "27", "29", "31", "34", "35", "36", "47", "48", "49", "51", "58", "65", "75", "78", "94"}
)
SMALLEST, LARGEST = 20, 1000
MOST_OF_ONE = 400  # amp-hours of one battery
OWNED = 0.6
EACH = frozenset({"each", "apiece"})
ARTICLES = frozenset({"a", "the", "my", "second", "another"})
HEAVY = frozenset({"heavy", "weigh", "weighs"})
AGED = frozenset({"new", "old", "older", "newer"})
LIKELY = 40.0  # amp-hours that stand without a word
MOST_CHARGER = 60.0  # amps
AT = frozenset({"in", "for", "at", "up", "on"})
PLACES = frozenset({"bow", "stern", "house", "front", "forward", "aft", "domestics", "engine", "forepeak", "saloon"})
LASTS = frozenset({"last", "lasts"})
OF_ONE = frozenset({6.0, 12.0, 12.8})  # volts
OTHERS = frozenset({"load", "charger", "fuse", "cable", "panel", "alternator", "dcdc"})
RATED = ("RC", "CCA", "AH")
JOINED = frozenset({"and", "&", "+", "with", "plus"})
UNLIKE = frozenset(
    {"size", "sizes", "capacities", "mix", "mixing", "mixed", "unlike", "unequal", "mismatched", "different", "odd"}
)
LEAST_OWN, MOST_OWN = 20.0, 400.0
LEAST_CASE = 50.0  # a number from here on is hardly a case, where neither "group" nor "case" is said
CASES = frozenset({"group", "grp", "case", "size", "bci", "fit", "fits", "tray", "dimensions"})
BEFORE_SIZE = frozenset({"a", "an", "the", "my", "our", "this", "his", "her"})
HOLDS = frozenset({"has", "is", "holds", "being", "of", "at", "a", "be", "with", "having"})
SAYS = frozenset({"is", "says", "reads", "s", "being", "was"})
IT_IS = frozenset({"its", "thats", "hers", "theyre"})
NO_SIZE = frozenset({"fuse", "cable", "panel", "charger", "alternator", "dcdc", "bms"})
NOT_AFTER = frozenset(
    {
        *("kg", "kilos", "kilo", "lb", "lbs", "pounds", "v", "volts", "volt", "a", "amps", "amp", "cca", "%"),
        *("percent",),
        *("mm", "cm", "square", "ft", "feet", "metres", "awg", "watts", "w", "watt", "year", "years", "footer", "foot"),
    }
)
BETWEEN_EQUALS = frozenset({"and", "&", "+", "plus"})


def is_size(scene: Scene, item: Item, value: float) -> bool:
    """Whether a bare number is a battery's amp-hours: "80 each", "both 100", "a 100 next to a 130 in parallel"."""
    if not SMALLEST <= value <= LARGEST:
        return False
    told = any(fact.fact.startswith("battery.") for fact in scene.said)
    batteries = told or "battery" in scene.facts | scene.heads or bool(scene.quantities(*RATED))
    before, after = scene.before(item), scene.after(item)
    counted = any(other.dim == "COUNT" for other in scene.items[max(0, item.at - 5) : item.at])
    if (batteries or counted) and scene.word(item.end) in EACH:
        return True
    if batteries and before is not None and before.kind == "count":
        return True
    if value > MOST_OF_ONE or (after is not None and after.head in OTHERS):
        return False
    beside = own_size(scene, item, value) or _of_two_sizes(scene, item) or _beside_amp_hours(scene, item)
    if beside or ((batteries or counted) and _after_volts(scene, item)):
        return True
    if f"{value:g}" not in GROUPS and (_is_batterys(scene, item) or (batteries and _named_so(scene, item, value))):
        return True
    if _after_label(scene, item) or _amps_into(scene, item) or (counted and _alone(scene, item)):
        return True
    named = "battery" in scene.facts | scene.heads and "cable" not in scene.heads
    if named and scene.word(item.start - 1) == "a" and HEAVY & scene.vocabulary:
        return True
    aged = scene.word(item.start - 1) in AGED and scene.word(item.start - 2) in ARTICLES | {"an", "one"}
    article = aged or scene.word(item.start - 1) in ARTICLES
    if article and (scene.word(item.end) in LASTS or _to_charge(scene, item)):
        return True
    return article and "bank.layout" in scene.facts and not scene.heads - {"battery"}


def _of_two_sizes(scene: Scene, item: Item) -> bool:
    """Whether it is one of two batteries that are not alike: "unlike sizes, 110 and 75, in series"."""
    if "bank.layout" not in scene.facts or not UNLIKE & scene.vocabulary or scene.heads - {"battery", "cell", "boat"}:
        return False
    for step in (2, -2):
        at = item.at + step
        other = scene.items[at] if 0 <= at < len(scene.items) else None
        if other is None or other.dim != "NUM" or scene.items[item.at + step // 2].name not in JOINED:
            continue
        both = [one.quantity.value for one in (item, other)]
        sizes = all(not isinstance(one, str) and SMALLEST <= one <= MOST_OF_ONE for one in both)
        return sizes and not all(f"{one:g}" in GROUPS for one in both if not isinstance(one, str))
    return False


def _beside_amp_hours(scene: Scene, item: Item) -> bool:
    """Whether it is joined to a battery's amp-hours: "in series, 100 Ah and 80, allowed"."""
    before, after = scene.items[max(0, item.at - 2) : item.at], scene.after(item)
    joined = "bank.layout" in scene.facts and len(before) == 2 and before[0].dim == "AH" and before[1].name in JOINED
    return joined and (after is None or after.kind == "mark" or after.name in ("in", "together"))


def _after_label(scene: Scene, item: Item) -> bool:
    """Whether amp-hours lead to it: "Ah: 130", "still 92 Ah of 100"."""
    before = scene.word(item.start - 1)
    labelled = scene.word(item.start - 2) == "ah" and before in (":", "=")
    return labelled or (before == "of" and item.at > 1 and scene.items[item.at - 2].dim == "AH")


def _alone(scene: Scene, item: Item) -> bool:
    """Whether a number between marks follows counted batteries of so many volts: "two 6 V in series, 220."."""
    before, after = scene.before(item), scene.after(item)
    apart = before is not None and before.name == "," and (after is None or after.kind == "mark")
    volts = scene.quantities("VOLT")
    early = bool(volts) and volts[0].at < item.at
    return apart and early and float(item.quantity.value) >= LIKELY and not scene.heads & OTHERS


def _to_charge(scene: Scene, item: Item) -> bool:
    """Whether a charger is asked for it: "how big a charger for the 120"."""
    after = scene.after(item)
    if after is not None and after.kind != "mark":
        return False
    return scene.word(item.start - 2) == "for" and "charger" in scene.heads and scene.word(item.start - 1) == "the"


def _amps_into(scene: Scene, item: Item) -> bool:
    """Whether a charger's amps are asked for it: "should furnish how many amperes to seventy-five?"."""
    before = [scene.word(item.start - back) for back in (3, 2, 1)]
    after = scene.after(item)
    asked = (
        before[0] in ("many", "what") and before[1] in ("amps", "amperes", "amp") and before[2] in ("to", "for", "into")
    )
    return asked and "charger" in scene.heads and (after is None or after.kind == "mark")


def _after_volts(scene: Scene, item: Item) -> bool:
    """Whether the volts of one battery stand right before: "12 V 100", "12V/120"."""
    before, sides = scene.before(item), scene.sides.get(item.at)
    if sides is not None and sides.left is not None and sides.left.head in OTHERS:
        return False
    if before is not None and before.name == "/" and item.at > 1:
        before = scene.items[item.at - 2]
    return before is not None and before.dim == "VOLT" and before.quantity.value in OF_ONE


def _named_so(scene: Scene, item: Item, value: float) -> bool:
    """Whether a battery goes by its amp-hours: "two of 100", "one of 110", "a 70 in the bow"."""
    return _of_so_many(scene, item) or _placed(scene, item, value) or _one_of(scene, item, value)


def _placed(scene: Scene, item: Item, value: float) -> bool:
    """Whether batteries go by their places: "AGMs, a 70 in the bow and a 180 for the house"."""
    least = MOST_CHARGER if "charger" in scene.heads else LIKELY
    if value <= least or scene.heads & (OTHERS - {"charger"}) or scene.quantities("AREA", "GAUGE"):
        return False
    if scene.word(item.start - 1) not in ARTICLES | {"an"}:
        return False
    ahead = [scene.word(at) for at in range(item.end, item.end + 3)]
    if ahead[1:] == ["front", "of"]:  # "a 400 in front of it"
        return False
    return ahead[0] in ("forward", "aft") or (ahead[0] in AT and not PLACES.isdisjoint(ahead[1:]))


def _one_of(scene: Scene, item: Item, value: float) -> bool:
    """Whether one battery is told by its size: "how many prods could one of 110 put up with"."""
    return value > LIKELY and (scene.word(item.start - 2), scene.word(item.start - 1)) == ("one", "of")


def _of_so_many(scene: Scene, item: Item) -> bool:
    """Whether it is the "100" of "two of 100", "two AGM of 150 in series"."""
    if scene.word(item.start - 1) != "of":
        return False
    before = scene.items[max(0, item.at - 4) : item.at - 1]
    return (bool(before) and before[-1].dim in ("COUNT", "VOLT", "NUM")) or any(
        other.fact == "battery.chemistry" for other in before
    )


def _is_batterys(scene: Scene, item: Item) -> bool:
    """Whether the battery is named right before: "the battery's a 180"."""
    sides = scene.sides.get(item.at)
    left = sides.left if sides else None
    return left is not None and left.head == "battery" and gap(scene, item, left.start, left.end) <= OWNED


def own_size(scene: Scene, item: Item, value: float) -> bool:
    """Whether a bare number is a battery's amp-hours by the words right before it."""
    if item.dim != "NUM" or not LEAST_OWN <= value <= MOST_OWN or scene.word(item.end) in NOT_AFTER:
        return False
    after = scene.after(item)
    ends = after is None or after.kind in ("mark", "word")
    if not ends:
        return False
    return (
        _poured_into(scene, item)
        or _each_has(scene, item)
        or _of_kind(scene, item, value)
        or _it_is(scene, item, value)
        or _kind_is(scene, item, value)
    )


def _poured_into(scene: Scene, item: Item) -> bool:
    """Whether a charger's amps go into it: "25 A into 110", "20 amps into a 90"."""
    at = item.start - 1 - (scene.word(item.start - 1) in BEFORE_SIZE)
    return scene.word(at) == "into" and at > 0 and scene.at_word[at - 1].dim == "AMP"


def _each_has(scene: Scene, item: Item) -> bool:
    """Whether each of some batteries has it: "when each has 130", "each being a 90", "130 in each"."""
    at = item.start - 1
    while scene.word(at) in HOLDS and item.start - at <= 2:
        at -= 1
    batteries = "battery" in scene.heads | scene.facts and not scene.heads & (NO_SIZE - {"charger"})
    told = at < item.start - 1 and scene.word(at) == "each"
    return batteries and (told or (scene.word(item.end), scene.word(item.end + 1)) == ("in", "each"))


def _of_kind(scene: Scene, item: Item, value: float) -> bool:
    """Whether it follows a battery's kind: "an AGM 75", "two gels of 65"; "AGM 31" may be a case."""
    before = scene.before(item)
    if before is not None and before.name == "of":
        before = scene.items[item.at - 2] if item.at > 1 else None
    named = before is not None and before.fact == "battery.chemistry"
    return named and value >= LEAST_CASE and not CASES & scene.vocabulary


def _kind_is(scene: Scene, item: Item, value: float) -> bool:
    """Whether a kind is said to be of it: "the AGM is a 100", "my gel's an 80", "the deep cycle says 110"."""
    article = scene.word(item.start - 1) in ("a", "an")
    at = item.start - 1 - article
    told = scene.word(at) in SAYS and at > 0
    if not told or value < LIKELY or CASES & scene.vocabulary or (not article and f"{value:g}" in GROUPS):
        return False
    return scene.at_word[at - 1].fact in ("battery.chemistry", "battery.duty")


def _it_is(scene: Scene, item: Item, value: float) -> bool:
    """Whether it is the battery spoken of: "and if it's a 100 does it keep 20 amps going"."""
    if scene.word(item.start - 1) != "a" or scene.word(item.start - 2) not in IT_IS or value < LIKELY or value % 5:
        return False
    amps = bool(scene.quantities("AMP")) or "load" not in scene.heads
    return amps and "battery.chemistry" in scene.facts and not scene.heads & NO_SIZE and not scene.quantities("AH")


def alike(scene: Scene, item: Item, value: float) -> bool:
    """Whether it is one of two equal figures behind counted batteries: "two AGMs in parallel, 90 and 90"."""
    if not LEAST_ALONE <= value <= MOST_ALONE or "bank.layout" not in scene.facts or scene.heads - {"battery", "cell"}:
        return False
    for step in (2, -2):
        at = item.at + step
        other = scene.items[at] if 0 <= at < len(scene.items) else None
        joined = scene.items[item.at + step // 2].name if other is not None else ""
        if other is not None and other.dim == "NUM" and joined in BETWEEN_EQUALS:
            return other.quantity.value == value and "battery" in scene.facts
    return False
