"""Amp-hours that a motor takes in its minutes, against what a charger puts back while the engine runs."""

from __future__ import annotations

from dataclasses import dataclass

from grammar.told.times import motoring
from service import reference, say
from service.calculators import peukert
from service.case import Case
from service.judgements import charging, lithium, supply
from service.kinds import CHARGED
from service.reply import Answer, Figure
from service.told import put_back
from service.topic import Topic

RESERVE = float(reference.value("solar", "margin").value)  # what a clear yes wants, as of a panel
A_RUN = 60.0  # seconds: a shorter time is one of many bursts


@dataclass(frozen=True, slots=True)
class Taken:
    """What a run took: its amp-hours, and the run in words: "3 minutes at 260 A"."""

    amp_hours: float
    run: str


def taken(case: Case) -> Taken | None:
    """What the run that is told of takes; None where its amps or its time are not known, or it is no motor."""
    seconds = on_time(case)
    if seconds is None or "load.current" not in case or not supply.is_motor(case):
        return None
    amps, lasts = float(case["load.current"]), say.duration(seconds / 60)
    held = amps * seconds / 3600
    case.step(f"{say.amps(amps)} x {lasts} is {say.quantity(held, 'Ah', 1)}", "drain-arithmetic")
    return Taken(held, f"{lasts} at {say.amps(amps)}")


def on_time(case: Case) -> float | None:
    """Seconds on in all, as told: in all, as so many bursts, or once as minutes; else None."""
    seconds, count, one = (case.said(fact) for fact in ("load.time", "load.bursts", "load.burst"))
    if seconds is not None or one is None:
        return None if seconds is None else float(seconds)
    if count:
        return float(count) * float(one)
    return float(one) if float(one) >= A_RUN else None


def to_the_limit(case: Case, chemistry: str) -> Taken | None:
    """What a motor takes from full to the usable limit, where it is asked for how long; None where it is no motor."""
    if "load.current" not in case or "bank.capacity" not in case or not supply.is_motor(case):
        return None
    amps, family = float(case["load.current"]), "lithium" if chemistry == "lfp" else "lead"
    if family == "lithium" and amps > lithium.value("too-much") * float(case["bank.capacity"]):
        return None  # which no such battery gives
    share = float(reference.row("usable", family=family)["share"].value) / 100
    k = reference.row("peukert", chemistry=chemistry)["k"]
    hours = peukert.run_time(float(case["bank.capacity"]), amps, k.value) * share
    case.step(f"To the usable limit it runs {say.lasting(hours * 60)}: {say.amp_hours(amps * hours)} taken out", k.cite)
    return Taken(amps * hours, f"{say.lasting(hours * 60)} at {say.amps(amps)}")


def out(case: Case, chemistry: str) -> Taken | None:
    """What is to be put back, where that is asked and no charge is told; else None."""
    if not put_back.asked(case.text) or {"battery.charge", "reading.voltage", "reading.gravity"} & set(case.stated):
        return None
    return taken(case) or to_the_limit(case, chemistry)


def a_day(case: Case) -> float | None:
    """Amp-hours that a motor takes in a day, where it is told how often it runs; else None."""
    days, told = put_back.days_between(case.text), on_time(case)
    if not days or told is None:
        return None
    our_largest(case)
    found = taken(case)
    if found is None:
        return None
    if days > 1:
        daily = say.amp_hours(found.amp_hours / days)
        case.step(f"Once in {say.number(days)} days that is {daily} a day", "drain-arithmetic")
    return found.amp_hours / days


def our_largest(case: Case) -> None:
    """Where a thruster is told of and nothing of its amps: those of the house's largest of these volts."""
    if "load.current" in case or case.get("load.kind") != "thruster" or not case.house:
        return
    alike = [model for model in case.house.models.values() if model.volts == float(case["bank.voltage"])]
    if alike:
        model = max(alike, key=lambda item: item.running)
        why = f"the {model.name}, our largest of {say.quantity(model.volts, 'V')}"
        case.assume("load.current", model.running, why, "house", unit="A")


def while_motoring(topic: Topic, case: Case, gives: float | None, *figures: Figure) -> Answer | None:
    """Whether a charger puts back what the motor takes while the engine runs; None where one of them is not told."""
    hours = motoring.hours(case.text)
    if hours is None or gives is None or taken(case.fresh()) is None:
        return None
    found, chemistry = taken(case), charging.known_kind(case)
    assert found is not None, "the same case gave it"
    factor = reference.row("charge_factor", chemistry=chemistry if chemistry in CHARGED else "flooded")["factor"]
    if chemistry in CHARGED and "charge.capacity" in case:
        gives = min(gives, charging.span(case, str(chemistry), charging.capacity(case)).high)
    back, engine = gives * hours / float(factor.value), say.duration(hours * 60)
    case.step(f"{say.amps(gives)} x {engine} / {factor.value:g} for the losses is {say.amp_hours(back)}", factor.cite)
    case.because("The last part of a charge goes slowly, so a shore charger fills it now and then", "absorption-time")
    verdict = "yes" if back >= found.amp_hours * RESERVE else "marginal" if back >= found.amp_hours else "no"
    opening, joint = {"yes": ("Yes", "and"), "marginal": ("Only just", "and"), "no": ("No", "but")}[verdict]
    head = (
        f"{opening}: {found.run} take about {say.daily(found.amp_hours)}, {joint} {say.amps(gives)} for {engine} puts "
        f"back about {say.daily(back)}."
    )
    return topic.says(verdict, head, *figures)
