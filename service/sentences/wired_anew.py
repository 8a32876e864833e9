"""Batteries joined that are all new, and those whose volts lie apart."""

from __future__ import annotations

from service import say
from service.case import Case
from service.judgements import new_and_old
from service.judgements.joining import figures, pair
from service.judgements.may_be_joined import not_allowed
from service.judgements.unlike import LIMITS
from service.reply import Answer, Figure
from service.sentences.bank import SAID, outcome
from service.topic import Topic


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


def volts_apart(topic: Topic, case: Case) -> Answer | None:
    """Unlike volts, or volts that their load cannot use."""
    both = pair(case, "battery.nominal")
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
