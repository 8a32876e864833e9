"""What a later message says of figures that were said before: "not 420, 240", "24 was there and back", "and 300"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache

from grammar.attach.lengths import there_and_back
from grammar.attach.readings import FLATTENED
from grammar.facts import facts
from grammar.later.answers import AT_REST, FOLLOWS, MOST_JOINED, WEAK, is_free
from grammar.later.bare import mentioned_again, told_by_words
from grammar.reading import Quantity, Stated
from grammar.scene.claims import NOT_OURS, close
from grammar.scene.denied import denied
from grammar.scene.groups import FILLERS
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.canonical import in_unit
from grammar.text.parts import parts
from grammar.text.standard import METRIC_SIZES, NOMINAL
from grammar.told.batteries.capacities import GROUPS
from grammar.told.batteries.charge_so import charge_again
from grammar.told.cables.studs import another_stud
from grammar.told.cold.degrees import said_fahrenheit
from grammar.told.currents.shares import a_share

LONGEST = 24  # words: a longer message speaks for itself
ONLY_ONE = re.compile(
    r"\b(?:just|only|with|a single) one\b[^a-z]*(?:then|only|alone|instead|of them|of those|$)"
    r"|\bone of (?:them|those) (?:only|alone)\b"
)
FEW = 10
SHORT = 16
NEXT = 4  # pieces between a figure and the one that takes its place
MOST = 24  # batteries
BARE = 4  # a message of so few words that a figure in it goes on with what was said
CHARGED = 13.0  # volts: no charger gives less
ALIKE = 4.0  # a bare number so many times larger or smaller is another thing
CHARGING = 0.5  # of the amp-hours: no charger gives more
FAR = 6.0  # the same where the message says nothing else
MENDED = 12.0  # the same in a correction: "sorry, it's 0.18" of 1.8
WIDE = 20.0  # the same for a number with its unit
STRANGE = 2  # words beside a bare number that say nothing known
READ = 1.4  # of one battery's readings no one is so many times another
TWICE = 2.0
RATED = frozenset({"battery.cca", "battery.ca"})
EXACT = 0.4  # "17.4 to be exact" is that near to what was said
ASKING = frozenset({"what", "whats", "how"})
CELSIUS = frozenset({"c", "celsius"})
LABELS = frozenset({"label", "sticker"})  # of a battery
PAIR = frozenset({"charger.setting", "battery.chemistry"})
MANY = frozenset({"battery.count", "bank.count"})
AWG = frozenset({"1", "2", "4", "6", "8", "10"})
OTHER_RATING = {"battery.cca": "battery.ca", "battery.ca": "battery.cca"}
SIZES = {"battery.group": GROUPS, "cable.gauge": AWG, "cable.area": frozenset(f"{size:g}" for size in METRIC_SIZES)}
SOME_CELLS = frozenset({"end", "other", "others", "last", "first", "middle", "rest", "two", "third", "fourth"})
LONGEST_BURST = 90.0  # seconds
CHARGED_SO = frozenset({"charge", "charged", "charging", "recharged"})
MOST_DRAIN = 5.0  # amps that flow with all switched off
SYSTEMS = frozenset({"system", "boat", "bank", "setup"})
ONE_BATTERY = 12.0  # volts: "24, sorry" is the bank's
VOLTS = ("bank.voltage", "battery.nominal")


def goes_back(scene: Scene, item: Item, said: Sequence[Stated]) -> bool:
    """Whether a bare number goes on with what was spoken of, so that nothing else about it counts: "and 31?"."""
    value = item.quantity.value
    if item.dim != "NUM" or isinstance(value, str) or not said:
        return False
    sizes = any(f"{value:g}" in SIZES.get(old.fact, ()) for old in said) and len(scene.tokens) <= BARE
    return sizes or bool(told_by_words(scene, item, float(value), said))


def recalled(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> list[Stated]:
    """The facts with those that speak of figures said before; `said` has the newest first."""
    if not said:
        return stated
    if len(scene.tokens) > LONGEST:
        return [*stated, *(_gone_on(scene, stated, said) if _opening(scene) else ())]
    again = list(mentioned_again(scene, said))
    gone = {item.part.span for item, _ in again if item.part}
    stated = _same_dimension(scene, [item for item in stated if item.span not in gone], said)
    found = [
        *_told_again(scene, again, stated),
        *_rescaled(scene, said),
        *a_share(scene, said),
        *charge_again(scene, said),
        *_corrected(scene, stated, said),
        *_renamed(scene, stated, said),
        *_measured_so(scene, stated, said),
        *_turned_about(scene, stated, said),
        *_read_there(scene, said),
        *_drained(scene, stated, said),
        *_cells_apart(scene, stated, said),
        *_one_of_them(scene, said),
    ]
    if not found:
        found = list(_gone_on(scene, stated, said))
    spans = {item.span for item in found}
    told = {item.fact for item in found if item.fact == "reading.gravity"}
    kept = (item for item in stated if item.fact not in told and (item.span not in spans or item.how not in WEAK))
    return [*kept, *found]


def _told_again(scene: Scene, again: list[tuple[Item, Stated]], stated: list[Stated]) -> Iterator[Stated]:
    """ "22.1 was at the fuse board, at the battery 23.9": the figure beside one said before takes its place."""
    for item, old in again:
        free = [other for other in _free(scene, stated) if other.dim in (item.dim, "NUM") and other is not item]
        free = [other for other in free if all(other is not one for one, _ in again)]
        if len(free) == 1 and (value := _as(old, free[0].quantity)) is not None:
            yield _stated(scene, free[0], old.fact, value)


def _same_dimension(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> list[Stated]:
    """Amps, volts or a time that nothing here names are those that were spoken of last: "0.8 amps, sorry"."""
    own = {item.fact for item in said}
    taken = {item.fact for item in stated if item.how not in WEAK}
    mended = bool(scene.named("note", "correction"))
    facts_of = []
    for item in stated:
        if item.how in WEAK and isinstance(item.value, float) and item.low is None and not _is_for(scene, item):
            if _drew(scene, item, said):
                facts_of.append(replace(item, fact="reading.current"))
                continue
            if mended and (rated := _rated_before(item, said)):
                facts_of.append(replace(item, fact=rated, how="asked"))
                continue
            others = [old for old in said if old.fact not in taken and _of_one_unit(scene, old, item)]
            other = next((old for old in others if _alike(item, old, ALIKE)), None)
            if other is None and item.fact not in own:
                other = next((old for old in others if mended or _alike(item, old, WIDE)), None)
            item = replace(item, fact=other.fact, how="asked") if other else item
        facts_of.append(item)
    return facts_of


def _rated_before(item: Stated, said: Sequence[Stated]) -> str:
    """The rating said before, where a bare number takes its place: "sorry, they're 450 each" of 500 CCA."""
    own, bare = {old.fact for old in said}, item.text.strip().isdigit()
    if not bare or item.fact in own or not item.fact.startswith("battery."):
        return ""
    return next((old.fact for old in said if old.fact in RATED and _alike(item, old, TWICE)), "")


def _is_for(scene: Scene, item: Stated) -> bool:
    """Whether a size is asked for these amps: "the right size for 330 amps"."""
    before = scene.ahead(item.span[0]).lower().rstrip()
    return item.fact == "load.current" and before.endswith(" for") and scene.about("request:what_size")


def _drew(scene: Scene, item: Stated, said: Sequence[Stated]) -> bool:
    """Whether amps for some seconds were drawn when the volts under load were read that were told before."""
    read = {old.fact for old in said}
    seconds = any(other.quantity.unit == "second" for other in scene.quantities("TIME"))
    return item.fact == "load.current" and "reading.load_voltage" in read and "load.current" not in read and seconds


def _of_one_unit(scene: Scene, old: Stated, new: Stated) -> bool:
    spec = facts()[new.fact]
    if new.fact == "reading.voltage" and not _reads_as(scene, old, new):
        return False
    if isinstance(new.value, float) and not _may_be(old, new.value):
        return False
    if new.fact == "bank.voltage" and old.fact == "battery.nominal" and new.value != ONE_BATTERY:
        return bool(scene.named("note", "correction"))
    if new.fact in VOLTS and old.fact not in VOLTS:  # "and 24 V?" is a system, "sorry, 12 V" is read
        return bool(scene.named("note", "correction")) and not _is_system(scene, new) and _alike(new, old, READ)
    if old.fact == "load.burst" and isinstance(new.value, float) and new.value > LONGEST_BURST:
        return False
    if spec.unit == "ampere" and not _same_amps(scene, old, new):
        return False
    return bool(spec.unit) and facts()[old.fact].unit == spec.unit


def _is_system(scene: Scene, item: Stated) -> bool:
    """Whether these volts are a system's by the word after them: "24 V system sorry"."""
    after = scene.text[item.span[1] :].lower().split()
    return item.fact in VOLTS and bool(after) and after[0].strip(".,;") in SYSTEMS


def _same_amps(scene: Scene, old: Stated, new: Stated) -> bool:
    """Whether amps may be another figure of the same: a rating in cranking amps is told as one, a charger's are few."""
    if new.fact in RATED:
        return old.fact in RATED
    if old.fact in RATED:
        return bool(scene.named("note", "correction")) and _alike(new, old, TWICE)
    charged = bool(scene.vocabulary & CHARGED_SO) or "dcdc" in scene.heads  # what a converter gives is no load's
    if new.fact == "charger.current" and old.fact.startswith("load.") and charged:
        return False
    if old.fact == "charger.current" and new.fact == "load.current":
        bursts = any(item.quantity.unit == "second" for item in scene.quantities("TIME"))
        return not bursts and _alike(new, old, ALIKE)
    one = scene.text[new.span[1] :].lower().startswith(" one")  # "changed my mind, a 20 A one" is no alternator
    charger = next((item for item in scene.said if item.fact == "charger.current"), None)
    if old.fact != "alternator.current" or charger is None or "alternator" in scene.heads:
        return True
    return not (one or _nearer(new, charger, old))  # "what about making it 30 A", of a 20 A converter


def _nearer(new: Stated, one: Stated, other: Stated) -> bool:
    """Whether a new figure is nearer to the one than to the other."""
    figures = [item.value for item in (new, one, other) if not isinstance(item.value, str)]
    return len(figures) == 3 and _ratio(figures[0], figures[1]) <= _ratio(figures[0], figures[2])


def _may_be(old: Stated, value: float) -> bool:
    """Whether a new figure can be one of this fact: a system's volts are round, readings differ by little."""
    if old.fact in VOLTS:
        return value in NOMINAL
    if old.fact == "cable.area":
        return value in METRIC_SIZES
    volts = facts()[old.fact].unit == "volt"
    if not volts or isinstance(old.value, str) or old.fact == "cable.drop":
        return True
    return _ratio(value, old.value) <= READ or _ratio(value, old.value * TWICE) <= READ


def _reads_as(scene: Scene, old: Stated, new: Stated) -> bool:
    """Whether a reading may be one of another fact: 14.4 of a charger, 24 of a system, 9.1 under load."""
    if isinstance(new.value, str):
        return False
    if old.fact == "charger.voltage":
        return new.value >= CHARGED
    if old.fact in VOLTS:
        return new.value in NOMINAL
    mended = scene.named("note", "correction") and not any(item.fact == "reading.voltage" for item in scene.said)
    if mended and old.fact == "reading.load_voltage" and not scene.about(*AT_REST):
        return True
    return _under_load(scene, old, new)


def _under_load(scene: Scene, old: Stated, new: Stated) -> bool:
    """Whether a bare reading is another one under load, as it is so low and nothing speaks of rest."""
    resting = next((item.value for item in scene.said if item.fact == "reading.voltage"), None)
    if old.fact != "reading.load_voltage" or isinstance(resting, str) or scene.about(*AT_REST):
        return False
    low, volts = old.value, new.value
    if isinstance(low, str) or isinstance(volts, str) or "reading.state" in scene.facts:
        return False
    return volts < FLATTENED if resting is None else abs(volts - low) < abs(volts - resting)


def _corrected(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "Not 420, 240": the figure that takes the place of one said before."""
    for item in scene.measured:
        old = _said_as(item, said) if denied(scene, item) else None
        if old is None:
            continue
        free = (other for other in _free(scene, stated) if other.dim == item.dim and not denied(scene, other))
        new = next((other for other in free if 0 < abs(other.at - item.at) <= NEXT), None)
        if new is not None and (value := _as(old, new.quantity)) is not None:
            yield _stated(scene, new, old.fact, value)


def _said_as(item: Item, said: Sequence[Stated]) -> Stated | None:
    """The fact that was typed with this number."""
    for old in said:
        typed = _typed(old.text)
        if typed is not None and typed.value == item.quantity.value:
            return old
    return None


@lru_cache(maxsize=256)
def _typed(text: str) -> Quantity | None:
    return next((part.quantities[0] for part in parts(text) if part.quantities), None)


def _free(scene: Scene, stated: list[Stated]) -> list[Item]:
    taken = {item.span for item in stated if item.how not in WEAK}
    return [item for item in scene.measured if item.part and item.part.span not in taken]


def _as(old: Stated, new: Quantity) -> float | str | None:
    """The new number as a value of the old fact, in the unit in which that one was typed."""
    spec, typed = facts()[old.fact], _typed(old.text)
    if spec.kind == "text":
        typed_so = new.text.strip() if "/" in new.text else ""  # a stud of 5/16
        return new.value if isinstance(new.value, str) else typed_so or f"{new.value:g}"
    if typed is None or isinstance(typed.value, str) or isinstance(new.value, str) or isinstance(old.value, str):
        return None
    value: float | None = float(new.value)
    if new.unit or spec.unit == "degree_Celsius":
        value = in_unit(float(new.value), new.unit or typed.unit, spec.unit)
    elif old.low is not None:
        value = in_unit(float(new.value), typed.unit, spec.unit) if typed.unit else float(new.value)
    elif typed.value and new.kind != "count" and old.value != typed.value:
        value = float(old.value) * float(new.value) / float(typed.value)
    if value is None or (spec.low is not None and value < spec.low) or (spec.high is not None and value > spec.high):
        return None
    return value if _may_be(old, value) else None


def _rescaled(scene: Scene, said: Sequence[Stated]) -> Iterator[Stated]:
    """ "Fahrenheit, of course": the degrees said before are of that scale."""
    old = next((item for item in said if item.fact == "ambient.temperature"), None)
    if old is None or scene.quantities("TEMP") or not said_fahrenheit(scene) or CELSIUS & scene.vocabulary:
        return
    typed = _typed(old.text)
    if typed is None or isinstance(typed.value, str) or typed.unit == "degree_Fahrenheit":
        return
    yield replace(old, value=(typed.value - 32) / 1.8, how="asked")


def _renamed(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "It says MCA, not CCA": a figure said before is that of another rating."""
    if any(item.fact in OTHER_RATING for item in stated):
        return
    named = [found for found in scene.roles if found.concept in OTHER_RATING]
    now = [found for found in named if not _denies(scene, found.start)]
    for old in said:
        new = next((found for found in now if found.concept == OTHER_RATING.get(old.fact)), None)
        if new is not None and scene.about("role:" + new.concept) and not _asks(scene):
            span = scene.span(new.start, new.end)
            yield replace(old, fact=new.concept, text=scene.text[slice(*span)], span=span, how="asked")
            return


def _turned_about(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "Other way round?": the charger's kind and the battery's change places."""
    told = {old.fact: old for old in said}
    words = [token.word for token in scene.tokens]
    at = next((at for at, word in enumerate(words[:-1]) if (word, words[at + 1]) == ("other", "way")), None)
    setting, kind = told.get("charger.setting"), told.get("battery.chemistry")
    if at is None or setting is None or kind is None or len(words) > FEW or any(item.fact in PAIR for item in stated):
        return
    span = scene.span(at, at + 2)
    yield replace(setting, value=kind.value, span=span, how="asked")
    yield replace(kind, value=setting.value, span=span, how="asked")


def _read_there(scene: Scene, said: Sequence[Stated]) -> Iterator[Stated]:
    """ "It was measured at the thruster, not at the battery": the volts under load said before, read elsewhere."""
    told = {old.fact: old for old in said}
    old = told.get("reading.load_voltage")
    there = [found for found in scene.roles if found.concept == "at_load" and not _denies(scene, found.start)]
    if old is None or "reading.load_voltage_at_load" in told or not there or scene.measured or _asks(scene):
        return
    if {"measured", "read", "taken", "was", "took"} & scene.vocabulary:
        span = scene.span(there[0].start, there[0].end)
        yield replace(old, fact="reading.load_voltage_at_load", span=span, how="asked")


def _drained(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "Nothing on, I mean, all off": the few amps said before are what is drawn with all switched off."""
    off = scene.named("role", "drain.current")
    told = {old.fact: old for old in said}
    amps = told.get("load.current")
    here = any(item.unit == "ampere" for item in stated) or scene.quantities("AMP", "NUM")
    if not off or amps is None or here or "drain.current" in told or isinstance(amps.value, str):
        return
    if amps.value <= MOST_DRAIN and scene.named("note", "correction"):
        yield replace(amps, fact="drain.current", span=scene.span(off[0].start, off[0].end), how="asked")


def _cells_apart(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "The two end cells are 1.24 though": other cells than those read before, which differ by so much."""
    old = next((item for item in said if item.fact == "reading.gravity"), None)
    new = [item for item in stated if item.fact == "reading.gravity"]
    one_cell = any((scene.word(at), scene.word(at + 1)) == ("one", "cell") for at in range(len(scene.tokens)))
    if (
        old is None
        or len(new) != 1
        or isinstance(old.value, str)
        or (scene.named("note", "correction") and not one_cell)
    ):
        return
    value = new[0].value
    some = one_cell or (SOME_CELLS & scene.vocabulary and {"cell", "cells", "one", "ones"} & scene.vocabulary)
    if isinstance(value, str) or not some or value == old.value:
        return
    yield replace(new[0], value=min(value, old.value), how="asked")
    yield replace(new[0], fact="reading.gravity_spread", value=round(abs(value - old.value), 4), how="asked")


def _asks(scene: Scene) -> bool:
    asking = bool(ASKING & scene.vocabulary)
    return asking or "?" in scene.text or scene.about("request:convert", "request:what_is")


def _denies(scene: Scene, start: int) -> bool:
    return any(start - found.end in (0, 1) for found in scene.denials)


def _one_of_them(scene: Scene, said: Sequence[Stated]) -> Iterator[Stated]:
    """ "Just the stern one", of two batteries said before: one battery."""
    if scene.expected & MOST_JOINED:  # "only one" is what the maker allows
        return
    count = next((item for item in said if item.fact == "battery.count"), None)
    alone = len(scene.tokens) <= FEW and not scene.quantities("NUM", "AH", "VOLT")
    if count is not None and alone and (_says_single(scene) or ONLY_ONE.search(scene.text.lower())):
        yield replace(count, value=1.0, span=scene.span(0, 1), how="asked")
        return
    if count is None or scene.word(0) not in ("just", "only") or scene.word(1) != "the":
        return
    if any(scene.word(at) in ("one", "battery") for at in range(2, 5)):
        yield replace(count, value=1.0, span=scene.span(0, 2), how="asked")


def _says_single(scene: Scene) -> bool:
    return scene.word(len(scene.tokens) - 1 - _ends(scene)) == "single"


def _ends(scene: Scene) -> int:
    """How many marks end the message."""
    return int(bool(scene.items) and scene.items[-1].kind == "mark")


def _measured_so(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "24 was there and back", "that was one way": the length said before, measured otherwise."""
    old = next((item for item in said if item.fact == "cable.length"), None)
    total = [found for found in scene.roles if found.concept == "length_total"]
    single = [found for found in scene.roles if found.concept == "length_one_way"]
    if old is None or not (total or single) or scene.quantities("LENGTH") or isinstance(old.value, str):
        return
    if any(item.fact == "cable.length" for item in stated):
        return
    typed = _typed(old.text)
    full = in_unit(float(typed.value), typed.unit, "meter") if typed and not isinstance(typed.value, str) else None
    if full is None or any(
        item.quantity.value != typed.value for item in scene.measured if typed and item.part and item.kind != "count"
    ):
        return
    found = (single or total)[0]
    span = scene.span(found.start, found.end)
    yield replace(old, value=full if single else full / 2, span=span, how="asked")


def _gone_on(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> Iterator[Stated]:
    """ "And 300?", "17.4 to be exact", "31, sorry": a bare number goes on with a figure of its size."""
    free = [item for item in _free(scene, stated) if item.dim in ("NUM", "COUNT") and is_free(scene, item)]
    spoken_of = [item for item, _ in mentioned_again(scene, said)]
    free = [item for item in free if not denied(scene, item) and item not in spoken_of]
    opening = _opening(scene)
    if opening:
        free = [item for item in free if item.end <= opening]
    mended = min((found.start for found in scene.named("note", "correction")), default=len(scene.tokens))
    taken = {item.fact for item in stated if item.how not in WEAK} if all(one.start < mended for one in free) else set()
    said = [old for old in said if old.fact not in taken]
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
        yield _stated(scene, item, fact, float(number))
        return
    if (other := _names_another(scene, item, said)) is not None:
        yield _stated(scene, item, other.fact, float(item.quantity.value))
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
        _matching(item, [*battery, *said], near, anyhow=_reach(scene) if goes_on and not exact else 0.0)
        if short
        else None
    )
    if old is not None and (value := _as(old, item.quantity)) is not None:
        yield _stated(scene, item, old.fact, value)


def _plainly_told(scene: Scene, item: Item, said: Sequence[Stated]) -> Stated | None:
    """A length of the cable ("24 there and back" is no system's volts) or a fraction after the size of a stud."""
    run = next((old for old in said if old.fact == "cable.length"), None)
    if run is not None and (metres := _run(scene, item, run)) is not None:
        return _stated(scene, item, run.fact, metres)
    size = another_stud(item, said)
    return None if size is None else _stated(scene, item, "terminal.size", size)


def _run(scene: Scene, item: Item, old: Stated) -> float | None:
    """Another length of a cable, told to be there and back or one way, in the unit of the one before; None else."""
    typed, number = _typed(old.text), item.quantity.value
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


def _opening(scene: Scene) -> int:
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


def _matching(item: Item, said: Sequence[Stated], near: float, *, anyhow: float) -> Stated | None:
    """The newest figure that this number can take the place of, else the nearest, at most so many times as large."""
    number = item.quantity.value
    if isinstance(number, str):
        return None
    if number in NOMINAL and (volts := next((old for old in said if old.fact in VOLTS), None)):
        return replace(volts, fact="bank.voltage") if number > ONE_BATTERY else volts
    counts = number == int(number) and number <= MOST
    numeric = []
    for old in said:
        typed = _typed(old.text)
        if f"{number:g}" in SIZES.get(old.fact, ()):
            return old
        fits = (counts if old.fact in MANY else item.dim == "NUM") and _may_be(old, number)
        if fits and typed is not None and not isinstance(typed.value, str):
            numeric.append((_ratio(number, typed.value), old))
    found = next((old for far, old in numeric if far <= near), None)
    if found is None and anyhow and numeric:
        far, other = min(numeric, key=lambda pair: pair[0])
        most = near if other.fact in MANY else float("inf") if other.fact == "ambient.temperature" else anyhow
        found = other if far <= most else None
    return found


def _is_bare(scene: Scene) -> bool:
    """Whether next to nothing but the number stands in the message."""
    strange = [item for item in scene.items if item.kind == "word" and item.name not in FOLLOWS | FILLERS]
    return len(scene.tokens) <= FEW and len(strange) <= STRANGE and not scene.head_items


def _alike(new: Stated, old: Stated, most: float) -> bool:
    if isinstance(new.value, str) or isinstance(old.value, str):
        return False
    return _ratio(new.value, old.value) <= most


def _ratio(one: float, other: float) -> float:
    """How many times the larger is the smaller; endless where they differ in sign."""
    return max(one / other, other / one) if one * other > 0 else float("inf")


def _stated(scene: Scene, item: Item, fact: str, value: float | str) -> Stated:
    span = scene.span(item.start, item.end)
    return Stated(fact, value, facts()[fact].unit, scene.text[slice(*span)], span, how="asked")
