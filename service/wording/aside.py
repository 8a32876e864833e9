"""A second question beside a danger, in sentences of its own: it is answered below where the answer harms nobody.

Beside a danger the bar for a topic is high, as most of what stands there is part of the story. A sentence that holds
no sign of it is weighed by itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar import read
from grammar.reading import Message, Stated
from service.reply import Answer
from service.routing.request import HANDED_OVER, Request
from service.routing.route import route
from service.routing.tally import HAZARD

ENDS = (".", "!", "?", ";", "\n")
LEAST = 0  # points: under that only figures and names speak for a topic, and nothing is asked
LONGEST = 4000  # characters: a story longer than this beside a danger is for a person to read
PLANS = frozenset(  # what tells of things to buy or to know, and sends nobody to the battery
    {
        "bank-size",
        "cold-cranking",
        "group-size",
        "meaning",
        "rating-convert",
        "specific-gravity",
        "voltage-drop",
        "weight",
    }
)


def asides(message: Message, models: Sequence[str], said: Sequence[Stated]) -> tuple[Request, ...]:
    """The questions that stand before or after what tells of a danger."""
    if not any(item.status == "present" for item in message.dangers):
        return ()
    found = [
        Request(item.topic, (item.span[0] + start, item.span[1] + start), item.points, item.lead, item.evidence)
        for start, text in apart(message)
        for item in route(read(text, models=models, said=said))
        if item.topic not in (*HANDED_OVER, HAZARD) and item.evidence and item.points > LEAST
    ]
    return tuple(found)


def apart(message: Message) -> Iterator[tuple[int, str]]:
    """The sentences before the first sign and after the last one, each stretch with its place."""
    first, last = message.dangers[0].span[0], max(item.span[1] for item in message.dangers)
    ends = [at + 1 for at, mark in enumerate(message.text) if mark in ENDS]
    before = max((at for at in ends if at <= first), default=0)
    after = min((at for at in ends if at >= last), default=len(message.text))
    for start, end in ((0, before), (after, len(message.text))):
        if message.text[start:end].strip() and end - start <= LONGEST:
            yield start, message.text[start:end]


def harmless(answer: Answer) -> bool:
    """Whether an answer is decided and tells of nothing to do at the battery."""
    return answer.verdict == "information" and answer.topic in PLANS and not answer.asks
