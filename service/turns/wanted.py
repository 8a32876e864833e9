"""The questions of one message in its thread."""

from __future__ import annotations

from grammar.reading import Message
from service.routing.ordered import of_papers
from service.routing.request import Request
from service.routing.route import route
from service.topics.unclear import BACK, outside
from service.turns.in_thread import goes_on_with
from service.turns.no_idea import FEW, not_known
from service.turns.thread import Thread
from service.turns.worked import SIZED, THEIRS

OTHER_BOAT = "note:other_boat"  # its batteries had nothing to do with the danger; another battery aboard may have
UNTOLD = "default"  # how a figure is taken that nothing near it explains
GOES_ON = "the thread goes on"  # as evidence
TESTS = frozenset({"reading.load_voltage", "reading.gravity_spread"})
OF_A_BOAT = ("battery.", "load.")
OTHER_SIZES = frozenset({"detail:to_mm2", "detail:to_awg"})


def wanted(message: Message, thread: Thread) -> tuple[Request, ...]:
    """The questions of a message; the last ones once more where facts are corrected or it says "no idea"."""
    if not message.text.strip() or lost_for_an_answer(message, thread):
        return tuple(Request(name, (0, 0)) for name in thread.topics)
    told = [item for item in message.stated if item.how != UNTOLD]
    boat_alone = not told and not message.dangers and outside(cue.name for cue in message.cues)
    if boat_alone and not of_papers(message):  # an invoice for anodes is no question about them
        return (Request("unclear", (0, len(message.text))),)
    anew = any(item.fact.startswith(OF_A_BOAT) for item in message.stated)
    if OTHER_BOAT in thread.cues and message.says(BACK) and not anew:  # the first boat's figures are gone
        return (Request("unclear", (0, len(message.text))),)
    if topics := goes_on_with(message, thread):
        return tuple(Request(name, (0, len(message.text)), evidence=(GOES_ON,)) for name in topics)
    found = tuple(route(message, context=thread.topics, asked=thread.asks))
    whole = (0, len(message.text))
    if decides_on_a_new_one(message, found, thread):
        return (*found, Request("replacement", whole, evidence=(GOES_ON,)))
    in_other_sizes = Request("cable-size", whole, evidence=("the cable as proposed, in other sizes",))
    return (in_other_sizes,) if _of_our_cable(message, found, thread) else found


def decides_on_a_new_one(message: Message, found: tuple[Request, ...], thread: Thread) -> bool:
    """Whether a test is told where it was asked if it is time for a new one: that question is still open."""
    tested = TESTS & {item.fact for item in message.stated}
    told = bool(tested) and {item.topic for item in found} <= {"load-voltage", "specific-gravity"}
    return bool(found) and told and "replacement" in thread.topics


def _of_our_cable(message: Message, found: tuple[Request, ...], thread: Thread) -> bool:
    """Whether "in mm2?" asks for the cable that the desk itself proposed, in other sizes."""
    proposed = any(name in thread.worked for name in SIZED) and not any(fact in thread.facts for fact in THEIRS)
    converts = [item.topic for item in found] == ["rating-convert"] and any(map(message.says, OTHER_SIZES))
    return proposed and converts and not message.stated


def lost_for_an_answer(message: Message, thread: Thread) -> bool:
    """Whether a message only says that what the desk asked for is not known."""
    asks = "?" in message.words or len(message.words) > FEW
    return bool(thread.asks) and not_known(message, thread) and not (message.stated or message.dangers or asks)
