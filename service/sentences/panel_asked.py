"""A panel that is looked for, or asked about without its watts or its controller."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from grammar.text.patterns import regex
from service import reference, say
from service.calculators import solar
from service.case import Case
from service.judgements import charging
from service.reply import Answer, Figure
from service.topic import Topic

WHICH_PANEL = regex(  # the watts are asked for, and none can be told
    r"\b(?:wh?ich|what)(?: (?:size|sort|kind|type|power|of|a|solar|pv))* panels?\b"
    r"|\bhow (?:big|large|strong|powerful|many watts)\b[^.?!;]{0,24}\bpanel"
    r"|\b(?:what|how many|which) (?:watts?|wattage|size)\b(?! (?:has|does|is|are|do|on|the panel has))",
    re.IGNORECASE,
)


def wanted_panel(topic: Topic, case: Case, wanted: Need, sun: float) -> Answer:
    """The panel for a need."""
    figures = required(case, wanted, sun)
    if not figures:
        return topic.needs("drain.current")
    watts = float(figures[0].value)
    case.step(
        f"{say.amp_hours(wanted.in_all)} a day x {say.volts(volts(case))} / ({say.quantity(sun, 'h')} x "
        f"{value('share'):g}) is {say.quantity(watts, 'W')}",
        "panel-share",
    )
    spare = whole(watts * value("margin"))
    case.step(f"With 1.3 times the need it is {spare}", "panel-margin")
    if not wanted.drawn and watts * value("margin") <= float(case.get("bank.capacity", 0.0)) * value("maintain"):
        usual = say.quantity(float(case["bank.capacity"]) * value("maintain"), "W")
        case.step("The trade fits 10 W for each 100 Ah", "panel-maintain")
        sums = f"the sum gives {say.quantity(watts, 'W')}"
        head = f"About {usual}: {sums}, but shade and dull days want the trade's {usual}."
        return topic.says("information", head, *figures)
    covers = f"just covers {say.daily(wanted.in_all)} a day"
    head = f"{spare}: a panel of {whole(watts)} {covers}, the rest is reserve."
    return topic.says("information", head, *figures)


def without_panel(topic: Topic, case: Case) -> Answer:
    """No panel is named: its watts are asked for, unless they are what is asked; then what it must cover is."""
    if WHICH_PANEL.search(case.text) and not case.says("detail:under_cover"):
        return topic.needs(*lacking(case), "battery.capacity")
    return topic.needs("solar.power", *lacking(case))


def lacking(case: Case) -> tuple[str, ...]:
    """What else is missing where no panel is named."""
    return () if "drain.current" in case else ("drain.current",)


def without_controller(case: Case, power: float) -> str | None:
    """Why a panel may not go straight onto the battery; None where it has a controller or is small enough."""
    if not case.says("detail:no_controller"):
        return None
    chemistry = charging.known_kind(case)
    case.step(
        "A sealed battery on a panel always wants a controller; a wet-cell one above 1.5 A for each 100 Ah",
        "panel-controller",
    )
    if chemistry in ("agm", "gel", "lfp"):
        return f"No: {charging.called(chemistry)} on a panel always wants a controller."
    amp_hours = case.get("bank.capacity")
    if amp_hours is None or power / volts(case) <= amp_hours * value("bare-panel"):
        return None
    return f"No: a {say.quantity(power, 'W')} panel is too strong for {say.amp_hours(amp_hours)} without a controller."


@dataclass(frozen=True, slots=True)
class Need:
    """Amp-hours a day: what is drawn, what the battery loses by itself, and what a motor takes in its minutes."""

    drawn: float
    lost: float
    taken: float = 0.0

    @property
    def in_all(self) -> float:
        """All together."""
        return self.drawn + self.lost + self.taken


def value(name: str) -> float:
    """A single value of solar."""
    return float(reference.value("solar", name).value)


def volts(case: Case) -> float:
    """Charging volts of the bank."""
    return value("charging") * float(case["bank.voltage"]) / 12


def panel(case: Case, amp_hours: float, sun: float) -> float:
    """Watts that bring so many amp-hours a day."""
    return solar.required_power(amp_hours, sun, value("share"), volts(case))


def required(case: Case, wanted: Need, sun: float) -> tuple[Figure, ...]:
    """The panel that just covers the need."""
    if not wanted.in_all:
        return ()
    return (Figure("required_power", "panel that just covers it", panel(case, wanted.in_all, sun), "W"),)


def whole(watts: float) -> str:
    """Watts that are needed, rounded up."""
    return say.quantity(math.ceil(watts - 1e-6), "W", 0)
