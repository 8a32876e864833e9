"""A motor of other volts than the bank that it is to be put on: "a 12 V windlass on the 24 V bank"."""

from __future__ import annotations

import re
from functools import lru_cache

from grammar.text.patterns import regex

VOLTS = r"(?P<{0}>12|24|36|48)[ -]?v(?:olts?)?\b"
AMPS = r"(?:,? ?\d{2,4} ?(?:a|amps?|w|watts?)\b,?)?"
MOTOR = (
    r"(?:bow ?thruster|thruster|windlass|winch|capstan|(?:trolling|outboard|bow|stern|drive) motor)\b"
    r"(?!['’]?s? (?:bank|batter|circuit|system|supply))"
)
BANK = r"(?:bank|system|boat|supply|circuit|batteries)\b"
IS = (
    r"(?:['’]s)?(?: (?:is|are|has|have|of|at|gives?|makes?|only|just|for|takes|needs|wants|runs|on|a|plate|says"
    r"|reads))*[ :,-]+"
)
OF_MOTOR = regex(
    rf"\b{VOLTS.format('first')}[ -]?{AMPS} ?(?:\w+ )?{MOTOR}|\b{MOTOR}{AMPS}{IS}{VOLTS.format('last')}"
    rf"(?! (?:\w+ )?{BANK})",
    re.IGNORECASE,
)
OF_BANK = regex(
    rf"\b{VOLTS.format('first')}(?: (?!thruster|windlass|winch)\w+)? {BANK}|\b{BANK}{IS}{VOLTS.format('last')}"
    rf"(?! (?:\w+ )?{MOTOR})",
    re.IGNORECASE,
)
PUT = regex(  # nothing but the volts it is put on: "run it on 24 V", "put 24 V on it"
    rf"\b(?:on|onto|from|off|at|to|put|feed|give|send|apply|use|using|connect|would|will|does)(?: (?:a|the|my|our))* "
    rf"{VOLTS.format('volts')}(?!-| (?:\w+ )?(?:{MOTOR}|{BANK}|batter))",
    re.IGNORECASE,
)
ANY = regex(r"\b(12|24|36|48)[ -]?v(?:olts?)?\b", re.IGNORECASE)
BETWEEN = regex(  # what stands between, is changed, or gives the volts that are wanted
    r"\b(?:converters?|dc[- ]?(?:to[- ]?)?dc|droppers?|step\w*|reducers?|chargers?|inverters?|alternators?|tap\w*|half"
    r"|one (?:battery |of )|old|replac\w*|swap\w*|instead|chang\w*|upgrad\w*|was|used to|re-?wir\w*|both|another|second"
    r"|own|two|pair|series|not)\b",
    re.IGNORECASE,
)
PARTS = regex(r"\b(?:batter\w*|accus?|batts?|packs?)\b", re.IGNORECASE)


@lru_cache(maxsize=4)  # several parts of an answer ask it
def apart(text: str) -> tuple[float, float] | None:
    """The volts of the bank and of the motor, where a message names one of each and they differ.

    >>> apart("can I run a 12 V windlass from the 24 V bank?"), apart("24V bank, thruster 24V")
    ((24.0, 12.0), None)
    >>> apart("put 24 V on my 12 V winch"), apart("can a 24 V windlass run on 12 V")
    ((24.0, 12.0), (12.0, 24.0))
    >>> apart("12 V winch off the 24 V bank by a converter"), apart("two 12 V batteries for the 24 V thruster")
    (None, None)
    """
    if BETWEEN.search(text):
        return None
    motors, banks = ({_volts(found) for found in words.finditer(text)} for words in (OF_MOTOR, OF_BANK))
    banks = banks or {float(found["volts"]) for found in PUT.finditer(text)}
    if len(motors) != 1 or len(banks) != 1 or motors == banks:
        return None
    if {float(found[1]) for found in ANY.finditer(text)} != motors | banks:
        return None
    bank, motor = banks.pop(), motors.pop()
    several = motor > bank and PARTS.search(text)  # four batteries of 12 V may make the motor's volts
    return None if several else (bank, motor)


def _volts(found: re.Match[str]) -> float:
    return float(found["first"] or found["last"])
