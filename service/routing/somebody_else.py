"""What a message that is not for this desk asks: one in another language, an order, an invoice, a phone battery."""

from __future__ import annotations

from grammar.reading import Message
from service.routing.ordered import of_a_phone, of_papers, orders
from service.routing.request import Request

FOREIGN, FOREIGN_SHARE = 2, 8  # words of other languages, and how many words there are to one at most


def for_somebody_else(message: Message) -> Request | None:
    """What a message that is not for this desk asks, whatever its words: one in another language, an order."""
    whole = (0, len(message.text))
    if in_another_language(message):
        return Request("unclear", whole, evidence=("another language",))
    if of_papers(message):
        return Request("other-desk", whole, evidence=("an invoice or a receipt",))
    if of_a_phone(message):
        return Request("other-desk", whole, evidence=("the battery of a phone",))
    return Request("other-desk", whole, evidence=("so much cable to be bought",)) if orders(message) else None


def in_another_language(message: Message) -> bool:
    """Whether words of other languages stand in it too thickly for a stray one."""
    foreign = {cue.text.lower() for cue in message.cues if cue.name == "note:foreign"}
    return len(foreign) >= FOREIGN and FOREIGN_SHARE * len(foreign) >= len(message.words)
