"""The insulation from which a cable that is offered carries its load: it is bought by the print on it."""

from __future__ import annotations

from service import say
from service.case import Case
from service.rules.cable import COLUMNS, INSULATION, ampacity, nearest_gauge, standard


def least(case: Case, amps: float) -> float | None:
    """The lowest insulation in °C, at most that of a new cable, with which the stated size carries these amps."""
    gauge = standard(str(case["cable.gauge"])) if "cable.gauge" in case else nearest_gauge(float(case["cable.area"]))
    inside = bool(case["cable.in_engine_space"])
    carrying = (float(one) for one in COLUMNS if one <= INSULATION and (ampacity(gauge, one, inside) or 0.0) >= amps)
    return min(carrying, default=None)


def named(insulation: float) -> str:
    """ "with 90 °C insulation or better"."""
    return f"with {say.number(insulation)}{say.NB}°C insulation{' or better' if insulation < INSULATION else ''}"
