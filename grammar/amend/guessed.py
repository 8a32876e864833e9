"""Figures that are only guessed at, a question each: "it says 6 amps. 6 volts? 8 volts? no idea"."""

from __future__ import annotations

import re

from grammar.reading import Stated
from grammar.text.patterns import regex

GUESS = r"\d{1,3}(?:[.,]\d{1,2})? ?(?:v(?:olts?)?|a(?:mps?)?|ah)? ?\?"
UNKNOWN = (
    r"(?:no (?:idea|clue)|(?:i )?(?:do not|do ?n['’]?t) know|dunno|(?:i['’]?m )?not sure|can['’]?t (?:tell|say|read))"
)
ROW = rf"(?<![\w.,-]){GUESS}(?:,? (?:or |maybe |perhaps )?{GUESS})+"
GUESSES = regex(rf"{ROW}[^\w?]{{0,4}}{UNKNOWN}\b|\b{UNKNOWN}[^\w?]{{0,4}}{ROW}", re.IGNORECASE)


def without_guesses(text: str, stated: list[Stated]) -> list[Stated]:
    """The facts without those of figures that are not known: they stand in a row, a question each."""
    rows = [found.span() for found in GUESSES.finditer(text)]
    return [item for item in stated if not any(start <= item.span[0] < end for start, end in rows)]
