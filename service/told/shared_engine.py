"""Whether the load hangs on the battery that starts the engine, in words about both that no phrase holds."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

CUE = "detail:engine_battery"  # what the words of the lexicon say of it
BATTERY = r"\b(?:batter(?:y|ies)|batts?|accus?|accumulators?)\b"
ENGINE = r"(?:(?:the|my|our|his|her|their|an?) )?(?:(?:main|inboard|boat['’]?s) )?(?:engine|diesel|outboard|motor)\b"
LOAD = r"\b(?:thruster|bow prop|windlass|winch)\b"
JOINED = r"\b(?:and|with|plus|as well as|\+|&) "
ONE = r"\b(?:on|off|from|by|have|share) (?:just |only )?(?:the same|one|the one|a single|a shared|a common)\b"
SAME = (  # not "I bought the same battery as the diesel has", which is another one
    r"\b(?:on|off|from|to|with|by|us(?:e|es|ing)|shar(?:e|es|ing)) (?:exactly )?(?:the |one )?same (?:\w+ ){0,3}?"
    rf"{BATTERY} (?:as|like|with|that|which) (?:for |of |feeds |serves |cranks )?{ENGINE}(?! (?:has|had|got)\b)"
)
ITS = rf"{BATTERY} (?:(?:which|that) is )?(?:there )?(?:for|of|from) {ENGINE}"
TOGETHER = (
    rf"{LOAD}[^.?!;]{{0,30}}{JOINED}{ENGINE}[^.?!;]{{0,30}}{ONE}[^.?!;,]{{0,25}}{BATTERY}"
    rf"|{ENGINE}[^.?!;]{{0,15}}{JOINED}(?:\w+ ){{0,3}}{LOAD}[^.?!;]{{0,30}}{ONE}[^.?!;,]{{0,25}}{BATTERY}"
)
THEIRS = (  # as on a list: no kind of battery, of which one would be "a starter battery"
    r"^\W*start(?:er|ing)? (?:bat|batt|battery)\b[,:]? (?:is )?(?:12 ?v,? )?\d{3,4} ?(?:cca|mca|ca|a)\b"
)
TOLD = regex(rf"{SAME}|{TOGETHER}|{THEIRS}", re.IGNORECASE)
FED = regex(rf"\b(?:on|off|from|us(?:e|es|ing)) (?:the |my |our |that |one )?(?:\w+ )?{ITS}", re.IGNORECASE)


def told(text: str) -> bool:
    """Whether both hang on one battery.

    >>> told("may the thruster hang on the same start battery like the motor?")
    True
    >>> told("the thruster with the diesel on one battery of 900 CCA"), told("thruster off the battery for the diesel")
    (True, True)
    >>> told("starter battery 720 cca, turns a Pike?"), told("a starter battery 720 cca, turns a Pike?")
    (True, False)
    >>> told("I bought the same battery as the diesel has"), told("the thruster and the diesel have a battery each")
    (False, False)
    """
    return TOLD.search(text) is not None or FED.search(text) is not None


def kept(text: str) -> tuple[str, ...]:
    """The cue that a conversation keeps of it."""
    return (CUE,) if told(text) else ()
