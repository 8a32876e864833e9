"""How far a lead battery drops under load: the resistance that just passes the standard load test."""

from __future__ import annotations

from service.calculators.units import Ampere, Ohm, OutOfRange, Volt


def resistance(cca: Ampere, full: Volt, lowest: Volt) -> Ohm:
    """Highest inner resistance of a 12 V battery that still passes the load test at half its CCA.

    `full` is the start of the test (12.6 V), `lowest` the least it may hold at that temperature (9.6 V at 21 C),
    both from reference/load_test.toml: R = (full - lowest) / (CCA / 2). Raises OutOfRange unless CCA is above 0
    and `lowest` is under `full`.

    >>> round(resistance(800, 12.6, 9.6) * 1000, 1)
    7.5
    """
    if cca <= 0 or lowest >= full:
        raise OutOfRange(f"CCA {cca:g} A must be above 0, and {lowest:g} V under {full:g} V")
    return 2 * (full - lowest) / cca


def terminal_voltage(rest: Volt, current: Ampere, ohms: Ohm, parallel: int = 1) -> Volt:
    """Voltage at the posts of a 12 V battery, or of several in parallel, while it gives `current`.

    Raises OutOfRange for no battery or a negative current.

    >>> round(terminal_voltage(12.6, 500, resistance(800, 12.6, 9.6)), 2)
    8.85
    """
    if parallel < 1 or current < 0:
        raise OutOfRange(f"{parallel} batteries and {current:g} A: at least one battery, and no negative current")
    return rest - current * ohms / parallel


def required_cca(inrush: Ampere, full: Volt, lowest: Volt, limit: Volt) -> Ampere:
    """Least CCA of the bank that holds `limit` volts in the first instant: R(CCA) x inrush = full - limit.

    At 21 C this is inrush x 6.0 / 3.6. Raises OutOfRange unless limit and lowest are under full.

    >>> round(required_cca(500, 12.6, 9.6, 9.0))
    833
    """
    if limit >= full or lowest >= full:
        raise OutOfRange(f"{limit:g} V and {lowest:g} V must be under {full:g} V")
    return inrush * 2 * (full - lowest) / (full - limit)
