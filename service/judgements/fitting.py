"""The cable to fit: the smallest standard size for the loss and the current, or several beyond the thickest."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from service import reference, say
from service.calculators import cable
from service.calculators.cable import Size
from service.case import Case, Value
from service.judgements import circuit
from service.rules.cable import INSULATION, TABLE_5, K, gauges, metric_sizes
from service.topic import Lever

BUNDLED = reference.value("copper", "bundled")
FROM_GAUGE = reference.value("copper", "parallel_from_gauge")
FROM_AREA = reference.value("copper", "parallel_from_area")


@dataclass(frozen=True, slots=True)
class Choice:
    """What to fit: a size in each system and how many for each pole; no size at all where `count` is 0."""

    gauge: Size | None
    area: Size | None
    count: int = 1

    def named(self, us_first: bool) -> str:
        """Both names, the customer's system first."""
        both = ((self.gauge, "American"), (self.area, "metric"))
        parts = [(circuit.called(size), system) for size, system in both if size]
        parts = parts if us_first else parts[::-1]
        if len(parts) == 1:
            return parts[0][0]
        return f"{parts[0][0]} ({parts[1][0]}{f' in {parts[1][1]} sizes' if self.count == 1 else ''})"


def needed(case: Case, percent: float, amps: float) -> float:
    """Circular mils that lose so many percent of the system's volts."""
    lost = circuit.volts(case) * percent / 100
    return cable.area_for(amps, float(case["cable.length"]), lost, k=K.value)


def fitting(case: Case, percent: float, amps: float, carried: float) -> Choice:
    """The smallest sizes that lose at most so many percent and may carry `carried` amps."""
    american, metric = circuit.sizes(case)
    area = needed(case, percent, amps)
    return Choice(cable.smallest(american, area, carried), cable.smallest(metric, area, carried))


def chosen(case: Case, amps: float) -> Choice:
    """The size to fit for the loss that applies and for the current; beyond the thickest, equal cables side by side."""
    percent = circuit.allowed(case)
    choice = fitting(case, percent, amps, amps)
    if choice.area and (choice.gauge or not us_first(case)):
        return choice  # 120 mm2 is thicker than 4/0
    american, metric = circuit.sizes(case)
    area = needed(case, percent, amps)
    several = cable.conductors(_from(american, FROM_GAUGE.value), area, amps, share=BUNDLED.value)
    if several is None:
        return Choice(None, None, 0)
    count, gauge = several
    thin = cable.smallest(_from(metric, FROM_AREA.value), area / count, amps / count, BUNDLED.value)
    case.step(
        f"One cable is not enough: {count} equal ones for each pole, each counted at 0.6 of its ampacity",
        BUNDLED.cite,
        FROM_GAUGE.cite,
        K.cite,
        TABLE_5,
    )
    return Choice(gauge, thin, count)


def several_needed(case: Case, amps: float) -> str:
    """Equal cables side by side, in words, where no single one of any size is enough for the loss; "" else."""
    choice = chosen(case.fresh(), amps)  # its steps are no part of the answer
    size = choice.area if circuit.metric(case) else choice.gauge
    return f"it takes {choice.count} of {circuit.called(size)} for each pole" if size and choice.count > 1 else ""


def shorter(case: Case) -> Iterator[Value]:
    """The run for which the thickest cable would do, where no single one does for the whole of it."""
    quiet = case.fresh()
    if "cable.length" not in case.stated or not circuit.has_cable(quiet) or "load.current" not in quiet:
        return
    amps = circuit.current(quiet)
    if several_needed(quiet, amps):
        lost, thickest = circuit.loss(quiet, amps), _thickest(quiet)
        most = float(quiet["cable.length"]) * lost.allowed / lost.percent * thickest.area / float(quiet["cable.cmil"])
        yield math.floor(most * 10 + 1e-9) / 10


def _thickest(case: Case) -> Size:
    """The thickest size of the customer's system."""
    return max(circuit.sizes(case)[1 if circuit.metric(case) else 0], key=lambda size: size.area)


def of_the_thickest(case: Case, value: Value) -> dict[str, Value]:
    """The cable of that run."""
    size = _thickest(case)
    named: dict[str, Value] = {"cable.area": float(size.name)} if circuit.metric(case) else {"cable.gauge": size.name}
    return named | new_cable(case, value)


def in_words_of_run(case: Case, value: Value) -> str:
    """The run and its cable."""
    run = say.length(float(value), not circuit.metric(case))
    return f"a run of {run} or less, in {circuit.called(_thickest(case))}"


def _from(sizes: Iterable[Size], first: Value) -> list[Size]:
    known = list(sizes)
    return known[[size.name for size in known].index(first) :]


def us_first(case: Case) -> bool:
    """Whether the customer asks for American sizes, or writes in them or in feet."""
    if case.says("detail:to_mm2") != case.says("detail:to_awg"):
        return case.says("detail:to_awg")
    return not circuit.metric(case) and (circuit.in_feet(case) or "cable.gauge" in case.stated)


def thicker_gauges(case: Case) -> Iterator[Value]:
    """The American sizes thicker than theirs, where they named one."""
    if "cable.gauge" in case.stated:
        yield from (size.name for size in gauges() if size.area > case.get("cable.cmil", 0.0))


def thicker_areas(case: Case) -> Iterator[Value]:
    """The metric sizes thicker than theirs, where they named one."""
    if circuit.metric(case):
        yield from (size.name for size in metric_sizes() if size.area > case.get("cable.cmil", 0.0))


def new_cable(case: Case, value: Value) -> dict[str, Value]:
    """A new cable has 105 °C insulation, or as good a one as theirs."""
    return {} if float(case.said("cable.insulation") or 0) >= INSULATION else {"cable.insulation": INSULATION}


def _if_older(values: Callable[[Case], Iterable[Value]]) -> Callable[[Case], Iterable[Value]]:
    """The values where the customer's insulation is less good than a new cable's."""
    return lambda case: values(case) if 0 < float(case.said("cable.insulation") or 0) < INSULATION else ()


THICKER = (
    Lever("cable.gauge", thicker_gauges, "{value} cable with 105 °C insulation", new_cable),
    Lever("cable.gauge", _if_older(thicker_gauges), "{value} cable with insulation like yours"),
    Lever("cable.area", thicker_areas, "{value} cable with 105 °C insulation", new_cable),
    Lever("cable.area", _if_older(thicker_areas), "{value} cable with insulation like yours"),
)
NEARER = Lever("cable.length", shorter, in_words_of_run, of_the_thickest)


@dataclass(frozen=True, slots=True)
class Demand:
    """The cable that the house's catalogue asks for, in each system: circular mils, sizes, names, model and metres."""

    area: float
    gauge: Size
    metric: Size
    names: str
    model: str
    up_to: float

    def told(self, case: Case) -> None:
        """Tells it in the working."""
        case.step(
            f"The catalogue asks for {self.names} for the {self.model} up to {say.quantity(self.up_to, 'm')}", "house"
        )

    def raised(self, choice: Choice) -> Choice:
        """A choice that is no thinner than the catalogue asks for."""
        if choice.count != 1:
            return choice
        gauge, area = choice.gauge or self.gauge, choice.area or self.metric
        return Choice(max(gauge, self.gauge, key=_thickness), max(area, self.metric, key=_thickness))


def _thickness(size: Size) -> float:
    return size.area


def to_fit(case: Case, amps: float) -> Choice:
    """The size to fit: what the formula gives, or the catalogue's where that is thicker."""
    choice, asked = chosen(case, amps), by_the_catalogue(case)
    return asked.raised(choice) if asked else choice


def by_the_catalogue(case: Case) -> Demand | None:
    """The row of the model's own cable table for this length, None where there is none."""
    model = case.house.model(case["load.model"]) if case.house and "load.model" in case else None
    row = next((run for run in model.cables if case["cable.length"] <= run.up_to), None) if model else None
    if not model or not row:
        return None
    gauge = next(size for size in gauges() if size.name == row.gauge)
    metric = next(size for size in metric_sizes() if float(size.name) >= row.area)
    names = f"{say.gauge(row.gauge)} ({say.quantity(row.area, 'mm2')})"
    return Demand(gauge.area, gauge, metric, names, model.name, row.up_to)


def asked_thicker(case: Case) -> Demand | None:
    """What the catalogue asks for, where the cable named is thinner than that."""
    asked = by_the_catalogue(case)
    if asked:
        asked.told(case)
    return asked if asked and float(case["cable.cmil"]) < asked.area * (1 - 1e-9) else None
