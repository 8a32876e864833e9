"""One rating or unit put into another: RC to Ah, CA to CCA, W to A, AWG to mm2, F to C."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from service import reference, say
from service.calculators import convert, peukert
from service.case import Case, Known
from service.kinds import LEAD
from service.reply import Answer, Figure, Option
from service.rules.cable import standard
from service.topic import Topic

RATIO = reference.value("ratings", "ca-over-cca")
ALIKE = 0.05  # of a rating: no nearer is meant
NAMES = (  # of units as they stand in a list of wants, by the detail that asks for each
    ("to_ah", r"ah|amp[- ]?hours?"),
    ("to_cca", r"cca|cold cranking amps"),
    ("to_ca", r"mca|ca"),
    ("to_rc", r"rc|reserve minutes"),
    ("to_wh", r"k?wh|watt[- ]?hours?"),
    ("to_mm2", r"mm2|mm²|sq(?:uare)? mm"),
    ("to_awg", r"awg"),
    ("to_watts", r"watts"),
    ("to_amps", r"amps"),
    ("to_metres", r"met(?:re|er)s"),
    ("to_feet", r"feet"),
)
ANY = "|".join(rf"(?P<{name}>{words})" for name, words in NAMES)
NAMED = re.compile(
    rf"(?<![\d\w.])(?<!\d )(?:{ANY})(?![\w.]*\d| \d)(?!\w)", re.IGNORECASE
)  # "900 CCA", "RC 160" are told
BETWEEN = re.compile(r"\s*(?:,|&|\+|/|\band\b|\bplus\b)(?:\s*(?:and|the|in|to|into))*\s*", re.IGNORECASE)
UNITS, AREAS = "unit-definitions", "astm-b258"

WORKED = {  # what an earlier answer of the conversation may have worked out, the fact that it is one of
    "battery.cca": ("bank-size.required_cca", "run-check.required_cca", "rating-convert.cca"),
    "battery.ca": ("rating-convert.ca",),
    "battery.capacity": ("rating-convert.capacity",),
    "battery.reserve": ("rating-convert.reserve",),
    "battery.energy": ("rating-convert.energy",),
}

TOPIC = Topic(
    "rating-convert",
    "One rating in another",
    likely={"battery.reserve": (("90 min", 90.0), ("120 min", 120.0), ("180 min", 180.0))},
    unsure={
        "battery.cca": "We can't work it out: only CA (cranking amps at 0 °C) can be turned into CCA, not amp-hours.",
        "bank.voltage": "We can't say yet: watts are amps times volts, so the volts decide.",
    },
)


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


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Every conversion that the stated ratings and the words ask for."""
    if case.says("detail:en_rating") and "battery.cca" in case.stated:
        return of_another_test(case)
    case = with_the_last(case)
    told = [item for item in CONVERSIONS if item.fact in case.stated]
    fresh = ("message", "derived")  # "and 50 F?" is the newest alone
    told = [item for item in told if case.origin(item.fact) in fresh] or told
    wanted = [item for item in told if asked(case, item)]
    chosen = wanted or [item for item in told if item.usual]
    if not chosen:
        rest = [item for item in told if not item.targets[0].endswith("_rc")][:1]
        chosen = [] if named(case) else rest
    if not chosen:
        return lacking(case)
    made = [item.make(case) for item in chosen]
    head = made[0][1] if len(made) == 1 else "; ".join(short(text) for _, text in made)
    if len(made) == 1 and case.stated[chosen[0].fact].origin == "derived" and chosen[0].fact in case.second:
        head = f"{head}; {short(chosen[0].make(case.others())[1])}"
    return TOPIC.says(
        "information",
        f"{compared(case)}{head if compared(case) else say.capital(head)}.",
        *(figure for figure, _ in made),
        compare=tuple(both(case, chosen)),
    )


def with_the_last(case: Case) -> Case:
    """The same case, in place, with the figure that the desk worked out last where the words ask for that: "how many
    MCA is that?". What this message tells goes before it; a rating told earlier stands beside it as the second."""
    for item in CONVERSIONS:
        told = case.stated.get(item.fact)
        names = (name for name in WORKED.get(item.fact, ()) if name in case.worked)
        if not asked(case, item) or (name := next(names, None)) is None or (told and told.origin == "message"):
            continue
        value = float(case.worked[name])
        value = float(math.ceil(value - 1e-6)) if name.endswith("required_cca") else value  # what is needed rounds up
        if told and told.value != value:
            case.second = {**case.second, item.fact: replace(told, of=2)}
        case.stated = {**case.stated, item.fact: Known(item.fact, value, "derived", say.symbol(item.fact))}
    return case


def of_another_test(case: Case) -> Answer:
    """A rating by EN, DIN or JIS: other tests than that of CCA, which give no fixed ratio."""
    amps = float(case["battery.cca"])
    case.step("EN, DIN and JIS test in other ways than CCA, so no fixed ratio turns one into the other", "en-rating")
    head = f"Take it as {say.cca(amps)} at most: such a test is not that of CCA, and there is no fixed ratio."
    return TOPIC.says("information", head, Figure("cca", "cold cranking amps, at most", amps, "A"))


WARM, COLD = re.compile(r"\bm?ca\b", re.IGNORECASE), re.compile(r"\bcca\b", re.IGNORECASE)


def compared(case: Case) -> str:
    """The direct word where they ask whether so many CA are so many CCA; else nothing."""
    told = {"battery.ca", "battery.cca"} & set(case.stated)
    if not case.says("detail:same_as") or not told:
        return ""
    if len(told) == 1:  # "650 MCA, is that the same as CCA?"
        return "No: " if WARM.search(case.text) and COLD.search(case.text) else ""
    as_cca = convert.cca_from_ca(float(case["battery.ca"]), RATIO.value)
    return "These two are alike: " if abs(as_cca - float(case["battery.cca"])) < ALIKE * as_cca else "No: "


def short(text: str) -> str:
    """A conversion without its further remarks, for several in one sentence."""
    return re.sub(r" \([^)]*\)", "", text).partition("; ")[0].partition(", ")[0]


def asked(case: Case, item: Conversion) -> bool:
    """Whether the words ask for this conversion, alone or in a list of units."""
    return case.says(*(f"detail:{target}" for target in item.targets)) or not in_a_list(case.text).isdisjoint(
        item.targets
    )


def in_a_list(text: str) -> set[str]:
    """The units that are only named, one after the other: "Ah and CCA please"."""
    found = list(NAMED.finditer(text))
    pairs = [(one, two) for one, two in pairwise(found) if BETWEEN.fullmatch(text, one.end(), two.start())]
    return {str(item.lastgroup) for pair in pairs for item in pair}


def named(case: Case) -> bool:
    """Whether the words name any target at all."""
    return any(asked(case, item) for item in CONVERSIONS)


def lacking(case: Case) -> Answer:
    """The fact that the wanted conversion starts from."""
    if case.says("detail:to_cca", "detail:to_ca") and "battery.capacity" in case.stated:
        return TOPIC.needs("battery.cca")
    sources = [item.fact for item in CONVERSIONS if asked(case, item)]
    return TOPIC.needs(sources[0] if sources else "battery.reserve")


def both(case: Case, chosen: list[Conversion]) -> Iterator[Option]:
    """The same conversions for a second value, side by side."""
    for item in chosen:
        varied = item.fact if item.fact in case.second else "bank.voltage"
        if varied in case.second and (varied == item.fact or item.fact.startswith("load.")):
            for one in (case, case.others()):
                yield Option(say.fact(varied, one[varied]), "information", (item.make(one)[0],))


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
        typed = re.sub(r"\bshaft\b", "at the shaft", case.stated["load.power"].text)
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
