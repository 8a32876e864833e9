"""Volts that are told to be lost between battery and load: "0.9 of a volt gone", "loses 1.2 V"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

NUMBER = r"(?P<volts{0}>\d+(?:[.,]\d+)?|\.\d+|half|an?|one|two)"
VOLTS = r"(?: ?of)?(?: ?an?)? ?(?:v|volts?)\b"
GONE = r"(?:lost|gone(?: missing)?|missing|disappear\w*|vanish\w*|loss|dropp?(?:ed|ing)?|less|down|short)"
FIRST = regex(
    r"\b(?:los(?:e|es|ing|t|s of)|drop(?:s|ping|ped)?|drop of|down by|short of)"
    r"(?: (?:about|around|some|roughly|of|by|nearly))? "
    rf"{NUMBER.format(1)}{VOLTS}(?! (?:battery|bank|system|agm|gel|lithium|thruster|motor|windlass))",
    re.IGNORECASE,
)
LAST = regex(
    rf"(?<![\d.,]){NUMBER.format(2)}{VOLTS} (?:is |are |gets |was |has )?(?:being )?{GONE}\b"
    r"(?! to (?:\d|under|below))"
    r"(?=[^.?!;]{0,40}\b(?:between|cables?|wir(?:e|ing)|way|along|to the|motor|thruster|windlass|battery|running)\b)",
    re.IGNORECASE,
)
WAY = regex(
    r"\b(?:between|cables?|wir(?:e|es|ing)|leads?|(?:on|along) the way|to (?:the|my|our) \w+|copper|motor"
    r"|thruster|windlass)\b",
    re.IGNORECASE,
)
MAY_LOSE = regex(
    r"\b(?:may|can|could|should|allow\w*|accept|max\w*|limit|at most|how (?:much|many)|which|what)\b[^.?!;]{0,30}$",
    re.IGNORECASE,
)
WORDS = {"half": 0.5, "a": 1.0, "an": 1.0, "one": 1.0, "two": 2.0}


def told(text: str) -> tuple[float, str] | None:
    """Volts lost and how they are typed; None where none are told.

    >>> told("Lose 0.9 of a volt between battery and motor"), told("1.5 V lost in the cable, too much?")
    ((0.9, 'Lose 0.9 of a volt'), (1.5, '1.5 V lost'))
    >>> told("it drops to 9 volts at the motor"), told("how much may it lose, 1 volt?"), told("lost my 12 V battery")
    (None, None, None)
    """
    found = FIRST.search(text) or LAST.search(text)
    if found is None or WAY.search(text) is None or MAY_LOSE.search(text[: found.start()]):
        return None
    typed = next(value for value in found.groupdict().values() if value)
    volts = WORDS.get(typed.lower()) or float(typed.replace(",", "."))
    return (volts, found[0]) if volts else None
