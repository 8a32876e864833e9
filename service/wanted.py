"""The questions of one message in its thread."""

from __future__ import annotations

from grammar.reading import Message
from service.in_thread import goes_on_with
from service.no_idea import NO_IDEA
from service.route import Request, route
from service.thread import Thread
from service.topics.unclear import BACK

FEW = 12  # words of a message that says no more than that something is not known
OTHER_BOAT = "note:other_boat"  # its batteries had nothing to do with the danger; another battery aboard may have
GOES_ON = "the thread goes on"  # as evidence
OF_A_BOAT = ("battery.", "load.")


def wanted(message: Message, thread: Thread) -> tuple[Request, ...]:
    """The questions of a message; the last ones once more where facts are corrected or it says "no idea"."""
    if not message.text.strip() or lost_for_an_answer(message, thread):
        return tuple(Request(name, (0, 0)) for name in thread.topics)
    anew = any(item.fact.startswith(OF_A_BOAT) for item in message.stated)
    if OTHER_BOAT in thread.cues and message.says(BACK) and not anew:  # the first boat's figures are gone
        return (Request("unclear", (0, len(message.text))),)
    whole = (0, len(message.text))
    if topics := goes_on_with(message, thread):
        return tuple(Request(name, whole, evidence=(GOES_ON,)) for name in topics)
    return tuple(route(message, context=thread.topics, asked=thread.asks))


def lost_for_an_answer(message: Message, thread: Thread) -> bool:
    """Whether a message only says that what the desk asked for is not known."""
    asks = "?" in message.words or len(message.words) > FEW
    return bool(thread.asks) and message.says(NO_IDEA) and not (message.stated or message.dangers or asks)
