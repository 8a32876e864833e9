"""Where the acid of a battery freezes: by the hydrometer, else by its charge."""

from __future__ import annotations

from service import reference, say
from service.calculators import freezing
from service.case import Case
from service.rules.readings import USES_ACID

CHARGE_TABLE = "freezing-army@table 2"
TOLD = (("detail:flat_one", 0.0), ("detail:half_charged", 50.0), ("detail:full_one", 100.0))


def charge_of(case: Case) -> float | None:
    """The charge as stated, as told in words ("a flat one"), or from the readings."""
    said = case.said("battery.charge")
    told = next((charge for cue, charge in TOLD if case.says(cue)), None)
    if said is None and told is not None:
        return float(case.assume("battery.charge", told, "as the message says")) if not _read(case) else told
    found = case.get("battery.charge")
    return None if found is None else float(found)


def _read(case: Case) -> bool:
    return any(case.said(fact) is not None for fact in ("reading.voltage", "reading.gravity"))


def point_at_charge(charge: float) -> float:
    """Freezing temperature of a lead battery that is so full."""
    return freezing.point(charge, rows("charge"))


def point_of(case: Case) -> tuple[float, str] | None:
    """The freezing temperature and the reason in words; None where neither gravity nor charge is known.

    The gravity is taken as it was read: the temperature that is named is that of the frost, not of the acid.
    """
    read = case.said("reading.gravity")
    if read is not None and case.said("battery.charge") is None and case.said("battery.chemistry") in USES_ACID:
        point = freezing.point(float(read), rows("gravity"))
        nearest = min(
            (row for row in reference.rows("freezing") if row["chart"].value == "gravity"),
            key=lambda row: abs(row["at"].value - float(read)),
        )
        case.step(f"Acid of gravity {float(read):.3f} freezes at {say.temperature(point)}", nearest["freezes"].cite)
        return point, f"the gravity is {float(read):.3f}"
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
