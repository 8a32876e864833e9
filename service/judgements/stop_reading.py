"""The volts at rest at which a battery has given what it may, told where they ask at which reading to stop."""

from __future__ import annotations

from service import say
from service.case import Case
from service.reply import Figure
from service.rules import readings

ASKED = "detail:stop_reading"


def headline(case: Case, head: str, charge: float) -> str:
    """A headline with the reading to stop at, where that is asked. `charge`: what is left then, in percent."""
    found = figures(case, charge)
    if not found:
        return head
    return f"{head.removesuffix('.')}; stop at about {say.volts(float(found[0].value))} at rest."


def figures(case: Case, charge: float) -> tuple[Figure, ...]:
    """The reading as a figure; none where it is not asked. With the load on a battery shows less."""
    if not case.says(ASKED):
        return ()
    kind = readings.table_of("lfp" if case.get("battery.family") == "lithium" else case.get("battery.chemistry"))
    each = readings.volts_for(charge, kind)
    case.because(
        f"At rest {say.volts(each, 2)} for each 12{say.NB}V is {say.charge(charge)}; with the load on the meter shows "
        "less, so switch it off before you read",
        *readings.charge_of(each, kind).cites,
    )
    return (Figure("stop_voltage", "stop at, at rest", each * float(case["bank.voltage"]) / 12, "V"),)
