"""What one battery is: lead or lithium, its capacity and starting power from the ratings on the label.

`battery.family` is lead, lithium or lithium-other: by the kind where it is said, else by the ratings that only one has.
"""
from __future__ import annotations

from service import reference
from service.calculators import convert, peukert
from service.case import rule

LEAD = ("flooded", "agm", "gel", "lead")


@rule("battery.family", ["battery.chemistry"], say="")
def family_of_the_kind(chemistry: str) -> str:
    return "lead" if chemistry in LEAD else {"lfp": "lithium"}.get(chemistry, chemistry)


@rule("battery.family", ["?battery.cca", "?battery.reserve", "?reading.gravity"], say="")
def lead_by_its_ratings(cca: float | None, reserve: float | None, gravity: float | None) -> str | None:
    return "lead" if cca or reserve or gravity else None


@rule("battery.family", ["?battery.max_current", "?battery.peak_current"], say="")
def lithium_by_its_limits(continuous: float | None, peak: float | None) -> str | None:
    return "lithium" if continuous or peak else None


@rule("battery.family", ["battery.duty"], say="")
def lead_by_its_duty(duty: str) -> str:
    return "lead"


@rule("battery.cca", ["battery.ca"], unit="A", cites=["ca-over-cca"],
      say="{battery.ca} of cranking amps at 0 °C are {value} at -18 °C (divided by 1.25)")
def cca_of_ca(ca: float) -> float:
    return convert.cca_from_ca(ca, reference.value("ratings", "ca-over-cca").value)


@rule("battery.capacity", ["battery.energy", "battery.volts", "?battery.chemistry"], unit="Ah",
      cites=["energy-volts"], say="{battery.energy} are {value}")
def capacity_of_energy(energy: float, volts: float, chemistry: str | None) -> float:
    nominal = volts / 12 * (12.0 if chemistry in LEAD else 12.8)
    return convert.capacity_from_energy(energy, nominal)


@rule("battery.capacity", ["battery.reserve", "?battery.chemistry"], unit="Ah", cites=["peukert", "reserve-capacity"],
      say="{battery.reserve} at 25 A are {value} at the 20-hour rate, by Peukert's law")
def capacity_of_reserve(reserve: float, chemistry: str | None) -> float:
    k = reference.row("peukert", chemistry=chemistry if chemistry in LEAD else "lead")["k"]
    return peukert.capacity_from_reserve(reserve, k.value)


@rule("battery.usable", ["battery.family"], unit="%", say="")
def usable_share(family: str) -> float | None:
    """The share of a full battery that is used before it should be charged, in percent."""
    if family not in ("lead", "lithium"):
        return None
    return float(reference.row("usable", family=family)["share"].value)
