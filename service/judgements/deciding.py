"""What decides whether a battery runs a load: each condition, its verdict and its reason; the strictest stands."""

from __future__ import annotations

import math
from dataclasses import dataclass

from service import reference, say
from service.calculators import cable
from service.case import Case
from service.judgements import ice_first, supply
from service.judgements.circuit import PROPOSED, is_proposed
from service.judgements.cranking import demanded, graded, limit, rounded
from service.reply import strictness
from service.rules.cable import MOTOR_LIMIT, TABLE_5, K

NORMS = ("EN", "DIN", "JIS")  # tests whose amps are no CCA


@dataclass(frozen=True, slots=True)
class Ground:
    """One condition: its verdict and the reason in words, as the headline gives it."""

    verdict: str
    why: str
    fact: str = ""  # what it hangs on


def deciding(grounds: list[Ground]) -> Ground:
    """The first of the strictest."""
    return max(grounds, key=lambda ground: strictness(ground.verdict))


def cable_grounds(case: Case, running: float, at_load: float | None) -> list[Ground]:
    """What the cable says: its loss at running current, what it may carry, the volts at the motor."""
    size = next((fact for fact in ("cable.gauge", "cable.area") if fact in case.stated), None)
    if size is None:
        return []
    name = cable_name(case)
    found = (
        [carried(case, name, running)] if at_load is None else [both(case, running), at_the_motor(case, at_load, name)]
    )
    return [ground for ground in found if ground]


def cable_name(case: Case) -> str:
    """The cable in words: "the 35 mm² cable"."""
    size = "cable.gauge" if "cable.gauge" in case.stated else "cable.area"
    return f"the {say.fact(size, case[size])} cable{f' {PROPOSED}' if is_proposed(case) else ''}"


def both(case: Case, running: float) -> Ground | None:
    """What it loses and what it may carry, in one reason where both are against it: the heat first."""
    name = cable_name(case)
    loses, heats = lost(case, name, running), carried(case, name, running)
    if loses is None or heats is None:
        return heats or loses
    volts = cable.drop(running, float(case["cable.length"]), float(case["cable.cmil"]), k=float(K.value))
    share = say.quantity(volts / float(case["bank.voltage"]) * 100, "%")
    most = say.quantity(float(MOTOR_LIMIT.value), "%")
    return Ground("no", f"{heats.why}; it loses {share}, and {most} is the limit", "cable")


def lost(case: Case, name: str, running: float) -> Ground | None:
    """Over 10 % at running current."""
    system, most = float(case["bank.voltage"]), float(MOTOR_LIMIT.value)
    volts = cable.drop(running, float(case["cable.length"]), float(case["cable.cmil"]), k=float(K.value))
    share = volts / system * 100
    if share <= most:
        return None
    shown, whole = say.quantity(share, "%"), say.volts(system, 0)
    case.step(f"Running, {name} loses {say.volts(volts, 2)}, {shown} of {whole}", K.cite, MOTOR_LIMIT.cite)
    limit_shown = say.quantity(most, "%")
    return Ground("no", f"{name} loses {shown} of the volts, and {limit_shown} is the limit for a motor", "cable")


def carried(case: Case, name: str, running: float) -> Ground | None:
    """Ampacity under the running current."""
    carries = case.get("cable.ampacity")
    if carries is None or carries >= running:
        return None
    amps = say.amps(running)
    case.step(f"{name} may carry {say.amps(carries)}, running takes {amps}", TABLE_5)
    return Ground("no", f"{name} may carry only {say.amps(carries)}, and {{load}} draws {amps}", "cable")


def at_the_motor(case: Case, at_load: float, name: str) -> Ground | None:
    """Under 8.0 V there in the first instant, for each 12 V."""
    scale = float(case["bank.voltage"]) / 12
    yes = limit("motor-yes")
    verdict = graded(at_load / scale, yes, limit("motor-marginal"))
    if verdict == "yes":
        return None
    shown, wanted = say.volts(rounded(at_load)), say.volts(yes * scale)
    through = f" through {name}" if is_proposed(case) else ""
    why = f"about {shown} reach {{load}} in the first instant{through}, and a clear yes needs {wanted}"
    return Ground(verdict, why, "cable")


def charge_grounds(case: Case) -> list[Ground]:
    """What its charge says: under 12.4 V just enough at most, under half full no."""
    charge, rest = case.get("battery.charge"), case.get("battery.rest_voltage")
    least = limit("start-charged")
    if charge is None:  # a reading beyond the tables: deeply flat, or still full of charging
        if rest is None:
            return []
        charge = 0.0 if rest < least else 100.0
    shown = say.fact("reading.voltage", case["reading.voltage"]) if rest else say.charge(charge)
    first = ice_first.first(case, charge)
    if charge < limit("start-half"):
        case.step(f"{shown} is about {say.charge(charge)} full, under half", "start-charge")
        return [Ground("no", f"at {shown} your battery is less than half full, so {first}", "charge")]
    start = rest if rest is not None else float(case["battery.start_voltage"])
    if round(float(start), 3) < least:
        case.step(f"{shown} is under {say.volts(least)} at rest", "start-charge")
        return [Ground("marginal", f"at {shown} your battery is not full enough to rely on: {first}", "charge")]
    return []


def other_grounds(case: Case) -> list[Ground]:
    """The engine's battery shared, and cold beyond the chart."""
    grounds = []
    if supply.shares_the_engines(case):
        case.step("The engine's start battery is kept for the engine", "start-battery")
        grounds.append(
            Ground("marginal", "{load} would run, but can leave the engine without the power to start", "shared")
        )
    coldest = min(row["temperature"].value for row in reference.rows("load_test"))
    celsius = case.said("ambient.temperature")
    if celsius is not None and celsius < coldest:
        case.step(f"The load test chart ends at {say.number(coldest)}{say.NB}°C: colder is worse", "load-test")
        grounds.append(Ground("marginal", f"below {say.number(coldest)}{say.NB}°C no chart tells what is left", "cold"))
    return grounds


def demand_is_told(case: Case) -> bool:
    """Whether a demand was told that a lead battery is held against; one of lithium goes by its limits."""
    return "load.cca" in case.stated and case.get("battery.family") != "lithium"


def demand_grounds(case: Case) -> list[Ground]:
    """Its CCA against the demand, its charge, and whose battery it is. The CCA of the bank must be known."""
    wanted, has = demanded(case), float(case["bank.cca"])
    asks = f"{{load}} asks for {say.cca(math.ceil(wanted - 1e-6))}"
    alone = float(case.get("bank.in_parallel", 1)) == 1
    ours = f"your {supply.kind_of(case)}battery has" if alone else "your batteries together have"
    ours += f" {say.cca(has)}"
    case.step(f"{say.cca(has)} against the {say.cca(wanted)} that it asks for")
    verdict = "yes" if round(has) >= wanted - 1e-6 else "no"
    return [
        Ground(verdict, f"{asks}, and {ours}", "cca"),
        *charge_grounds(case),
        *other_grounds(case),
    ]


def by_volts(case: Case, volts: float, scale: float) -> Ground:
    """What the volts at the posts say."""
    yes, least = limit("battery-yes"), limit("battery-marginal")
    verdict, shown = graded(volts, yes, least), say.volts(volts * scale)
    if verdict == "yes" and rounded(volts * scale) < yes * scale - 1e-9:
        shown = say.volts(rounded(volts) * scale)  # judged to 0.1 V for each 12 V
    case.step(f"Yes from {say.volts(yes)}, just enough from {say.volts(least)}", "motor-volts")
    jumps = float(case["load.peak"]) > float(case["load.current"])
    moment = "in the first instant" if jumps else "under that load"
    wanted, drops = say.volts(yes * scale), f"{supply.does(case, 'drop')} to about {shown} {moment}"
    if verdict == "yes":
        return Ground("yes", f"{supply.does(case, 'hold')} about {shown} {moment}, and {wanted} is enough")
    if verdict == "marginal":
        return Ground("marginal", f"{drops}, and a clear yes needs {wanted}", "cca")
    if verdict == "no":
        why = "With too few volts the motor hardly turns and its relay can let go, so the boat does not answer"
        case.because(why if jumps else "With too few volts what it feeds switches off", "motor-volts")
    if volts <= least / 2:
        peak = f"{say.amps(float(case['load.peak']))} {'of the first instant' if jumps else 'that it takes'}"
        return Ground("no", f"{supply.bank_name(case)} cannot give {{load}} the {peak}", "cca")
    return Ground("no", f"{drops}, and {{load}} needs {wanted}", "cca")


def by_house(case: Case) -> list[Ground]:
    """The house's own demand for the model."""
    wanted, has = demanded(case), float(case["bank.cca"])
    if has >= wanted:
        return []
    asks = f"{{load}} asks for {say.cca(wanted)}"
    if case.says("detail:en_rating") and float(case["battery.cca"]) == has:
        norm = next((name for name in NORMS if name.lower() in case.text.lower().split()), NORMS[0])
        return [Ground("no", f"{say.number(has)} A ({norm}) counts as {say.cca(has)} at most, and {asks}", "cca")]
    whose = (
        supply.does(case, "have") if float(case["battery.cca"]) != has else f"your {supply.kind_of(case)}battery has"
    )
    return [Ground("no", f"{asks}, and {whose} {say.cca(has)}", "cca")]


def opening(ground: Ground) -> str:
    """The headline from the ground that decides."""
    first = {"yes": "Yes", "marginal": "Just enough", "no": "No"}[ground.verdict]
    if ground.fact in ("charge", "shared", "cold") and ground.verdict == "marginal":
        first = "Only just"
    return f"{first}: {ground.why}."
