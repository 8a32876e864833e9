"""One rating or unit put into another, each with its figure and its sentence: RC to Ah, CA to CCA, AWG to mm2."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from service import reference, say
from service.calculators import convert, peukert
from service.case import Case
from service.kinds import LEAD
from service.reply import Figure
from service.rules.cable import standard

RATIO = reference.value("ratings", "ca-over-cca")
UNITS, AREAS = "unit-definitions", "astm-b258"


@dataclass(frozen=True, slots=True)
class Conversion:
    """From one fact to a figure: `targets` are the cues that ask for it; `usual` where it is made unasked."""

    fact: str
    targets: tuple[str, ...]
    make: Callable[[Case], tuple[Figure, str]]
    usual: bool = True


def whole(amp_hours: float) -> str:
    """Amp-hours without decimals from 10 on, as the figure shows them."""
    return say.quantity(amp_hours, "Ah", 0 if amp_hours >= 10 else 1)


def capacity_of_reserve(case: Case) -> tuple[Figure, str]:
    """Reserve minutes as amp-hours."""
    reserve = float(case["battery.reserve"])
    kind = str(case.get("battery.chemistry", "lead"))
    k = reference.row("peukert", chemistry=kind if kind in LEAD else "lead")["k"]
    capacity = peukert.capacity_from_reserve(reserve, k.value)
    case.step(
        f"500 x ({say.number(reserve)} min / 60 / 20 h)^(1 / {k.value}) = {say.quantity(capacity, 'Ah')}",
        k.cite,
        "reserve-capacity",
    )
    told = f"{say.quantity(reserve, 'min')} of reserve is about {whole(capacity)} at the 20-hour rate"
    said = "" if kind in LEAD[:3] else " (lead, kind not said)"
    return Figure("capacity", "capacity at the 20-hour rate", capacity, "Ah"), told + said


def reserve_of_capacity(case: Case) -> tuple[Figure, str]:
    """Amp-hours as reserve minutes."""
    capacity = float(case["battery.capacity"])
    kind = str(case.get("battery.chemistry", "lead"))
    k = reference.row("peukert", chemistry=kind if kind in LEAD else "lead")["k"]
    minutes = peukert.run_time(capacity, 25.0, k.value) * 60
    case.step(
        f"20 h x ({say.amp_hours(capacity)} / 500)^{k.value} = {say.number(minutes)} min at 25 A",
        k.cite,
        "reserve-capacity",
    )
    return Figure("reserve", "reserve capacity", minutes, "min"), (
        f"{say.amp_hours(capacity)} is a reserve of about {say.quantity(minutes, 'min', 0)}"
    )


def volts_of_one(case: Case) -> float:
    """Nominal volts of one battery for its energy, 12.8 V for a 12 V lithium one."""
    typed = case.said("battery.nominal")
    if typed and typed % 6:
        return float(typed)  # 12.8 or 25.6 as typed
    lithium = case.get("battery.family") == "lithium"
    each = reference.value("ratings", "volts-lithium" if lithium else "volts-lead")
    return float(typed or nominal_volts(case)) / 12 * float(each.value)


def nominal_volts(case: Case) -> float:
    """The volts that amp-hours stand at: the system's where no number of batteries is named, else one battery's."""
    whole = None if "battery.count" in case.stated else case.said("bank.voltage")
    return float(whole or case.get("battery.volts", 12.0))


def energy_of_capacity(case: Case) -> tuple[Figure, str]:
    """Amp-hours as watt-hours."""
    capacity, volts = float(case["battery.capacity"]), volts_of_one(case)
    held = convert.energy(capacity, volts)
    case.step(f"{say.amp_hours(capacity)} x {say.quantity(volts, 'V')} = {say.number(held)}{say.NB}Wh", "energy-volts")
    return Figure("energy", "energy", held, "Wh"), (
        f"{say.amp_hours(capacity)} at {say.quantity(volts, 'V')} is {say.quantity(held, 'Wh', 0)}"
    )


def capacity_of_energy(case: Case) -> tuple[Figure, str]:
    """Watt-hours as amp-hours; at 12.8 V unless a lead battery is named."""
    held, kind = float(case["battery.energy"]), case.get("battery.chemistry")
    volts = float(case.said("battery.nominal") or nominal_volts(case))
    if not volts % 6:
        each = reference.value("ratings", "volts-lead" if kind in LEAD else "volts-lithium")
        volts = volts / 12 * float(each.value)
    capacity = convert.capacity_from_energy(held, volts)
    case.step(f"{say.quantity(held, 'Wh')} / {say.quantity(volts, 'V')} = {say.amp_hours(capacity)}", "energy-volts")
    return Figure("capacity", "capacity", capacity, "Ah"), (
        f"{say.quantity(held, 'Wh', 0)} at {say.quantity(volts, 'V')} is {whole(capacity)}"
    )


def cca_of_ca(case: Case) -> tuple[Figure, str]:
    """Cranking amps as CCA."""
    ca = float(case["battery.ca"])
    cca = convert.cca_from_ca(ca, RATIO.value)
    case.step(f"{say.amps(ca)} at 0 °C / 1.25 = {say.amps(cca)} at -18 °C", RATIO.cite)
    return Figure("cca", "cold cranking amps", cca, "A"), (
        f"{say.number(ca)} cranking amps (0 °C) are about {say.number(cca)}{say.NB}CCA (-18 °C)"
    )


def ca_of_cca(case: Case) -> tuple[Figure, str]:
    """CCA as cranking amps."""
    cca = float(case["battery.cca"])
    ca = convert.ca_from_cca(cca, RATIO.value)
    case.step(f"{say.amps(cca)} at -18 °C x 1.25 = {say.amps(ca)} at 0 °C", RATIO.cite)
    return Figure("ca", "cranking amps", ca, "A"), (
        f"{say.cca(cca)} (-18 °C) are about {say.number(ca)} cranking amps (0 °C)"
    )


def current_of_power(case: Case) -> tuple[Figure, str]:
    """Watts or horsepower as amps, by the rule that every topic uses."""
    one = case.supposing({}, ["load.current", "load.model", "load.peak"]) if "load.current" in case.stated else case
    amps, volts = float(one["load.current"]), float(case["bank.voltage"])
    case.trace.extend(item for item in one.trace if item not in case.trace)
    power = float(case["load.power"])
    figure, shown = Figure("current", "current", amps, "A"), say.quantity(amps, "A", 0 if amps >= 10 else None)
    if amps > convert.current(power, volts) + 1e-6:  # horsepower is what the shaft gives, not what the motor takes
        typed = re.sub(r"\bshaft\b(?! (?:hp|horse))", "at the shaft", case.stated["load.power"].text)
        return figure, f"a motor of {typed} takes about {shown} at {say.quantity(volts, 'V')}"
    return figure, f"{say.quantity(power, 'W')} at {say.quantity(volts, 'V')} is {shown}"


def power_of_current(case: Case) -> tuple[Figure, str]:
    """Amps as watts."""
    amps, volts = float(case["load.current"]), float(case["bank.voltage"])
    watts = convert.power(amps, volts)
    shown = say.quantity(watts, "W")
    case.step(f"{say.amps(amps)} x {say.quantity(volts, 'V')} = {shown}", "electric-power")
    return Figure("power", "power", watts, "W"), f"{say.amps(amps)} at {say.quantity(volts, 'V')} is {shown}"


def power_in_watts(case: Case) -> tuple[Figure, str]:
    """Horsepower as watts."""
    watts = float(case["load.power"])
    typed = case.stated["load.power"].text or say.quantity(watts, "W")
    case.step(f"1 horsepower = {say.quantity(convert.HORSEPOWER, 'W', 1)}", "horsepower")
    return Figure("power", "power", watts, "W"), f"{typed} is {say.quantity(watts, 'W')}"


def area_of_gauge(case: Case) -> tuple[Figure, str]:
    """An American size in mm2, and the metric size to buy in its place."""
    gauge = standard(str(case["cable.gauge"]))
    try:
        area = float(reference.row("wire_areas", gauge=gauge)["nominal"].value)
    except reference.UnknownValue:
        return Figure("gauge", "size", gauge, "AWG"), f"{say.gauge(gauge)} is not in our table"
    buy = next((float(row["area"].value) for row in reference.rows("metric_areas") if row["area"].value >= area), None)
    case.step(f"{say.gauge(gauge)} has {say.quantity(area, 'mm2')}", AREAS)
    metric = f"; the metric size in its place is {say.quantity(buy, 'mm2')}" if buy else ""
    if buy:
        case.step(f"The next metric size up is {say.quantity(buy, 'mm2')}", "iec-60228")
    return Figure("area", "area", area, "mm2"), f"{say.gauge(gauge)} is {say.quantity(area, 'mm2')}{metric}"


def gauge_of_area(case: Case) -> tuple[Figure, str]:
    """A metric size as the nearest American one."""
    area = float(case["cable.area"])
    known = (row for row in reference.rows("wire_areas") if row["pick"].value)
    sizes = [(str(row["gauge"].value), float(row["nominal"].value)) for row in known]
    gauge, nominal = min(sizes, key=lambda item: abs(item[1] - area))
    case.step(f"{say.gauge(gauge)} has {say.quantity(nominal, 'mm2')}", AREAS)
    thicker = next((name for name, size in sizes if size >= area), None)
    how = "a little thicker" if nominal > area else "a little thinner"
    other = f", {say.gauge(thicker)} is the next thicker" if thicker and nominal < area else ""
    return Figure("gauge", "nearest American size", gauge, "AWG"), (
        f"{say.quantity(area, 'mm2')} is nearest to {say.gauge(gauge)} ({say.quantity(nominal, 'mm2')}, {how}){other}"
    )


def typed(case: Case, fact: str, marks: tuple[str, ...]) -> bool:
    """Whether a value was typed in one of these units."""
    return any(mark in case.stated[fact].text.lower() for mark in marks)


def length_in_other(case: Case) -> tuple[Figure, str]:
    """Feet in metres, or metres in feet."""
    metres = float(case["cable.length"])
    case.step("1 ft = 0.3048 m", UNITS)
    feet = convert.feet(metres)
    if case.says("detail:to_feet") and not case.says("detail:to_metres"):
        return Figure("length", "length", feet, "ft"), f"{say.quantity(metres, 'm')} is {say.quantity(feet, 'ft')}"
    return Figure("length", "length", metres, "m"), f"{say.quantity(feet, 'ft')} is {say.quantity(metres, 'm')}"


def weight_in_other(case: Case) -> tuple[Figure, str]:
    """Pounds in kilograms, or kilograms in pounds."""
    kilograms = float(case["battery.weight"])
    case.step("1 lb = 0.45359 kg", UNITS)
    pounds = convert.pounds(kilograms)
    metric, imperial = say.quantity(kilograms, "kg"), say.quantity(pounds, "lb")
    if case.says("detail:to_lb") and not typed(case, "battery.weight", ("lb", "pound", "#")):
        return Figure("weight", "weight", pounds, "lb"), f"{metric} is {imperial}"
    return Figure("weight", "weight", kilograms, "kg"), f"{imperial} is {metric}"


def temperature_in_other(case: Case) -> tuple[Figure, str]:
    """Fahrenheit in Celsius, or Celsius in Fahrenheit."""
    celsius = float(case["ambient.temperature"])
    degrees = convert.fahrenheit(celsius)
    case.step("°F = °C x 9 / 5 + 32", UNITS)
    if case.says("detail:to_fahrenheit") and not typed(case, "ambient.temperature", ("f",)):
        return Figure("temperature", "temperature", degrees, "F"), (
            f"{say.number(celsius)}{say.NB}°C is {say.number(degrees)}{say.NB}°F"
        )
    return Figure("temperature", "temperature", celsius, "C"), (
        f"{say.number(degrees)}{say.NB}°F is {say.number(celsius)}{say.NB}°C"
    )


CONVERSIONS = (
    Conversion("battery.reserve", ("to_ah", "from_rc"), capacity_of_reserve),
    Conversion("battery.energy", ("to_ah",), capacity_of_energy),
    Conversion("battery.ca", ("to_cca",), cca_of_ca),
    Conversion("battery.cca", ("to_ca",), ca_of_cca),
    Conversion("load.power", ("to_amps",), current_of_power),
    Conversion("cable.gauge", ("to_mm2",), area_of_gauge),
    Conversion("cable.area", ("to_awg",), gauge_of_area),
    Conversion("battery.capacity", ("to_wh",), energy_of_capacity, usual=False),
    Conversion("battery.capacity", ("to_rc",), reserve_of_capacity, usual=False),
    Conversion("load.current", ("to_watts",), power_of_current, usual=False),
    Conversion("load.power", ("to_watts",), power_in_watts, usual=False),
    Conversion("cable.length", ("to_metres", "to_feet"), length_in_other, usual=False),
    Conversion("battery.weight", ("to_kg", "to_lb"), weight_in_other, usual=False),
    Conversion("ambient.temperature", ("to_celsius", "to_fahrenheit"), temperature_in_other, usual=False),
)
