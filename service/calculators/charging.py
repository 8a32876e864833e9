"""How many amps charge a battery well, how long it takes, and the volts for another temperature."""

from __future__ import annotations

from service.calculators.units import Ampere, AmpereHour, Celsius, Hour, OutOfRange, Percent, Volt

REFERENCE = 25.0  # C at which charging volts are stated


def current(capacity: AmpereHour, share: float) -> Ampere:
    """Charging current that is a share of the 20-hour capacity.

    Raises OutOfRange unless the capacity is above 0 and the share 0 or more.

    >>> current(200, 0.10), current(200, 0.30)
    (20.0, 60.0)
    """
    _positive("capacity", capacity)
    if share < 0:
        raise OutOfRange(f"a share of {share:g} must be 0 or more")
    return capacity * share


def to_return(capacity: AmpereHour, charge: Percent, factor: float) -> AmpereHour:
    """Amp-hours to put back until full: what is gone, times the charge factor (1 or more).

    Raises OutOfRange for a charge outside 0 to 100 % or a factor below 1. Source of the factors: Linden's Handbook.

    >>> to_return(100, 50, 1.20)
    60.0
    """
    _positive("capacity", capacity)
    if not 0 <= charge <= 100:
        raise OutOfRange(f"a charge of {charge:g} % is outside 0 to 100 %")
    if factor < 1:
        raise OutOfRange(f"a charge factor of {factor:g} must be 1 or more")
    return capacity * (100 - charge) / 100 * factor


def time(amp_hours: AmpereHour, charger: Ampere, absorption: Hour = 0.0) -> Hour:
    """Hours to put so many amp-hours back, and the hours of absorption at the end; 0 where nothing is gone.

    Raises OutOfRange unless the current is above 0 and the others are 0 or more.

    >>> time(60, 20, 2.0), round(time(80 * 1.03, 30), 2)
    (5.0, 2.75)
    """
    _positive("charging current", charger)
    if amp_hours < 0 or absorption < 0:
        raise OutOfRange(f"{amp_hours:g} Ah and {absorption:g} h must be 0 or more")
    return amp_hours / charger + absorption if amp_hours else 0.0


def compensated(volts: Volt, temperature: Celsius, by_degree: float) -> Volt:
    """Charging volts for a battery at another temperature than 25 C, by_degree in V less for each C of warmth.

    >>> round(compensated(13.8, 35, 0.018), 2)
    13.62
    """
    return volts - by_degree * (temperature - REFERENCE)


def _positive(name: str, value: float) -> None:
    if not value > 0:
        raise OutOfRange(f"a {name} of {value:g} must be above 0")
