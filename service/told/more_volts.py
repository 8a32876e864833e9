"""A 24 V thruster that takes the place of one of 12 V, and one of 12 V that is to be put on 24 V."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

LOAD = r"\b(?:thrusters?|bow unit|stern unit|unit|windlass)\b"
TWENTY_FOUR, TWELVE = r"\b24[ -]?v(?:olts?)?\b", r"\b12[ -]?v(?:olts?)?\b"
NEAR = r"[^.?!;,\d]{0,25}?"  # no other figure between
ITS = regex(rf"{LOAD}{NEAR}{TWENTY_FOUR}|{TWENTY_FOUR}{NEAR}{LOAD}", re.IGNORECASE)
CHANGE = regex(
    rf"\b12 ?v?(?:olts?)? (?:to|into|->|→) (?:a )?{TWENTY_FOUR}{NEAR}{LOAD}|\bold\b{NEAR}{TWELVE}", re.IGNORECASE
)


def changes(text: str) -> bool:
    """Whether a 24 V thruster takes the place of one of 12 V.

    >>> changes("Going 12 to 24 V thruster"), changes("New thruster is 24 V, the old was 12 V")
    (True, True)
    """
    return bool(ITS.search(text) and CHANGE.search(text))


GOES_UP = regex(
    r"\b(?:go|going|goes|change|changing|switch|switching|convert|converting|upgrade|upgrading|move|moving|run|running)\b"
    r"[^.?!;]{0,24}?\b(?:12 ?v?(?:olts?)? (?:to|into|up to)|to|over to|up to|on|at) (?:a )?24 ?v(?:olts?)?\b",
    re.IGNORECASE,
)
MORE = regex(
    r"\b(?:more|extra|better|stronger|faster|boost\w*) ?(?:power|push|thrust|speed|force|torque)?\b", re.IGNORECASE
)
PUT_ON = regex(
    r"\b(?:on|from|at|off|with|to|onto)\b(?: (?:a|the|my|our))* (?P<volts>24|36|48)[ -]?v(?:olts?)?\b", re.IGNORECASE
)
BESIDE = regex(  # what stands between, or is of those volts itself
    r"\b(?:converter|dc[- ]?(?:to[- ]?)?dc|dropper|step\w*|reducer|charger|inverter|alternator)\b", re.IGNORECASE
)


def goes_up(text: str) -> bool:
    """Whether more power is looked for in more volts.

    >>> goes_up("I want more power, can I go from 12 to 24V?"), goes_up("what charger goes from 12 to 24 V?")
    (True, False)
    """
    return bool(GOES_UP.search(text) and MORE.search(text)) and BESIDE.search(text) is None


def put_on(text: str) -> float | None:
    """The volts of 24 and more that something is to be put on, straight; None where none are told.

    >>> put_on("can I run my 12 V Minnow on 24 V?"), put_on("from 24 V through a converter")
    (24.0, None)
    """
    found = PUT_ON.search(text)
    return float(found["volts"]) if found and BESIDE.search(text) is None else None


MOTOR = r"(?:bow ?thruster|thruster|windlass|winch|capstan|bow unit|unit|motor)"
OF_12 = regex(
    rf"{TWELVE}[ -](?:bow |stern |electric )?{MOTOR}\b(?!['’]?s? (?:bank|batter))"
    rf"|\b{MOTOR}(?:['’]s)?\b(?!['’]?s? (?:bank|batter)){NEAR}{TWELVE}",
    re.IGNORECASE,
)
SUPPLY = r"(?:bank|boat|batter(?:y|ies)|system|supply|house|yacht|barge)"
ABOVE = regex(
    rf"\b(?P<before>24|36|48)[ -]?v(?:olts?)?[ -](?:\w+ )?{SUPPLY}\b"
    rf"|\b{SUPPLY}\b[^.?!;,\d]{{0,16}}?\b(?P<after>24|36|48)[ -]?v(?:olts?)?\b",
    re.IGNORECASE,
)
HOOKS = regex(r"\b(?:hook|connect|wir|put|run|hang|feed|attach|join|plug|power|work|stand|take)\w*\b", re.IGNORECASE)
ANY = regex(r"\b(12|24|36|48)[ -]?v(?:olts?)?\b", re.IGNORECASE)


def motor_below(text: str) -> tuple[float, float] | None:
    """The 12 V of a motor and the higher volts of the bank that it is to be put on, where no others are told.

    >>> motor_below("The bank is 24 volts, the thruster's plate says 12 V. Can I connect it?")
    (12.0, 24.0)
    >>> motor_below("12 V thruster, 24 V bank of two 12 V batteries, connect it?")
    """
    bank, told = ABOVE.search(text), sorted(ANY.findall(text))
    apart = len(told) > 1 and told.count("12") == 1 and len({*told}) == 2
    if bank is None or not apart or not OF_12.search(text) or not HOOKS.search(text) or BESIDE.search(text):
        return None
    return 12.0, float(bank["before"] or bank["after"])
