"""Charging and care, by the contract's text."""

from __future__ import annotations

from tests.second import tables
from tests.second.tables import KINDS, TABLES, Facts, of_kind

MONTH = 30.4  # days


def charger_size(facts: Facts) -> dict:
    capacity = tables.bank_capacity(facts)
    low, high = (share * capacity for share in of_kind(facts)["charge"])
    figures = {"charger_current_low": low, "charger_current_high": high}
    verdict, amps = "information", facts.get("charger.current")
    if tables.lithium(facts) and facts.get("ambient.temperature", 21) <= 0:
        return {"verdict": "no", "figures": {}}
    if amps is not None:
        strict = tables.kind(facts) in ("gel", "lfp")
        over = "no" if strict or amps > 1.5 * high else "marginal"
        verdict = over if amps > high * (1 if strict else 1.05) else "yes" if amps >= 0.95 * low else "marginal"
    return {"verdict": verdict, "figures": figures}


def charge_time(facts: Facts) -> dict:
    capacity = tables.bank_capacity(facts)
    missing = 1 - facts["battery.charge"] / 100 if "battery.charge" in facts else of_kind(facts)["usable"]
    amps = min(facts["charger.current"], of_kind(facts)["charge"][1] * capacity)
    hours = missing * capacity * of_kind(facts)["factor"] / amps + (0 if tables.lithium(facts) else 2)
    return {"verdict": "information", "figures": {"charge_time": hours}}


def charger_setting(facts: Facts) -> dict:
    numbers, mode = of_kind(facts), facts.get("charger.setting")
    figures = {
        stage + "_voltage": tuple(volts * tables.in_series(facts) for volts in numbers[stage])
        for stage in ("absorption", "float")
    }
    verdict, volts = "information", facts.get("charger.voltage")
    if "repairs" in facts:
        return {"verdict": ("yes", "marginal") if tables.kind(facts) == "flooded" else "no", "figures": {}}
    if volts:
        verdict = "yes" if volts <= numbers["absorption"][1] + 1e-9 else "no"
    elif mode == tables.kind(facts):
        verdict = "yes"
    elif mode:
        verdict = "no" if KINDS[mode]["absorption"][1] > numbers["absorption"][1] else "marginal"
    return {"verdict": verdict, "figures": figures}


def charger_banks(facts: Facts) -> dict:
    return {"verdict": "information", "figures": {"charger_outputs": facts["bank.count"]}}


def dc_dc(facts: Facts) -> dict:
    amps = facts["charger.current"]
    drawn = facts["bank.voltage"] * amps / (facts["charger.input_voltage"] * 0.90)
    verdict = "information"
    if "alternator.current" in facts:
        share = 0.5 if tables.lithium(facts) else 0.8
        verdict = "marginal" if drawn > share * facts["alternator.current"] else "yes"
    return {"verdict": verdict, "figures": {"input_current": drawn}}


def solar(facts: Facts) -> dict:
    sun = facts.get("solar.sun_hours", 1 if facts.get("winter") else 4)
    daily = facts["solar.power"] * sun * 0.75 / (13.5 * tables.in_series(facts))
    verdict, need = "information", facts.get("drain.current", 0) * 24
    if "battery.capacity" in facts:
        need += tables.bank_capacity(facts) * of_kind(facts)["loss"] / 100 / 30
    if need:
        verdict = "yes" if daily >= 1.3 * need else "marginal" if daily >= need else "no"
    return {"verdict": verdict, "figures": {"daily_charge": daily}}


def storage(facts: Facts) -> dict:
    celsius = facts.get("ambient.temperature", 20)
    daily = of_kind(facts)["loss"] / MONTH * 2 ** ((max(celsius, 0) - 20) / 10)
    if "drain.current" in facts:
        daily += facts["drain.current"] * 24 / tables.bank_capacity(facts) * 100
    start = facts.get("battery.charge", 50 if tables.lithium(facts) else 100)
    days = max(start - (20 if tables.lithium(facts) else 75), 0) / daily
    figures = {"days_to_recharge": min(days, 180), "check_interval": min(days, 90)}
    verdict, stored = "information", facts.get("storage.time")
    if stored:
        figures["state_of_charge_after"] = max(start - daily * stored, 0)
        half = not tables.lithium(facts) and figures["state_of_charge_after"] >= 50
        verdict = "yes" if stored <= days else "marginal" if half else "no"
    return {"verdict": verdict, "figures": figures}


def ventilation(facts: Facts) -> dict:
    gas = of_kind(facts)["gas"][1 if facts.get("float") else 0]
    flow = 0.05 * 6 * tables.in_series(facts) * gas * tables.bank_capacity(facts) / 1000
    return {"verdict": "information", "figures": {"airflow": flow, "opening_area": 28 * flow}}


def weight(facts: Facts) -> dict:
    half = facts["battery.weight"] * facts.get("battery.count", 1) / 2
    return {"verdict": "information", "figures": {"weight_saved": half, "weight_after": half}}


def group_size(facts: Facts) -> dict:
    names = ("length", "width", "height")
    return {
        "verdict": "information",
        "figures": dict(zip(names, TABLES["groups"][facts["battery.group"]], strict=True)),
    }
