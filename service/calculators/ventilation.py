"""Air for a battery space: enough to thin out the hydrogen of charging."""

from __future__ import annotations

from service.calculators.units import AmpereHour, CubicMetre, CubicMetrePerHour, OutOfRange

DILUTION = 0.05  # m3/h for each A of gas-producing current and cell: 24 x 0.42e-3 m3/Ah x 5, rounded as published
OPENING = 28.0  # cm2 for each m3/h, at 0.1 m/s through the opening
ROOM = 2.5  # m3 of free volume for each m3/h, from which a space counts as roomy


def airflow(cells: float, gas: float, capacity: AmpereHour) -> CubicMetrePerHour:
    """Air in m3/h for cells in series of a capacity; gas is the gas-producing current in mA for each Ah.

    Raises OutOfRange unless all are above 0. Source: IEC 62485-2, clause 7.2.

    >>> round(airflow(6, 20, 100), 3), round(airflow(12, 8, 210), 3)
    (0.6, 1.008)
    """
    if min(cells, gas, capacity) <= 0:
        raise OutOfRange(f"{cells:g} cells, {gas:g} mA/Ah and {capacity:g} Ah must all be above 0")
    return DILUTION * cells * gas * capacity / 1000


def opening_area(air: CubicMetrePerHour) -> float:
    """Free area in cm2 of each of two openings, one for the air in and one for the air out.

    Source: IEC 62485-2, clause 7.3.

    >>> round(opening_area(0.6), 1)
    16.8
    """
    if air <= 0:
        raise OutOfRange(f"an airflow of {air:g} m3/h must be above 0")
    return OPENING * air


def roomy(space: CubicMetre, air: CubicMetrePerHour) -> bool:
    """Whether a space is large against the air it needs.

    >>> roomy(2.0, 0.6), roomy(0.3, 0.6)
    (True, False)
    """
    return space >= ROOM * air
