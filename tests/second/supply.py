"""Thruster supply, by the contract's text: will it run, how big, how long."""

from __future__ import annotations

import math

from service.house import load
from tests.second import tables
from tests.second.tables import Facts, line, of_kind

GRADES = ("yes", "marginal", "needs-facts", "no")


def worst(*grades: str) -> str:
    return max(grades, key=GRADES.index)


def currents(facts: Facts) -> tuple[float, float]:
    """Running amps and the first instant's: stated, else the house model's, else from power."""
    model = load().model(facts["load.model"]) if "load.model" in facts else None
    running, peak = facts.get("load.current"), facts.get("load.peak")
    if running is None and peak is not None:
        return peak / 1.5, peak
    if running is None and model is not None:
        return model.running, peak or model.inrush
    if running is None:
        efficiency = 0.85 if facts.get("power.unit") == "hp" else 1
        running = facts["load.power"] / (tables.volts(facts) * efficiency)
    return running, peak or 1.5 * running


def rest(facts: Facts) -> float:
    """Volts at the start of one 12 V battery: as measured or as charged, at most 12.8; else 12.6."""
    if "reading.voltage" in facts:
        return min(facts["reading.voltage"] / tables.in_series(facts), 12.8)
    if "battery.charge" in facts:
        chart = tables.TABLES["rest"].get(tables.kind(facts), tables.TABLES["rest"]["flooded"])
        return min(line(facts["battery.charge"], tables.CHARGES, chart), 12.8)
    return 12.6


def cold_cranking(facts: Facts) -> float | None:
    """CCA of one battery; from CA at 0 C by 1.25."""
    if "battery.cca" in facts:
        return facts["battery.cca"]
    return facts["battery.ca"] / 1.25 if "battery.ca" in facts else None


def resistance(cca: float, celsius: float) -> float:
    """Ohms of a battery that just passes the load test: 6.0 / CCA at 21 C."""
    return 2 * (12.6 - tables.lowest_passing(celsius)) / cca


def volts_grade(volts: float, good: float, fair: float) -> str:
    return "yes" if volts >= good else "marginal" if volts >= fair else "no"


def run_check(facts: Facts) -> dict:
    running, peak = currents(facts)
    figures = {"inrush_current": peak, "running_current": running}
    if "unlike volts" in facts:
        return {"verdict": "no", "figures": figures}
    return run_lithium(facts, figures) if tables.lithium(facts) else run_lead(facts, figures)


def run_lead(facts: Facts, figures: dict) -> dict:
    peak, cca = figures["inrush_current"], cold_cranking(facts)
    house = load().model(facts["load.model"]).cca if "load.model" in facts else 0
    resistance_warm = resistance(1, facts.get("ambient.temperature", 21))
    figures["required_cca"] = max(peak * resistance_warm / 3.6, house)
    if cca is None:
        return {"verdict": "no" if facts.get("battery.duty") == "deep-cycle" else "needs-facts", "figures": figures}
    one = rest(facts) - peak * resistance_warm / cca / tables.in_parallel(facts)
    if one > 0:
        figures["terminal_voltage_at_inrush"] = one * tables.in_series(facts)
    verdict = volts_grade(round(one, 1), 9.0, 8.5)
    if cca * tables.in_parallel(facts) < house:
        verdict = "no"
    verdict = worst(verdict, charged_grade(facts))
    if "cable.length" in facts:
        verdict = worst(verdict, cable_grade(facts, figures, one))
    return {"verdict": verdict, "figures": figures}


def charged_grade(facts: Facts) -> str:
    """Below 12.4 V at rest: charge first, at most marginal; below half: no."""
    if "reading.voltage" not in facts and "battery.charge" not in facts:
        return "yes"
    volts = rest(facts)
    charge = facts.get("battery.charge", tables.resting_charge(tables.kind(facts), volts))
    return "no" if charge < 50 else "marginal" if volts < 12.4 else "yes"


def cable_grade(facts: Facts, figures: dict, one: float) -> str:
    series, length, mils = tables.in_series(facts), facts["cable.length"], tables.circular_mils(facts)
    at_load = one - tables.drop(figures["inrush_current"], length, mils) / series
    figures["voltage_at_load"] = at_load * series
    lost = tables.drop(figures["running_current"], length, mils) / (12 * series)
    if lost > 0.10 or tables.ampacity(facts) < figures["running_current"]:
        return "no"
    return volts_grade(round(at_load, 1), 8.0, 7.0)


def run_lithium(facts: Facts, figures: dict) -> dict:
    running, peak, together = figures["running_current"], figures["inrush_current"], tables.in_parallel(facts)
    celsius = facts.get("ambient.temperature", 21)
    told = "battery.max_current" in facts
    limit = facts.get("battery.max_current", facts.get("battery.capacity", 0)) * together * (0.5 if celsius < 0 else 1)
    figures["limit_current"] = limit

    def within(amps: float, most: float) -> str:
        if together == 1:
            return "yes" if amps <= most else "no"
        return "yes" if amps <= 0.8 * most else "marginal" if amps <= most else "no"

    if celsius < -20:
        return {"verdict": "no", "figures": {}}
    if not told:
        start = within(peak, 0.5 * limit)
        verdict = "no" if running > 1.5 * limit else "needs-facts" if start == "no" else start
        return {"verdict": verdict, "figures": figures}
    start = within(peak, limit)
    if start != "yes" and "battery.peak_current" in facts:
        start = min(start, within(peak, facts["battery.peak_current"] * together), key=GRADES.index)
    elif start == "no":
        start = "needs-facts"
    return {"verdict": worst(within(running, limit), start), "figures": figures}


def hours(capacity: float, amps: float, facts: Facts) -> float:
    """Peukert in the C20 form, never longer than C20 / I."""
    plain = capacity / amps
    return min(20 * (capacity / (20 * amps)) ** of_kind(facts)["peukert"], plain) if amps >= capacity / 20 else plain


def in_the_cold(facts: Facts) -> float:
    celsius, cold = facts.get("ambient.temperature", 25), tables.TABLES["cold"]
    if celsius >= 10:
        return 1
    if tables.lithium(facts):
        return line(celsius, cold["lithium_celsius"], cold["lithium_percent"]) / 100
    return 1 / line(celsius, cold["celsius"], cold["factor"])


def run_time(facts: Facts) -> dict:
    amps = currents(facts)[0]
    capacity = tables.bank_capacity(facts)
    limit = facts.get("battery.max_current", facts["battery.capacity"]) * tables.in_parallel(facts)
    if tables.lithium(facts) and amps > limit:
        return {"verdict": "no", "figures": {}}
    whole = hours(capacity * in_the_cold(facts), amps, facts) * 60
    gone = 1 - facts.get("battery.charge", 100) / 100
    usable = whole * max(of_kind(facts)["usable"] - gone, 0)
    figures = {"time_to_usable_limit": usable}
    if not gone:
        figures["time_to_empty"] = whole
    verdict = "information"
    if "load.burst" in facts:
        figures["burst_count"] = math.floor(usable * 60 / facts["load.burst"])
        if "load.bursts" in facts:
            verdict = "yes" if figures["burst_count"] >= facts["load.bursts"] else "no"
    elif "load.time" in facts:
        verdict = "yes" if usable * 60 >= facts["load.time"] else "no"
    return {"verdict": verdict, "figures": figures}


def bank_size(facts: Facts) -> dict:
    amps, peak = currents(facts)
    motor = facts.get("load.kind") in ("thruster", "windlass")
    whole = facts.get("load.time", 180) / 3600 / of_kind(facts)["usable"]
    capacity = 20 * amps * (whole / 20) ** (1 / of_kind(facts)["peukert"]) if whole < 20 else amps * whole
    figures = {"required_capacity": capacity}
    if motor and tables.lithium(facts):
        figures = {
            "required_capacity": max(capacity, amps),
            "required_limit_current": amps,
            "required_peak_current": peak,
        }
    elif motor:
        figures["required_cca"] = peak * 6.0 / 3.6
    return {"verdict": "information", "figures": figures}
