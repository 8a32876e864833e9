"""A bare figure that goes on from the question before: "and 300?", "24 instead"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from grammar.attach.allowed import ALLOWED, MAKERS
from grammar.attach.both_ways import same_run, there_and_back
from grammar.later.alike import TWICE, VOLTS, as_typed, free_figures, may_be_of, ratio_of, read_as, stated_so
from grammar.later.answers import FOLLOWS, MOST_JOINED, is_free
from grammar.later.bare_numbers import mentioned_again, told_by_words
from grammar.later.same_dimension import ALIKE, ONE_BATTERY
from grammar.reading import Stated
from grammar.scene.claims import NOT_OURS, UNSURE, close
from grammar.scene.denied import denied
from grammar.scene.groups import FILLERS
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.canonical import in_unit
from grammar.text.standard import METRIC_SIZES, NOMINAL
from grammar.told.batteries.capacities import GROUPS
from grammar.told.cables.studs import another_stud

FEW = 10
SHORT = 16
MOST = 24  # batteries
BARE = 4  # a message of so few words that a figure in it goes on with what was said
CHARGING = 0.5  # of the amp-hours: no charger gives more
FAR = 6.0  # the same where the message says nothing else
MENDED = 12.0  # the same in a correction: "sorry, it's 0.18" of 1.8
NEARER = 1.3  # times
STRANGE = 2  # words beside a bare number that say nothing known
EXACT = 0.4  # "17.4 to be exact" is that near to what was said
LABELS = frozenset({"label", "sticker"})  # of a battery
CHOOSES = frozenset({"make", "rather"})  # "make it five", "I'd rather take five": nothing is put right
MANY = frozenset({"battery.count", "bank.count"})
AWG = frozenset({"1", "2", "4", "6", "8", "10"})
SIZES = {"battery.group": GROUPS, "cable.gauge": AWG, "cable.area": frozenset(f"{size:g}" for size in METRIC_SIZES)}


def goes_on_from(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "And 300?", "17.4 to be exact", "31, sorry": a bare number goes on with a figure of its size."""
    free = [item for item in free_figures(scene, stated) if item.dim in ("NUM", "COUNT") and is_free(scene, item)]
    spoken_of = [item for item, _ in mentioned_again(scene, said)]
    free = [item for item in free if not denied(scene, item) and item not in spoken_of and not same_run(scene, item)]
    opening = opening_of(scene)
    if opening:
        free = [item for item in free if item.end <= opening]
    mended = min((found.start for found in scene.named("note", "correction")), default=len(scene.tokens))
    taken = (
        {item.fact for item in stated if item.how not in UNSURE} if all(one.start < mended for one in free) else set()
    )
    said = _without_limits(scene, [old for old in said if old.fact not in taken])
    if (
        len(free) != 1
        or not free[0].part
        or free[0].quantity.value in {one.value for one in stated}
        or any(item.span == free[0].part.span for item in stated)
    ):
        return
    item = free[0]
    if _is_alternative(scene, item):
        return
    if (plain := _plainly_told(scene, item, said)) is not None:
        yield plain
        return
    number = item.quantity.value
    fact = "" if isinstance(number, str) else told_by_words(scene, item, float(number), said)
    if fact == NOT_OURS:
        return
    if fact and not isinstance(number, str):
        yield stated_so(scene, item, fact, float(number))
        return
    if (other := _names_another(scene, item, said)) is not None:
        yield stated_so(scene, item, other.fact, float(item.quantity.value))
        return
    exact = close(scene, item, "exact", reach=2.0)
    cued = scene.named("note", "ellipsis") or scene.named("note", "correction")
    goes_on = bool(cued) or bool(opening) or len(scene.tokens) <= BARE or _is_bare(scene)
    near = 1 + EXACT if exact else ALIKE
    battery = [old for old in said if old.fact == "battery.capacity"] if scene.word(item.start - 1) == "a" else []
    labelled = _on_label(scene, item)
    if labelled:
        battery = [old for old in said if old.fact.startswith("battery.")]
    short = len(scene.tokens) <= SHORT or labelled or bool(opening)
    old = (
        _matching(
            item,
            [*battery, *said],
            near,
            anyhow=_reach(scene) if goes_on and not exact else 0.0,
            asked=[fact for fact in scene.likely[:1] if fact != "fuse.rating"],  # bare_numbers.py looks at fuses
        )
        if short
        else None
    )
    if old is not None and (value := read_as(old, item.quantity)) is not None:
        yield stated_so(scene, item, old.fact, value)


def _without_limits(scene: Scene, said: list[Stated]) -> list[Stated]:
    """What was said without what a maker allows, where batteries were counted and no word of leave stands now: the five
    of "and five, then?" are batteries; only "sorry, 5" puts the limit right."""
    counted = any(old.fact == "battery.count" for old in said)
    put_right = scene.named("note", "correction") and CHOOSES.isdisjoint(scene.vocabulary)
    if not counted or put_right or (ALLOWED | MAKERS | {"limit"}) & scene.vocabulary:
        return said
    return [old for old in said if old.fact not in MOST_JOINED]


def _plainly_told(scene: Scene, item: Item, said: Sequence[Stated]) -> Stated | None:
    """A length of the cable ("24 there and back" is no system's volts) or a fraction after the size of a stud."""
    run = next((old for old in said if old.fact == "cable.length"), None)
    if run is not None and (metres := _run(scene, item, run)) is not None:
        return stated_so(scene, item, run.fact, metres)
    size = another_stud(item, said)
    return None if size is None else stated_so(scene, item, "terminal.size", size)


def _run(scene: Scene, item: Item, old: Stated) -> float | None:
    """Another length of a cable, told to be there and back or one way, in the unit of the one before; None else."""
    typed, number = as_typed(old.text), item.quantity.value
    there, single = there_and_back(scene, item), scene.about("role:length_one_way")
    if typed is None or isinstance(number, str) or not (there or single):
        return None
    metres = in_unit(float(number), item.quantity.unit or typed.unit, "meter")
    return metres / 2 if metres is not None and there else metres


def _is_alternative(scene: Scene, item: Item) -> bool:
    """Whether it is weighed against the quantity right before it: "a panel of 10 watts? 30?"."""
    near = scene.items[max(0, item.at - 2) : item.at]
    later = scene.items[item.at + 1 : item.at + 3]
    if len(later) == 2 and later[0].name in ("and", "&") and later[1].dim == "NUM":  # "then 35 and 25"
        return True
    return len(near) == 2 and near[0].dim in ("WATT", "AMP", "AH") and near[1].name in ("end", "or", "?")


def opening_of(scene: Scene) -> int:
    """Where a first sentence ends that is little more than a figure: "oh 27. I have new glasses"; 0 for another."""
    end = next((item.start for item in scene.items if item.name == "end"), 0)
    numbers = [item for item in scene.measured if item.end <= end]
    return end if end <= BARE and len(numbers) == 1 and numbers[0].dim == "NUM" else 0


def _names_another(scene: Scene, item: Item, said: Sequence[Stated]) -> Stated | None:
    """A bare number that is a figure not said before: 12 are volts beside watts, "it's a 55" an alternator's amps,
    "can a 30 do it" a charger's, "and with two?" batteries."""
    value, told = item.quantity.value, {old.fact: old for old in said}
    if isinstance(value, str):
        return None
    if value in NOMINAL and not told.keys() & set(VOLTS) and "load.power" in told and item.dim == "NUM":
        return replace(told["load.power"], fact="bank.voltage")
    capacity = told.get("battery.capacity")
    if capacity is None or isinstance(capacity.value, str):
        return None
    a_charger = scene.word(item.start - 1) == "a" and scene.word(item.end) in ("do", "manage", "cope")
    if a_charger and value <= CHARGING * capacity.value and "load.current" not in told:
        return replace(capacity, fact="charger.current")
    with_so_many = scene.word(item.start - 1) == "with" and value == int(value) and 2 <= value <= MOST
    if with_so_many and item.quantity.text.strip().isalpha():
        return replace(capacity, fact="battery.count")
    return None


def _on_label(scene: Scene, item: Item) -> bool:
    """Whether the number is read off a label: "the label reads 570"."""
    return scene.word(item.start - 1) in ("reads", "says") and bool(LABELS & scene.vocabulary)


def _reach(scene: Scene) -> float:
    """How far from a figure said before a bare number may be that goes on with it."""
    return MENDED if scene.named("note", "correction") else FAR


def _matching(item: Item, said: Sequence[Stated], near: float, *, anyhow: float, asked: Sequence[str]) -> Stated | None:
    """The newest figure that this number can take the place of, else the nearest, at most so many times as large."""
    number = item.quantity.value
    if isinstance(number, str):
        return None
    if number in NOMINAL and (volts := next((old for old in said if old.fact in VOLTS), None)):
        return replace(volts, fact="bank.voltage") if number > ONE_BATTERY else volts
    counts = number == int(number) and number <= MOST
    numeric = []
    for old in said:
        typed = as_typed(old.text)
        if f"{number:g}" in SIZES.get(old.fact, ()):
            return old
        fits = (counts if old.fact in MANY else item.dim == "NUM") and may_be_of(old, number)
        if fits and typed is not None and not isinstance(typed.value, str):
            numeric.append((ratio_of(number, typed.value), old))
    found = next((old for far, old in numeric if old.fact in asked and far <= TWICE), None)
    found = found or _newest([pair for pair in numeric if pair[0] <= near])
    if found is None and anyhow and numeric:
        far, other = min(numeric, key=lambda pair: pair[0])
        most = near if other.fact in MANY else float("inf") if other.fact == "ambient.temperature" else anyhow
        found = other if far <= most else None
    return found


def _newest(alike: Sequence[tuple[float, Stated]]) -> Stated | None:
    """The newest of figures alike, or one clearly nearer: 50 goes on from 30 A, not from 120 Ah told after it."""
    if not alike:
        return None
    far, newest = alike[0]
    nearest, old = min(alike, key=lambda pair: pair[0])
    return old if far > TWICE and nearest * NEARER < far else newest


def _is_bare(scene: Scene) -> bool:
    """Whether next to nothing but the number stands in the message."""
    strange = [item for item in scene.items if item.kind == "word" and item.name not in FOLLOWS | FILLERS]
    return len(scene.tokens) <= FEW and len(strange) <= STRANGE and not scene.head_items
