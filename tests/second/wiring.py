"""Wiring and conversions, by the contract's text."""

from __future__ import annotations

from service.house import load
from tests.second import tables
from tests.second.supply import currents
from tests.second.tables import FEET, KINDS, TABLES, Facts

MOTORS = ("thruster", "windlass", "winch")
CABLE, METRIC, FUSES = TABLES["cable"], TABLES["metric"], TABLES["fuses"]["amps"]


def limit(facts: Facts) -> float:
    """Share of the volts that may be lost: 10 % for motors, 3 % for the rest."""
    return 0.10 if facts.get("load.kind") in MOTORS or "load.model" in facts else 0.03


def mils_for(facts: Facts, amps: float, share: float) -> float:
    return 10.75 * amps * 2 * facts["cable.length"] * FEET / (share * tables.volts(facts))


def first(row: list, sizes: list, least: float) -> object:
    """The first name whose size is enough, else None."""
    return next((name for name, size in zip(row, sizes, strict=True) if size >= least - 1e-9), None)


def cable_size(facts: Facts) -> dict:
    amps = currents(facts)[0]
    engine = facts.get("cable.in_engine_space")
    carried = CABLE["engine" if engine else "amps105"]
    if "cable.gauge" in facts:
        return {"verdict": cable_verdict(facts, amps), "figures": {}}
    metric = [size * 1973.5 for size in METRIC["mm2"]]
    metric_amps = [size * (0.85 if engine else 1) for size in METRIC["amps105"]]
    figures: dict = {"gauge_for_ampacity": first(CABLE["gauge"], carried, amps)}
    for share, name in ((0.03, "3"), (0.10, "10")):
        figures[f"gauge_at_{name}_percent"] = first(CABLE["gauge"], CABLE["mils"], mils_for(facts, amps, share))
        figures[f"area_at_{name}_percent"] = first(METRIC["mm2"], metric, mils_for(facts, amps, share))
    wanted = mils_for(facts, amps, limit(facts))
    figures["gauge"] = both(CABLE["gauge"], CABLE["mils"], carried, wanted, amps)
    figures["area"] = both(METRIC["mm2"], metric, metric_amps, wanted, amps)
    figures = {name: value for name, value in figures.items() if value is not None}
    if "gauge" not in figures:
        one_will_do = figures.pop("area", None)  # 120 mm2: the text leaves open whether two gauges are named instead
        figures |= {} if one_will_do else together(carried, metric_amps, wanted, amps)
    return {"verdict": "information", "figures": figures}


def metric_of(count: int, amps: float, wanted: float, carried: list) -> object:
    """The metric cable of so many per pole: 50 mm2 or more each."""
    sizes = [(mm2, most) for mm2, most in zip(METRIC["mm2"], carried, strict=True) if mm2 >= 50]
    return next(mm2 for mm2, most in sizes if count * mm2 * 1973.5 >= wanted and count * 0.6 * most >= amps)


def both(names: list, mils: list, carried: list, wanted: float, amps: float) -> object:
    sizes = zip(names, mils, carried, strict=True)
    return next((name for name, size, most in sizes if size >= wanted - 1e-9 and most >= amps - 1e-9), None)


def together(carried: list, metric_amps: list, wanted: float, amps: float) -> dict:
    """Equal conductors per pole where one 4/0 is not enough: each 1/0 or more, ampacity x 0.6 each."""
    start = CABLE["gauge"].index("1/0")
    for count in range(2, 9):
        for place in range(start, len(CABLE["gauge"])):
            if count * CABLE["mils"][place] >= wanted and count * 0.6 * carried[place] >= amps:
                area = metric_of(count, amps, wanted, metric_amps)
                return {"gauge": CABLE["gauge"][place], "area": area, "conductors_per_pole": count}
    return {}


def cable_verdict(facts: Facts, amps: float) -> str:
    """Of a cable they have: within the limits at 75 C, at 105 C only (then the print on it decides), or neither."""
    lost = tables.drop(amps, facts["cable.length"], tables.circular_mils(facts)) / tables.volts(facts)
    if lost > limit(facts) or tables.ampacity(facts) < amps:
        return "no"
    return "yes" if tables.ampacity(facts, 75) >= amps or "cable.insulation" in facts else "needs-facts"


def voltage_drop(facts: Facts) -> dict:
    amps = currents(facts)[0]
    lost = tables.drop(amps, facts["cable.length"], tables.circular_mils(facts))
    share = lost / tables.volts(facts)
    fine = share <= limit(facts) and tables.ampacity(facts) >= amps
    return {
        "verdict": ("yes", "information") if fine else "no",
        "figures": {"drop": lost, "drop_percent": 100 * share},
    }


def fuse_size(facts: Facts) -> dict:
    amps = currents(facts)[0]
    rating = next(item for item in FUSES if item >= 1.25 * amps - 1e-9)
    figures = {"fuse_rating": rating}
    if "cable.gauge" not in facts and "cable.area" not in facts:
        return {"verdict": "information", "figures": figures}
    carried = tables.ampacity(facts)
    high = max(item for item in FUSES if item <= 1.5 * carried)
    if "load.model" in facts and load().model(facts["load.model"]).fuse <= high:  # the house names it
        figures["fuse_rating"] = load().model(facts["load.model"]).fuse
    figures["fuse_rating_high"] = high
    fuse = facts.get("fuse.rating")
    if carried < amps or rating > high:
        return {"verdict": "no", "figures": figures}
    if fuse is None:
        return {"verdict": "information", "figures": figures}
    top = next(item for item in FUSES if item >= carried)
    verdict = "yes" if rating <= fuse <= top else "marginal" if rating <= fuse <= high else "no"
    return {"verdict": verdict, "figures": figures}


def bank_wiring(facts: Facts) -> dict:
    if "unlike" in facts:
        grade = {"kind": "no", "alike": "yes"}.get(facts["unlike"])
        return {"verdict": grade or ("no" if facts["bank.layout"] == "series" else "marginal"), "figures": {}}
    count, nominal = facts["battery.count"], facts.get("battery.nominal", 12)
    series = count if facts["bank.layout"] == "series" else 1
    parallel = count // series
    figures = {"bank_voltage": nominal * series}
    if "battery.capacity" in facts:
        one = nominal * (12.8 / 12 if tables.lithium(facts) else 1)
        figures["bank_capacity"] = facts["battery.capacity"] * parallel
        figures["bank_energy"] = facts["battery.capacity"] * count * one
    if "battery.cca" in facts:
        figures["bank_cca"] = facts["battery.cca"] * parallel
    return {"verdict": "information", "figures": figures}


def rating_convert(facts: Facts) -> dict:
    figures: dict = {}
    exponent = KINDS[tables.kind(facts)]["peukert"]
    wanted = facts["wanted"]
    if wanted == "capacity":
        figures = {"capacity": 500 * (facts["battery.reserve"] / 1200) ** (1 / exponent)}
    elif wanted == "reserve":
        figures = {"reserve": 1200 * (facts["battery.capacity"] / 500) ** exponent}
    elif wanted == "cca":
        figures = {"cca": facts["battery.ca"] / 1.25}
    elif wanted == "ca":
        figures = {"ca": facts["battery.cca"] * 1.25}
    elif wanted == "current":
        figures = {"current": facts["load.power"] / tables.volts(facts)}
    elif wanted == "area":
        figures = {"area": CABLE["mm2"][CABLE["gauge"].index(facts["cable.gauge"])]}
    elif wanted == "energy":
        figures = {"energy": facts["battery.capacity"] * (12.8 if tables.lithium(facts) else 12)}
    return {"verdict": "information", "figures": figures}
