"""Names for floats in canonical units, so that a signature tells what goes in and what comes out."""

from __future__ import annotations

Ampere = float
AmpereHour = float
Celsius = float
CircularMil = float
CubicMetre = float
CubicMetrePerHour = float
Day = float
Hour = float
Kilogram = float
Metre = float
Minute = float
Ohm = float
Percent = float
Second = float
Volt = float
Watt = float
WattHour = float


class OutOfRange(ValueError):
    """A value is outside the limits of the method. The message names it and its limits."""
