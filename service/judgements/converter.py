"""A charger between two batteries: which side has which volts, and what the alternator has for it."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import reference, say
from service.calculators import dc_dc
from service.case import Case
from service.judgements import charging
from service.reply import Figure
from service.rules.bank import system

DOWN = regex(r"\bdroppers?\b|\bstep(?:s|ped|ping)?[ -](?:(?:it|that|them) )?down\b|\breducers?\b", re.IGNORECASE)


def volts(case: Case) -> tuple[float, float]:
    """Nominal volts in and out: as said; the side not said is 12 V."""
    went_in, put_out = case.said("charger.input_voltage"), case.said("charger.voltage")
    bank, other = case.said("bank.voltage") or case.get("bank.built_voltage"), case.second.get("bank.voltage")
    source, target = (system(float(side)) if side else None for side in (went_in, put_out))
    if bank and other:  # a side of each voltage: where none is told, from the lower to the higher
        case.used.setdefault(("bank.voltage", 2), other)
        lower, higher = sorted((system(float(bank)), system(float(other.value))))
        if target is None:
            target = lower if source == higher else higher
        if source is None:
            source = higher if target == lower else lower
    target = target or float(bank or 12.0)
    if source is None:
        source = 12.0
        case.assume("charger.input_voltage", source, "most boats have 12 V", "twelve-volts", unit="V")
    if not put_out and not bank:
        case.assume("bank.voltage", target, "most boats have 12 V", "twelve-volts", unit="V")
    return (target, source) if DOWN.search(case.text) and source < target else (source, target)


def may_be_part(case: Case) -> bool:
    """Whether the battery it takes from could be one of those it charges: not where both sides have the same volts."""
    same = case.said("charger.input_voltage") is not None and len(set(volts(case))) == 1
    return not same


def whole(amps: float) -> str:
    """Amps without decimals, as estimates are shown."""
    return say.quantity(amps, "A", 0) if amps >= 10 else say.amps(amps)


def shares(case: Case) -> tuple[reference.Cited, ...]:
    """How much of an alternator's rating it gives for hours: for the kind of battery, else for both families."""
    lead, lithium = (reference.value("charging", f"alternator-{family}") for family in ("lead", "lithium"))
    chemistry = charging.known_kind(case)
    return (lead, lithium) if chemistry is None else (lithium,) if chemistry == "lfp" else (lead,)


def most_out(case: Case, rated: float, share: float) -> float:
    """The most that a converter may put out on this alternator."""
    source, target = volts(case)
    return dc_dc.output_current(source, rated * share, target, float(reference.value("dc_dc", "efficiency").value))


def real_output(case: Case, rated: float, taken: float) -> tuple[Figure, ...]:
    """What the alternator gives when it is hot, at speed and at idle, as measured on one; no part of the verdict."""
    hot, idle = (reference.value("charging", f"alternator-{name}") for name in ("hot", "idle"))
    fast, slow = rated * hot.value, rated * idle.value
    more = "" if taken <= slow else ": there the 12 V battery gives the rest" if volts(case)[0] == 12 else ""
    case.step(
        f"Hot, such an alternator gives about {whole(fast)} at speed and {whole(slow)} at idle{more}; what else is on "
        "takes its share",
        hot.cite,
    )
    return (
        Figure("alternator_output_hot", "alternator hot, at speed", fast, "A"),
        Figure("alternator_output_idle", "alternator hot, at idle", slow, "A"),
    )


def converts(case: Case) -> bool:
    """Whether the charger takes from another battery."""
    said = case.says("thing:dcdc", "word:boost") or "charger.input_voltage" in case.stated
    return "charger.current" in case.stated and (said or case.get("charger.kind") == "dc-dc")


def taken_from(case: Case) -> float:
    """Nominal volts of the side that a converter takes from, 12 V where nothing is said."""
    typed = float(case.get("charger.input_voltage", 12.0))
    return 12.0 * max(1, round(typed / 12.5))


def into_the_converter(case: Case, amps: float) -> float:
    """The larger of what a DC-to-DC unit gives and the most it may take in: that sizes cable and fuse."""
    return max(most_taken_in(case, amps), amps)


def charges_at(case: Case) -> float:
    """Nominal volts of the side that a converter charges."""
    given = float(case.said("charger.voltage") or case["bank.voltage"])
    return 12.0 * max(1, round(given / 12.5))


def most_taken_in(case: Case, amps: float) -> float:
    """The most that a DC-to-DC unit takes in for what it gives."""
    low, high = reference.value("dc_dc", "lowest-in"), reference.value("dc_dc", "charging-out")
    efficiency = reference.value("dc_dc", "efficiency")
    volts_in, volts_out = taken_from(case) / 12 * float(low.value), charges_at(case) / 12 * float(high.value)
    worst = dc_dc.input_current(volts_out, amps, volts_in, float(efficiency.value))
    case.step(
        f"At worst it takes {say.volts(volts_out)} x {say.amps(amps)} / ({say.volts(volts_in)} x 0.90) "
        f"= {say.amps(worst)}",
        high.cite,
        low.cite,
        efficiency.cite,
    )
    return worst


def at_worst(figures: tuple[Figure, ...]) -> str:
    """What it takes when the volts in are lowest: it lasts no hours, so it judges cable and fuse, no alternator."""
    return f"{whole(float(figures[0].high or 0.0))} at worst"
