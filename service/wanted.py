"""The questions of one message in its thread."""

from __future__ import annotations

from grammar.reading import Message
from service.no_idea import NO_IDEA
from service.route import Request, route
from service.thread import Thread
from service.topics.unclear import BACK, outside

FEW = 12  # words of a message that says no more than that something is not known
OTHER_BOAT = "note:other_boat"  # its batteries had nothing to do with the danger; another battery aboard may have
UNTOLD = "default"  # how a figure is taken that nothing near it explains
OF_A_BOAT = ("battery.", "load.")


def wanted(message: Message, thread: Thread) -> tuple[Request, ...]:
    """The questions of a message; the last ones once more where facts are corrected or it says "no idea"."""
    if not message.text.strip() or lost_for_an_answer(message, thread):
        return tuple(Request(name, (0, 0)) for name in thread.topics)
    told = [item for item in message.stated if item.how != UNTOLD]
    if not told and not message.dangers and outside(cue.name for cue in message.cues):
        return (Request("unclear", (0, len(message.text))),)
    anew = any(item.fact.startswith(OF_A_BOAT) for item in message.stated)
    if OTHER_BOAT in thread.cues and message.says(BACK) and not anew:  # the first boat's figures are gone
        return (Request("unclear", (0, len(message.text))),)
    return tuple(route(message, context=thread.topics, asked=thread.asks))


def lost_for_an_answer(message: Message, thread: Thread) -> bool:
    """Whether a message only says that what the desk asked for is not known."""
    asks = "?" in message.words or len(message.words) > FEW
    return bool(thread.asks) and message.says(NO_IDEA) and not (message.stated or message.dangers or asks)
