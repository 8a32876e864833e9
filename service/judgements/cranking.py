"""Whether a lead bank holds its volts in the first instant: at its posts, and at the motor where the cable is known."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from service import reference, say
from service.calculators import cable, sag
from service.case import Case
from service.judgements import ice_first, supply
from service.judgements.circuit import PROPOSED, is_proposed
from service.reply import strictness
from service.rules.battery import lowest_at
from service.rules.cable import MOTOR_LIMIT, TABLE_5, K, area_cite
from service.rules.load import cca_of_the_model


@dataclass(frozen=True, slots=True)
class Ground:
    """One condition: its verdict and the reason in words, as the headline gives it."""

    verdict: str
    why: str
    fact: str = ""  # what it hangs on


def limit(name: str) -> float:
    """A limit of the table of ratings."""
    return float(reference.value("ratings", name).value)


def rounded(volts: float) -> float:
    """To 0.1 V, as the limits are judged; halves go up."""
    return math.floor(volts * 10 + 0.5 + 1e-9) / 10


def graded(volts: float, yes: float, marginal: float) -> str:
    """yes, marginal or no by two limits, after rounding."""
    shown = rounded(volts)
    return "yes" if shown >= yes - 1e-9 else "marginal" if shown >= marginal - 1e-9 else "no"


def strictest(grounds: list[Ground]) -> Ground:
    """The first of the worst."""
    return max(grounds, key=lambda ground: strictness(ground.verdict))


def required_cca(case: Case, inrush: float) -> float:
    """CCA of the bank for a clear yes at that temperature; the house's own demand where that is more."""
    lowest = lowest_at(case.said("ambient.temperature"))
    full, least = limit("full"), limit("battery-yes")
    need = sag.required_cca(inrush, full, lowest.value, least)
    case.step(
        f"CCA for a clear yes: {say.amps(inrush)} x {say.number(2 * (full - lowest.value), 1)} / "
        f"{say.number(full - least, 1)} = {say.number(math.ceil(need - 1e-6))}",
        lowest.cite,
        "load-test-resistance",
    )
    return max(need, demanded(case))


def demanded(case: Case) -> float:
    """The CCA that the load itself asks for: as told, and of a model of the house's at least what that asks for."""
    told = float(case.get("load.cca", 0.0))
    model = case.get("load.model")
    own = cca_of_the_model(case.house, str(model)) if model and case.house else None
    return max(told, float(own or 0.0))


def cca_through_the_cable(case: Case, inrush: float) -> float:
    """CCA of the bank that also leaves the motor its volts behind the cable, from the battery's own charge; 0 where the
    cable is not known, or takes so much that no battery would do."""
    if "cable.cmil" not in case or case.said("cable.length") is None:
        return 0.0
    lost = cable.drop(inrush, float(case["cable.length"]), float(case["cable.cmil"]), k=float(K.value))
    least = max(limit("battery-yes"), limit("motor-yes") + lost * 12 / float(case["bank.voltage"]))
    start, lowest = float(case.get("battery.start_voltage", limit("full"))), lowest_at(case.said("ambient.temperature"))
    if least >= start:
        return 0.0
    return sag.required_cca(inrush, start, lowest.value - limit("full") + start, least)


def terminal_voltage(case: Case, inrush: float) -> float:
    """Volts at the posts of each 12 V in the first instant."""
    lowest = lowest_at(case.said("ambient.temperature"))
    start, parallel = float(case["battery.start_voltage"]), int(case["bank.in_parallel"])
    ohms = sag.resistance(float(case["battery.cca"]), limit("full"), lowest.value)
    volts = sag.terminal_voltage(start, inrush, ohms, parallel)
    shown, rating = say.number(2 * (limit("full") - lowest.value), 1), say.number(case["battery.cca"])
    inner, series = say.quantity(ohms * 1000, "mohm"), int(case.get("bank.in_series", 1))
    among = f" / {parallel} in parallel" if parallel > 1 else ""
    end = (
        f"{say.volts(volts, 2)}; x {series} in series: {say.volts(volts * series)}" if series > 1 else say.volts(volts)
    )
    case.step(
        f"Inner resistance at worst {shown} / {rating} = {inner}; {say.volts(start)} - {say.amps(inrush)} x "
        f"{inner}{among} = {end}",
        lowest.cite,
        "load-test-resistance",
    )
    return volts


def voltage_at_load(case: Case, volts: float, inrush: float) -> float | None:
    """Volts of the whole bank that reach the motor in the first instant, None where the cable is not known."""
    if "cable.cmil" not in case or case.said("cable.length") is None:
        return None
    lost = cable.drop(inrush, float(case["cable.length"]), float(case["cable.cmil"]), k=float(K.value))
    case.step(f"The cable takes {say.volts(lost, 2)} of it in the first instant", K.cite, area_cite(case))
    return volts * float(case["bank.voltage"]) / 12 - lost


def cable_grounds(case: Case, running: float, at_load: float | None) -> list[Ground]:
    """What the cable says: its loss at running current, what it may carry, the volts at the motor."""
    size = next((fact for fact in ("cable.gauge", "cable.area") if fact in case.stated), None)
    if size is None:
        return []
    name = f"the {say.fact(size, case[size])} cable{f' {PROPOSED}' if is_proposed(case) else ''}"
    found = (
        [carried(case, name, running)]
        if at_load is None
        else [lost(case, name, running), carried(case, name, running), at_the_motor(case, at_load, name)]
    )
    return [ground for ground in found if ground]


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


def plot(case: Case, inrush: float, volts: float, scale: float) -> dict[str, Any]:
    """Volts at the battery against amps, with the two limits."""
    lowest = lowest_at(case.said("ambient.temperature"))
    ohms = sag.resistance(float(case["battery.cca"]), limit("full"), lowest.value)
    start, parallel = float(case["battery.start_voltage"]), int(case["bank.in_parallel"])
    drawn = [inrush * share / 10 for share in range(0, 13, 2)]
    points = [[amps, sag.terminal_voltage(start, amps, ohms, parallel) * scale] for amps in drawn]
    return {
        "kind": "line",
        "title": "Volts at the battery against the current drawn",
        "x": {"label": "current", "unit": "A"},
        "y": {"label": "at the battery", "unit": "V"},
        "series": [{"label": supply.bank_name(case).removeprefix("your "), "points": points}],
        "limits": [
            {"label": "clear yes", "value": limit("battery-yes") * scale},
            {"label": "just enough", "value": limit("battery-marginal") * scale},
        ],
        "mark": {"label": "first instant", "x": inrush, "y": volts * scale},
    }


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
