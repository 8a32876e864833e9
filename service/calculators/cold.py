"""What a lead battery has left for cranking in the cold."""

from __future__ import annotations

from service.calculators.table import Points, within
from service.calculators.units import Ampere, Celsius, OutOfRange, Percent


def cranking_current(cca: Ampere, temperature: Celsius, rise: float, coldest: Celsius = -30) -> Ampere:
    """Cranking amps: the CCA at -18 C, `rise` more at 0 C, on a straight line; above 0 C at least that.

    Raises OutOfRange for no CCA and under `coldest`, where the line says nothing.

    >>> [round(cranking_current(700, t, 0.25)) for t in (-18, 0, 20)]
    [700, 875, 875]
    """
    if cca <= 0 or temperature < coldest:
        raise OutOfRange(f"CCA {cca:g} A must be above 0, and {temperature:g} C at least {coldest:g} C")
    return cca * (1 + rise * (min(temperature, 0) + 18) / 18)


def share(temperature: Celsius, rows: Points) -> Percent:
    """Share of its warm cranking power that a full battery keeps, between the (C, percent) rows.

    >>> round(share(-8.9, [(26.7, 100), (0, 65), (-17.8, 40), (-28.9, 20)]), 1)
    52.5
    """
    return within(temperature, rows)
