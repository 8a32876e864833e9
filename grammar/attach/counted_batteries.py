"""Which numbers count batteries: "three more of them", "a pair of 6 V", "I have four"."""

from __future__ import annotations

from grammar.attach.before_battery import COUNTED, OF_BATTERY, PARTS_OF_IT, is_of_seconds, stands_before_battery
from grammar.attach.lengths import of_cable
from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.near import around, gap
from grammar.scene.scene import Scene
from grammar.told.batteries.amp_batteries import counted
from grammar.told.batteries.counted_apart import APART_FROM_NAME
from grammar.told.words import stops

RUN = frozenset(
    {"run", "runs", "running", "power", "powers", "feed", "feeds", "drive", "drives", "turn", "turns", "spin", "carry"}
)
AT_WORK = frozenset({"at", "on", "run", "running", "together", "going"})
HAVING = frozenset(
    {"have", "own", "got", "use", "used", "fit", "fitted", "buy", "theres", "bought", "ordered", "owns", "ive", "weve"}
)
NUMBERED = frozenset(
    {"boat", "slip", "berth", "boats", "pontoon", "item", "question", "season", "year"}
)  # "boat two has lithium"
SMALL = frozenset({"small", "quick", "short", "easy", "little", "simple", "silly", "daft", "more"})
QUESTIONS = frozenset(
    {"questions", "queries", "matters", "points", "things", "enquiries", "inquiries", "requests", "issues", "topics"}
)
SUCH = frozenset({"such", "these", "those", "them", "same"})
BESIDE = 1.6
NEVER = 99.0
MOST_BATTERIES = 24
EACH_WITHIN = 7


def is_numbered(scene: Scene, item: Item) -> bool:
    """Whether it is a row's number in a list: the 2 of "(1) a thruster, (2) 12 V battery"; "(2) 12 V AGM" counts."""
    bracketed = scene.word(item.start - 1) == "(" and scene.word(item.end) == ")"
    return bracketed and "(1)" in scene.text


def batteries_counted(scene: Scene, item: Item, value: float) -> Claim | None:
    """The claim of a number that counts batteries; None where it counts something else."""
    if (scene.word(item.start - 1) in NUMBERED and item.kind != "count") or _of_questions(scene, item):
        return None
    if item.kind == "times" and (claim := _times(scene, item)):
        return claim
    if item.kind == "count" and scene.word(item.start) == "pairs":  # "parallel pairs in series"
        return None
    if value <= MOST_BATTERIES and any(
        test(scene, item) for test in (stands_before_battery, _lead_ones, _each_so_much, counted)
    ):
        return Claim("battery.count", "grammar")
    tests = (_multiplied, _one_of, _has_so_many, _of_such, _of_them_all, _aside, _is_pair, *APART_FROM_NAME)
    if 2 <= value <= MOST_BATTERIES and any(test(scene, item) for test in tests):
        return Claim("battery.count", "grammar")
    if not 2 <= value <= MOST_BATTERIES or item.dim != "COUNT" or of_others(scene, item) or _both_loads(scene, item):
        return None
    if scene.word(item.end) in PARTS_OF_IT or [scene.word(item.end), scene.word(item.end + 1)] == ["of", "us"]:
        return None
    if item.kind == "count":
        near = (gap(scene, item, owner.start, owner.end) for owner in around(scene.owners, item, scene.owner_starts))
        alone = item.name.endswith(("pair", "twins")) and not scene.heads - {"battery", "cell"}
        before = scene.before(item)
        placed = before is not None and before.name in ("bow", "stern") and item.at > 1  # "24 V bow pair"
        before = scene.items[item.at - 2] if placed else before
        alone = alone or (item.name == "pair" and before is not None and before.dim in ("VOLT", "GROUP"))
        listed = item.name == "pair" and before is not None and before.name == ","
        alone = alone or (listed and bool(scene.facts & OF_BATTERY or scene.quantities("AH")))  # "AGMs, pair, 24 V"
        alone = alone or (item.name == "both" and _both_batteries(scene, item))
        return Claim("battery.count", "near") if alone or min(near, default=NEVER) <= BESIDE else None
    if item.kind == "times" or (value < MOST_BATTERIES and "battery" in scene.heads | scene.facts):
        return Claim("battery.count", "default")
    return None


def _of_questions(scene: Scene, item: Item) -> bool:
    """Whether the questions of a message are counted: "Three small ones, sorry", "two matters about the gel bank"."""
    at = item.end + (scene.word(item.end) in SMALL)
    return scene.word(at) in QUESTIONS or (item.start == 0 and at > item.end and scene.word(at) == "ones")


def _lead_ones(scene: Scene, item: Item) -> bool:
    """Whether leads are counted that are batteries: "4 leads at 28 kilos", "two leads of 100 Ah"."""
    if scene.word(item.end) != "leads":
        return False
    reach = 4 if scene.word(item.end + 1) in ("at", "of", "@") else 3
    return any(other.dim in ("WEIGHT", "AH", "VOLT") for other in scene.items[item.at + 1 : item.at + reach])


def _each_so_much(scene: Scene, item: Item) -> bool:
    """Whether a battery's figure is told of each: "my two are 31 kg each", "two in there now at 28 kg apiece"."""
    later = scene.items[item.at + 1 : item.at + EACH_WITHIN]
    alone = item.kind == "count" and bool(later) and (later[0].kind == "mark" or later[0].name == "it")
    alone = alone or scene.word(item.start - 1) in HAVING  # "we've two, 620 CCA each"
    for other in later:  # "expecting twins! AGM, sixty Ah apiece"
        if other.dim in ("WEIGHT", "AH", "CCA"):
            return scene.word(other.end) in ("each", "apiece")
        if other.head or other.dim or (other.kind == "mark" and not alone):
            return False
    return False


def _multiplied(scene: Scene, item: Item) -> bool:
    """Whether a battery's figure is told times so many: "6v x4"."""
    before = scene.items[max(0, item.at - 2) : item.at]
    if item.kind == "times" and item.name.startswith("x"):  # "6 V batteries x4"
        return any(other.dim in COUNTED or other.head == "battery" for other in before)
    return len(before) == 2 and before[1].name == "x" and before[0].dim in COUNTED and item.dim == "COUNT"


def _is_pair(scene: Scene, item: Item) -> bool:
    """Whether a case or a layout makes a pair one of batteries: "a GC2 pair for the stern", "for a parallel pair"."""
    before = scene.before(item)
    return item.name == "pair" and before is not None and (before.dim == "GROUP" or before.fact == "bank.layout")


def _both_loads(scene: Scene, item: Item) -> bool:
    """Whether "both" are two loads: "windlass 80 A, thruster 200 A, both at once", "will it run both"."""
    run = scene.word(item.start - 1) in RUN or scene.word(item.end) in AT_WORK
    return item.name == "both" and run and "load" in scene.heads and len(scene.quantities("AMP")) > 1


def _both_batteries(scene: Scene, item: Item) -> bool:
    """Whether "both" ends what is told of batteries: "the batteries read 12.7, both"."""
    clause = scene.clause(item.start)
    heads = [head.head for head in scene.heads_by_clause.get(clause, ()) if head.end <= item.start]
    return bool(heads) and not set(heads) - {"battery", "meter"} and stops(scene, item)


def _times(scene: Scene, item: Item) -> Claim | None:
    """What "2 x" counts that is no battery: cables side by side, bursts ("5 s x20", "8 x 10 s bursts")."""
    after = scene.after(item)
    if after is not None and is_of_seconds(scene, after):
        return Claim("load.bursts", "grammar")
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
    ends = stops(scene, item)
    told = any(fact.fact.startswith("battery.") for fact in scene.said)
    told = told or bool({"battery.chemistry", "battery.nominal"} & scene.facts or scene.quantities("GROUP"))
    if (
        (told or scene.quantities("AH")) and scene.word(item.end) in ("i", "we") and scene.word(item.end + 1) in HAVING
    ):  # "Four I have."
        return scene.word(item.start - 1) in ("", ".", ",", ";", "!")
    return ends and told and scene.word(item.start - 1) in HAVING


def _of_such(scene: Scene, item: Item) -> bool:
    """Whether "two of these", "four such" are batteries of the conversation."""
    at = item.end + (scene.word(item.end) == "of")
    told = any(fact.fact.startswith("battery.") for fact in scene.said)
    at += scene.word(at) == "the"
    leads = {"cable"} if scene.word(at + 1) == "leads" else set()  # "three such leads" are batteries
    here = scene.word(at) == "such" and "bank.layout" in scene.facts and bool(scene.facts & OF_BATTERY)
    return (told or here) and scene.word(at) in SUCH and not scene.heads - {"battery", "meter"} - leads


def _of_them_all(scene: Scene, item: Item) -> bool:
    """Whether "can the three be joined" speaks of the batteries of the conversation."""
    told = any(fact.fact.startswith(("battery.", "reading.")) for fact in scene.said)
    if scene.word(item.start - 1) in ("my", "our") and scene.word(item.end) == "are" and "bank.layout" in scene.facts:
        return True
    return told and scene.word(item.start - 1) in ("the", "all") and scene.word(item.end) in ("be", "go", "together")


def _aside(scene: Scene, item: Item) -> bool:
    """Whether the number stands by itself beside batteries: "the 6 V ones, four, 225 Ah", "lithium bank, 2 of"."""
    batteries = bool(scene.facts & OF_BATTERY or "battery" in scene.heads)
    before, after = scene.before(item), scene.items[item.at + 1 : item.at + 3]
    if before is None or before.name != "," or not after or not batteries:
        return False
    if after[0].name == "of":
        return len(after) == 1 or after[1].kind == "mark"
    if after[0].name == "," and [one.name for one in after[1:]] in (["for"], ["to"]):  # "6 V ones, four, for 24"
        return "battery.nominal" in scene.facts or bool(scene.quantities("VOLT"))
    return after[0].name == "," and len(after) == 2 and after[1].dim in ("AH", "CCA")


def _rated_next(scene: Scene, item: Item) -> bool:
    """Whether a battery's figure follows: "two times 180 Ah"."""
    return any(after.dim in COUNTED for after in scene.items[item.at + 1 : item.at + 3])


def of_others(scene: Scene, item: Item) -> bool:
    """Whether other things than batteries are counted: "2 x 50 W panels"."""
    for after in scene.items[item.at + 1 : item.at + 5]:
        if item.kind == "times" and after.at == item.at + 1 and after.dim == "NUM":  # "2x 80 with 15 A"
            return False
        if after.dim == "TIME" and after.quantity.unit == "year":  # "a pair of 4 year old AGMs"
            continue
        if (after.head and after.head != "battery") or after.dim in ("WATT", "AMP", "TIME"):
            return True
        if after.head == "battery" or after.kind == "mark":
            return False
    return False
