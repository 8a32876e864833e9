"""Bare replies: "340", "AGM", "15 feet each way", "yes" state the fact that the desk asked back for."""

from __future__ import annotations

import re
from collections.abc import Sequence

from grammar.attach.both_ways import same_run
from grammar.attach.volts import is_reading
from grammar.facts import FactSpec, facts
from grammar.lexicon.vocabulary import small_words
from grammar.reading import Quantity, Stated
from grammar.scene.claims import UNSURE
from grammar.scene.denied import denied
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.canonical import in_unit
from grammar.text.patterns import regex
from grammar.text.standard import NOMINAL
from grammar.told.batteries.capacities import GROUPS

LONGEST = 14  # words: a longer message speaks for itself
SYSTEM = 12.0  # volts
LOWEST, HIGHEST = 11.5, 13.4  # volts of one battery at rest
CELLS, TIRED = 12.6, 12.45  # volts of a full battery; no loaded one of lead shows more
ALONE = 3  # words: a figure that stands by itself is what was asked for
MOTORS = frozenset({"thruster", "windlass"})
LEAST_POWER, LEAST_AMPS = 450.0, 20.0  # watts and amps of a motor that moves a boat or its anchor
MOST_SMALL = 60.0  # amps of a fridge, lights, a plotter
NUMBERED = {"battery.group": GROUPS, "cable.gauge": frozenset(map(str, (1, 2, 4, 6, 8, 10, 12, 14, 16, 18)))}
AT_REST = ("role:before", "role:off", "role:off_charger", "role:reading.rest_time")
FOLLOWS = small_words("follows")  # after a figure that answers; any other word is what it counts
MOST_JOINED = frozenset({"battery.max_in_series", "battery.max_in_parallel"})
ALONE_ONLY = regex(
    r"\b(?:only|just|more than|maximum|max|than) one\b|\bone only\b|\bnone\b|\bnot (?:allowed|at all)\b", re.IGNORECASE
)
YES = frozenset(["yes", "yep", "yeah", "yup", "aye", "correct", "it", "they", "sure", "true", "definitely"])
NO = frozenset(["no", "nope", "nah", "not", "isnt"])
UNKNOWING = regex(
    r"\W*(?:not (?:\w+ )?(?:sure|certain|known|clear|obvious|a clue)\b"
    r"|(?:no|not the) (?:\w+ )?(?:idea|clue|way (?:of|to))\b|not that (?:i|we) know)",
    re.IGNORECASE,
)


def answered(scene: Scene, stated: list[Stated], expecting: Sequence[str]) -> list[Stated]:
    """The facts with those that a short reply states because the desk asked for them."""
    if not expecting or len(scene.tokens) > LONGEST:
        return stated
    told = {item.fact for item in stated if item.how not in UNSURE}
    for fact in _asked(scene, expecting):
        if fact in told or fact not in facts():
            continue
        found = _reply(scene, stated, facts()[fact])
        if found is not None:
            rest = [item for item in stated if item.span != found.span or item.how not in UNSURE]
            stated = [*rest, found]
            told.add(fact)
    return stated


def _asked(scene: Scene, expecting: Sequence[str]) -> Sequence[str]:
    """What was asked for, and beside a motor's power its amps: the 175 of a thruster's plate are no watts."""
    return (*expecting, "load.current") if "load.power" in expecting and _has_motor(scene) else expecting


def _has_motor(scene: Scene) -> bool:
    said = any(old.fact == "load.kind" and old.value in MOTORS for old in scene.said)
    return said or any(item.fact == "load.kind" and item.name in MOTORS for item in scene.items)


def _reply(scene: Scene, stated: list[Stated], spec: FactSpec) -> Stated | None:
    if spec.kind == "flag":
        return _yes_or_no(scene, spec)
    if spec.name in MOST_JOINED and (alone := ALONE_ONLY.search(scene.text)):
        return Stated(spec.name, 1.0, spec.unit, alone[0], alone.span(), how="asked")
    if spec.kind != "number":
        return _kind(scene, spec)
    taken = {item.span for item in stated if item.how not in UNSURE}
    if spec.name.startswith("reading.load") and scene.about(*AT_REST):
        return None
    if _mends_another(scene, spec):
        return None
    for item in scene.measured:
        if item.part is None or item.part.span in taken or not is_free(scene, item, spec) or denied(scene, item):
            continue
        if (spec.name in MOST_JOINED and _is_seconds(scene, item)) or same_run(scene, item):
            continue
        value = _fitting(item.quantity, spec)
        if value is not None and not _is_other(scene, item, spec.name, value):
            span = item.part.span
            return Stated(spec.name, value, spec.unit, scene.text[slice(*span)], span, how="asked")
    return None


def _is_seconds(scene: Scene, item: Item) -> bool:
    """Whether a number tells for how long the amps before it are allowed: "200A 5s each"."""
    before = scene.before(item)
    return before is not None and before.dim == "AMP" and item.quantity.text.strip().lower().endswith("s")


def _is_other(scene: Scene, item: Item, fact: str, value: float) -> bool:
    """Whether a bare figure cannot be this fact: 12.1 is no percentage, 110 no fridge's amps."""
    if fact == "reading.load_voltage" and not scene.lithium_known and len(scene.tokens) > ALONE:
        return value / max(1, round(value / CELLS)) > TIRED
    if fact == "reading.load_voltage_at_load" and (scene.about("role:at_battery") or _is_rested(scene, value)):
        return True
    if item.dim != "NUM":
        return False
    if facts()[fact].unit != "volt" and _is_volts(scene, item, value):
        return True
    if fact in ("load.power", "load.current") and _has_motor(scene):
        return value < (LEAST_POWER if fact == "load.power" else LEAST_AMPS)  # "1.5" may be kW or hp
    if fact in ("battery.charge", "battery.capacity"):
        return "." in item.name and is_reading(scene, value)
    if fact == "battery.count":
        return value >= SYSTEM and value in NOMINAL and bool({"system", "volt", "volts"} & scene.vocabulary)
    if (
        fact.endswith(".current") and "." in item.name and is_reading(scene, value)
    ):  # "12.6 before, 8.2 with it running"
        return len(scene.tokens) > ALONE
    small = any(old.fact == "load.kind" and old.value == "electronics" for old in scene.said)
    return fact == "load.current" and small and value >= MOST_SMALL


def _is_rested(scene: Scene, value: float) -> bool:
    """Whether volts that were asked for at the motor are those at rest: no motor has more than its battery shows."""
    read = next((item.value for item in scene.said if item.fact == "reading.load_voltage"), None)
    if read is None or isinstance(read, str) or scene.lithium_known or len(scene.tokens) > ALONE:
        return False
    return value > read and value / max(1, round(value / CELLS)) > TIRED


def _is_volts(scene: Scene, item: Item, value: float) -> bool:
    """Whether a bare figure is of volts, told beside others, and no years or hours: "12.7 before, 170 amps"."""
    told = scene.about("role:before", "role:off", "role:read_off") or len(scene.measured) > 1
    of_one = value / max(1, round(value / CELLS))
    return told and "." in item.name and LOWEST <= of_one <= HIGHEST


def _mends_another(scene: Scene, spec: FactSpec) -> bool:
    """Whether it takes back a figure of another fact: "not 200, 100" after the 200 of a limit is no answer."""
    gone = [item.quantity.value for item in scene.measured if denied(scene, item)]
    return any(old.value in gone for old in scene.said if old.fact != spec.name)


def is_free(scene: Scene, item: Item, spec: FactSpec | None = None) -> bool:
    """Whether a figure counts nothing else: "six" of "the six caps" is no answer, nor is "both"."""
    if item.kind in ("count", "times"):
        return spec is not None and not spec.unit
    if [scene.word(item.start - 2), scene.word(item.start - 1)] == ["of", "the"]:  # "which of the three"
        return False
    after = scene.after(item)
    counts = item.dim == "COUNT" or (item.dim == "NUM" and item.quantity.text.strip().isalpha())  # "three stages"
    return not counts or after is None or after.kind != "word" or after.name in FOLLOWS


def _fitting(quantity: Quantity, spec: FactSpec) -> float | None:
    if isinstance(quantity.value, str):
        return None
    value = in_unit(float(quantity.value), quantity.unit, spec.unit)
    if value is None:  # another dimension: no answer to this question
        return None
    inside = (spec.low is None or value >= spec.low) and (spec.high is None or value <= spec.high)
    return value if inside else None


def _yes_or_no(scene: Scene, spec: FactSpec) -> Stated | None:
    first = next((token for token in scene.tokens if token.word.isalpha()), None)
    if first is None or first.word not in YES | NO or first.word == "it" or first.word == "they":
        return None
    if UNKNOWING.match(scene.text):  # "not sure", "no idea": neither a yes nor a no
        return None
    span = first.start, first.end
    return Stated(spec.name, first.word in YES, "", scene.text[slice(*span)], span, how="asked")


def _kind(scene: Scene, spec: FactSpec) -> Stated | None:
    """A kind named for a charger's setting, or a text such as a case size."""
    for item in scene.items:
        if item.kind == "value" and spec.name == "charger.setting" and item.fact == "battery.chemistry":
            value = "flooded" if item.name == "lead" else item.name
        elif item.kind == "value" and item.fact == spec.name:
            value = item.name
        elif item.dim == "NUM" and f"{float(item.quantity.value):g}" in NUMBERED.get(spec.name, ()):
            value = f"{float(item.quantity.value):g}"
        else:
            continue
        if spec.values and value not in spec.values:
            continue
        if "without" in (scene.word(item.start - 1), scene.word(item.start - 2)):  # "is that allowed without a dc-dc"
            continue
        span = scene.span(item.start, item.end)
        return Stated(spec.name, value, "", scene.text[slice(*span)], span, how="asked")
    return None
