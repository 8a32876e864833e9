"""12 V from one battery of a 24 V bank: what it does to both batteries, and what to fit in its place."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service.case import Case
from service.judgements import joining
from service.judgements.unlike import LIMITS
from service.reply import Answer, Figure
from service.topic import Topic

EMPTIED_MORE = "That battery is emptied more, and the charger then overcharges the other one"
SMALL_ONES = "From the whole bank, through a 24 to 12 V converter: never from one of its batteries."
FILLS_ONE = regex(  # "hang the 12 V alternator on the lower one"
    r"\balternator\b(?: [\w']+){0,6} (?:lower|bottom|first|upper|top|one of|only one|just one)\b", re.IGNORECASE
)


def tapped(topic: Topic, case: Case) -> Answer:
    """12 V from one battery of a 24 V bank, or an alternator's 12 V on one of them alone."""
    if FILLS_ONE.search(case.text):
        case.because("The battery without the alternator is emptied and never filled", "series-charging")
        head = "No: a 12 V alternator on one battery of a 24 V bank never fills the other; fit a 12 to 24 V charger."
        return topic.says("no", head)
    case.step(EMPTIED_MORE, LIMITS["tap"].cite)
    head = "No: taking 12 V from one battery of a 24 V bank ruins both; fit a 24 to 12 V converter."
    return topic.says("no", head, *together(case))


def together(case: Case) -> tuple[Figure, ...]:
    """What the bank itself makes, where its batteries and how they are joined are told: the volts that are told beside
    it may be those of the tap."""
    how = str(case.said("bank.layout"))
    if how not in ("series", "series-parallel") or not case.said("battery.nominal") or not case.said("battery.count"):
        return ()
    bank = case.supposing({}, ["bank.voltage"])
    shown = joining.figures(bank, how)
    case.follow(bank)
    return shown


def both_wrong(topic: Topic, case: Case, unlike: Answer) -> Answer:
    """12 V from one battery of a bank whose batteries must not be joined in the first place."""
    first = unlike.headline.removeprefix("No: ").removesuffix(".").partition(", ")[0].partition("; ")[0]
    head = f"No to both: {first}, and 12 V from one of them ruins both, so fit a 24 to 12 V converter."
    return replace(tapped(topic, case), headline=head, figures=unlike.figures)
