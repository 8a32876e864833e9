"""A drain against what became of the battery: whether its current explains the volts, and what a flat one tells."""

from __future__ import annotations

import re
from dataclasses import dataclass

from grammar.text.patterns import regex
from service import say
from service.calculators import drain
from service.case import Case
from service.judgements import laid_up
from service.rules import readings
from service.rules.readings import Charge

EXPLAINS = regex(
    r"\b(?:that|it|this|which) explains?\b|\bexplains? (?:it|that|this|the)\b|\baccounts? for\b"
    r"|\b(?:the|a) (?:reason|cause|culprit)\b|\bthat be it\b|\bis (?:that|it) why\b"
    r"|\b(?:because of|due to|from) (?:that|this|it|the drain)\b|\b(?:that|this) (?:do|did|cause) (?:it|that|this)\b",
    re.IGNORECASE,
)
FLAT = regex(r"\b(?:flat|dead|empty|drained|nothing left)\b", re.IGNORECASE)
DRAWN = r"(?:draw\w*|drain|current|taking|takes?|amps?|ma|milliamps?|eats?)"
GOES_FLAT = regex(  # told of what happens, and no condition
    r"\b(?:always|keeps? (?:going|getting)|goes|gets|is|was|went|found (?:it|them))\b[^.?!;]{0,20}"
    r"\b(?:flat|dead|empty|drained)\b[^.?!;]{0,12}\b(?:after|in|within|every)\b",
    re.IGNORECASE,
)
IF_FLAT = regex(r"\b(?:if|will|would|when|does|how long|until)\b", re.IGNORECASE)
HOW_MUCH = regex(
    rf"\bhow (?:much|big|large|high|many)\b[^.?!;]{{0,40}}\b{DRAWN}\b|\bwhat (?:current|drain|draw|amps?|ma)\b",
    re.IGNORECASE,
)
UNSURE = 15.0  # points of charge between a sum and a reading that prove nothing
EMPTY = 2.5  # percent


@dataclass(frozen=True, slots=True)
class Explained:
    """What the drain and its own loss took by the time it was read, and what the volts tell."""

    read: Charge
    volts: float
    taken: float  # Ah by the drain
    left: float  # percent to be expected
    days: float

    @property
    def holds(self) -> bool:
        """Whether what is left fits, as far as a reading can be trusted."""
        return self.read.value >= self.left - UNSURE


def told(case: Case) -> Explained | None:
    """The sum, where the current, the time, the volts after it and the capacity of a lead battery are all told."""
    amps, days, volts = (case.said(fact) for fact in ("drain.current", "storage.time", "reading.voltage"))
    asked = EXPLAINS.search(case.text) is not None
    if not asked or not amps or not days or volts is None or "bank.capacity" not in case or laid_up.is_lithium(case):
        return None
    count = readings.spanned(case, float(volts))
    if not count:
        return None
    found = readings.charge_of(float(volts) / count, readings.table_of(case.said("battery.chemistry")))
    begin = float(case.said("battery.charge") or laid_up.FULL)
    lost = (laid_up.daily_share(case, say_it=True) + laid_up.drained_share(case)) * float(days)
    taken = drain.daily_loss(float(amps)) * float(days)
    case.step(
        f"{say.amp_hours(taken)} of {say.amp_hours(float(case['bank.capacity']))} and its own loss leave about "
        f"{say.charge(max(0.0, begin - lost))} of {say.charge(begin)}",
        "drain-arithmetic",
        *found.cites,
    )
    return Explained(found, float(volts), taken, max(0.0, begin - lost), float(days))


def goes_flat(text: str) -> bool:
    """Whether it is told that the battery is flat after such a time, and not asked if it will be.

    >>> goes_flat("it is always flat after two weeks, 80 mA"), goes_flat("will it be flat after two weeks")
    (True, False)
    """
    return GOES_FLAT.search(text) is not None and IF_FLAT.search(text) is None


def headline(found: Explained, amps: str) -> str:
    """Yes or no, and what else it may be."""
    took = f"{amps} took {say.amp_hours(found.taken)} in {say.quantity(found.days, 'd', 0)}"
    charge = "empty" if found.read.value < EMPTY else f"about {say.charge(found.read.value)}"
    sum_up = f"{took}, which leaves about {say.charge(found.left)}"
    read = f"{say.volts(found.volts)} means {charge}"
    if found.holds:
        return f"Yes: {sum_up}, and {read}."
    return f"No: {sum_up}, but {read}, so it was not full, more draws at times, or it is worn."


def average(case: Case) -> tuple[float, str] | None:
    """The least amps that emptied it in the time told, and the headline; None where that is not asked or not known."""
    days = case.said("storage.time")
    asked = FLAT.search(case.text) and HOW_MUCH.search(case.text)
    if not asked or not days or float(days) < 1 or "bank.capacity" not in case or laid_up.is_lithium(case):
        return None
    own = laid_up.daily_share(case, say_it=True) * float(days)
    capacity = float(case["bank.capacity"])
    amps = (laid_up.FULL - own) / 100 * capacity / float(days) / 24
    if amps <= 0:
        return None
    hours = say.quantity(float(days) * 24, "h", 0)
    case.step(f"{say.amp_hours(capacity)} less its own loss, over {hours}", "drain-arithmetic")
    rounded = float(f"{amps:.2g}")
    shown = say.quantity(rounded * 1000, "mA") if rounded < 1 else say.quantity(rounded, "A")
    gone = f"{say.amp_hours(capacity)} were gone in {say.quantity(float(days), 'd', 0)}"
    head = f"About {shown} or more on average: {gone}, if it was full; pull the fuses one by one to find what draws."
    return rounded, head
