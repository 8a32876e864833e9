"""Volts of two sides that do not go together: a flat 24 V bank jumped from 12 V, a 24 V thruster on a 12 V boat."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service.told import one_by_one

SYSTEM = r"(?P<{0}>12|24|36|48|twelve|twenty[- ]?four)[ -]?v(?:olts?)?\b"
WORDS = {"twelve": 12.0, "twentyfour": 24.0}
ANY = regex(SYSTEM.format("volts"), re.IGNORECASE)
JUMPS = regex(r"\b(?:jump|boost)\w*\b", re.IGNORECASE)
GIVER = regex(  # what the current comes from
    r"\b(?:from|off|with|using|by|via|to)\b(?:\W+(?!and\b|to\b)\w+){0,4}?\W+" + SYSTEM.format("volts"), re.IGNORECASE
)
IN_SERIES = regex(r"\bin series\b|\b(?:to|that) (?:make|give)s? (?:up )?(?:24|36|48)\b", re.IGNORECASE)
ONE_OF_IT = regex(r"\bone (?:battery )?of (?:it|them|the two|its)\b", re.IGNORECASE)
MOTOR = r"(?:thruster|windlass|winch|unit|motor|bow ?thruster)"
OF_MOTOR = regex(
    rf"{SYSTEM.format('before')}[ -](?:bow |stern |electric )?{MOTOR}\b"
    rf"|\b{MOTOR}\b(?!['’]?s? (?:bank|batter))(?: (?!boat\b|house\b|bank\b)\w+){{0,4}}?,? {SYSTEM.format('after')}",
    re.IGNORECASE,
)
ABOARD = r"(?:boat|house|domestic|service|everything|all|aboard|on board|engine)"
OF_BOAT = regex(
    rf"{SYSTEM.format('before')}[ -](?:house|domestic|service|boat|aboard|on board|engine|system)\b"
    rf"|\b{ABOARD}\b(?: (?:is|has|only|bank|battery|batteries|of|on|at|aboard|runs|just|all|with|are|a))*,? "
    rf"{SYSTEM.format('after')}",
    re.IGNORECASE,
)
NO_LOAD = (  # whose volts are a battery's: "a 24 V thruster bank", but not "a 12 V thruster"
    r"(?! (?:bow |stern |electric )?(?:thruster|motor|windlass|winch|unit|fridge|radio|lights?|pump|plotter|heater)s?\b"
    r"(?! (?:bank|batter)))"
)
LINKED = regex(
    rf"\b(?:link|join|connect|combin|parallel|tie|bridge|couple|hook)\w*\b[^.?!;]{{0,30}}?{SYSTEM.format('one')}{NO_LOAD}"
    rf"[^.?!;]{{0,30}}?\b(?:to|with|and|onto)\b[^.?!;]{{0,20}}?{SYSTEM.format('other')}{NO_LOAD}",
    re.IGNORECASE,
)
BETWEEN = regex(  # what is no join of the two: a converter, a series that makes the higher volts
    r"\b(?:series|dc[- ]?(?:to[- ]?)?dc|b2b|converters?|chargers?|inverters?|mak(?:e|es|ing)|two 12|2 ?x ?12"
    r"|(?<!twenty[ -])four|not)\b",
    re.IGNORECASE,
)
SIDES = regex(  # of a jump, in either order: "24V jump onto 12V", "jump leads, 12 V car to 24 V bank"
    rf"\bjump\w*\b[^.?!;]{{0,40}}?{SYSTEM.format('one')}{NO_LOAD}[^.?!;]{{0,40}}?{SYSTEM.format('other')}{NO_LOAD}"
    rf"|{SYSTEM.format('first')}{NO_LOAD}[^.?!;]{{0,40}}?\bjump\w*\b[^.?!;]{{0,40}}?{SYSTEM.format('then')}{NO_LOAD}"
    rf"|{SYSTEM.format('this')}{NO_LOAD}[^.?!;]{{0,40}}?{SYSTEM.format('that')}{NO_LOAD}[^.?!;]{{0,40}}?\bjump\w*\b",
    re.IGNORECASE,
)
FED = regex(r"\b(?:tap|feed|fed|take|run|supply|supplied|power|powered|hook|connect)\w*\b", re.IGNORECASE)
SMALL = regex(
    r"\b(?:lights?|lamps?|radio|vhf|fridge|freezer|pumps?|plotter|stereo|instruments?|electronics|heater)\b",
    re.IGNORECASE,
)
LOW = regex(r"\b(?:12|twelve)[ -]?v(?:olts?)?\b", re.IGNORECASE)
FED_SMALL = regex(
    r"\b(?:how|what|where)\b[^.?!]{0,200}\b(?:feed|fed|supply|supplied|power|powered|run|get|connect\w*|do about)\b",
    re.IGNORECASE,
)
A_BANK = regex(
    r"\b(?:24|36|48)[ -]?v(?:olts?)?\b(?: \w+)? (?:bank|pair|set|batter)|\b(?:in series|pair of|two 12)", re.IGNORECASE
)


def jumped(text: str) -> bool:
    """Whether batteries are to be joined by jump leads that have unlike volts.

    >>> jumped("jumping the dead 24 V bow bank from a 12V van"), jumped("jump my 12 V battery from a 12 V van")
    (True, False)
    >>> jumped("24V jump onto 12V, fine?"), jumped("two 12V in series, jump from 24 V?")
    (True, False)
    >>> jumped("my 24 V bank of two 12 V batteries, jump it from a 24 V lorry?")
    False
    """
    if (
        JUMPS.search(text) is None
        or IN_SERIES.search(text)
        or ONE_OF_IT.search(text)
        or one_by_one.IN_TURN.search(text)
    ):
        return False
    sides = SIDES.search(text)
    if sides and not BETWEEN.search(text):
        return len({_system(typed) for typed in sides.groupdict().values() if typed}) > 1
    giver = GIVER.search(text)
    own = [_volts(found) for found in ANY.finditer(text) if giver and found.end() != giver.end()]
    return giver is not None and bool(own) and max(own) != _volts(giver)


def linked(text: str) -> bool:
    """Whether batteries of unlike volts are to be joined with nothing between that turns one into the other.

    >>> linked("link my 12V house to the 24V bow bank with a VSR"), linked("connect two 12 V in series to make 24V")
    (True, False)
    """
    found = LINKED.search(text)
    if found is None or BETWEEN.search(text):
        return False
    return _system(found["one"]) != _system(found["other"])


def motor_above(text: str) -> tuple[float, float] | None:
    """The volts of a motor and the lower ones of the boat it is on, where no bank of its volts is told of.

    >>> motor_above("Customer ordered a 24 V unit, boat is 12 V house. Tap off the house?")
    (24.0, 12.0)
    >>> motor_above("12 V thruster, 24 V boat"), motor_above("24 V bank for the thruster, 12 V house bank")
    (None, None)
    """
    motor, boat = OF_MOTOR.search(text), OF_BOAT.search(text)
    if motor is None or boat is None or A_BANK.search(text):
        return None
    volts, aboard = _volts(motor), _volts(boat)
    return (volts, aboard) if volts > aboard else None


def small_ones(text: str, bank: object) -> bool:
    """Whether it is asked how lights and the like of 12 V are fed on a boat whose bank has 24 V.

    >>> small_ones("24 V now, how do my 12 V lights get fed?", 24.0), small_ones("feed the lights at 12 V?", 12.0)
    (True, False)
    """
    return bank == 24.0 and bool(FED_SMALL.search(text) and SMALL.search(text) and LOW.search(text))


def _volts(found: re.Match[str]) -> float:
    return _system(next(value for value in found.groupdict().values() if value))


def _system(typed: str) -> float:
    typed = typed.lower()
    return WORDS.get(re.sub(r"\W", "", typed)) or float(typed)
