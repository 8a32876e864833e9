"""Whether a lead bank holds its volts in the first instant: at its posts, and at the motor where the cable is known."""

from __future__ import annotations

import math
from typing import Any

from service import chart, reference, say
from service.calculators import cable, sag
from service.case import Case
from service.judgements import supply
from service.rules.battery import lowest_at
from service.rules.cable import K, area_cite
from service.rules.load import cca_of_the_model


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


def plot(case: Case, inrush: float, volts: float, scale: float) -> dict[str, Any]:
    """Volts at the battery against amps, with the two limits."""
    lowest = lowest_at(case.said("ambient.temperature"))
    ohms = sag.resistance(float(case["battery.cca"]), limit("full"), lowest.value)
    start, parallel = float(case["battery.start_voltage"]), int(case["bank.in_parallel"])
    drawn = [inrush * share / 10 for share in range(0, 13, 2)]
    points = [[amps, sag.terminal_voltage(start, amps, ohms, parallel) * scale] for amps in drawn]
    return chart.chart(
        "line",
        "Volts at the battery against the current drawn",
        ("current", "A"),
        ("at the battery", "V"),
        [(supply.bank_name(case).removeprefix("your "), points)],
        [("clear yes", limit("battery-yes") * scale), ("just enough", limit("battery-marginal") * scale)],
        ("first instant", inrush, volts * scale),
    )
