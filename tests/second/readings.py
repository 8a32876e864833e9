"""Readings, by the contract's text: rest and load volts, hydrometer, drain, age, frost, cranking in the cold."""

from __future__ import annotations

from tests.second import tables
from tests.second.supply import cold_cranking, resistance
from tests.second.tables import CHARGES, KINDS, TABLES, Facts, line


def charge_grade(charge: float, good: float = 75, fair: float = 50) -> str:
    return "yes" if charge >= good else "marginal" if charge >= fair else "no"


def system(reading: float) -> float | None:
    """The system a reading belongs to, where it is not said."""
    spans = ((10.5, 14.9, 12), (21, 29.8, 24), (31.5, 37.9, 36), (44.8, 59, 48))
    return next((volts for low, high, volts in spans if low <= reading <= high), None)


def rest_voltage(facts: Facts) -> dict:
    reading = facts["reading.voltage"]
    volts = facts.get("bank.voltage") or system(reading)
    if volts is None:
        return {"verdict": "needs-facts", "figures": {}}
    one = reading / (volts / 12)
    lithium = tables.lithium(facts)
    full = 13.75 if lithium else TABLES["rest"].get(tables.kind(facts), TABLES["rest"]["flooded"])[-1]
    if one > full + (0 if lithium else KINDS[tables.kind(facts)]["over_full"]) + 1e-9:
        return {"verdict": "information", "figures": {}}
    charge = tables.resting_charge(tables.kind(facts), one)
    if one < (10.0 if lithium else 10.5):
        return {"verdict": "no", "figures": {}}
    verdict = charge_grade(charge, 40, 20) if lithium else charge_grade(charge)
    figures = {"state_of_charge": charge, "voltage_per_battery": one * min(volts, 12) / 12}
    return {"verdict": verdict, "figures": figures}


def load_voltage(facts: Facts) -> dict:
    series = tables.in_series(facts)
    before, under = facts["reading.voltage"], facts["reading.load_voltage"]
    figures = {"sag": before - under}
    amps, cca = facts.get("reading.current"), cold_cranking(facts)
    if amps:
        figures["internal_resistance"] = (before - under) / amps * 1000
    if tables.lithium(facts):
        lowest = 12.0
        grade = "yes" if under / series >= 12.0 else "marginal" if under / series >= 11.5 else "no"
        return {"verdict": grade, "figures": figures | {"lowest_acceptable_voltage": lowest * series}}
    celsius = facts.get("ambient.temperature", 21)
    if amps and cca:
        lowest = max(min(before / series, 12.8) - amps * resistance(cca, celsius), 9.0)
        if 0.45 <= amps / cca <= 0.55:
            lowest = tables.lowest_passing(celsius)
    else:
        lowest = 9.6
    figures["lowest_acceptable_voltage"] = lowest * series
    fine = "yes" if amps and cca else "needs-facts"
    return {"verdict": fine if under >= lowest * series - 1e-9 else "no", "figures": figures}


def specific_gravity(facts: Facts) -> dict:
    fahrenheit = facts.get("ambient.temperature", 80 / 1.8 - 32 / 1.8) * 1.8 + 32
    corrected = facts["reading.gravity"] + 0.004 * (fahrenheit - 80) / 10
    charge = line(corrected, TABLES["gravity"]["values"], TABLES["gravity"]["charge"])
    verdict = "no" if facts.get("reading.gravity_spread", 0) >= 0.050 - 1e-9 else charge_grade(charge)
    return {"verdict": verdict, "figures": {"corrected_gravity": corrected, "state_of_charge": charge}}


def standing_drain(facts: Facts) -> dict:
    capacity, amps = tables.bank_capacity(facts), facts["drain.current"]
    days = (facts.get("battery.charge", 100) - 50) / 100 * capacity / amps / 24
    return {"verdict": "information", "figures": {"days_to_half": days, "daily_loss": amps * 24}}


def replacement(facts: Facts) -> dict:
    low, high = KINDS[tables.kind(facts)]["life"]
    age = facts["battery.age"]
    return {"verdict": "yes" if age < low else "marginal" if age <= high else "no", "figures": {}}


def freeze_point(facts: Facts) -> dict:
    if "reading.gravity" in facts:
        point = line(facts["reading.gravity"], TABLES["freezing"]["gravity"], TABLES["freezing"]["by_gravity"])
    else:
        charge = facts.get("battery.charge")
        if charge is None:
            charge = tables.resting_charge(tables.kind(facts), facts["reading.voltage"])
        point = line(charge, CHARGES, TABLES["freezing"]["by_charge"])
    verdict = "information"
    if "ambient.temperature" in facts:
        above = facts["ambient.temperature"] - point
        verdict = "no" if above <= 0 else "marginal" if above <= 5 else "yes"
    return {"verdict": verdict, "figures": {"freezing_temperature": point}}


def cold_cranking_power(facts: Facts) -> dict:
    celsius = facts["ambient.temperature"]
    figures = {"share_of_warm_power": line(celsius, TABLES["cranking"]["celsius"], TABLES["cranking"]["percent"])}
    cca = cold_cranking(facts)
    if cca:
        figures["cranking_current"] = cca * (1.25 if celsius > 0 else 1 + 0.25 * (celsius + 18) / 18)
    return {"verdict": "information", "figures": figures}
