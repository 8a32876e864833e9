"""What is said where a turn gets the answers of the turn before once more."""

from __future__ import annotations

from collections.abc import Iterable

from grammar.reading import Message
from service.evidence import asks_outright
from service.reply import Answer
from service.route import Request

STANDS = "With that the answer stays as it was."
NOTHING_NEW = "We found nothing in this that changes the answer."
AGAIN = "The answer is the same as before. If you asked something else, please say it in other words."
READ_TOO = " One of our technicians reads it too."


def repeated(answers: Iterable[Answer], requests: Iterable[Request], message: Message) -> str | None:
    """The notice for answers that were given one turn before: whether what was told or asked now went into them."""
    if any(item.verdict == "stop" for item in answers):
        return None
    taken = any(item.source == "message" for answer in answers for item in answer.understood)
    if taken:
        return None if asks_outright(message) else STANDS  # the same question once more has its answer
    notice = AGAIN if asks_outright(message) else NOTHING_NEW
    return notice if any(item.evidence for item in requests) else notice + READ_TOO
