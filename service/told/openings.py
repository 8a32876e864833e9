"""Openings for air that are there or proposed: how many, how large each is, and whether it is asked where they go."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from grammar.text.patterns import regex

COUNTS = {"a": 1, "an": 1, "one": 1, "single": 1, "two": 2, "pair": 2, "couple": 2, "three": 3, "four": 4}
COUNT = r"(?:(?P<count>\d|a|an|one|single|two|pair of|couple of|three|four)\s+(?:x\s*)?(?:single\s+|round\s+)*)?"
HOLES = r"(?P<holes>(?:holes?|vents?|openings?|grilles?|grills?|louvres?|portholes?|pipes?|hoses?|vent holes?)\b)"
AREA = r"cm2|cm²|sq\.?\s?cm|square\s(?:cm|centimet\w+)"
SIZE = rf"(?P<size>\d+(?:[.,]\d+)?)[\s-]?(?P<unit>{AREA}|mm|cm|in(?:ch(?:es)?)?\b|\")"
BETWEEN = r"\s*(?:(?:diameter|dia|wide|across|round|mushroom|air|hull|skin|plastic|drilled)\s+)*"
BEFORE = regex(rf"\b{COUNT}{SIZE}{BETWEEN}{HOLES}", re.IGNORECASE)
AFTER = regex(
    rf"\b{COUNT}{BETWEEN}{HOLES}\s+(?:each\s+)?(?:(?:of|with|at|is|are)\s+)?(?:each\s+)?{SIZE}", re.IGNORECASE
)
MILLIMETRES = {"m": 1.0, "c": 10.0, "i": 25.4, '"': 25.4}
DOES = r"\b(?:enough|ok|okay|do|fine|sufficient|suffice)\b"
ONE = regex(  # "is one vent enough", "is the one mushroom vent enough"
    rf"\b(?:one|single|only)\s+(?:\w+\s+){{0,2}}?(?:vent|hole|opening|grille?|mushroom|louvre)\b[^.?!;]{{0,60}}?{DOES}"
    rf"|{DOES}[^.?!;]{{0,20}}\b(?:only\s|just\s)?(?:one|a\ssingle)\s+(?:vent|hole|opening)\b",
    re.IGNORECASE,
)
LOW, HIGH = r"(?:low|lower|bottom|down)", r"(?:high|higher|upper|top|up)"
ONE_OF = r"(?:(?:one|a|the)\s+)?"
BOTH = regex(
    rf"\b(?:{LOW}\s+or\s+{ONE_OF}{HIGH}|{HIGH}\s+or\s+{ONE_OF}{LOW})\b"
    rf"|\bboth\s+{ONE_OF}(?:{LOW}\s+and\s+{ONE_OF}{HIGH}|{HIGH}\s+and\s+{ONE_OF}{LOW})\b"
    rf"|\bone\s+(?:at\s+the\s+)?(?:{LOW}|{HIGH})\b[^.?!;]{{0,20}}\bone\s+(?:at\s+the\s+)?(?:{LOW}|{HIGH})\b"
    rf"|\b(?:{LOW}|{HIGH})\s+(?:one|vent|hole|opening)\b[^.?!;]{{0,15}}\b(?:as\s+well|too)\b",
    re.IGNORECASE,
)
IS_SO = regex(r"\bone\s+(?:low|high|up|down|at the)\b|\bboth\b|\b(?:as well|too)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Openings:
    """So many openings, each of so many cm²; the diameter in mm where they are round."""

    count: int
    each: float
    across: float | None = None


def proposed(text: str) -> Openings | None:
    """The openings told of with their size; None where none is.

    >>> proposed("two 25 mm holes"), proposed("16 mm2 cable through a hole")
    (Openings(count=2, each=4.908738521234052, across=25.0), None)
    """
    found = BEFORE.search(text) or AFTER.search(text)
    if found is None:
        return None
    size, unit = float(found["size"].replace(",", ".")), found["unit"].lower()
    word = (found["count"] or "").lower().removesuffix(" of")
    count = int(word) if word.isdigit() else COUNTS.get(word, 2 if found["holes"].lower().endswith("s") else 1)
    if unit.startswith(("cm2", "cm²", "sq")):
        return Openings(count, size)
    across = size * MILLIMETRES[unit[0]]
    return Openings(count, math.pi * (across / 20) ** 2, across)


def is_one_enough(text: str) -> bool:
    """Whether it is asked if a single opening will do.

    >>> is_one_enough("is the one mushroom vent enough"), is_one_enough("one vent low, one high?")
    (True, False)
    """
    return bool(ONE.search(text))


def asks_where(text: str) -> bool:
    """Whether it is asked if an opening goes low or high."""
    return bool(BOTH.search(text))


def as_is_right(text: str) -> bool:
    """Whether one low and one high is put up, and not the choice between them."""
    return asks_where(text) and bool(IS_SO.search(text))
