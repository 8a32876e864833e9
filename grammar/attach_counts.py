"""How many: batteries, banks, outputs, bursts, and how many a maker allows."""

from __future__ import annotations

import re

from grammar.ages import is_age
from grammar.attach import NOTHING, Claim, close
from grammar.attach_lengths import of_cable
from grammar.attach_pairs import NOMINAL, steps_up
from grammar.items import Item
from grammar.near import around, gap
from grammar.scene import Scene
from grammar.vocabulary import small_words

COUNTED = frozenset({"VOLT", "AH", "CCA", "CA", "RC", "GROUP", "WH", "WEIGHT"})


def counts(scene: Scene, item: Item, value: float) -> Claim | None:
    """How many batteries, banks, outputs or bursts: a small whole number right before what it counts."""
    if value <= 12 and close(scene, item, "sun", reach=1.6, after=True):
        return Claim("solar.sun_hours", "role")
    if value <= 30 and item.kind != "count" and is_age(scene, item):
        return Claim("battery.age", "role")
    if value != int(value) or not 1 <= value <= MOST_BURSTS:
        return None
    if value in NOMINAL and (side := steps_up(scene, item)):
        return Claim(side, "grammar")
    if close(scene, item, "load.bursts", reach=1.3) and not _rated_next(scene, item):
        return Claim("load.bursts", "role")
    if value <= 12 and _of_charger(scene, item):
        return Claim("charger.outputs", "grammar")
    if value <= 12 and (limit := _allowed(scene, item)):
        return Claim(limit, "grammar")
    for role, reach in COUNTS.items():
        if value <= 12 and close(scene, item, role, reach=reach, after=True):
            return Claim(role, "role")
    return _batteries(scene, item, value)


def _allowed(scene: Scene, item: Item) -> str:
    """Whether so many are the most that a maker allows: "up to 4 in parallel", "series up to 2"; the fact or ""."""
    before = [scene.word(at) for at in range(item.start - 4, item.start)]
    after = " ".join(scene.word(at) for at in range(item.end, item.end + 2))
    if not ALLOWED & set(before):
        return ""
    for layout in ("series", "parallel"):
        if layout in before or after in (f"in {layout}", f"{layout} ", f"{layout} max"):
            return f"battery.max_in_{layout}"
    return ""


def _of_charger(scene: Scene, item: Item) -> bool:
    """Whether a charger's outputs are counted: "a two bank charger", "2 bank 6 A charger", "twin output"."""
    if scene.word(item.end) not in ("bank", "output", "way", "channel", "out"):
        return False
    later = scene.items[item.at + 1 : item.at + 5]
    named = scene.word(item.start - 1) in ("a", "the") and "charger" in scene.heads
    return scene.word(item.end) == "output" or named or any(other.head == "charger" for other in later)


def _batteries(scene: Scene, item: Item, value: float) -> Claim | None:
    if scene.word(item.start - 1) in NUMBERED and item.kind != "count":
        return None
    if item.kind == "times" and (claim := _times(scene, item)):
        return claim
    if value <= MOST_BATTERIES and _before_battery(scene, item):
        return Claim("battery.count", "grammar")
    if 2 <= value <= MOST_BATTERIES and any(test(scene, item) for test in (_one_of, _has_so_many, _of_such)):
        return Claim("battery.count", "grammar")
    if not 2 <= value <= MOST_BATTERIES or item.dim != "COUNT" or _of_others(scene, item):
        return None
    if scene.word(item.end) in PARTS_OF_IT or [scene.word(item.end), scene.word(item.end + 1)] == ["of", "us"]:
        return None
    if item.kind == "count":
        near = (gap(scene, item, owner.start, owner.end) for owner in around(scene.owners, item, scene.owner_starts))
        alone = item.name.endswith(("pair", "twins")) and not scene.heads - {"battery", "cell"}
        before = scene.before(item)
        alone = alone or (item.name == "pair" and before is not None and before.dim == "VOLT")
        alone = alone or (item.name == "both" and _both_batteries(scene, item))
        return Claim("battery.count", "near") if alone or min(near, default=NEVER) <= BESIDE else None
    if item.kind == "times" or "battery" in scene.heads | scene.facts:
        return Claim("battery.count", "default")
    return None


def _both_batteries(scene: Scene, item: Item) -> bool:
    """Whether "both" ends what is told of batteries: "the batteries read 12.7, both"."""
    clause = scene.clause(item.start)
    heads = [head.head for head in scene.head_items if head.end <= item.start and scene.clause(head.start) == clause]
    after = scene.after(item)
    return bool(heads) and not set(heads) - {"battery", "meter"} and (after is None or after.kind == "mark")


def _times(scene: Scene, item: Item) -> Claim | None:
    """What "2 x" counts that is no battery: cables side by side, bursts ("5 s x20")."""
    after = scene.after(item)
    if after is not None and after.dim == "NUM" and of_cable(scene, float(after.quantity.value)):
        return NOTHING
    bursts = any(other.dim == "TIME" for other in scene.items[max(0, item.at - 3) : item.at])
    return Claim("load.bursts", "grammar") if bursts and item.name.startswith("x") else None


def _one_of(scene: Scene, item: Item) -> bool:
    """Whether it is "one of our two", with nothing but batteries in the message."""
    before = [scene.word(at) for at in range(item.start - 3, item.start)]
    one_of = any(before[at : at + 2] in (["one", "of"], ["1", "of"]) for at in (0, 1))
    return one_of and not scene.heads - {"battery", "cell"}


def _has_so_many(scene: Scene, item: Item) -> bool:
    """Whether "I have four" speaks of the batteries of the conversation."""
    after = scene.after(item)
    ends = after is None or after.kind == "mark"
    told = any(fact.fact.startswith("battery.") for fact in scene.said)
    told = told or bool({"battery.chemistry", "battery.nominal"} & scene.facts or scene.quantities("GROUP"))
    return ends and told and scene.word(item.start - 1) in HAVING


def _of_such(scene: Scene, item: Item) -> bool:
    """Whether "two of these", "four such" are batteries of the conversation."""
    at = item.end + (scene.word(item.end) == "of")
    told = any(fact.fact.startswith("battery.") for fact in scene.said)
    return told and scene.word(at) in SUCH and not scene.heads - {"battery"}


def _rated_next(scene: Scene, item: Item) -> bool:
    """Whether a battery's figure follows: "two times 180 Ah"."""
    return any(after.dim in COUNTED for after in scene.items[item.at + 1 : item.at + 3])


def _of_others(scene: Scene, item: Item) -> bool:
    """Whether other things than batteries are counted: "2 x 50 W panels"."""
    for after in scene.items[item.at + 1 : item.at + 5]:
        if (after.head and after.head != "battery") or after.dim in ("WATT", "AMP", "TIME"):
            return True
        if after.head == "battery" or after.kind == "mark":
            return False
    return False


def _before_battery(scene: Scene, item: Item) -> bool:
    """Whether a battery follows: its kind, its volts, its figures or the word itself."""
    strange = 0
    for after in scene.items[item.at + 1 : item.at + 6]:
        if _of_another(scene, after):
            return False
        if _is_battery(scene, item, after):
            return True
        each = after.name == "," and scene.word(after.end) == "each"
        if each or (after.dim == "NUM" and not isinstance(after.quantity.value, str) and after.quantity.value >= 20):
            continue
        if after.head or after.dim or (after.kind == "mark" and after.name not in ("(", ")")):
            return False
        if after.kind == "word" and after.name not in small_words("counted"):
            strange += 1
            if strange > STRANGE or after.name in small_words("between"):
                return False
    return False


def _of_another(scene: Scene, after: Item) -> bool:
    """Whether it belongs to another thing: the volts of "twin 24 V thrusters", the caps of "six screw caps"."""
    named = scene.after(after)
    if after.dim == "VOLT":
        return named is not None and named.head in ("load", "charger")
    return after.fact == "battery.chemistry" and scene.word(after.end - 1) in PARTS_OF_IT


def _is_battery(scene: Scene, item: Item, after: Item) -> bool:
    """Whether what follows a number is a battery or its figure."""
    if _plural(after) or after.dim in COUNTED or after.fact in OF_BATTERY or after.head == "battery":
        return True
    if after.dim == "NUM" and scene.word(item.end) == "of" and "battery" in scene.heads:  # "two of 100"
        return not isinstance(after.quantity.value, str) and after.quantity.value >= 20
    return item.quantity.value != 1.0 and (after.fact == "bank.layout" or after.name in THEM)


def _plural(item: Item) -> bool:
    """Whether it is the "90s" of "two 90s"."""
    return item.dim == "TIME" and bool(re.fullmatch(r"\d{2,3}s", item.quantity.text.lower()))


COUNTS = {"charger.outputs": 1.8, "bank.count": 0.6, "battery.max_in_series": 0.6, "battery.max_in_parallel": 0.6}
OF_BATTERY = frozenset({"battery.chemistry", "battery.duty", "battery.nominal"})
ALLOWED = frozenset({"up", "max", "maximum", "allows", "allowed", "allow", "most"})
PARTS_OF_IT = frozenset(["caps", "cap", "cells", "posts", "terminals", "lugs", "studs", "plugs", "leads", "boats"])
HAVING = frozenset({"have", "got", "use", "used", "fit", "fitted", "buy", "theres"})
NUMBERED = frozenset({"boat", "slip", "berth", "boats", "pontoon", "item", "question"})  # "boat two has lithium"
SUCH = frozenset({"such", "these", "those", "them"})
BESIDE = 1.6
NEVER = 99.0
MOST_BATTERIES = 24
MOST_BURSTS = 1000
STRANGE = 2  # words not known that may stand between a number and its batteries: "two old Swedish batteries"
THEM = frozenset(["them", "em", "together", "those"])
