"""A figure of a later message in the unit of one told before: it takes its place, or stands beside it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from grammar.attach.one_reading import FLATTENED
from grammar.facts import facts
from grammar.later.alike import READ, TWICE, VOLTS, are_alike, may_be_of, ratio_of
from grammar.later.answers import AT_REST
from grammar.reading import Stated
from grammar.scene.claims import UNSURE
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.text.standard import NOMINAL

CHARGED = 13.0  # volts: no charger gives less
ALIKE = 4.0  # a bare number so many times larger or smaller is another thing
WIDE = 20.0  # the same for a number with its unit
RATED = frozenset({"battery.cca", "battery.ca"})
LONGEST_BURST = 90.0  # seconds
CHARGED_SO = frozenset({"charge", "charged", "charging", "recharged"})
SYSTEMS = frozenset({"system", "boat", "bank", "setup"})
ONE_BATTERY = 12.0  # volts: "24, sorry" is the bank's
SWITCHED_OFF = regex(
    r"\b(?:turned|switched|unplugged|took)\b(?:(?!\b(?:on|when|if)\b)[^.?!;]){0,24}\b(?:off|out)\b"
    r"|\bunplugged (?:it|the charger)\b"
    r"|\bcharger(?:['’]s| is| was)? (?:now )?(?:off|unplugged)\b|\brest(?:s|ing|ed)\b",
    re.IGNORECASE,
)


def of_same_dimension(scene: Scene, stated: list[Stated], said: Sequence[Stated]) -> list[Stated]:
    """Amps, volts or a time that nothing here names are those that were spoken of last: "0.8 amps, sorry"."""
    own = {item.fact for item in said}
    taken = {item.fact for item in stated if item.how not in UNSURE}
    mended = bool(scene.named("note", "correction"))
    facts_of = []
    for item in stated:
        if item.how in UNSURE and isinstance(item.value, float) and item.low is None and not _is_for(scene, item):
            if _drew(scene, item, said):
                facts_of.append(replace(item, fact="reading.current"))
                continue
            if mended and (rated := _rated_before(item, said)):
                facts_of.append(replace(item, fact=rated, how="asked"))
                continue
            others = [old for old in said if old.fact not in taken and _of_one_unit(scene, old, item)]
            other = _closest(item, [old for old in others if are_alike(item, old, ALIKE)])
            if other is None and item.fact not in own:
                other = next((old for old in others if mended or are_alike(item, old, WIDE)), None)
            item = replace(item, fact=other.fact, how="asked") if other else item
        facts_of.append(item)
    return facts_of


def _closest(item: Stated, others: Sequence[Stated]) -> Stated | None:
    """The first of these; of a reading the one that is nearest: 9.9 V is of the test at 9.4, not of the 12.2 before.

    What its own words tell to be under load stays so, though it is nearer to the volts at rest.
    """
    if not item.fact.startswith("reading.") or len(others) < 2:
        return next(iter(others), None)
    same = (old for old in others if old.fact == item.fact != "reading.voltage")
    return next(same, min(others, key=lambda old: ratio_of(float(item.value), float(old.value))))


def _rated_before(item: Stated, said: Sequence[Stated]) -> str:
    """The rating said before, where a bare number takes its place: "sorry, they're 450 each" of 500 CCA."""
    own, bare = {old.fact for old in said}, item.text.strip().isdigit()
    if not bare or item.fact in own or not item.fact.startswith("battery."):
        return ""
    return next((old.fact for old in said if old.fact in RATED and are_alike(item, old, TWICE)), "")


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
    if isinstance(new.value, float) and not may_be_of(old, new.value):
        return False
    if new.fact == "bank.voltage" and old.fact == "battery.nominal" and new.value != ONE_BATTERY:
        return bool(scene.named("note", "correction"))
    if new.fact in VOLTS and old.fact not in VOLTS:  # "and 24 V?" is a system, "sorry, 12 V" is read
        return bool(scene.named("note", "correction")) and not _is_system(scene, new) and are_alike(new, old, READ)
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
        return bool(scene.named("note", "correction")) and are_alike(new, old, TWICE)
    if old.fact == "fuse.rating" and new.fact == "load.current" and "load" in scene.heads and "fuse" not in scene.heads:
        return False  # "stern thruster, 170 A" tells what the fuse is for
    charged = bool(scene.vocabulary & CHARGED_SO) or bool(
        {"dcdc", "charger"} & scene.heads
    )  # what a converter gives is no load's
    if new.fact == "charger.current" and old.fact.startswith("load.") and charged:
        return False
    if old.fact == "charger.current" and new.fact == "load.current":
        bursts = any(item.quantity.unit == "second" for item in scene.quantities("TIME"))
        return not bursts and are_alike(new, old, ALIKE)
    one = scene.text[new.span[1] :].lower().startswith(" one")  # "changed my mind, a 20 A one" is no alternator
    charger = next((item for item in scene.said if item.fact == "charger.current"), None)
    if old.fact != "alternator.current" or charger is None or "alternator" in scene.heads:
        return True
    return not (one or _nearer(new, charger, old))  # "what about making it 30 A", of a 20 A converter


def _nearer(new: Stated, one: Stated, other: Stated) -> bool:
    """Whether a new figure is nearer to the one than to the other."""
    figures = [item.value for item in (new, one, other) if not isinstance(item.value, str)]
    return len(figures) == 3 and ratio_of(figures[0], figures[1]) <= ratio_of(figures[0], figures[2])


def _reads_as(scene: Scene, old: Stated, new: Stated) -> bool:
    """Whether a reading may be one of another fact: 14.4 of a charger, 24 of a system, 9.1 under load."""
    if isinstance(new.value, str):
        return False
    if old.fact == "charger.voltage":
        return new.value >= CHARGED and not _is_off(scene)
    if old.fact in VOLTS:
        return new.value in NOMINAL
    mended = scene.named("note", "correction") and not any(item.fact == "reading.voltage" for item in scene.said)
    if mended and old.fact == "reading.load_voltage" and not scene.about(*AT_REST):
        return True
    return _under_load(scene, old, new)


def _is_off(scene: Scene) -> bool:
    """Whether the charger is told to be off, or its battery at rest: then no volts are the charger's."""
    return bool(scene.about(*AT_REST)) or SWITCHED_OFF.search(scene.text) is not None


def _under_load(scene: Scene, old: Stated, new: Stated) -> bool:
    """Whether a bare reading is another one under load, as it is so low and nothing speaks of rest."""
    resting = next((item.value for item in scene.said if item.fact == "reading.voltage"), None)
    if old.fact != "reading.load_voltage" or isinstance(resting, str) or scene.about(*AT_REST):
        return False
    low, volts = old.value, new.value
    if isinstance(low, str) or isinstance(volts, str) or "reading.state" in scene.facts:
        return False
    return volts < FLATTENED if resting is None else abs(volts - low) < abs(volts - resting)
