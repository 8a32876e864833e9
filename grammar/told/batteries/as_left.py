"""How full a battery is when it is left, told beside how it is found each time: a drain begins with the former."""

from __future__ import annotations

import re

from grammar.reading import Stated

CHARGE, DRAIN, HALF = "battery.charge", "drain.current", 50.0
LEFT = re.compile(
    r"\b(?:when|before|whenever|as|each time|every time|the day|till?|until) (?:i|we|he|she|they|you) "
    r"(?:last |always |usually )?(?:leave|left|lock|locked|go|went|close|closed|sail|sailed|walk|walked|drive|drove)\b"
    r"|^[^.?!;]{0,12}\b(?:left|put away|locked up|stored)\b",
    re.IGNORECASE,
)
HABIT = re.compile(
    r"\b(?:each|every) (?:time|visit|week\w*|month|trip|morning|monday|friday|saturday|sunday|second|few)\b"
    r"|\bwhenever\b"
    r"|\balways\b|\bkeeps?\b|\bkept\b|\bagain and again\b|\bafter (?:each|every)\b|\bover and over\b",
    re.IGNORECASE,
)
ENDS = re.compile(r"[?!;]|\.(?!\d)")
REACH = 48  # characters after a charge in which its moment is told


def as_left(text: str, stated: list[Stated]) -> list[Stated]:
    """Without the flat battery that is found each time, where a drain is told of: "each time it is flat as a pancake,
    it was full when I left, 0.12 A: how many days to half". With no drain the present state counts, not the former."""
    charges = [item for item in stated if item.fact == CHARGE and isinstance(item.value, float)]
    low = [item for item in charges if float(item.value) <= HALF]
    full = [item for item in charges if float(item.value) > HALF and LEFT.search(_about(text, item))]
    if not low:
        return stated
    if any(item.fact == DRAIN for item in stated):
        gone = [item for item in low if full or HABIT.search(_sentence(text, item))]
    else:
        gone = full
    return [item for item in stated if item not in gone]


def _about(text: str, item: Stated) -> str:
    """A charge and what follows it in its sentence."""
    start, end = item.span
    stop = ENDS.search(text, end)
    return text[start : min(stop.start() if stop else len(text), end + REACH)]


def _sentence(text: str, item: Stated) -> str:
    """The sentence in which a charge is told."""
    start = max((cut.end() for cut in ENDS.finditer(text, 0, item.span[0])), default=0)
    stop = ENDS.search(text, item.span[1])
    return text[start : stop.start() if stop else len(text)]
