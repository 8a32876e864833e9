"""What a bare number of a later message is by the words about it: "from 30", "with a 25", "a 350 on that", "all 3"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar.reading import Stated
from grammar.scene.claims import NOT_OURS
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.told.currents.fuses import FUSES, another, is_too_small

FULL = 100.0  # percent
WARM = 45.0  # °C
WARMING = frozenset({"warmed", "warmer", "heated", "heater", "heating", "cooled", "thawed", "colder", "stove"})
THEN = (
    "where its",
    "where it is",
    "inside its",
    "indoors its",
    "when its",
    "when it is",
    "once its",
    "once it is",
    "until its",
    "until it is",
    "till its",
    "till it is",
)
MOST_CHARGE = 100.0  # amps of a charger
CHARGING = 0.5  # of the amp-hours: no charger gives more
SMALLEST = 20.0  # amp-hours
MOST = 24  # batteries
LEAST_CHARGE = 5.0
ALONE = frozenset({"", "and", "or", "if", "how", "about", "what", "then", ",", "its", "theyre", "stored", "kept"})
SECTIONS = frozenset({16.0, 25.0, 35.0, 50.0, 70.0, 95.0, 120.0})  # mm2 of a thruster's cable
SUN = 24.0  # hours
SMALLEST_LOAD = 20.0  # watts
FILLS = frozenset({"charge", "recharge", "fill", "refill", "charging", "recharging", "charged", "top"})
BRINGS = frozenset({"get", "bring", "charge", "charged", "brought", "got"})
WHAT = frozenset({"it", "them", "her", "battery", "bank"})
BY = frozenset({"with", "on", "off", "using"})
ARTICLES = frozenset({"a", "an", "another"})
HAS = frozenset({"got", "have", "ive", "mines", "ours", "is", "its", "only", "just", "with", "gave"})
SAYS = frozenset({"say", "says", "said", "get", "gets"})
CAN = frozenset({"take", "takes", "stand", "accept", "handle"})
JUDGED = frozenset({"right", "ok", "okay", "enough", "do", "good", "fine", "correct", "suit", "big", "too", "safe"})
BATTERIES = frozenset({"battery", "batt", "it", "they", "bank", "lithium", "agm", "gel"})


def told_by_words(scene: Scene, item: Item, value: float, said: Sequence[Stated]) -> str:
    """The fact that the words about a bare number name; "-" for none that is ours, "" where they tell nothing."""
    told = {old.fact: old for old in said}
    for test in (_quoted, _warmth, _charge, _of_them_all, _charger, _fuse, _cable, _sun, _drain, _watts):
        if fact := test(scene, item, value, told):
            return fact
    return ""


def _quoted(scene: Scene, item: Item, value: float, told: dict[str, Stated]) -> str:
    """A figure that somebody gives as the answer: "why does the shop say 66 for that"."""
    if "percent" in scene.vocabulary and not {"cable.drop", "battery.charge"} & told.keys():
        return NOT_OURS  # "and the percent thing, is it 3 or 10?"
    have = scene.word(item.start - 1) == "have" and scene.word(item.end) == "?" and "do" in scene.vocabulary
    if have and "i" in scene.vocabulary:
        return NOT_OURS  # "so do I now have 200?"
    return NOT_OURS if scene.word(0) == "why" and scene.word(item.start - 1) in SAYS else ""


def _warmth(scene: Scene, item: Item, value: float, told: dict[str, Stated]) -> str:
    """Degrees that it has now or then, where degrees were told before: "it's warmed to 15", "and when it's 12?"."""
    warmer = scene.word(item.start - 1) == "to" and bool(WARMING & scene.vocabulary) and value <= WARM
    before = " ".join(scene.word(item.start - back) for back in (3, 2, 1))
    warmer |= before.endswith(THEN) and value <= WARM
    return "ambient.temperature" if warmer and "ambient.temperature" in told else ""


def _charge(scene: Scene, item: Item, value: float, told: dict[str, Stated]) -> str:
    """How full it is: "from 30", "what if I get it to 80"; "and to be at 90" only says where it should end."""
    if not {"battery.charge", "charger.current"} & told.keys() or not 0 <= value <= FULL:
        return ""
    before = [scene.word(item.start - back) for back in (1, 2, 3)]
    if before[0] == "from" and "charger.input_voltage" not in told:
        return "battery.charge"
    if before[0] == "to" and before[1] in WHAT and before[2] in BRINGS:
        return "battery.charge" if "battery.charge" in told and scene.named("note", "ellipsis") else NOT_OURS
    if before[0] == "at" and before[1] in ALONE and value >= LEAST_CHARGE and _holds_charge(scene, told):
        return "battery.charge"  # "at forty?"
    return NOT_OURS if before[:2] == ["at", "be"] else ""


def _holds_charge(scene: Scene, told: dict[str, Stated]) -> bool:
    """Whether the charge of a battery was told, and nothing else that one speaks of with "at"."""
    others = {"ambient.temperature", "reading.voltage", "reading.load_voltage", "reading.current", "load.current"}
    return "battery.charge" in told and not others & told.keys() and not scene.head_items


def _of_them_all(scene: Scene, item: Item, value: float, told: dict[str, Stated]) -> str:
    """How many batteries: "what charger for all 3"."""
    batteries = any(fact.startswith("battery.") for fact in told)
    return "battery.count" if scene.word(item.start - 1) == "all" and value in range(2, MOST + 1) and batteries else ""


def _charger(scene: Scene, item: Item, value: float, told: dict[str, Stated]) -> str:
    """A charger that goes by its amps: "how long to recharge those with a 25", "can the battery take a 60"."""
    if value > MOST_CHARGE or "load" in scene.heads:
        return ""
    before = [scene.word(item.start - back) for back in (1, 2, 3, 4)]
    if before[0] == "at" and before[1] in ("charges", "charging", "charged", "charge"):
        return "charger.current"
    article = before[0] in ARTICLES
    if article and before[1] == "for" and value >= SMALLEST and _last_was(scene, "charger.current"):
        return "battery.capacity"  # "how many amps for a 75?"
    if article and before[1] in BY and FILLS & scene.vocabulary:
        return "charger.current"
    if _settled_on(scene, item) and "load.current" not in told and _last_was(scene, "charger.current"):
        return "charger.current"
    if article and before[1] in CAN and "charger.current" in told and BATTERIES & set(before[2:]):
        return "charger.current"
    capacity = told.get("battery.capacity")
    fits = capacity is None or isinstance(capacity.value, str) or value <= CHARGING * capacity.value
    bought = article or before[0] in HAS
    return "charger.current" if bought and fits and _last_was(scene, "charger.current") else ""


def _settled_on(scene: Scene, item: Item) -> bool:
    """Whether it is what they settle on, first of all: "30 then, and the fuse?", "25 it is"."""
    follows = [scene.word(item.end), scene.word(item.end + 1)]
    return item.start == 0 and (follows[0] in ("then", "so") or follows == ["it", "is"])


def _last_was(scene: Scene, fact: str) -> bool:
    """Whether the last question was of what goes by this figure, and this message names no other thing."""
    return scene.likely[:1] == (fact,) and not scene.heads - {"charger", "fuse", "cell"}


def _fuse(scene: Scene, item: Item, value: float, told: dict[str, Stated]) -> str:
    """A fuse: "and a 350 on that", "the man gave me a 500", "is 350 right", where fuses were spoken of last."""
    if another(scene, item, value):
        return "fuse.rating"
    if (
        value not in FUSES
        or is_too_small(scene, value)
        or scene.likely[:1] != ("fuse.rating",)
        or scene.heads - {"fuse", "cable"}
    ):
        return ""
    before, after = scene.word(item.start - 1), scene.word(item.end)
    if scene.word(item.start - 2) == "on" and "cable.area" in told:  # "and on a 70?"
        return ""
    bought = before in ARTICLES | {"ive", "have", "got"} and after not in ("motor", "thruster", "load", "draw")
    judged = before in ("", "is", "would", "will", "so", "then", ",") and after in JUDGED
    known = not {"load.current", "load.model"}.isdisjoint(told)  # else it may be the amps of the load
    return "fuse.rating" if bought or (judged and known) else ""


def _cable(scene: Scene, item: Item, value: float, told: dict[str, Stated]) -> str:
    """A cable by its section: "would I get away with what's in there, it's 35", where one was asked for last."""
    stocked = "stock" in scene.vocabulary and scene.word(item.start - 1) in ("has", "have", "only", "stocks")
    named = (stocked or scene.word(item.start - 1) in ("its", "is", "a", "the")) and value in SECTIONS
    spoken = scene.likely[:1] == ("cable.area",) and not {"cable.area", "cable.gauge"} & told.keys()
    return "cable.area" if named and spoken and not scene.heads - {"cable"} else ""


def _sun(scene: Scene, item: Item, value: float, told: dict[str, Stated]) -> str:
    """Hours of sun: "midnight sun and that, call it 6", "and a cloudy autumn, two"."""
    called = scene.word(item.start - 1) in ("it", "say", ",", "maybe", "perhaps", "about")
    asked = "solar.sun_hours" in told or scene.likely[:1] == ("solar.power",)
    return "solar.sun_hours" if called and asked and 0 < value <= SUN and scene.about("role:sun", "role:sunny") else ""


def _drain(scene: Scene, item: Item, value: float, told: dict[str, Stated]) -> str:
    """What is still drawn: "pulled the fuse of the radio, fell to 0.03", "neighbour lent me his clamp. shows 0.3"."""
    if value >= 2 or "." not in item.name or "reading.gravity" in told:
        return ""
    down = scene.word(item.start - 1) == "to" or scene.word(item.start - 1) in ("now", "shows", "reads", "says", "was")
    spoken = "drain.current" in told or scene.likely[:1] == ("drain.current",)
    return "drain.current" if down and spoken else ""


def _watts(scene: Scene, item: Item, value: float, told: dict[str, Stated]) -> str:
    """Another thing that goes by its watts: "no kettle then. coffee machine 900"."""
    if "load.power" not in told or "load.current" in told or value < SMALLEST_LOAD:
        return ""
    before, after = scene.before(item), scene.after(item)
    ends = after is None or after.kind == "mark"
    named = before is not None and before.kind in ("word", "thing", "value") and scene.word(item.start - 1) not in BY
    return "load.power" if ends and named and "load" in scene.heads and not scene.quantities("AMP", "WATT") else ""


def mentioned_again(scene: Scene, said: Sequence[Stated]) -> Iterator[tuple[Item, Stated]]:
    """Figures said before that are only spoken of: "22.1 was at the fuse board", "the 13.8 was its neighbour"."""
    for item in scene.measured:
        if scene.word(item.end) not in ("was", "were") or isinstance(item.quantity.value, str):
            continue
        old = next((one for one in said if one.how != "default" and one.value == item.quantity.value), None)
        if old is not None:
            yield item, old
