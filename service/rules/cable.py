"""The cable: its area, what it may carry, the loss allowed, and the standard sizes to choose from."""
from __future__ import annotations

from service.calculators.cable import Size
from service.case import rule
from service.reference import UnknownValue, row, rows, value

MOTORS = {"thruster", "windlass", "engine", "trolling motor", "motor", "winch", "capstan"}
K = value("copper", "k")
PER_MM2 = value("copper", "cmil_per_mm2")
MOTOR_LIMIT = value("copper", "motor_limit")
CRITICAL_LIMIT = value("copper", "critical_limit")
INSULATION = 105.0  # C, assumed where nothing is said
SPELT = {"0": "1/0", "00": "2/0", "000": "3/0", "0000": "4/0"}


@rule("cable.insulation", kind="assumed", unit="C", cites=["cable-assumption"],
      say="105 °C insulation assumed", why="105 °C insulation, usual for new boat cable")
def usual_insulation() -> float:
    return INSULATION


@rule("cable.in_engine_space", kind="assumed", cites=["cable-assumption"],
      say="Outside the engine space assumed", why="outside the engine space, as nothing was said")
def usual_place() -> bool:
    return False


@rule("cable.cmil", ["cable.gauge"], unit="cmil", cites=["sae-areas"],
      say="{cable.gauge} has {value} circular mils (smallest SAE area)")
def area_of_the_gauge(gauge: str) -> float | None:
    try:
        return float(row("wire_areas", gauge=SPELT.get(gauge, gauge))["area"].value)
    except UnknownValue:
        return None


@rule("cable.cmil", ["cable.area"], unit="cmil", cites=[PER_MM2.cite],
      say="{cable.area} x 1973.5 = {value} circular mils")
def area_of_the_metric_size(area: float) -> float:
    return float(area * PER_MM2.value)


@rule("cable.ampacity", ["cable.gauge", "cable.insulation", "cable.in_engine_space"], unit="A",
      cites=["cfr-183-425@table 5"], say="{cable.gauge} at {cable.insulation} may carry {value}")
def ampacity_of_the_gauge(gauge: str, insulation: float, engine_space: bool) -> float | None:
    return ampacity(SPELT.get(gauge, gauge), insulation, engine_space)


@rule("cable.ampacity", ["cable.area", "cable.insulation", "cable.in_engine_space"], unit="A",
      cites=["cfr-183-425@table 5"],
      say="{cable.area} at {cable.insulation} may carry {value}, as the largest AWG size that is no thicker")
def ampacity_of_the_metric_size(area: float, insulation: float, engine_space: bool) -> float | None:
    return ampacity(nearest_gauge(area), insulation, engine_space)


@rule("cable.drop", ["?load.kind"], kind="assumed", unit="%", cites=[MOTOR_LIMIT.cite],
      say="Loss allowed: {value} for a motor", why="10 % suits thrusters and other motors")
def loss_of_a_motor(kind: str | None) -> float | None:
    return float(MOTOR_LIMIT.value) if kind is None or kind in MOTORS else None


@rule("cable.drop", ["load.kind"], kind="assumed", unit="%", cites=[CRITICAL_LIMIT.cite],
      say="Loss allowed: {value} for {load.kind}", why="3 % suits feeds, electronics, chargers, navigation lights")
def loss_of_electronics(kind: str) -> float:
    return float(CRITICAL_LIMIT.value)


def ampacity(gauge: str, insulation: float = INSULATION, engine_space: bool = False) -> float | None:
    """Amps that a gauge may carry at an insulation rating in C (the next lower column), None where not known."""
    column = max((c for c in COLUMNS if c <= insulation), default=None)
    try:
        amps = row("ampacity", gauge=gauge)[f"c{column}"].value
    except (UnknownValue, KeyError):
        return None
    return float(amps * (row("engine_space", insulation=column)["share"].value if engine_space else 1))


COLUMNS = tuple(int(found["insulation"].value) for found in rows("engine_space"))


def nearest_gauge(area: float) -> str:
    """The largest American size that is no thicker than a metric area in mm2, "" where there is none."""
    fitting = [found for found in rows("wire_areas") if found["pick"].value and found["nominal"].value <= area]
    return str(fitting[-1]["gauge"].value) if fitting else ""


def gauges(insulation: float = INSULATION, engine_space: bool = False) -> tuple[Size, ...]:
    """The American sizes that may be proposed, thin to thick, with what each may carry."""
    return tuple(
        Size(found["gauge"].value, found["area"].value, ampacity(found["gauge"].value, insulation, engine_space) or 0)
        for found in rows("wire_areas") if found["pick"].value
    )


def metric_sizes(insulation: float = INSULATION, engine_space: bool = False) -> tuple[Size, ...]:
    """The metric sizes that may be proposed, thin to thick, with what each may carry."""
    return tuple(
        Size(found["area"].value, found["area"].value * PER_MM2.value,
             ampacity(found["gauge"].value, insulation, engine_space) or 0)
        for found in rows("metric_areas")
    )
