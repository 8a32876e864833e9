"""A DC-to-DC converter that is to run a motor itself, instead of charging a battery beside it."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import supply
from service.reply import Answer
from service.topic import Topic

FEEDS = regex(
    r"\b(?:tap|feed|fed|suppl|power|drive)\w*|\bstep(?:ped|ping|s)?(?: it)? up|\bstep-up"
    r"|\bruns?\b(?! (?:the |our |my )?(?:engine|motor\b|for))",
    re.IGNORECASE,
)
CHARGES = regex(  # a bank is what it feeds
    r"\b(?:re)?charg\w*|\bfill\w*|\btop\w* up\b|\bkeeps? up\b|\bput\w* back\b"
    r"|\b(?:feed|suppl|power)\w*(?: (?:the|my|our|a|its|own|bow|thruster|\d\d ?v))* (?:bank|batter)"
    r"|\b(?:to|into|onto) (?:the|my|our|a)(?: \w+){0,3} (?:bank|pair|batter)",
    re.IGNORECASE,
)


def judged(topic: Topic, case: Case) -> Answer | None:
    """That a converter's amps are too few for a motor; None where it charges, or nothing tells one of the two."""
    put_out = case.said("charger.current")
    if put_out is None or CHARGES.search(case.text) or not FEEDS.search(case.text):
        return None
    if "alternator.current" in case.stated:  # against which a charger is judged
        return None
    if not {"load.model", "load.current"} & set(case.stated) or not supply.is_motor(case):
        return None
    running, name = float(case["load.current"]), supply.load_name(case)
    if float(put_out) >= running:
        return None
    volts = say.quantity(float(case.get("load.voltage") or case["bank.voltage"]), "V")
    case.because(
        "A converter gives no more than its own amps, and a battery beside it gives the rest", "converter-power"
    )
    head = (
        f"No: a {say.amps(float(put_out))} converter cannot run {name}, which draws {say.amps(running)}; give it a "
        f"{volts} battery of its own, which the converter can at best charge."
    )
    return topic.says("no", head)
