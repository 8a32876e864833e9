"""What a panel brings in a day, and the panel that a need asks for."""

from __future__ import annotations

from service.calculators.units import AmpereHour, Hour, OutOfRange, Percent, Volt, Watt

MONTH = 30.0  # days


def daily_charge(power: Watt, sun: Hour, share: float, volts: Volt) -> AmpereHour:
    """Amp-hours a day into a battery that charges at so many volts; sun is hours of full sun, share what arrives.

    Raises OutOfRange unless power and volts are above 0, sun within 0 to 24 h and the share within 0 to 1.

    >>> round(daily_charge(100, 4, 0.75, 13.5), 1)
    22.2
    """
    _checked(power, share, volts)
    if not 0 <= sun <= 24:
        raise OutOfRange(f"{sun:g} h of full sun a day is outside 0 to 24 h")
    return power * sun * share / volts


def required_power(need: AmpereHour, sun: Hour, share: float, volts: Volt) -> Watt:
    """Watts of panel that bring so many amp-hours a day. Raises OutOfRange also where there is no sun.

    >>> round(required_power(5, 3, 0.75, 13.5), 6)
    30.0
    """
    _checked(max(need, 1e-12), share, volts)
    if not 0 < sun <= 24:
        raise OutOfRange(f"{sun:g} h of full sun a day must be above 0, at most 24 h")
    return need * volts / (sun * share)


def self_discharge(capacity: AmpereHour, rate: Percent) -> AmpereHour:
    """Amp-hours that a battery loses by itself in a day, at so many percent a month.

    >>> round(self_discharge(200, 5), 3)
    0.333
    """
    if capacity <= 0 or rate < 0:
        raise OutOfRange(f"{capacity:g} Ah at {rate:g} % a month: the first must be above 0, the second 0 or more")
    return capacity * rate / 100 / MONTH


def _checked(amount: float, share: float, volts: Volt) -> None:
    if amount <= 0 or volts <= 0:
        raise OutOfRange("the panel's watts (or the need) and the charging volts must be above 0")
    if not 0 < share <= 1:
        raise OutOfRange(f"a share of {share:g} is outside 0 to 1")
