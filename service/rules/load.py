"""What the load draws: from the catalogue, from its power, or from one of its two currents. Stated beats house."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import reference
from service.calculators import convert
from service.case import rule
from service.house import House

MOTORS = frozenset({"thruster", "windlass", "engine", "trolling motor", "motor", "winch", "capstan", "pair of motors"})
TURNS = regex(  # electronics with a motor in them, which takes its jump of current
    r"fridge|freezer|compressor|cool|refrigerator|winch|pump|watermaker|fan|macerator|blower|livewell|pilot|vacuum|hoover",
    re.IGNORECASE,
)
SHAFT = ("hp", "horse", "ps", "bhp", "shaft")


def _at_the_shaft(typed: str | None) -> bool:
    return bool(typed) and any(mark in str(typed).lower() for mark in SHAFT)


@rule("load.voltage", ["load.model"], kind="house", unit="V", say="{load.model}: {value}")
def volts_of_the_model(house: House, model: str) -> float | None:
    """From the catalogue."""
    found = house.model(model)
    return found.volts if found else None


@rule("load.current", ["load.model"], kind="house", unit="A", say="{load.model}: {value} running")
def running_of_the_model(house: House, model: str) -> float | None:
    """From the catalogue."""
    found = house.model(model)
    return found.running if found else None


@rule(
    "load.current",
    ["load.power", "bank.voltage", "text:load.power"],
    kind="assumed",
    unit="A",
    cites=["motor-efficiency"],
    why="taken at the shaft, 85 % of what the motor draws",
    say="{load.power} at the shaft / ({bank.voltage} x 0.85) = {value}",
)
def running_of_shaft_power(power: float, volts: float, typed: str) -> float | None:
    """Horsepower is at the shaft."""
    share = reference.value("ratings", "motor-efficiency").value
    return convert.current(power, volts, share) if _at_the_shaft(typed) else None


@rule(
    "load.current",
    ["load.power", "bank.voltage"],
    kind="assumed",
    unit="A",
    cites=["electric-power"],
    why="watts taken as what the load draws",
    say="{load.power} / {bank.voltage} = {value}",
)
def running_of_power(power: float, volts: float) -> float:
    """W and kW are what the load draws."""
    return convert.current(power, volts)


@rule(
    "load.current",
    ["load.peak"],
    kind="assumed",
    unit="A",
    cites=["inrush-practice"],
    say="Running {load.peak} / 1.5 = {value}",
    why="first instant / 1.5",
)
def running_from_inrush(inrush: float) -> float:
    """Only the first instant is known."""
    return inrush / float(reference.value("ratings", "inrush").value)


@rule(
    "load.peak",
    ["load.model", "?load.current"],
    kind="house",
    unit="A",
    say="{load.model}: {value} in the first instant",
)
def inrush_of_the_model(house: House, model: str, running: float | None) -> float | None:
    """The catalogue's first instant, as long as the running current is the catalogue's too."""
    found = house.model(model)
    return found.inrush if found and running in (None, found.running) else None


@rule(
    "load.peak",
    ["load.current", "load.kind", "text:load.kind"],
    kind="assumed",
    unit="A",
    say="",
    why="no motor, so no jump of current",
)
def no_jump_without_a_motor(running: float, kind: str, typed: str) -> float | None:
    """What is no motor, and has none in it: a kettle, an inverter, lamps."""
    return None if kind.lower() in MOTORS or kind != "electronics" or TURNS.search(typed) else running


@rule(
    "load.peak",
    ["load.current"],
    kind="assumed",
    unit="A",
    cites=["inrush-practice"],
    say="First instant 1.5 x {load.current} = {value}",
    why="1.5 x running",
)
def inrush_from_running(running: float) -> float:
    """Only the running current is known."""
    return running * float(reference.value("ratings", "inrush").value)


@rule("load.cca", ["load.model"], kind="house", unit="A", say="{load.model}: a battery of {value} (CCA)")
def cca_of_the_model(house: House, model: str) -> float | None:
    """From the catalogue, or a rule of the house's that asks for more."""
    found = house.model(model)
    return max(found.cca, house.least(model, "battery.cca")) if found else None


@rule("load.run_limit", ["load.model"], kind="house", unit="s", say="")
def run_limit_of_the_model(house: House, model: str) -> float | None:
    """Seconds on in all within one hour, from the catalogue."""
    found = house.model(model)
    return found.run_limit if found else None


@rule("cable.drop", ["load.model"], kind="house", unit="%", say="{load.model}: at most {value} in its cable")
def drop_of_the_model(house: House, model: str) -> float | None:
    """The share of the volts that the cable of the model may lose, where the catalogue names one."""
    found = house.model(model)
    return found.drop or None if found else None
