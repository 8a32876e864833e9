"""What has to change on a boat beside the battery where lithium takes the place of lead."""

from __future__ import annotations

from service import reference, say
from service.case import Case
from service.judgements import charge_volts
from service.told import to_lithium

ELSE = (
    "Besides the battery: a lithium setting on every charger, a DC-to-DC charger on the alternator, a main fuse that "
    "breaks lithium's short circuit, and a label that allows the thruster's current."
)
NOT_JUST = (
    "Not just like that: every charger needs a lithium setting, the alternator a DC-to-DC charger, and the BMS (the "
    "safety switch inside) must let the thruster's first instant pass."
)
WORTH = (
    "Lithium pays where much is used and charged often: it usually lasts {} years, {} {}; for a few short pushes lead "
    "does."
)
SWAP = (
    "You can, if its BMS (the safety switch inside) lets the thruster's first instant pass and every charger that "
    "feeds it has a lithium setting; if not, AGM."
)


def besides(case: Case) -> str:
    """What has to change besides the battery, or that it does not just drop in; "" where neither is asked."""
    drops = to_lithium.drops_in(case.text)
    if not drops and not to_lithium.what_changes(case.text):
        return ""
    steps(case)
    return NOT_JUST if drops else ELSE


def headline(case: Case) -> str:
    """Whether lithium may come in, and if it pays."""
    if not to_lithium.worth_it(case.text):
        return SWAP
    case.because("Its BMS (the safety switch inside) can stop the thruster unasked", "kinds-in-use")
    case.because("Every charger that feeds it needs a lithium setting", "charge-volts-lithium")
    beside = next((kind for kind in ("flooded", "agm", "gel") if case.says(f"detail:kind_{kind}")), "agm")
    return WORTH.format(years("lfp"), say.CHEMISTRY[beside], years(beside))


def years(kind: str) -> str:
    """The usual life of a kind, without its unit."""
    row = reference.row("lives", chemistry=kind)
    return say.between(float(row["low"].value), float(row["high"].value), "", 0)


def steps(case: Case) -> None:
    """Why, in the order of what is forgotten: charger, alternator, fuse, the limits on the label."""
    absorbs, floats = (charge_volts.stage("lfp", name) for name in ("absorption", "float"))
    case.because(
        f"A charger for it gives {absorbs}, then {floats}, equalises nothing, and does not charge at or below 0 °C",
        "charge-volts-lithium",
        "lithium-charge-cold",
    )
    case.because(
        "Lithium takes all that an alternator gives and can overheat it; a marine electrician sees to it and to the "
        "main fuse",
        "lithium-alternator",
        "fault-current",
    )
    asked = "the thruster's running amps and its first instant"
    if "load.current" in case and "load.peak" in case:
        running, first = (say.amps(float(case[fact])) for fact in ("load.current", "load.peak"))
        asked = f"{running} all the time and {first} for a few seconds"
    case.because(f"Its label has to allow {asked}", "lithium-limits")
