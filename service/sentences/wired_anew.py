"""Batteries joined that are all new, and those whose volts lie apart."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import new_and_old
from service.judgements.joining import figures, pair
from service.judgements.may_be_joined import not_allowed
from service.judgements.unlike import LIMITS
from service.reply import Answer, Figure
from service.sentences.bank import SAID, outcome
from service.topic import Topic

JOINS = regex(
    r"\b(?:series|parallel|join\w*|mix\w*|together|beside|alongside|link\w*|connect\w*|wir(?:e|ing)|add\w*)\b", re.I
)


def new_together(topic: Topic, case: Case) -> Answer | None:
    """Lead batteries all bought new in place of those spoken of: none wears another; None where they are not."""
    how, count = new_and_old.layout_meant(case), float(case.get("battery.count", 1.0))
    if (
        not case.before
        or not new_and_old.all_new(case.text)
        or case.get("battery.family") != "lead"
        or how is None
        or count < 2
    ):
        return None
    if "battery.age" in case.stated or not_allowed(topic, case, how, may=True, family="lead"):
        return None
    case.because("Alike and equally new, none of them wears another", LIMITS["kind"].cite)
    return topic.says(
        "yes", f"Yes, all new is better: {outcome(case, how)}, and none wears another.", *figures(case, how)
    )


def weighed(case: Case) -> bool:
    """Whether batteries of 6 V and of 12 V are the choice, and none are to be joined: "which is better, 6 or 12 V"."""
    return case.says("request:versus", "request:which", "put:choice") and not JOINS.search(case.text)


def either_volts(topic: Topic, case: Case, low: float, high: float) -> Answer:
    """Batteries of less volts, so many in series, or one of more: what each comes to."""
    count = round(high / low)
    case.step("In series the volts add and the amp-hours stay", LIMITS["sums"].cite)
    number = {2: "two", 3: "three", 4: "four"}.get(count, f"{count}")
    less, more = say.quantity(low, "V"), say.quantity(high, "V")
    head = f"Either will do: {number} {less} batteries in series make {more} with the amp-hours of one, so compare "
    return topic.says("information", f"{head}the Ah at {more}; never mix the two.")


def volts_apart(topic: Topic, case: Case) -> Answer | None:
    """Unlike volts, or volts that their load cannot use."""
    both = pair(case, "battery.nominal")
    if both and weighed(case):
        return either_volts(topic, case, *(float(volts) for volts in sorted(both)))
    if both and both[0] != both[1]:
        case.step("Batteries of unlike volts drive current into each other", LIMITS["kind"].cite)
        first, second = (say.quantity(float(volts), "V") for volts in both)
        return topic.says("no", f"No: a {first} and a {second} battery must never be joined.")
    built, wanted = case.get("bank.built_voltage"), case.get("load.voltage") or case.said("bank.voltage")
    if {"bank.layout", "battery.nominal"} <= set(case.stated) and built and wanted and built != wanted:
        they = SAID.get(case["bank.layout"], "like this")
        head = f"No: {they} they make {say.quantity(built, 'V')}, and {say.quantity(wanted, 'V')} is needed."
        case.step("In series the volts add, in parallel they stay", LIMITS["sums"].cite)
        return topic.says("no", head, Figure("bank_voltage", "together", built, "V"))
    return None
