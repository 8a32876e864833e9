"""What a converter or charger between two batteries takes in for what it gives out."""

from __future__ import annotations

from service.calculators.units import Ampere, OutOfRange, Volt


def input_current(volts_out: Volt, current_out: Ampere, volts_in: Volt, efficiency: float) -> Ampere:
    """Amps taken at the input: power out / (volts in x efficiency).

    Raises OutOfRange unless all are above 0 and the efficiency is at most 1. Source: power balance.

    >>> round(input_current(24, 30, 12, 0.90), 1), round(input_current(28.8, 30, 11, 0.90), 1)
    (66.7, 87.3)
    """
    _checked(volts_out, current_out, volts_in, efficiency)
    return volts_out * current_out / (volts_in * efficiency)


def output_current(volts_in: Volt, current_in: Ampere, volts_out: Volt, efficiency: float) -> Ampere:
    """Amps given out for so many taken in: the other way round.

    >>> round(output_current(12, 66.67, 24, 0.90), 1)
    30.0
    """
    _checked(volts_in, current_in, volts_out, efficiency)
    return volts_in * current_in * efficiency / volts_out


def _checked(*values: float) -> None:
    if min(values) <= 0:
        raise OutOfRange("volts, amps and efficiency of a converter must be above 0")
    if values[-1] > 1:
        raise OutOfRange(f"an efficiency of {values[-1]:g} must be at most 1")
