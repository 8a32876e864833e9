"""Which part of a circuit they ask about: the battery, the cable or the motor."""

from __future__ import annotations

import re

PARTS = {
    "battery": r"batt(?:ery|eries|s)?",
    "cable": r"cables?|wires?|wiring|leads?|joints?|connections?|cabling",
    "motor": r"motors?|thrusters?",
}
PART = "|".join(PARTS.values())
BETWEEN = r"(?:s|is|are|it|its|it's|the|my|a|bad|just|tell|me)"
COLD = r"(?:cold|frost|temperature|weather|freez\w*)"
BATTERY = r"(?:batt(?:ery|eries|s)?)"
COLD_OR = re.compile(
    rf"\b{COLD}\b[^.?!;]{{0,16}}\bor\b[^.?!;]{{0,20}}\b{BATTERY}\b|\b{BATTERY}\b[^.?!;]{{0,16}}\bor\b[^.?!;]{{0,20}}\b{COLD}\b",
    re.IGNORECASE,
)
EITHER = re.compile(rf"\b(?:{PART}),? or (?:{BETWEEN} )*(?:{PART})\b", re.IGNORECASE)


def either(text: str) -> bool:
    """Whether it is asked which of two parts is at fault: "is it the cable or the battery"."""
    found = EITHER.search(text)
    return found is not None and len(parts_in(found[0])) > 1


def cold_or_battery(text: str) -> bool:
    """Whether it is asked if the cold is at fault or the battery.

    >>> cold_or_battery("is that the cold or is the battery shot"), cold_or_battery("battery or wire")
    (True, False)
    """
    return COLD_OR.search(text) is not None


def parts_in(text: str) -> set[str]:
    """The parts that a text names."""
    return {name for name, words in PARTS.items() if re.search(rf"\b(?:{words})\b", text, re.IGNORECASE)}
