"""The figures of an answer as they are shown: which of them, how far each is rounded, and what was assumed for it."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from grammar.facts import facts
from service import say
from service.reply import Answer, Assumed, Figure

MOST_ASSUMED = 2
LEFT_OUT = "gauge_for_ampacity"  # told by the size to fit
AT_LOSS = ("{}_at_3_percent", "{}_at_10_percent")
BEST = ("absorption_voltage", "float_voltage")  # ranges with a value to aim for
EXACT = ("voltage_per_battery", "recharge_voltage")  # shown to 0.01 V where it was read so
ROUGH = (  # estimates, shown in whole percent or to 0.1
    "depth_of_discharge",
    "duty_cycle",
    "self_discharge",
    "share_of_warm_power",
)
AS_WORKED = ("charger_current_low", "charger_current_high")  # ends of what suits: rounded they would leave it
GOOD_FOR = ("burst_count", "trip_count", "bursts_before_start_limit")  # what a battery gives, counted
OF_THE_LOAD = ("running_current", "inrush_current")  # no assumption on a battery is of them, though it be as large
NEEDED = ("opening_area",)  # of what is needed, what does not begin with "required_"
NAMED = ("A", "Ah", "%", "s", "h")  # units of facts whose number alone does not tell what it is
POUND = 0.45359237  # kg
APART = {"fuse-size": ("cable.drop",)}  # what the proposed cable was reckoned with is no number of its fuse


def only_asks(answer: Answer) -> bool:
    """Whether an answer has nothing to be careful with yet: it asks, and no figure is known."""
    return answer.verdict == "needs-facts" and not answer.figures


def alike(answer: Answer) -> set[str]:
    """The names of the figures that all things weighed have in common, as they are shown."""
    shown_in = [{(item.name, figure(item)) for item in option.figures} for option in answer.compare]
    return {name for name, _ in set.intersection(*shown_in)} if len(shown_in) > 1 else set()


def numbers(answer: Answer, brief: bool = False) -> Iterator[str]:
    """The figures of an answer, each with what was assumed for it, then at most two further assumptions.

    `brief`: those that the headline does not give, and of an assumption not why.
    """
    left = [item for item in answer.assumed if item.fact not in APART.get(answer.topic, ())]
    unsaid = {LEFT_OUT, *not_theirs(answer), *capped(answer)}
    weighed, same = {item.name for option in answer.compare for item in option.figures}, alike(answer)
    for item in answer.figures:
        told_apart = item.name in weighed and item.name not in same
        if told_apart or item.name in unsaid or is_the_reading(item, answer):
            continue
        taken = next((each for each in left if is_of(each, item)), None)
        if taken:
            left.remove(taken)
        if brief and not taken and is_in(item, answer.headline):
            continue
        why_taken = "" if not taken else " (assumed)" if brief else f" (assumed: {taken.why})"
        told = in_their_unit(replace(item, label=item.label.partition(" (")[0]) if brief else item, answer)
        yield told + why_taken
    if not only_asks(answer):  # that lithium is taken for iron phosphate is told by its caution
        others = (assumption(other, brief) for other in left if other.value != "lfp")
        yield from list(dict.fromkeys(others))[:MOST_ASSUMED]


def not_theirs(answer: Answer) -> Iterator[str]:
    """The cable sizes in the system that the customer does not write in; only what is to fit is told in both."""
    first = next((item.name for item in answer.figures if item.name in ("gauge", "area")), "gauge")
    yield from (name.format("area" if first == "gauge" else "gauge") for name in AT_LOSS)


def capped(answer: Answer) -> Iterator[str]:
    """The low end of a range that the cold has made a single cap."""
    ends = {item.name: item.value for item in answer.figures}
    if "charger_current_warm" in ends and ends["charger_current_low"] == ends["charger_current_high"]:
        yield "charger_current_low"


def is_of(taken: Assumed, item: Figure) -> bool:
    """Whether an assumption is the figure itself."""
    same = (taken.unit, taken.value) == (item.unit, item.value)
    same = same and not (item.name in OF_THE_LOAD and taken.fact.startswith("battery."))
    return same and (bool(item.unit) or taken.fact.endswith(".count"))


def shown_assumed(answer: Answer) -> list[Assumed]:
    """The assumptions that are shown with an answer: those of its figures, and at most two more."""
    of_figures = [item for item in answer.assumed if any(is_of(item, figure) for figure in answer.figures)]
    others = [item for item in answer.assumed if item not in of_figures and item.value != "lfp"]
    return [*of_figures, *others[:MOST_ASSUMED]]


def is_in(item: Figure, headline: str) -> bool:
    """Whether a headline gives a figure already."""
    return item.low is None and re.search(rf"(?<![\d.,]){re.escape(shown(item))}(?!\d|[.,]\d)", headline) is not None


def assumption(item: Assumed, brief: bool = False) -> str:
    """What was assumed, named where the bare number would not tell, and why."""
    spec = facts().get(item.fact)
    bare = item.fact not in say.CABLE_WORDS and (item.unit in NAMED or item.fact.endswith(".count"))
    label = f"{spec.label} " if spec and bare else ""
    return f"{label}{say.fact(item.fact, item.value)} (assumed{'' if brief else f': {item.why}'})"


def in_their_unit(item: Figure, answer: Answer) -> str:
    """A figure as it is shown; a weight in pounds where they wrote pounds."""
    of_charge = item.name.startswith("state_of_charge") and item.name not in ONE_WAY
    if of_charge and item.low is None and isinstance(item.value, float):
        lithium = any(fact.value == "lfp" for fact in answer.understood)
        return f"{item.label} {say.charge_within(item.value, (40, 20) if lithium else (75, 50))}"
    typed = next((fact.text.lower() for fact in answer.understood if fact.fact == "battery.weight"), "")
    pounds = "lb" in typed or "pound" in typed or f"{say.NB}lb" in answer.headline
    if item.unit == "kg" and isinstance(item.value, float) and pounds:
        return f"{item.label} {say.quantity(item.value / POUND, 'lb', 0)} ({shown(item)})"
    return figure(item)


def is_the_reading(item: Figure, answer: Answer) -> bool:
    """Whether a figure is only the reading itself: the volts of a single battery."""
    return item.name == "voltage_per_battery" and any(
        fact.fact == "reading.voltage" and fact.value == item.value for fact in answer.understood
    )


def figure(item: Figure) -> str:
    """One figure with its label: "sag 3.8 V"; a range with its best value, or in brackets."""
    if isinstance(item.value, (str, bool)):
        return f"{item.label} {say.gauge(str(item.value)) if item.unit == 'AWG' else say.fact(item.name, item.value)}"
    if item.low is None or item.high is None:
        return f"{item.label} {shown(item)}"
    if item.name.startswith("state_of_charge"):
        return f"{item.label} {say.between(say.fives(item.low), say.fives(item.high), '%', 0)}"
    span = say.between(item.low, item.high, item.unit, places(item))
    if item.name in GOOD_FOR:
        span = " to ".join(dict.fromkeys((say.so_many(item.low), say.so_many(item.high))))
    if item.unit in ("min", "h"):
        minutes = 60 if item.unit == "h" else 1
        span = say.between_times(item.low * minutes, item.high * minutes, item.name.startswith("time_to"))
    if item.value in (item.low, item.high):
        return f"{item.label} {span}"
    if item.name in BEST:
        return f"{item.label} {span}, best {shown(item)}"
    return f"{item.label} {shown(item)} ({span})"


ONE_WAY: Mapping[str, Callable[[float, str], str]] = {  # limits, and what is given: never rounded past
    "charger_current_low": say.at_least,
    "charger_current_high": say.at_most,
    "cranking_current": lambda value, _: say.given(value),
    "state_of_charge_left": lambda value, _: say.still_in(value),  # the part used is told beside it
    **dict.fromkeys(GOOD_FOR, lambda value, _: say.so_many(value)),
}


def shown(item: Figure) -> str:
    """The value of a figure, rounded as its unit is read."""
    if not isinstance(item.value, (int, float)) or isinstance(item.value, bool):
        return str(item.value)
    if item.name in ONE_WAY:
        return ONE_WAY[item.name](float(item.value), item.unit)
    if item.unit == "%" and item.name.startswith("state_of_charge"):
        return say.charge_within(item.value)
    if item.unit == "%" and "drop" in item.name:
        return say.share(item.value)
    if item.unit in ("min", "h"):
        told = say.lasting if item.name.startswith("time_to") else say.duration  # what is given rounds down
        return told(item.value * (60 if item.unit == "h" else 1))
    if item.unit == "d" and (item.value == 0 or item.value >= 2):
        return say.days(item.value) if item.value else "now"
    if item.name == "drain_current" and item.value < 0.5:
        return say.quantity(item.value * 1000, "mA")
    if item.name in NEEDED or (
        item.name.startswith("required_") and (item.unit == "W" or (item.unit in ("A", "Ah") and item.value >= 10))
    ):
        return say.quantity(math.ceil(item.value - 1e-6), item.unit, 0)  # what is needed rounds up
    return say.quantity(item.value, item.unit, places(item))


def places(item: Figure) -> int | None:
    """Decimal places for a figure: volts to 0.1 (losses 0.01), whole amps and ratings; None: what counts."""
    value = abs(float(item.value))
    if item.name in ROUGH:
        ends = [float(end) for end in (item.value, item.low, item.high) if end is not None]
        return 0 if all(end >= 5 or abs(end - round(end)) < 0.05 for end in ends) else 1
    if item.name == "corrected_gravity":
        return 3
    if item.unit == "V":
        fine = "drop" in item.name or value < 0.1 or (item.name in EXACT and abs(value * 10 - round(value * 10)) > 1e-6)
        return 2 if fine else 0 if item.name == "bank_voltage" else 1
    if item.unit in ("A", "Ah", "Wh", "cm2") and value >= 10 and item.name not in AS_WORKED:
        return 0
    if item.unit == "Ah":
        return 1 if value >= 1 else 2
    return {"C": 0, "mohm": 1, "%": 1}.get(item.unit) if item.unit != "%" or "drop" in item.name else None
