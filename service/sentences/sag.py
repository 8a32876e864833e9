"""A drop under load put into words: its figures, its steps, its plot, and what the cable takes of it."""

from __future__ import annotations

from typing import Any

from service import chart, say
from service.case import Case
from service.judgements import circuit, load_reading
from service.judgements.doubt import shown
from service.judgements.load_reading import UnderLoad
from service.reply import Figure
from service.rules.readings import NEAR, cite, limit

AT_LOAD = "reading.load_voltage_at_load"


def figures(under: UnderLoad) -> tuple[Figure, ...]:
    """Sag, lowest good volts and inner resistance, as far as they are known."""
    found = [Figure("lowest_acceptable_voltage", "lowest good reading", under.lowest, "V")]
    if under.sag is not None:
        found.insert(0, Figure("sag", "sag (how far the voltage drops under load)", under.sag, "V"))
    if under.milliohms is not None:
        found.append(Figure("internal_resistance", "inner resistance", under.milliohms, "mohm"))
    return tuple(found)


def steps(case: Case, under: UnderLoad) -> None:
    """Notes the sag and the resistance, beside what a new and a just passing battery show."""
    if under.sag is None or under.rest is None or under.read is None:
        return
    sag = f"{shown(under.rest)} - {shown(under.read)} = {shown(round(under.sag, 4))}"
    if under.milliohms is None or not under.current:
        case.step(f"Sag: {sag}", "ohms-law")
        return
    ohms = f"{sag}; over {say.amps(under.current)} that is {say.number(under.milliohms, 1)} mΩ"
    cca = case.get("bank.cca")
    if under.basis == "lithium" or not cca:
        case.step(f"Sag: {ohms}", "ohms-law")
        return
    new = limit("new-resistance") / float(cca) * 1000 * under.count
    worst = load_reading.ohms_of(case) * 1000 * under.count
    case.step(
        f"Sag: {ohms}; a new one has about {say.number(new, 1)}, the worst that passes {say.number(worst, 1)} mΩ",
        "ohms-law",
        cite("new-resistance"),
        "load-test-resistance",
    )


def plot(under: UnderLoad) -> dict[str, Any]:
    """The readings beside the lowest good one."""
    bars = [
        (name, [(name, volts)])
        for name, volts in (("at rest", under.rest), ("under load", under.read))
        if volts is not None
    ]
    return chart.chart(
        "bars",
        "Volts at rest and under load",
        ("reading", ""),
        ("volts", "V"),
        bars,
        [("lowest good", under.lowest)],
        ("yours", "under load", float(under.read or 0)),
    )


def lost_on_the_way(case: Case, under: UnderLoad) -> tuple[float, float, float] | None:
    """Volts at the motor, volts lost and their share, where more is lost than suits a motor."""
    far = case.said(AT_LOAD)
    if far is None or not under.read:
        return None
    lost = under.read - float(far)
    share = lost / under.read * 100
    return (float(far), lost, share) if share > limit("cable-share") + NEAR else None


def cable_step(case: Case, under: UnderLoad, far: float, lost: float, share: float) -> Figure:
    """Notes what is lost between posts and motor."""
    case.step(
        f"{shown(float(under.read or 0))} at the posts - {shown(far)} at the motor = {say.volts(lost, 2)}, "
        f"{say.quantity(share, '%', 0)}; a motor may lose {say.quantity(limit('cable-share'), '%')}",
        cite("cable-share"),
    )
    return Figure("drop", "lost in cable and joints", lost, "V")


def of_the_cable(case: Case) -> float | None:
    """Volts that the cable told of takes by the formula; None where it or the current is not known."""
    if not circuit.has_cable(case) or case.said("cable.length") is None or "load.current" not in case:
        return None
    return circuit.loss(case, circuit.current(case)).volts
