"""A model of the house's that is told with other volts than the catalogue's, where amps, cable and fuse go wrong."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import supply
from service.reply import Answer
from service.rules.bank import system
from service.topic import CIRCUIT, Topic

SIZED = CIRCUIT | {"bank-size"}  # what follows from a model's amps and volts
VERSION = regex(
    r"\b(?P<volts>12|24|36|48) ?v(?:olts?)? (?:one|version|model|unit|type|thruster|motor)\b", re.IGNORECASE
)
TOLD = ("bank.voltage", "battery.nominal")


def apart(case: Case) -> tuple[float, float] | None:
    """The catalogue's volts and those that are told with the model; None where they agree or its own amps are told."""
    volts, model = case.stated.get("bank.voltage"), case.stated.get("load.model")
    made_for = case.get("load.voltage")
    if model is None or made_for is None or "load.current" in case.stated:
        return None
    if (version := VERSION.search(case.text)) and float(version["volts"]) != made_for:  # "and the 12 V one?"
        return float(made_for), float(version["volts"])
    if volts is None:
        return None
    if volts.origin == "thread" and model.origin == "message":  # told with the model before it
        return None
    others = (facts.get(fact) for facts in (case.stated, case.second) for fact in TOLD)
    told = {system(float(item.value)) for item in others if item is not None}
    return None if made_for in told else (float(made_for), system(float(volts.value)))


def asked_back(topic: Topic, case: Case) -> Answer | None:
    """What is said first where the volts of a model differ from the catalogue's; None where they do not."""
    differ = apart(case) if topic.name in SIZED else None
    if differ is None:
        return None
    ours, told = (say.quantity(volts, "V") for volts in differ)
    name = supply.load_name(case).removeprefix("the ")
    head = f"Our {name} is made for {ours}, not {told}: please read its plate first, as amps, cable and fuse follow."
    return topic.needs("bank.voltage", headline=head, likely=((ours, differ[0]),))
