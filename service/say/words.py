"""Facts and lists in words."""

from __future__ import annotations

import re

from grammar.facts import facts
from grammar.text.patterns import regex
from service.say.numbers import NB, at_most, quantity
from service.say.shares import whole_percent
from service.say.times import duration

SYMBOL = {
    "volt": "V",
    "ampere": "A",
    "ampere_hour": "Ah",
    "watt": "W",
    "watt_hour": "Wh",
    "second": "s",
    "minute": "min",
    "hour": "h",
    "day": "d",
    "year": "years",
    "meter": "m",
    "millimeter ** 2": "mm2",
    "meter ** 3": "m3",
    "kilogram": "kg",
    "percent": "%",
    "degree_Celsius": "C",
    "": "",
}
DERIVED = {  # units of facts that only rules give, by their last word: "bank.cca", "battery.start_voltage"
    "capacity": "Ah",
    "cca": "A",
    "current": "A",
    "energy": "Wh",
    "voltage": "V",
    "volts": "V",
}
CABLE_WORDS = {"cable.insulation": "insulation", "cable.drop": "loss"}
CHEMISTRY = {
    "flooded": "wet-cell",
    "agm": "AGM",
    "gel": "gel",
    "lead": "lead",
    "lfp": "lithium",
    "lithium-other": "lithium-ion",
}
VERDICT = {  # of one of two things, beside the other
    "yes": "yes",
    "marginal": "only just",
    "no": "no",
    "needs-facts": "one fact is missing",
}


def capital(text: str) -> str:
    """The text with a capital letter first; the rest stays as it is."""
    return text[:1].upper() + text[1:]


def listed(parts: list[str], word: str = "and") -> str:
    """ "a, b and c"."""
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} {word} {parts[-1]}" if parts else ""


def gauge(text: str) -> str:
    """A wire gauge: "1/0 AWG"."""
    return f"{text}{NB}AWG"


def symbol(fact: str) -> str:
    """The unit of a fact as the JSON writes it: "Ah", "mm2", "" for none. Derived facts go by their last word."""
    spec = facts().get(fact)
    return SYMBOL.get(spec.unit, spec.unit) if spec else DERIVED.get(re.split(r"[._]", fact)[-1], "")


AN = regex(r"\b(a|(?:^|(?<=[.:;] ))A)(?= (?:8[\d.]*|1[18](?:\.\d+)?)(?![\d/]))")


def with_articles(text: str) -> str:
    """A text with "an" before the numbers that begin with a vowel.

    >>> with_articles("A 80 A charger, a 8 mm stud, a 18 A load and a 110 Ah battery; a 1.8 V sag")
    'An 80 A charger, an 8 mm stud, an 18 A load and a 110 Ah battery; a 1.8 V sag'
    """
    return AN.sub(lambda found: f"{found[1]}n", text)


ITS_OWN_WAY = {"battery.charge": whole_percent, "cable.ampacity": at_most}  # what is given rounds down


def fact(name: str, value: float | str | bool) -> str:
    """The value of a fact as people write it: "340 A", "AGM", "2/0 AWG"."""
    if name == "cable.in_engine_space":
        return "in the engine space" if value else "outside the engine space"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if name in CABLE_WORDS:
        return f"{quantity(float(value), symbol(name))} {CABLE_WORDS[name]}"
    if name == "cable.gauge":
        return gauge(str(value))
    if name in ("battery.chemistry", "charger.setting"):
        return CHEMISTRY.get(str(value), str(value))
    if isinstance(value, str):
        return value
    if name in ITS_OWN_WAY:
        return ITS_OWN_WAY[name](float(value))
    if symbol(name) == "V":  # a reading of 12.15 V is not one of 12.2 V
        return quantity(value, "V", 2 if abs(value * 10 - round(value * 10)) > 1e-6 else None)
    if symbol(name) == "s" and value >= 60:
        return duration(value / 60)
    return quantity(value, symbol(name))
