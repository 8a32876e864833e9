"""How a number and its unit are written: joined by a no-break space, never more exact than it is."""

from __future__ import annotations

import math
from collections.abc import Callable

NB = "\u00a0"
HAIR = 1e-6  # of the last figure shown: a value worked out to be whole is whole
SHOWN = {"mm2": "mm²", "m3": "m³", "C": "°C", "m3/h": "m³/h", "cm2": "cm²", "d": "days", "mohm": "mΩ"}


def number(value: float, places: int = 0) -> str:
    """A number with so many places, no minus zero. Halves go away from zero, as people round.

    >>> number(8.25, 1), number(-0.01, 1), number(1234.5)
    ('8.3', '0.0', '1235')
    """
    scaled = math.floor(abs(value) * 10**places + 0.5 + 1e-9) / 10**places
    text = f"{scaled:.{places}f}"
    return f"-{text}" if value < 0 and float(text) else text


def significant(value: float, figures: int = 3) -> str:
    """A number with so many figures that count, whole from there on.

    >>> significant(0.0833), significant(1280.4), significant(12.55), significant(2.0)
    ('0.0833', '1280', '12.6', '2')
    """
    if not value or not math.isfinite(value):
        return number(value) if not value else str(value)
    places = max(0, figures - 1 - math.floor(math.log10(abs(value))))
    text = number(value, places)
    return text.rstrip("0").rstrip(".") if "." in text else text


def at_most(value: float, unit: str = "A") -> str:
    """A limit, which rounding never lifts: three figures that count, rounded down.

    >>> at_most(23.75).replace(NB, " "), at_most(34.5).replace(NB, " "), at_most(46).replace(NB, " ")
    ('23.7 A', '34.5 A', '46 A')
    """
    return quantity(_directed(value, math.floor), unit)


def at_least(value: float, unit: str = "A") -> str:
    """What is needed, which rounding never lowers.

    >>> at_least(11.25).replace(NB, " "), at_least(9.5).replace(NB, " ")
    ('11.3 A', '9.5 A')
    """
    return quantity(_directed(value, math.ceil), unit)


def within(low: float, high: float, unit: str = "A") -> str:
    """Two limits as a range that is nowhere wider than they are.

    >>> within(9.5, 23.75).replace(NB, " ")
    '9.5 to 23.7 A'
    """
    first, last = at_least(low, unit), at_most(high, unit)
    return last if first == last else f"{first.removesuffix(f'{NB}{unit}')} to {last}"


def _directed(value: float, way: Callable[[float], int]) -> float:
    """A number with three figures that count, rounded one way; what is on the step within a hair stays."""
    step = 10 ** max(0, 2 - math.floor(math.log10(value))) if value > 0 else 1
    near = round(value * step)
    return near / step if abs(value * step - near) < HAIR else way(value * step) / step


def quantity(value: float, unit: str, places: int | None = None) -> str:
    """A number and its unit: `quantity(12.62, "V", 1)` is "12.6 V"."""
    text = significant(value) if places is None else number(value, places)
    if unit == "d":
        return f"{text}{NB}day{'' if text == '1' else 's'}"
    if unit == "years" and text == "1":
        return f"{text}{NB}year"
    if unit == "years" and places is None and 0 < value < 1:
        return _under_a_year(value)
    return f"{text}{NB}{SHOWN.get(unit, unit)}" if unit else text


def _under_a_year(years: float) -> str:
    """Part of a year in whole days, weeks or months: 0.0575 is "3 weeks"."""
    days = years * 365.25
    count, name = (days, "day") if days < 13.5 else (days / 7, "week") if days < 60 else (years * 12, "month")
    return f"{round(count)}{NB}{name}{'' if round(count) == 1 else 's'}"


def volts(value: float, places: int = 1) -> str:
    """Volts to 0.1, or to the places asked for."""
    return quantity(value, "V", places)


def amps(value: float) -> str:
    """Amps: whole from 10 on, below with the figures that count."""
    return quantity(value, "A", 0) if abs(value) >= 10 and abs(value - round(value)) < 0.05 else quantity(value, "A")


def given(value: float) -> str:
    """Amps that a battery gives, whole: what is given rounds down.

    >>> given(812.5).replace(NB, " "), given(721.99).replace(NB, " "), given(875.0 - 1e-9).replace(NB, " ")
    ('812 A', '721 A', '875 A')
    """
    return quantity(math.floor(value + 1e-6), "A", 0)


def cca(value: float) -> str:
    """A cranking rating."""
    return f"{number(value)}{NB}CCA"


def amp_hours(value: float) -> str:
    """Amp-hours with the figures that count."""
    return quantity(value, "Ah")


def daily(value: float) -> str:
    """Amp-hours of a day: whole from 10 on, 0.1 from 1 on, else 0.01.

    >>> daily(11.11).replace(NB, " "), daily(1.44).replace(NB, " ")
    ('11 Ah', '1.4 Ah')
    """
    return quantity(value, "Ah", 0 if value >= 10 else 1 if value >= 1 else 2)


def days(count: float) -> str:
    """Days that something lasts, rounded down: to the figures that count, in hours under two days.

    >>> [days(n).replace(NB, " ") for n in (1.5, 9.69, 26.04)]
    ['36 hours', '9.6 days', '26 days']
    """
    if count < 2:
        return quantity(int(count * 24 + 1e-6), "hours", 0)
    return quantity(int(count + 1e-6) if count >= 10 else int(count * 10 + 1e-6) / 10, "d")


def length(metres: float, feet: bool = False) -> str:
    """A length in the unit the customer typed, the other in brackets."""
    metric, imperial = quantity(metres, "m"), f"{significant(metres / 0.3048)}{NB}ft"
    return f"{imperial} ({metric})" if feet else f"{metric} ({imperial})"


def temperature(celsius: float, fahrenheit: bool = False) -> str:
    """A temperature, the other scale in brackets."""
    metric = f"{number(celsius)}{NB}°C"
    imperial = f"{number(celsius * 9 / 5 + 32)}{NB}°F"
    return f"{imperial} ({metric})" if fahrenheit else f"{metric} ({imperial})"


def between(low: float, high: float, unit: str, places: int | None = None) -> str:
    """A range: "14.2 to 14.8 V"; one value where both ends read alike."""
    first, last = quantity(low, "", places), quantity(high, "", places)
    return quantity(high, unit, places) if first == last else f"{first} to {quantity(high, unit, places)}"


def so_many(count: float) -> str:
    """How many times a battery is good for something: over 20 down to fives, as no sum tells it nearer.

    >>> so_many(78), so_many(20), so_many(13), so_many(24)
    ('75', '20', '13', '20')
    """
    return number(count if count <= 20 else math.floor(count / 5 + 1e-9) * 5)
