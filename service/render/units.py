"""Values in the units that are usual in the United States, for display only: the answer itself stays metric."""

from __future__ import annotations

from service import say

AMERICAN = {  # unit of a figure or fact: shown as, factor, offset; exact by the definitions of inch, pound and foot
    "m": ("ft", 1 / 0.3048, 0.0),
    "mm": ("in", 1 / 25.4, 0.0),
    "kg": ("lb", 1 / 0.45359237, 0.0),
    "C": ("°F", 1.8, 32.0),
    "cm2": ("in²", 1 / 2.54**2, 0.0),
    "m3": ("ft³", 1 / 0.3048**3, 0.0),
    "m3/h": ("ft³/min", 1 / 0.3048**3 / 60, 0.0),
}


def american(value: float | str | bool, unit: str) -> str:
    """The value in feet, inches, pounds or degrees Fahrenheit; "" where the unit is the same everywhere.

    >>> american(5.0, "m").replace(say.NB, " "), american(-20.0, "C").replace(say.NB, " "), american(12.0, "V")
    ('16.4 ft', '-4 °F', '')
    """
    if unit not in AMERICAN or isinstance(value, (str, bool)):
        return ""
    shown, factor, offset = AMERICAN[unit]
    number = value * factor + offset
    return f"{say.number(number) if unit == 'C' else say.significant(number)}{say.NB}{shown}"
