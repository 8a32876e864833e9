"""What charges: amps by a rate, the amp-hours on one output, the bank's volts by those of its charger."""

from __future__ import annotations

from service.case import rule
from service.rules.bank import system


@rule(
    "charger.current", ["charger.rate", "bank.capacity"], unit="A", say="{charger.rate} of {bank.capacity} is {value}"
)
def amps_of_the_rate(rate: float, capacity: float) -> float:
    """A rate such as 0.1C."""
    return rate * capacity


@rule(
    "charge.capacity",
    ["battery.capacity", "bank.count", "?battery.count", "?bank.layout"],
    unit="Ah",
    cites=["one-output-a-bank"],
    say="Each bank has an output of its own, which charges {value}",
)
def one_of_separate_banks(capacity: float, banks: float, count: float | None, layout: str | None) -> float | None:
    """Banks that work apart are charged apart."""
    return capacity if banks > 1 and layout is None and (count or banks) <= banks else None


@rule("charge.capacity", ["bank.capacity"], unit="Ah", say="")
def all_that_is_joined(bank: float) -> float:
    """One output charges all that is joined."""
    return bank


@rule("bank.voltage", ["charger.voltage"], unit="V", say="")
def volts_of_the_charger(volts: float) -> float | None:
    """27.6 V from a charger are for a 24 V bank; what suits 12 V tells nothing."""
    return system(volts) if system(volts) > 12 else None
