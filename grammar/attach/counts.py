"""How many: batteries, banks, outputs, bursts, and how many a maker allows."""

from __future__ import annotations

from grammar.attach.allowed import allowed_as
from grammar.attach.before_battery import COUNTED, OF_BATTERY, PARTS_OF_IT, is_of_seconds, stands_before_battery
from grammar.attach.lengths import counts_cables, of_cable
from grammar.attach.pairs import steps_up
from grammar.scene.claims import NOTHING, Claim, close
from grammar.scene.items import Item
from grammar.scene.near import around, gap
from grammar.scene.scene import Scene
from grammar.text.standard import NOMINAL
from grammar.told.batteries.counted_apart import APART_FROM_NAME, of_each_one
from grammar.told.words import stops
from grammar.told.years.ages import is_age, of_people

NO_ROUNDS = frozenset(
    {"volts", "amps", "is", "was", "as", "minutes", "mins", "seconds", "secs", "hours", "watts", "has", "this", "its"}
    | {"batteries", "times", "percent", "agms", "gels", "wets", "lithiums", "thrusters", "motors", "does", "us"}
)
PAUSES = frozenset({"on", "off", "rest", "pause"})
ROUNDS_AFTER = 9  # pieces
COUNTS = {"charger.outputs": 1.8, "bank.count": 0.6, "battery.max_in_series": 0.6, "battery.max_in_parallel": 0.6}
RUN = frozenset(
    {"run", "runs", "running", "power", "powers", "feed", "feeds", "drive", "drives", "turn", "turns", "spin", "carry"}
)
AT_WORK = frozenset({"at", "on", "run", "running", "together", "going"})
HAVING = frozenset({"have", "own", "got", "use", "used", "fit", "fitted", "buy", "theres", "bought", "ordered", "owns"})
NUMBERED = frozenset(
    {"boat", "slip", "berth", "boats", "pontoon", "item", "question", "season", "year"}
)  # "boat two has lithium"
SUCH = frozenset({"such", "these", "those", "them", "same"})
BESIDE = 1.6
SHOWN_BY = frozenset(
    {"lights", "lamps", "leds", "stages", "buttons", "words", "screens", "flavours", "flavors", "tunes"}
)  # of a charger, no outputs
NEVER = 99.0
MOST_BATTERIES = 24
MOST_PLACES = 12
OF_SYSTEM = frozenset({"thruster", "windlass", "motor", "bank", "boat", "system", "side"})
FORCEFUL = 60.0  # what "kicks with 260" are amps, not so many kicks
EACH_WITHIN = 7
MOST_BURSTS = 1000


def counts(scene: Scene, item: Item, value: float) -> Claim | None:
    """How many batteries, banks, outputs or bursts: a small whole number right before what it counts."""
    if value <= 12 and close(scene, item, "sun", reach=1.6, after=True):
        return Claim("solar.sun_hours", "role")
    if value <= 30 and item.kind not in ("count", "times") and is_age(scene, item):
        return Claim("battery.age", "role")
    if counts_cables(scene, item) or of_people(scene, item) or _shows(scene, item):
        return NOTHING
    if value != int(value) or not 1 <= value <= MOST_BURSTS:
        return None
    if value in NOMINAL and (side := "battery.nominal" if of_each_one(scene, item) else steps_up(scene, item)):
        return Claim(side, "grammar")
    if value in NOMINAL and value > MOST_PLACES and scene.word(item.end) in OF_SYSTEM:
        return Claim("bank.voltage", "grammar")  # one load or bank of 24 V, not 24 of them
    kicks = "to" in (scene.word(item.start - 1), scene.word(item.start - 2))  # "kicks to about 400"
    kicks = kicks or (value >= FORCEFUL and "kicks" in (scene.word(item.start - 1), scene.word(item.start - 2)))
    kicks = kicks or _kicks_in(scene, item)
    if close(scene, item, "load.bursts", reach=1.3) and not kicks and not _rated_next(scene, item):
        return Claim("battery.count" if _priced_each(scene, item) else "load.bursts", "role")
    if _of_rounds(scene, item):
        return Claim("load.bursts", "role")
    if value <= 12 and (found := "charger.outputs" if _of_charger(scene, item) else allowed_as(scene, item)):
        return Claim(found, "grammar")
    return _by_word_after(scene, item, value) or _batteries(scene, item, value)


def _kicks_in(scene: Scene, item: Item) -> bool:
    """Whether a motor kicks in, so that amps are told: "300 when it kicks in"."""
    words = [scene.word(at) for at in range(item.end, item.end + 5)]
    return "kicks" in words and (words[words.index("kicks") + 1 :][:1] == ["in"] or words[0] in ("when", "as", "once"))


def _of_rounds(scene: Scene, item: Item) -> bool:
    """Whether runs of some seconds are counted, whatever they are called: "a dozen choruses of five seconds"."""
    row = scene.items[item.at + 1 : item.at + 4]
    if len(row) > 1 and (row[0].name, row[1].name) == ("of", "them"):  # "five seconds on, twenty off, forty of them"
        near = scene.items[max(0, item.at - ROUNDS_AFTER) : item.at]
        return any(_in_seconds(one) for one in near) and not PAUSES.isdisjoint({one.name for one in near})
    if not row or row[0].kind != "word" or not row[0].name.endswith("s") or row[0].name in NO_ROUNDS:
        return False
    if len(row) == 3 and row[1].name in ("of", "at", "x") and _in_seconds(row[2]):
        return True
    before = scene.items[max(0, item.at - ROUNDS_AFTER) : item.at]  # "5 s on, ten off, a dozen choruses"
    paused = {"on", "off", "rest", "pause", "between"} & {one.name for one in before}
    return bool(paused) and any(_in_seconds(one) for one in before)


def _in_seconds(item: Item) -> bool:
    return item.dim == "TIME" and item.quantity.unit == "second"


def _shows(scene: Scene, item: Item) -> bool:
    """Whether lamps and buttons are counted, as a charger has them: "a charger with two green lights"."""
    return not SHOWN_BY.isdisjoint((scene.word(item.end), scene.word(item.end + 1))) and "charger" in scene.heads


def _by_word_after(scene: Scene, item: Item, value: float) -> Claim | None:
    """What the word after a small number says that it counts: "three outputs", "2 banks"."""
    found = (role for role, reach in COUNTS.items() if close(scene, item, role, reach=reach, after=True))
    legs = "legs" in scene.vocabulary and not _of_outputs(scene)  # "has the pair still got the legs for it"
    if legs or _is_pair(scene, item):
        found = (role for role in found if role != "charger.outputs")
    role = next(found, None) if value <= 12 else None
    return Claim(role, "role") if role else None


def _priced_each(scene: Scene, item: Item) -> bool:
    """Whether a battery's figure is told times so many: "62 lb each times four"."""
    before = scene.items[max(0, item.at - 3) : item.at]
    if scene.word(item.start - 1) != "times" or isinstance(item.quantity.value, str):
        return False
    return any(other.dim in COUNTED for other in before) and item.quantity.value <= MOST_BATTERIES


def _lead_ones(scene: Scene, item: Item) -> bool:
    """Whether leads are counted that are batteries: "4 leads at 28 kilos", "two leads of 100 Ah"."""
    if scene.word(item.end) != "leads":
        return False
    reach = 4 if scene.word(item.end + 1) in ("at", "of") else 3
    return any(other.dim in ("WEIGHT", "AH", "VOLT") for other in scene.items[item.at + 1 : item.at + reach])


def _each_so_much(scene: Scene, item: Item) -> bool:
    """Whether a battery's figure is told of each: "my two are 31 kg each", "two in there now at 28 kg apiece"."""
    later = scene.items[item.at + 1 : item.at + EACH_WITHIN]
    alone = item.kind == "count" and bool(later) and (later[0].kind == "mark" or later[0].name == "it")
    for other in later:  # "expecting twins! AGM, sixty Ah apiece"
        if other.dim in ("WEIGHT", "AH", "CCA"):
            return scene.word(other.end) in ("each", "apiece")
        if other.head or other.dim or (other.kind == "mark" and not alone):
            return False
    return False


def _of_charger(scene: Scene, item: Item) -> bool:
    """Whether a charger's outputs are counted: "a two bank charger", "2 bank 6 A charger", "twin output"."""
    if scene.word(item.end) in ("leads", "lead"):  # "my charger has three leads", "a charger of one lead"
        near = item.at > 1 and scene.items[item.at - 2].head == "charger"
        return near or (scene.word(item.start - 1) in ("has", "with", "got") and "charger" in scene.heads)
    if scene.word(item.end) == "isolated" and scene.word(item.end + 1) in ("outputs", "output", "channels"):
        return True
    if scene.word(item.end) not in ("bank", "output", "way", "channel", "out"):
        return False
    if scene.word(item.end) == "bank" and scene.word(item.end + 1) in ("one", "unit") and _of_outputs(scene):
        return True  # "I have a two bank one"
    later = scene.items[item.at + 1 : item.at + 5]
    named = scene.word(item.start - 1) in ("a", "the") and "charger" in scene.heads
    return scene.word(item.end) == "output" or named or any(other.head == "charger" for other in later)


def _of_outputs(scene: Scene) -> bool:
    """Whether a charger and its outputs are spoken of, here or before."""
    return "charger" in scene.heads or "charger.current" in scene.likely or scene.about("word:outputs")


def _batteries(scene: Scene, item: Item, value: float) -> Claim | None:
    if scene.word(item.start - 1) in NUMBERED and item.kind != "count":
        return None
    if item.kind == "times" and (claim := _times(scene, item)):
        return claim
    if item.kind == "count" and scene.word(item.start) == "pairs":  # "parallel pairs in series"
        return None
    if value <= MOST_BATTERIES and any(
        test(scene, item) for test in (stands_before_battery, _lead_ones, _each_so_much)
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
        alone = alone or (item.name == "pair" and before is not None and before.dim in ("VOLT", "GROUP"))
        listed = item.name == "pair" and before is not None and before.name == ","
        alone = alone or (listed and bool(scene.facts & OF_BATTERY or scene.quantities("AH")))  # "AGMs, pair, 24 V"
        alone = alone or (item.name == "both" and _both_batteries(scene, item))
        return Claim("battery.count", "near") if alone or min(near, default=NEVER) <= BESIDE else None
    if item.kind == "times" or "battery" in scene.heads | scene.facts:
        return Claim("battery.count", "default")
    return None


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
    heads = [head.head for head in scene.head_items if head.end <= item.start and scene.clause(head.start) == clause]
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
