"""One large battery or several smaller ones, between which is chosen: nothing is joined across the "or"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import supply
from service.judgements.cranking import limit
from service.judgements.joining import COUNT, figures
from service.reply import Answer, Figure, Option

ALIKE = {"yes": "Either will do", "marginal": "Either is only just enough", "no": "Neither will do"}
WANTED = {"yes": "{volts} is enough", "marginal": "a clear yes needs {volts}", "no": "{volts} is needed"}
SAME = 0.01  # capacities this close are one
EVENLY = regex(r"\b(?:evenly|equally|shar(?:e|es|ing) (?:the )?(?:load|current|work))\b", re.IGNORECASE)
SHARED = "several share evenly only if alike, plus taken from the first and minus from the last"
TRADE = "one battery has fewer joints to fail; of several, the others are left if one dies"


def sides(case: Case) -> tuple[Case, Case]:
    """The case of each side, with nothing of the other one."""
    one = case.fresh()
    one.second = {}
    return one, case.others()


def several(case: Case) -> Case:
    """The side of more than one."""
    return max(sides(case), key=lambda side: float(side.get(COUNT, 1)))


def name(side: Case) -> str:
    """One side in words: "one 700 CCA AGM battery", "two 450 CCA AGM batteries in parallel"."""
    words = supply.bank_name(side).removeprefix("your ")
    return words if " batteries " in words else f"one {words}"


def which(case: Case, answers: Sequence[Answer], named: Sequence[str]) -> str:
    """The sentence where both do alike, with the volts of each; "" where one is the better by its verdict."""
    volts, verdict = [_volts(item) for item in answers], answers[0].verdict
    if verdict != answers[1].verdict or verdict not in ALIKE or not all(volts):
        return ""
    held = "hold" if " batteries " in named[0] else "holds"
    wanted = say.volts(limit("battery-yes") * float(case["bank.voltage"]) / 12)
    told = f"{named[0]} {held} about {volts[0]}, {named[1]} {volts[1]}"
    return f"{ALIKE[verdict]}: {told}, and {WANTED[verdict].format(volts=wanted)}."


def _volts(answer: Answer) -> str:
    shown = {item.name: item.value for item in answer.figures}
    volts = shown.get("terminal_voltage_at_inrush")
    return "" if volts is None else say.volts(float(volts))


def held(case: Case) -> tuple[str, tuple[Option, ...]]:
    """What the two sides hold: the sentence, and their figures side by side."""
    options = tuple(_option(side) for side in sides(case))
    case.source("od1002")
    if any(_figure(option, "bank_energy") for option in options):
        case.source("energy-volts")
    for side in sides(case):
        side.get("battery.family")
        for fact in ("battery.capacity", "battery.cca", COUNT):
            side.known(fact)
        case.used.update({key: item for key, item in side.used.items() if key[0].startswith("battery.")})
    if EVENLY.search(case.text):
        case.source("bank-practice")
        return _sentence(options, SHARED), options
    return _sentence(options), options


def _option(side: Case) -> Option:
    in_series, in_parallel = float(side.get("bank.in_series", 1)) > 1, float(side.get("bank.in_parallel", 1)) > 1
    how = "series-parallel" if in_series and in_parallel else "series" if in_series else "parallel"
    return Option(name(side), "information", figures(side, how))


def _sentence(options: Sequence[Option], trade: str = TRADE) -> str:
    for figure, verb in (("bank_capacity", "more"), ("bank_cca", "more starting power")):
        shown = [_figure(option, figure) for option in options]
        if not all(shown):
            continue
        one, other = (float(item.value) for item in shown if item)
        if abs(one - other) <= SAME * max(one, other):
            return f"Both hold {'the same' if figure == 'bank_capacity' else 'the same starting power'}: {trade}."
        most = 0 if one > other else 1
        amounts = [say.quantity(value, "Ah") if figure == "bank_capacity" else say.cca(value) for value in (one, other)]
        has = "have" if " batteries " in options[most].label else "has"
        told = f"{options[most].label} {has} {verb}, {amounts[most]} against {amounts[1 - most]}"
        return f"{say.capital(told)}; {trade}."
    return f"{say.capital(trade)}."


def _figure(option: Option, name: str) -> Figure | None:
    return next((item for item in option.figures if item.name == name), None)
