"""What the batteries make together: volts in series, amps and amp-hours in parallel.

`bank.built_voltage` follows from the batteries alone; `bank.voltage` also from the reading or the load, else 12 V.
"""

from __future__ import annotations

from service import reference
from service.calculators import convert
from service.case import rule

COUNTED = "od1002"
STEPS = ((10.5, 15.0, 12.0), (21.0, 30.0, 24.0), (31.5, 38.0, 36.0), (44.8, 59.01, 48.0))


def system(volts: float) -> float:
    """The nominal voltage that a battery's own figure stands for: 12.8 is 12, 25.6 is 24; 6 and 8 stay."""
    return volts if volts < 9 else 12.0 * round(volts / 12.4)


def read_system(volts: float) -> float | None:
    """The nominal voltage of a bank at rest that reads so many volts, or None between the ranges."""
    return next((nominal for low, high, nominal in STEPS if low <= volts < high), None)


@rule("bank.built_voltage", ["?battery.nominal", "?battery.count", "?bank.layout"], unit="V", say="", cites=[COUNTED])
def volts_of_the_build(nominal: float | None, count: float | None, layout: str | None) -> float | None:
    """From the batteries alone: volts of one, how many, how joined."""
    one = system(nominal) if nominal else 12.0
    if layout == "series" and count:
        return one * count
    if layout == "series-parallel" and count == 4:
        return one * 2
    if layout == "parallel" or count == 1:
        return one if nominal else None
    if layout is None and nominal and count and one * count == 12:
        return 12.0  # two 6 V batteries
    return one if layout is None and nominal and not count and one > 12 else None


@rule("bank.voltage", ["bank.built_voltage", "battery.nominal", "battery.count"], unit="V", say="")
def volts_of_a_single_one(built: float, nominal: float, count: float) -> float | None:
    """One battery makes no bank: its own volts are those of its label."""
    return built if count == 1 else None


@rule("bank.voltage", ["bank.built_voltage"], unit="V", cites=[COUNTED], say="The batteries make {value} together")
def volts_as_built(built: float) -> float:
    """The build counts before the reading and the load."""
    return built


@rule(
    "bank.voltage",
    ["reading.voltage", "?load.voltage"],
    unit="V",
    cites=["system-volts"],
    say="{reading.voltage} belongs to a {value} system",
)
def volts_as_read(reading: float, load: float | None) -> float | None:
    """From a resting reading; a load of higher volts tells that one battery was read."""
    found = read_system(reading)
    return None if found is None or (load and load > found) else found  # a 24 V thruster: one battery was read


@rule("bank.voltage", ["load.voltage"], unit="V", say="")
def volts_of_the_load(load: float) -> float:
    """Nothing is known of the batteries: they are taken to suit the load."""
    return load


@rule("bank.voltage", ["battery.nominal", "?bank.layout"], unit="V", say="")
def volts_of_one(nominal: float, layout: str | None) -> float | None:
    """One battery of that voltage, or several side by side; in series they have more."""
    return system(nominal) if system(nominal) >= 12 and layout != "series" else None


@rule(
    "bank.voltage",
    ["bank.layout", "?battery.nominal"],
    kind="assumed",
    unit="V",
    cites=["twelve-volts"],
    say="Two batteries in series taken: {value}",
    why="two batteries in series",
)
def two_in_series(layout: str, nominal: float | None) -> float | None:
    """ "In series" without a number: two of the volts told, else of 12 V."""
    return 2 * system(nominal or 12.0) if layout == "series" else None


@rule(
    "bank.voltage",
    kind="assumed",
    unit="V",
    cites=["twelve-volts"],
    say="{value} is assumed: most boats have 12 V",
    why="most boats have 12 V",
)
def usual_volts() -> float:
    """Where nothing is said."""
    return 12.0


@rule("battery.volts", ["bank.voltage", "?battery.nominal", "?battery.count", "?bank.layout"], unit="V", say="")
def volts_each(bank: float, nominal: float | None, count: float | None, layout: str | None) -> float:
    """Volts of one battery: as stated, else as its place in the bank tells, else 12 V."""
    if nominal:
        return system(nominal)
    if layout == "parallel" or count == 1:
        return bank
    if layout == "series" and count:
        return bank / count
    if layout == "series-parallel" and count == 4:
        return bank / 2
    return 12.0 if bank >= 12 else bank


@rule("bank.in_series", ["bank.voltage", "battery.volts"], say="")
def number_in_series(bank: float, each: float) -> float:
    """Batteries in each string."""
    return float(max(1, round(bank / each)))


@rule("bank.in_parallel", ["?battery.count", "?bank.layout"], say="")
def one_battery(count: float | None, layout: str | None) -> float | None:
    """Nothing tells of more than one, or of more than one string."""
    return 1.0 if count in (None, 1) and layout in (None, "series") else None


@rule("bank.in_parallel", ["bank.in_series", "?battery.count", "?bank.layout"], say="")
def number_in_parallel(in_series: float, count: float | None, layout: str | None) -> float:
    """Strings side by side. Joined in parallel without a number is taken as two."""
    if count:
        return float(max(1, int(count // in_series)))
    return 2.0 if layout in ("parallel", "series-parallel") else 1.0


def _added_in_parallel(fact: str, word: str, name: str) -> None:
    """Declares that a figure of one battery adds up over those in parallel; alone or in series it stays."""

    def of_one(one: float, parallel: float) -> float | None:
        return one if parallel == 1 else None

    def of_several(one: float, parallel: float) -> float:
        return one * parallel

    for how, words in ((of_one, ""), (of_several, f"In parallel {word} adds up: {{value}}")):
        rule(
            f"bank.{name}",
            [fact, "bank.in_parallel"],
            unit="Ah" if name == "capacity" else "A",
            cites=[COUNTED],
            say=words,
        )(how)


_added_in_parallel("battery.capacity", "capacity", "capacity")
_added_in_parallel("battery.cca", "starting power", "cca")
_added_in_parallel("battery.max_current", "the continuous limit", "max_current")
_added_in_parallel("battery.peak_current", "the peak limit", "peak_current")


@rule(
    "bank.energy",
    ["bank.capacity", "bank.voltage", "battery.family"],
    unit="Wh",
    cites=["energy-volts"],
    say="{bank.capacity} at {bank.voltage} nominal hold {value}",
)
def energy_of_the_bank(capacity: float, volts: float, family: str) -> float:
    """At nominal volts, 12 V for lead and 12.8 V for lithium each."""
    nominal = reference.value("ratings", "volts-lithium" if family == "lithium" else "volts-lead").value
    return convert.energy(capacity, volts / 12 * nominal)
