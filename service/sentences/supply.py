"""How a verdict on supply is put: by a converter, on paper, as measured, by what reaches the motor."""

from __future__ import annotations

import math
import re

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.judgements import circuit, cranking, fitting, supply
from service.judgements.cranking import limit
from service.judgements.deciding import Ground
from service.rules import readings
from service.told import house_bank, more_volts, motor_volts, own_battery
from service.topic import CIRCUIT

DOES = ("yes", "no")  # the battery's own verdict and that of its cable
LONGEST = 30  # words of a headline
MATTERS = regex(r"\b(?:does|do|will|would) (?:it|that|this) (?:really )?matter\b|\bis (?:it|that) a problem\b", re.I)
SPREAD = 0.2  # volts between a reading under load and what the rating promises, for nothing


def through_a_converter(case: Case) -> str | None:
    """ "Can I step it down?" of a bank of other volts: what the converter itself would have to give; else None."""
    if not case.says("detail:stepped") or "load.current" not in case:
        return None
    wanted = say.quantity(float(case.get("load.voltage") or case["bank.voltage"]), "V")
    running, inrush = (say.amps(float(case[fact])) for fact in ("load.current", "load.peak"))
    name = supply.load_name(case)
    return (
        f"No: a converter would itself have to give {name} {running} running and {inrush} in the first instant; give "
        f"{name} a {wanted} battery."
    )


def of_one_battery(case: Case) -> str | None:
    """The same for one battery of other volts, which no other makes up to those of the load."""
    each, wanted = case.said("battery.nominal") or case.said("charger.input_voltage"), case.get("load.voltage")
    if not each or not wanted or each == wanted or {"battery.count", "bank.layout"} & set(case.stated):
        return None
    return through_a_converter(case)


def by_its_cranking_amps(case: Case, verdict: str, head: str) -> str:
    """Whether it matters that a battery is rated in cranking amps, where that is asked: by what they are as CCA."""
    rated = case.said("battery.ca")
    if rated is None or "battery.cca" in case.stated or not MATTERS.search(case.text):
        return head
    told = (head.partition(": ")[2] or head).replace(supply.bank_name(case), "it", 1)
    opens = "No" if verdict == "yes" else "Yes, it matters"
    cca = say.cca(float(case["battery.cca"]))
    return f"{opens}: {say.amps(float(rated))} at 0 °C (MCA) are {cca}; {told[0].lower()}{told[1:]}"


def tested_on_board(case: Case) -> str:
    """How to find out without a label."""
    floor = say.volts(9.6 * float(case["bank.voltage"]) / 12)
    case.step(f"A lead battery in order holds {floor} in a load test at 21 °C", "load-test")
    return (
        f"You can test it on board: run {supply.load_name(case)} for 5 seconds with a meter on the battery posts; "
        f"under {floor} the battery is too weak or too small."
    )


def by_its_reading(case: Case) -> str:
    """The headline on volts that are told of a battery without a label; "" where none are."""
    read = case.said("reading.load_voltage")
    if read is None:
        return ""
    scale, name = float(case["bank.voltage"]) / 12, supply.load_name(case)
    told, floor = say.volts(float(read)), say.volts(9.6 * scale)
    if float(read) < 9.6 * scale:
        return f"Not likely: a lead battery in order holds {floor} while {name} runs, and yours drops to {told}."
    if float(read) >= readings.limit("test-charged") * scale:  # nothing draws on it
        return f"We can't say yet: {told} is a battery at rest; now read it while {name} runs, and look for {floor}."
    return f"We can't say yet: {told} while {name} runs is a good sign, but no proof without its CCA."


def itself(case: Case, battery: Ground, deciding: Ground, volts: float) -> str:
    """The headline where the cable decides: first what the battery does, as an answer before tells of the cable or
    because both of them were asked about."""
    if deciding.fact != "cable" or battery.verdict == "no":
        return ""
    if not CIRCUIT.intersection(case.beside[:1]):
        return f"No: the battery would do, but {deciding.why}." if (battery.verdict, deciding.verdict) == DOES else ""
    does = "holds" if battery.verdict == "yes" else "only just holds"
    return f"The battery itself {does} it, at about {say.volts(volts)} in the first instant; but {deciding.why}."


def over_the_run(case: Case, headline: str) -> str:
    """The sentence with the cable for the length that was told, where no answer of its own tells it."""
    if case.said("cable.length") is None or circuit.has_cable(case) or CIRCUIT.intersection(case.beside):
        return headline
    fit = fitting.to_fit(case, float(case["load.current"]))
    if fit.count != 1 or not supply.is_motor(case):
        return headline
    run = say.length(float(case["cable.length"]), circuit.in_feet(case)).partition(" (")[0]
    if asked := fitting.by_the_catalogue(case):
        asked.told(case)
    whole = (
        f"{headline.removesuffix('.')}; {run} of cable wants {fit.named(fitting.us_first(case)).partition(' (')[0]}."
    )
    return whole if len(whole.replace(say.NB, " ").split()) <= LONGEST else headline


def by_its_size(case: Case, need: float) -> str:
    """The headline before the CCA is told, where the case size tells what is usual; "" where it does not."""
    usual = supply.usual(case, "cca_low", "cca_high", "CCA")
    if not usual or float(case.get("bank.in_parallel", 1)) > 1:  # of several it is the sum that counts
        return ""
    row = reference.row("typical_cases", group=str(case["battery.group"]).upper())
    high = float(row["cca_high"].value)
    rating = say.cca(math.ceil(need - 1e-6))
    sure = "Hardly" if high < need else "We can't say yet"  # a usual range is no proof of theirs
    return f"{sure}: {usual}, and {supply.load_name(case)} needs {rating}; the label decides."


def on_paper(case: Case, head: str) -> str:
    """The headline where the battery is enough by its label, and the motor is said to be weak all the same."""
    case.because(
        "Charge it full, then two measurements while it runs tell battery, cable and motor apart: the volts on the "
        "battery posts, and those at the motor's own terminals",
        readings.cite("cable-share"),
    )
    return f"Enough on paper: {head.partition(': ')[2].removesuffix('.')}, so the weakness has another cause."


def reached(case: Case, at_load: float | None, scale: float) -> str:
    """The headline where they ask what volts the load itself gets, and those are enough; else nothing."""
    if at_load is None or not case.says("role:at_load"):
        return ""
    wanted = say.volts(limit("motor-yes") * scale)
    there = f"about {say.volts(cranking.rounded(at_load))} reach {supply.load_name(case)} in the first instant"
    return f"Yes: {there}, and {wanted} is enough."


def measured(case: Case, head: str, volts: float) -> str:
    """The headline, with a reading under load before it that is lower than the rating promises."""
    read = case.said("reading.load_voltage")
    if read is None or float(read) >= volts - SPREAD:
        return head
    case.step(f"{say.volts(float(read))} was measured: what is measured counts more than a label", "test-under-load")
    return f"By its label yes, but {say.volts(float(read))} was measured, and that counts: {head.partition(': ')[2]}"


def off_the_house(case: Case) -> str:
    """The headline where a thruster is to run from the house bank and nothing tells its amps; "" else."""
    if case.said("load.kind") != "thruster" or not house_bank.feeds(case.text):
        return ""
    over = f" over {say.length(float(case['cable.length']))}" if "cable.length" in case.stated else ""
    return (
        f"It can, if the house bank and a thick cable{over} carry its amps, which decide: please tell us those or the "
        "model."
    )


def on_other_volts(case: Case) -> str:
    """The headline for a motor that is to be put on other volts than it is made for, by the catalogue or as told; ""
    else."""
    made_for, volts = case.get("load.voltage"), more_volts.put_on(case.text)
    if "load.model" not in case.stated and (apart := motor_volts.apart(case.text)):
        volts, made_for = apart
        if volts < made_for:
            return too_few(case, volts, made_for)
    elif not made_for or "load.model" not in case.stated or volts is None or volts <= float(made_for):
        return ""
    assert volts is not None
    ours, theirs = say.quantity(float(made_for), "V"), say.quantity(volts, "V")
    case.because("Twice the volts drive about twice the amps through a motor, and burn it out", "electric-power")
    return f"No: {supply.load_name(case)} is made for {ours} and must not be put on {theirs}."


def too_few(case: Case, volts: float, made_for: float) -> str:
    """The headline for a motor on fewer volts than it is made for."""
    ours, theirs = say.quantity(made_for, "V"), say.quantity(volts, "V")
    case.because("Fewer volts drive fewer amps through a motor, so its power is missing", "electric-power")
    return f"No: {supply.load_name(case)} is made for {ours} and does not run on {theirs}."


def by_its_own(case: Case) -> str:
    """The headline where it is asked if its own battery cures an engine that will not start; "" else."""
    if not own_battery.would_cure(case.text) or "load.current" not in case:
        return ""
    need = say.cca(math.ceil(cranking.required_cca(case, float(case["load.peak"])) - 1e-6))
    case.because("On one battery every minute of thruster is missing when the engine is to start", "start-battery")
    return (
        f"Yes: its own battery leaves the engine's for starting; {supply.load_name(case)} wants {need}, and the Ah "
        "follow from its minutes between charges."
    )
