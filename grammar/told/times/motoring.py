"""Hours in which the engine runs and charges: "we motor an hour a day", "the engine runs 3 hours"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

WHO = r"(?:we|i|they|you|to|and|usually|normally|always|only|then|will|must|should|he|she|customers?|owners?)"
ENGINE = (
    rf"(?:\b{WHO} (?:(?!thruster)\w+ )?(?:motor|steam)(?:s|ed|ing)?|\bmotoring|\bsteaming|\bunder (?:engine|power)"
    r"|\b(?:run|runs|running|ran) (?:the |our |my |its )?(?:engine|diesel|main)"
    r"|\bengine (?:is )?(?:runs?|on|running|going)"
    r"|\balternator (?:runs|charges|feeds|gives|works)(?: (?!minnow|pike|sturgeon)[a-z]+){0,3}|\bengine hours?:?)"
)
ABOUT = r"(?: (?:for|about|around|maybe|perhaps|only|just|roughly|some|up to|at least|another|say|is|of|time))*,? ?"
NUMBERS = {
    **{word: float(at) for at, word in enumerate(("one", "two", "three", "four", "five", "six", "seven", "eight"), 1)},
    **{"a": 1.0, "an": 1.0, "half an": 0.5, "half a": 0.5},
}
AMOUNT = rf"(?P<{{0}}>\d+(?:[.,]\d+)?|{'|'.join(sorted(NUMBERS, key=len, reverse=True))})"
UNIT = r"[ -]?(?P<{0}>h|hrs?|hours?|mins?|minutes?)\b"
A_DAY = r"(?: (?:a|per|each|every|the) (?:day|trip|time|weekend|outing)| daily)?"
OF_ENGINE = rf"(?:['’]s?)?{A_DAY} (?:of )?(?:motoring|steaming|engine|under (?:engine|power))\b"
ELECTRIC = regex(  # a motor that drives the boat runs off the battery, and charges none
    r"\b(?:trolling|outboards?|electric(?:al)? (?:motor|launch|boat|drive|propulsion|inboard|engine))\b", re.IGNORECASE
)
BEFORE = regex(rf"{ENGINE}{ABOUT}$", re.IGNORECASE)
AFTER = regex(rf"^{OF_ENGINE}", re.IGNORECASE)
TOLD = regex(
    rf"{ENGINE}{ABOUT}{AMOUNT.format('after')}{UNIT.format('unit')}"
    rf"|\b{AMOUNT.format('before')}{UNIT.format('of')}{OF_ENGINE}",
    re.IGNORECASE,
)


def is_motoring(text: str, before: str, after: str) -> bool:
    """Whether a time of a text, between these words of it, is one in which the engine runs."""
    if ELECTRIC.search(text):
        return False
    return BEFORE.search(before) is not None or AFTER.match(after) is not None


def hours(text: str) -> float | None:
    """The hours that are told.

    >>> hours("we motor about 1 hr a day"), hours("two hours of motoring"), hours("the thruster motor ran 2 hours")
    (1.0, 2.0, None)
    """
    found = TOLD.search(text)
    if found is None or ELECTRIC.search(text):
        return None
    typed, unit = (found["after"], found["unit"]) if found["after"] else (found["before"], found["of"])
    amount = NUMBERS.get(typed.lower()) or float(typed.replace(",", "."))
    return amount / 60 if unit.lower().startswith("m") else amount
