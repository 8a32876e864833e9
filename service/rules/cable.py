"""The cable: its area, what it may carry, the loss allowed, and the standard sizes to choose from."""

from __future__ import annotations

from functools import lru_cache

from service.calculators.cable import Size
from service.case import Case, rule
from service.reference import UnknownValue, row, rows, value
from service.rules.load import MOTORS

K = value("copper", "k")
PER_MM2 = value("copper", "cmil_per_mm2")
MOTOR_LIMIT = value("copper", "motor_limit")
CRITICAL_LIMIT = value("copper", "critical_limit")
INSULATION = 105.0  # C, assumed where nothing is said
COLUMNS = tuple(int(found["insulation"].value) for found in rows("engine_space"))
TABLE_5 = "cfr-183-425@table 5"
SPELT = {"0": "1/0", "00": "2/0", "000": "3/0", "0000": "4/0"}


@rule("cable.insulation", kind="assumed", unit="C", say="", why="usual for new boat cable")
def usual_insulation() -> float:
    """New boat cable."""
    return INSULATION


@rule("cable.in_engine_space", kind="assumed", say="", why="nothing else was said")
def usual_place() -> bool:
    """Outside the engine space."""
    return False


@rule(
    "cable.cmil",
    ["cable.gauge"],
    unit="cmil",
    cites=["sae-areas"],
    say="",
)
def area_of_the_gauge(gauge: str) -> float | None:
    """The smallest area of that size, None for a size that is not in the table."""
    try:
        return float(row("wire_areas", gauge=standard(gauge))["area"].value)
    except UnknownValue:
        return None


@rule(
    "cable.cmil",
    ["cable.area"],
    unit="cmil",
    cites=[PER_MM2.cite],
    say="",
)
def area_of_the_metric_size(area: float) -> float:
    """The nominal area."""
    return float(area * PER_MM2.value)


@rule(
    "cable.ampacity",
    ["cable.gauge", "cable.insulation", "cable.in_engine_space"],
    unit="A",
    cites=[TABLE_5],
    say="{cable.gauge} at {cable.insulation} may carry {value}",
)
def ampacity_of_the_gauge(gauge: str, insulation: float, engine_space: bool) -> float | None:
    """By table 5, None for a size or an insulation that is not in it."""
    return ampacity(standard(gauge), insulation, engine_space)


@rule(
    "cable.ampacity",
    ["cable.area", "cable.insulation", "cable.in_engine_space"],
    unit="A",
    cites=[TABLE_5],
    say="{cable.area} at {cable.insulation} may carry {value}, as the largest AWG size that is no thicker",
)
def ampacity_of_the_metric_size(area: float, insulation: float, engine_space: bool) -> float | None:
    """As the largest American size that is no thicker."""
    return ampacity(nearest_gauge(area), insulation, engine_space)


@rule(
    "cable.drop",
    ["charger.current", "?load.current"],
    kind="assumed",
    unit="%",
    cites=[CRITICAL_LIMIT.cite],
    say="",
    why="suits the cable of a charger",
)
def loss_of_a_charger(charger: float, load: float | None) -> float | None:
    """3 % where the cable carries a charging current."""
    return float(CRITICAL_LIMIT.value) if load is None else None


@rule(
    "cable.drop",
    ["?load.kind"],
    kind="assumed",
    unit="%",
    cites=[MOTOR_LIMIT.cite],
    say="",
    why="suits thrusters and other motors",
)
def loss_of_a_motor(kind: str | None) -> float | None:
    """10 % for motors, and where nothing is said: a thruster."""
    return float(MOTOR_LIMIT.value) if kind is None or kind.lower() in MOTORS else None


@rule(
    "cable.drop",
    ["load.kind"],
    kind="assumed",
    unit="%",
    cites=[CRITICAL_LIMIT.cite],
    say="",
    why="suits feeds, electronics, chargers and navigation lights",
)
def loss_of_electronics(kind: str) -> float:
    """3 % for all that is no motor."""
    return float(CRITICAL_LIMIT.value)


def area_cite(case: Case) -> str:
    """The source of the area of the stated cable."""
    return "sae-areas" if "cable.gauge" in case.stated else PER_MM2.cite


def standard(gauge: str) -> str:
    """A gauge as the tables write it: "00" is "2/0"."""
    return SPELT.get(gauge.strip(), gauge.strip())


def ampacity(gauge: str, insulation: float = INSULATION, engine_space: bool = False) -> float | None:
    """Amps that a gauge may carry by the next lower column of insulation in C, None where that is not known."""
    column = max((rating for rating in COLUMNS if rating <= insulation), default=None)
    if column is None:
        return None
    try:
        amps = float(row("ampacity", gauge=gauge)[f"c{column}"].value)
    except UnknownValue:
        return None
    return amps * float(row("engine_space", insulation=column)["share"].value) if engine_space else amps


def nearest_gauge(area: float) -> str:
    """The largest American size that is no thicker than a metric area in mm2, "" where there is none."""
    fitting = [item for item in rows("wire_areas") if item["pick"].value and item["nominal"].value <= area]
    return str(fitting[-1]["gauge"].value) if fitting else ""


@lru_cache(maxsize=64)
def gauges(insulation: float = INSULATION, engine_space: bool = False) -> tuple[Size, ...]:
    """The American sizes that may be proposed, thin to thick, with what each may carry."""
    return tuple(
        Size(item["gauge"].value, item["area"].value, ampacity(item["gauge"].value, insulation, engine_space) or 0.0)
        for item in rows("wire_areas")
        if item["pick"].value
    )


@lru_cache(maxsize=64)
def metric_sizes(insulation: float = INSULATION, engine_space: bool = False) -> tuple[Size, ...]:
    """The metric sizes that may be proposed, thin to thick, with what each may carry."""
    return tuple(
        Size(
            item["area"].value,
            item["area"].value * PER_MM2.value,
            ampacity(item["gauge"].value, insulation, engine_space) or 0.0,
        )
        for item in rows("metric_areas")
    )
