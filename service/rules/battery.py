"""What one battery is: lead or lithium, its capacity and starting power from the ratings on the label.

`battery.family` is lead, lithium or lithium-other: by the kind where it is said, else by the ratings that only one has.
"""

from __future__ import annotations

from service import reference
from service.calculators import convert, peukert, table
from service.case import rule
from service.kinds import LEAD
from service.rules.bank import read_system

COLD = 10.0  # C: below it the capacity is less than its rating


@rule("battery.family", ["battery.chemistry"], say="")
def family_of_the_kind(chemistry: str) -> str:
    """By the kind, where it is said."""
    return "lead" if chemistry in LEAD else {"lfp": "lithium"}.get(chemistry, chemistry)


@rule("battery.family", ["?battery.cca", "?battery.reserve", "?reading.gravity"], say="")
def lead_by_its_ratings(cca: float | None, reserve: float | None, gravity: float | None) -> str | None:
    """Only lead batteries are rated in CCA, reserve minutes or read with a hydrometer."""
    return "lead" if cca or reserve or gravity else None


@rule("battery.family", ["?battery.max_current", "?battery.peak_current"], say="")
def lithium_by_its_limits(continuous: float | None, peak: float | None) -> str | None:
    """Only batteries with a management system have such limits."""
    return "lithium" if continuous or peak else None


@rule("battery.family", ["battery.duty"], say="")
def lead_by_its_duty(duty: str) -> str:
    """Starting, deep-cycle and dual-purpose are words for lead batteries."""
    return "lead"


@rule(
    "battery.cca",
    ["battery.ca"],
    unit="A",
    cites=["ca-over-cca"],
    say="{battery.ca} of cranking amps at 0 °C are {value} at -18 °C (divided by 1.25)",
)
def cca_of_ca(ca: float) -> float:
    """Only the 0 °C rating is known."""
    return convert.cca_from_ca(ca, reference.value("ratings", "ca-over-cca").value)


@rule(
    "battery.capacity",
    ["battery.energy", "bank.voltage", "text:bank.voltage", "?battery.nominal", "?battery.count", "?battery.chemistry"],
    unit="Ah",
    cites=["energy-volts"],
    say="{battery.energy} at {bank.voltage} nominal are {value}",
)
def capacity_of_the_whole(
    energy: float, bank: float, typed: str, nominal: float | None, count: float | None, chemistry: str | None
) -> float | None:
    """Where volts over 12 are told and no number of batteries, the energy is that of one battery of those volts."""
    if bank <= 12 or nominal or count:
        return None
    each = reference.value("ratings", "volts-lead" if chemistry in LEAD else "volts-lithium").value
    return convert.capacity_from_energy(energy, bank / 12 * each)


@rule(
    "battery.capacity",
    ["battery.energy", "battery.volts", "?battery.chemistry"],
    unit="Ah",
    cites=["energy-volts"],
    say="{battery.energy} are {value}",
)
def capacity_of_energy(energy: float, volts: float, chemistry: str | None) -> float:
    """Watt-hours are mostly given for lithium; a lead battery has to be named."""
    nominal = reference.value("ratings", "volts-lead" if chemistry in LEAD else "volts-lithium").value
    return convert.capacity_from_energy(energy, volts / 12 * nominal)


@rule(
    "battery.capacity",
    ["battery.reserve", "?battery.chemistry"],
    unit="Ah",
    cites=["peukert", "reserve-capacity"],
    say="{battery.reserve} at 25 A are {value} at the 20-hour rate, by Peukert's law",
)
def capacity_of_reserve(reserve: float, chemistry: str | None) -> float:
    """Only the reserve minutes are known."""
    k = reference.row("peukert", chemistry=chemistry if chemistry in LEAD else "lead")["k"]
    return peukert.capacity_from_reserve(reserve, k.value)


@rule("battery.usable", ["battery.family"], unit="%", say="")
def usable_share(family: str) -> float | None:
    """The share of a full battery that is used before it should be charged, in percent."""
    if family not in ("lead", "lithium"):
        return None
    return float(reference.row("usable", family=family)["share"].value)


def lowest_at(celsius: float | None) -> reference.Cited:
    """The least volts of a 12 V battery in the load test at that temperature, between the rows; 21 °C if not said."""
    rows = reference.rows("load_test")
    points = [(row["temperature"].value, row["volts"].value) for row in rows]
    warm = max(key for key, _ in points)
    at = warm if celsius is None else celsius
    nearest = min(rows, key=lambda row: abs(row["temperature"].value - at))
    return reference.Cited(table.within(at, points), "V", nearest["volts"].cite)


def capacity_share(family: str, celsius: float | None) -> reference.Cited | None:
    """The share of the capacity in percent that is left in the cold; None from 10 °C up or where nothing is said."""
    if celsius is None or celsius >= COLD:
        return None
    rows = [row for row in reference.rows("cold_capacity") if row["family"].value == family]
    points = [(row["temperature"].value, row["share"].value) for row in rows]
    nearest = min(rows, key=lambda row: abs(row["temperature"].value - celsius))
    return reference.Cited(table.within(celsius, points), "%", nearest["share"].cite)


@rule("battery.rest_voltage", ["reading.voltage", "bank.voltage", "?reading.state"], unit="V", say="")
def rest_volts_each(reading: float, bank: float, state: str | None) -> float | None:
    """A resting reading for each 12 V, whether one battery or the bank was read."""
    if state in ("load", "charging"):
        return None
    return reading / ((read_system(reading) or bank) / 12)


@rule(
    "battery.start_voltage",
    ["battery.rest_voltage"],
    unit="V",
    cites=["load-test-resistance"],
    say="It starts from {value} at rest",
)
def start_at_the_reading(volts: float) -> float:
    """The resting reading, at most what a full battery holds once a load comes on."""
    return min(volts, float(reference.value("ratings", "full-at-most").value))


@rule(
    "battery.start_voltage",
    ["battery.charge", "?battery.chemistry"],
    unit="V",
    cites=["load-test-resistance"],
    say="At {battery.charge} charge it starts from {value}",
)
def start_at_the_charge(charge: float, chemistry: str | None) -> float:
    """By the table of volts at rest."""
    return min(table.within(charge, _rest_table(chemistry)), float(reference.value("ratings", "full-at-most").value))


@rule("battery.start_voltage", unit="V", cites=["load-test-resistance"], say="It starts from {value}, charged")
def start_of_a_charged_one() -> float:
    """Nothing is said of its charge."""
    return float(reference.value("ratings", "full").value)


def _rest_table(chemistry: str | None) -> list[tuple[float, float]]:
    kind = chemistry if chemistry in ("agm", "gel") else "flooded"
    rows = [row for row in reference.rows("rest_voltage") if row["chemistry"].value == kind]
    return [(row["charge"].value, row["volts"].value) for row in rows]
