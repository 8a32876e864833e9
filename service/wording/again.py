"""What is said where a turn gets the answers of the turn before once more."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from grammar.facts import facts
from grammar.reading import Message, Stated
from grammar.text.patterns import regex
from service import say
from service.reply import Answer
from service.routing.asking import asks_outright
from service.routing.request import Request

STANDS = "We have noted {facts}: with that the answer stays as it was."
NOTED = "We have noted {facts}."
STILL_OPEN = "We have noted {facts}; what is asked below still decides."
NOTHING_NEW = "We found nothing in this that changes the answer."
AGAIN = "The answer is the same as before. If you asked something else, please say it in other words."
CONCLUDES = regex(r"\W*(?:so|then)\b.*\b(?:can|could|may|need|should|must)\b", re.IGNORECASE)  # "so I can ... then"
NORM = regex(r"\b(?:en|din|jis)\b", re.IGNORECASE)
CHASED = "You have written before: one of our technicians takes your message over now."
READ_TOO = " One of our technicians reads it too."


def noted(message: Message) -> str:
    """The facts of a message, named: "10 A (charger amps)"."""
    told = {item.fact: item for item in reversed(message.stated)}
    return say.listed([_named(told[name]) for name in reversed(told)])


def _named(item: Stated) -> str:
    if isinstance(item.value, bool):
        return f'"{item.text}"'
    value, label = say.fact(item.fact, item.value), facts()[item.fact].label
    if item.fact == "battery.cca" and (norm := NORM.search(item.text)):
        return f"{say.amps(float(item.value))} by {norm[0].upper()} (CCA at most)"
    return value if label in value else f"{value} ({label})"  # "75 °C insulation" tells it


def taken_over(answers: Sequence[Answer], message: Message) -> str | None:
    """The notice for somebody who writes for the second or third time; none before a first action."""
    chased = message.says("note:chased") and all(item.verdict != "stop" for item in answers)
    return CHASED if chased else None


def repeated(answers: Sequence[Answer], requests: Iterable[Request], message: Message) -> str | None:
    """The notice for answers that were given one turn before: whether what was told or asked now went into them."""
    if any(item.verdict == "stop" for item in answers):
        return None
    if message.stated:
        if asks_outright(message):
            return None  # the same question once more has its answer
        if all(item.topic == "unclear" for item in answers):
            return NOTED.format(facts=noted(message))
        open_now = any(item.verdict == "needs-facts" for item in answers)
        return (STILL_OPEN if open_now else STANDS).format(facts=noted(message))
    notice = AGAIN if asks_outright(message) or CONCLUDES.match(message.text) else NOTHING_NEW
    return notice if any(item.evidence for item in requests) else notice + READ_TOO
