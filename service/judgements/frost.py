"""Where the acid of a battery freezes: by the hydrometer, else by its charge."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import reference, say
from service.calculators import freezing
from service.case import Case
from service.rules.readings import USES_ACID, cite, corrected_gravity, gravity_charge, limit

CHARGE_TABLE = "freezing-army@table 2"
CORRECTED = "specific-gravity.corrected_gravity"  # as an earlier answer worked it out
WORDS = regex(r"\b(?:freez|froze|ice)", re.IGNORECASE)
TEMPERATURE = "ambient.temperature"
ROUNDED = 0.0005  # of a gravity, as it is shown
NIGHT = 5.0  # °C: nobody fears for a battery in a warmer night
TOLD = (("detail:flat_one", 0.0), ("detail:half_charged", 50.0), ("detail:full_one", 100.0))


def charge_of(case: Case) -> float | None:
    """The charge as stated, as told in words ("a flat one"), or from the readings."""
    said = case.said("battery.charge")
    told = next((charge for cue, charge in TOLD if case.says(cue)), None)
    if said is None and told is not None and not _read(case):
        return float(case.assume("battery.charge", told, "as the message says"))
    if said is None and (gravity := gravity_of(case)) is not None:
        found = gravity_charge(gravity)
    else:
        found = case.get("battery.charge")
    if said is None and told is not None:  # words beside a reading: the emptier one freezes first
        return told if found is None else min(told, float(found))
    return None if found is None else float(found)


def _read(case: Case) -> bool:
    return any(case.said(fact) is not None for fact in ("reading.voltage", "reading.gravity"))


def gravity_of(case: Case) -> float | None:
    """The gravity of the acid at 27 °C: as the desk corrected it before, else by the temperature at which it was read;
    None where none was read, or it cannot be one."""
    read = case.said("reading.gravity")
    if (
        read is None
        or case.said("battery.chemistry") not in USES_ACID
        or not 1.0 <= float(read) <= limit("gravity-most")
    ):
        return None
    before = case.worked.get(CORRECTED)
    return float(before) if before is not None else corrected_gravity(float(read), acid_temperature(case))


def acid_temperature(case: Case) -> float | None:
    """The temperature at which the acid was read: the warmer one of two, as the other is a frost's; one alone where it
    is too warm for a frost, which is what a question of freezing names."""
    told, other = case.known(TEMPERATURE), case.second.get(TEMPERATURE)
    if told is None or other is None:
        return None if told is None or float(told.value) <= NIGHT else float(told.value)
    case.used.setdefault((TEMPERATURE, 2), other)
    return max(float(told.value), float(other.value))


def point_at_charge(charge: float) -> float:
    """Freezing temperature of a lead battery that is so full."""
    return freezing.point(charge, rows("charge"))


def point_of(case: Case) -> tuple[float, str] | None:
    """The freezing temperature and the reason in words; None where neither gravity nor charge is known."""
    read = gravity_of(case)
    if read is not None and case.said("battery.charge") is None:
        point = freezing.point(read, rows("gravity"))
        nearest = min(
            (row for row in reference.rows("freezing") if row["chart"].value == "gravity"),
            key=lambda row: abs(row["at"].value - read),
        )
        typed = float(case["reading.gravity"])
        if abs(typed - read) >= ROUNDED:
            case.step(f"{typed:.3f} on the float is {read:.3f} at 27 °C (80 °F)", cite("gravity-correction"))
        case.step(f"Acid of gravity {read:.3f} freezes at {say.temperature(point)}", nearest["freezes"].cite)
        return point, f"the gravity is {read:.3f}{' (corrected)' if abs(typed - read) >= ROUNDED else ''}"
    charge = charge_of(case)
    if charge is None:
        return None
    point = point_at_charge(charge)
    case.step(f"At {say.charge(charge)} of charge the acid freezes at {say.temperature(point)}", CHARGE_TABLE)
    return point, _told(charge)


def _told(charge: float) -> str:
    if charge >= 97.5:
        return "it is full"
    return "it is flat" if charge < 2.5 else f"it is about {say.charge(charge)} full"


def rows(chart: str) -> list[tuple[float, float]]:
    """The rows of one table, by gravity or by charge."""
    found = [row for row in reference.rows("freezing") if row["chart"].value == chart]
    return [(row["at"].value, row["freezes"].value) for row in found]
