"""What a message asks of a figure just told or worked out: "how many MCA is that", "and volts at the motor?"."""

from __future__ import annotations

import re
from collections.abc import Iterable

from grammar.reading import Message
from grammar.text.patterns import regex
from service.topic import CIRCUIT

AT_LOAD = "role:at_load"
FEW = 10  # words
VOLTS = regex(r"\b(?:volts?|voltage|v)\b", re.IGNORECASE)
SO_MANY = regex(r"\bhow (?:many|much)\b", re.IGNORECASE)
OF_THAT = regex(r"\bhow many [\w ]{1,24}?(?:is|are|would|does|s) (?:that|it|this|those)\b", re.IGNORECASE)
ITS_OTHER = regex(r"\b(?:its|the) m?ca\b(?= be| is|\?|$)|= ?\?+ ?m?ca\b", re.IGNORECASE)  # "650 CCA = ? MCA"
WHAT_IT_IS = regex(r"\bwhat(?:'?s| is| are| does) (?:an? |the )?(?:m?ca|cca|rc|ah|wh)\b", re.IGNORECASE)
OTHER_RATINGS = ("detail:to_ca", "detail:to_cca", "detail:to_ah", "detail:to_wh", "detail:to_rc")


def by_the_last(message: Message, context: Iterable[str]) -> str:
    """The topic of a short question that speaks of the answer before; "" for any other."""
    if volts_there(message, context):
        return "run-check" if "run-check" in context else "voltage-drop"
    of_that = not message.stated and len(message.words) <= FEW and bool(OF_THAT.search(message.text))
    return "rating-convert" if of_that and counted_otherwise(message) else ""


def volts_there(message: Message, context: Iterable[str]) -> bool:
    """Whether it asks what volts the load gets over a cable that was spoken of: "and V at the motor?"."""
    asked = message.says(AT_LOAD) and bool(VOLTS.search(message.text))
    told = {item.fact for item in message.stated} - {"load.kind"}
    return asked and not told and len(message.words) <= FEW and not CIRCUIT.isdisjoint(context)


def counted_otherwise(message: Message) -> bool:
    """Whether it asks how many of another rating something is: "how many MCA is that"."""
    text = message.text
    return bool(SO_MANY.search(text) and any(map(message.says, OTHER_RATINGS))) or bool(ITS_OTHER.search(text))


def explains(message: Message) -> bool:
    """Whether it asks what a rating is."""
    return bool(WHAT_IT_IS.search(message.text))
