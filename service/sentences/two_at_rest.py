"""Two batteries at rest side by side, in words."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service.case import Case
from service.judgements.doubt import shown
from service.reply import Answer
from service.sentences import at_rest, rest_beside_load, wording
from service.told import same_volts

READING, KIND = "reading.voltage", "battery.chemistry"
CHARGE_IT = {"no": "so charge the low one today, alone", "marginal": "so charge the lower one alone"}

BOTH_FULL = regex(r"\bboth (?:\w+ ){0,2}full\b|\bequally full\b", re.IGNORECASE)


def share_a_reading(case: Case) -> None:
    """Take a reading that is told of two kinds as that of each: equal volts are not equal charges."""
    read, kinds = case.stated.get(READING), (case.stated.get(KIND), case.second.get(KIND))
    if read is None or read.span is None or READING in case.second:
        return
    one, other = (known.span if known else None for known in kinds)
    if one and other and same_volts.told(case.text, read.span, (one, other)):
        case.second = {**case.second, READING: replace(read, of=2)}


def names(case: Case, other: Case) -> list[str]:
    """What each is called: by its volts, and by its kind where that differs."""
    volts, kinds = _volts(case, other), [wording.kind(of) for of in (case, other)]
    if KIND not in case.second:
        told = [shown(read) for read in volts]
        return told if volts[0] != volts[1] else [f"first, {told[0]}", f"second, {told[1]}"]
    if volts[0] == volts[1]:
        return [f"the {kind}" for kind in kinds]
    return [f"{shown(read)} ({kind})" for read, kind in zip(volts, kinds, strict=True)]


def parts(labels: list[str], answers: tuple[Answer, Answer]) -> list[str]:
    """How full each is."""
    return [f"{name} is {at_rest.summary(item)}" for name, item in zip(labels, answers, strict=True)]


def lowest(answers: tuple[Answer, Answer]) -> float:
    """The lower charge of the two in percent."""
    charges = (item.value for found in answers for item in found.figures if item.name == "state_of_charge")
    return min((float(value) for value in charges), default=100.0)


def headline(case: Case, other: Case, answers: tuple[Answer, Answer], verdict: str) -> str:
    """The verdict on the two, and how full each is."""
    labels, opening = names(case, other), wording.opening(case, verdict)
    if verdict == "yes" and BOTH_FULL.search(case.text):  # good is not yet full
        opening = wording.whether_full(lowest(answers))
    sides, told = list(zip(labels, answers, strict=True)), parts(labels, answers)
    if case.says("detail:what_now") and (todo := at_rest.to_do(sides, told)):
        return todo
    if decision := at_rest.which_is_bad(case.text, sides, told):
        return decision
    volts = _volts(case, other)
    if KIND in case.second and volts[0] == volts[1]:
        told[0] = f"at {shown(volts[0])} {told[0]}"
    advice = _advice(case, sides, verdict)
    return f"{opening}: {told[0]}, and {told[1]}{f', {advice}' if advice else ''}."


def _advice(case: Case, sides: list[tuple[str, Answer]], verdict: str) -> str:
    if verdict == "information":
        return "so switch all off and read both again" if rest_beside_load.with_load(case) else ""
    low = [(name, item) for name, item in sides if item.verdict in ("no", "marginal")]
    if verdict not in CHARGE_IT or not sides[0][0].startswith("the "):
        return CHARGE_IT.get(verdict, "")
    today = " today" if any(item.urgency == "today" for _, item in low) else " soon"
    return f"so charge {low[0][0] if len(low) == 1 else 'both'}{today}"


def _volts(case: Case, other: Case) -> tuple[float, float]:
    return float(case[READING]), float(other[READING])
