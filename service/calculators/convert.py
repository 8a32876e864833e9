"""From one rating or unit to another."""

from __future__ import annotations

from service.calculators.cable import FOOT
from service.calculators.units import (
    Ampere,
    AmpereHour,
    Celsius,
    Kilogram,
    Metre,
    OutOfRange,
    Volt,
    Watt,
    WattHour,
)

POUND: Kilogram = 0.45359237  # by definition (NIST SP 811, appendix B.8)
HORSEPOWER: Watt = 745.699872  # 550 ft lbf/s, the mechanical horsepower (NIST SP 811, appendix B.8)


def cca_from_ca(ca: Ampere, ratio: float) -> Ampere:
    """CCA (-18 C) of a battery rated in cranking amps (0 C); ratio is CA over CCA.

    >>> cca_from_ca(1000, 1.25)
    800.0
    """
    return ca / ratio


def current(power: Watt, volts: Volt, efficiency: float = 1.0) -> Ampere:
    """Amps that a load of that power draws; efficiency under 1 where the power is at the shaft.

    Raises OutOfRange unless volts and efficiency are above 0.

    >>> current(2400, 12)
    200.0
    """
    if volts <= 0 or not 0 < efficiency <= 1:
        raise OutOfRange(f"{volts:g} V must be above 0, and efficiency {efficiency:g} between 0 and 1")
    return power / (volts * efficiency)


def energy(capacity: AmpereHour, volts: Volt) -> WattHour:
    """Watt-hours of a battery of that capacity at its nominal volts.

    >>> energy(100, 12.8)
    1280.0
    """
    return capacity * volts


def capacity_from_energy(watt_hours: WattHour, volts: Volt) -> AmpereHour:
    """Amp-hours of a battery of that energy at its nominal volts.

    >>> capacity_from_energy(1280, 12.8)
    100.0
    """
    return watt_hours / volts


def ca_from_cca(cca: Ampere, ratio: float) -> Ampere:
    """Cranking amps (0 C) of a battery rated in CCA (-18 C); ratio is CA over CCA.

    >>> ca_from_cca(800, 1.25)
    1000.0
    """
    return cca * ratio


def power(amps: Ampere, volts: Volt) -> Watt:
    """Watts of a load that draws so many amps.

    >>> power(100, 12)
    1200
    """
    return amps * volts


def fahrenheit(celsius: Celsius) -> float:
    """Degrees Fahrenheit.

    >>> fahrenheit(-10)
    14.0
    """
    return celsius * 9 / 5 + 32


def feet(metres: Metre) -> float:
    """Feet of 0.3048 m.

    >>> feet(3.048)
    10.0
    """
    return metres / FOOT


def pounds(kilograms: Kilogram) -> float:
    """Pounds of 0.45359237 kg.

    >>> round(pounds(30), 1)
    66.1
    """
    return kilograms / POUND
