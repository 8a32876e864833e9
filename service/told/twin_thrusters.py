"""Two thrusters of the same amps on one battery: "bow and stern thruster, 200 A each, can one battery feed both?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

TWO = regex(
    r"\b(?:two|2|twin|both|pair of)(?: (?:of|the|our|my|12|24|v|volts?|bow|new|old|equal|identical))* thrusters\b"
    r"|\bbow(?: thruster)? (?:and|plus|\+|&)(?: (?:the|a|one))* stern thrusters?\b"
    r"|\bstern(?: thruster)? (?:and|plus|\+|&)(?: (?:the|a|one))* bow thrusters?\b",
    re.IGNORECASE,
)
AMPS = r"\d{2,4} ?(?:a|amps?)\b"
OF_EACH = regex(rf"\b{AMPS}[^.?!;]{{0,20}}\b(?:each|apiece)\b|\b(?:each|both)\b[^.?!;]{{0,40}}?\b{AMPS}", re.IGNORECASE)
OF_BOTH = regex(r"\b(?:in total|in all|altogether|combined|between them|the sum|sum of)\b", re.IGNORECASE)
SEVERAL = regex(r"\b(?:batteries|agms|gels|lithiums|wets|in parallel|in series|own battery|its own)\b", re.IGNORECASE)


def told(text: str) -> bool:
    """Whether the amps of a message are those of each of two thrusters, not of both together."""
    return bool(TWO.search(text) and OF_EACH.search(text)) and not OF_BOTH.search(text)


def on_one_battery(text: str) -> bool:
    """Whether nothing in the message tells of more than one battery: what is counted there are the thrusters."""
    return told(text) and not SEVERAL.search(text)
