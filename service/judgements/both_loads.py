"""Two loads of their own times on one battery, one after the other: it carries the amp-hours of both."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable

from service import say
from service.case import Case
from service.judgements import at_once, supply
from service.reply import Answer, Figure, Option

TIME, CAPACITY, COUNT = "load.time", "required_capacity", "battery_count"
BATTERY = frozenset({"battery.capacity", "battery.cca", "battery.max_current", "battery.peak_current"})
UNITS = {"required_cca": "CCA", CAPACITY: "Ah"}  # what a battery to buy is named by
LONGEST = 30  # words of a headline
REST = "your load"  # one of no name beside a motor
Judge = Callable[[Case], Answer]
Held = Callable[[Case], float]


def judged(case: Case, judge: Judge, held: Held) -> Answer | None:
    """What the battery of both must have; None where two loads are no more than weighed, or a time is missing.

    `held`: the amp-hours that one load takes in its time.
    """
    if not in_turn(case):
        return None
    sides = [_alone(case.fresh()), _alone(case.fresh().others())]
    found = [judge(side) for side in sides]
    if any(item.verdict != "information" for item in found):
        return None
    case.follow_other(sides[1])
    for fact, known in ((fact, known) for (fact, _), known in sides[0].used.items()):
        case.used.setdefault((fact, known.of), known)
    case.trace[:0] = [fired for fired in sides[0].trace if fired not in case.trace]
    parts = [held(side) for side in sides]
    figures = tuple(_of_both(found, sum(parts)))
    amounts = [say.quantity(part, "Ah") for part in parts]
    case.step(f"{' + '.join(amounts)} = {say.quantity(sum(parts), 'Ah')} for both", "drain-arithmetic")
    names = [supply.load_name(side) for side in sides]
    if names[0] == names[1]:
        names = ["one load", "the other"]
    names = ["the other load" if name == REST else name for name in names]
    each = say.listed([f"{amount} for {name}" for amount, name in zip(amounts, names, strict=True)])
    head = f"Look for {_wanted(sides[0], figures)} or more"
    head = f"{head}: {each}." if len(f"{head} {each}".split()) <= LONGEST else f"{head}."
    options = tuple(Option(name, "information", item.figures) for name, item in zip(names, found, strict=True))
    return Answer("bank-size", "information", head, figures=figures, compare=options)


def in_turn(case: Case) -> bool:
    """Whether two loads are told of, each with amps and a time, and none of them as a choice."""
    if TIME not in case.stated or TIME not in case.second or BATTERY & set(case.stated):
        return False
    if at_once.SECOND.isdisjoint(case.second) or case.says(at_once.AT_ONCE, "request:which", "request:versus"):
        return False
    return not at_once.CHOICE.search(at_once.between(case))


def _alone(side: Case) -> Case:
    """The case of one of the two loads."""
    side.second = {fact: known for fact, known in side.second.items() if not fact.startswith("load.")}
    return side


def _of_both(found: list[Answer], amp_hours: float) -> Iterable[Figure]:
    """The amp-hours added up, where no current asks for more; the larger one of any other figure."""
    kept = {item.name: item for one in found for item in one.figures}
    for name, item in kept.items():
        values = [_figure(one, name) for one in found]
        yield Figure(name, item.label, max(*values, amp_hours if name == CAPACITY else 0.0), item.unit)


def _figure(found: Answer, name: str) -> float:
    return next((float(item.value) for item in found.figures if item.name == name), 0.0)


def _wanted(case: Case, figures: tuple[Figure, ...]) -> str:
    kind = (
        "lithium"
        if case.get("battery.family") == "lithium"
        else say.CHEMISTRY[str(case.get("battery.chemistry", "lead"))]
    )
    named = [item for name in UNITS for item in figures if item.name == name]
    size = say.listed([say.quantity(math.ceil(float(item.value) - 1e-6), UNITS[item.name]) for item in named])
    many = next((float(item.value) for item in figures if item.name == COUNT), 1.0)
    if many == 1:
        return f"{'an' if kind == 'AGM' else 'a'} {kind} battery of {size}"
    volts = say.fact("bank.voltage", case["bank.voltage"])
    return f"{supply.counted(many)} {kind} batteries in series for {volts}, each of {size}"
