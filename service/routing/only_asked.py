"""A message that says which part of it is the question: "... just asking if a 10 A charger is enough"."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from grammar.reading import Message, Span
from grammar.text.patterns import regex
from service.routing.request import Request
from service.routing.route import WEAK
from service.routing.settled import asked_behind, asked_by_itself
from service.routing.tally import HAZARD

MARK = regex(
    r"\b(?:just|only|simply) (?:asking|wondering|wanted to (?:know|ask)|want to (?:know|ask)|need to know|curious)\b"
    r"|\b(?:my|our|the) (?:only |actual |real )?question is\b|\b(?:what )?i (?:really )?want to know is\b",
    re.IGNORECASE,
)
BOTH = regex(  # "please rule on both": what the other one said is asked as well
    r"\b(?:rule|judge|decide|settle|answer|verdict|opinion|thoughts?|advice|say|right|views?)(?: \w+)?"
    r"(?: on| about| to)? (?:both|each|either)\b(?! (?:batter|bank|charger|agm|gel|wet|lithium|end|pole|post)\w*)"
    r"|\bboth (?:questions|points|matters|of us|arguments|claims)\b",
    re.IGNORECASE,
)
ENDS = regex(r"[?!;\n]|\.(?!\d)|,\s+(?:the|it|its|we|i|my|our|they|there|he|she)\b", re.IGNORECASE)
POINTS_BACK = regex(r"\bwhether (?:it|this|that|they|these|she|he)\b", re.IGNORECASE)
PLAIN, PLAIN_LEAD = 8, 24  # points of a part's topic, and those over the next, that the whole does not name
CLEAR = 20  # points of a question that stands for itself beside what is told
SHORTEST = 12  # characters of a question


def marked(text: str) -> Span | None:
    """Where the one question stands that a message says it asks; None where it asks another one besides."""
    found = MARK.search(text)
    if found is None or "?" in text[: found.start()] or BOTH.search(text):
        return None
    end = ENDS.search(text, found.end())
    last = end.start() if end else len(text)
    if last - found.end() < SHORTEST or "?" in text[last + 1 :]:
        return None
    return found.start(), min(last + 1, len(text))


def only_asked(
    message: Message, asks: Callable[[str], tuple[Request, ...]], whole: Callable[[], tuple[Request, ...]]
) -> tuple[Request, ...]:
    """The requests of the part that is said to be the question; none where nothing says so or it is not understood.

    `asks` finds the questions of a text; `whole` those of all of the message: a part that only points back ("whether it
    may stay so") asks nothing that the whole does not.
    """
    told = {item.status for item in message.dangers} - {"denied", "planned"}
    span = None if told else marked(message.text)
    behind = None if told or span else asked_behind(message.text)
    if behind and not BOTH.search(message.text):
        return _of_these(message, _placed(asks(message.text[slice(*behind)]), behind), whole())
    alone = None if told or span else asked_by_itself(message.text)
    if alone and not BOTH.search(message.text):
        found = asks(message.text[slice(*alone)])
        sure = len(found) == 1 and found[0].points >= CLEAR
        return _of_these(message, found, whole()) if sure else ()
    if span is None or not message.text[: span[0]].strip() + message.text[span[1] :].strip():
        return ()
    found = asks(message.text[slice(*span)])
    if not found or {item.topic for item in found} & {"unclear", "hazard"}:
        return ()
    if POINTS_BACK.search(message.text[slice(*span)]):
        return tuple(item for item in whole() if item.topic in {one.topic for one in found}) or whole()
    return tuple(_of_the_whole(item, message, span) for item in _placed(found, span))


def _placed(found: tuple[Request, ...], part: Span) -> tuple[Request, ...]:
    """The requests of a part by their places in the whole."""
    return tuple(replace(item, span=(item.span[0] + part[0], item.span[1] + part[0])) for item in found)


def _of_these(message: Message, found: tuple[Request, ...], whole: tuple[Request, ...]) -> tuple[Request, ...]:
    """The requests of the whole that are those of a part as well, or that ask without a question. Where it has none
    of the part's, what that asks plainly, else all of them."""
    names = {item.topic for item in found}
    told = {"other-desk", HAZARD} | ({"load-voltage"} if any(map(message.says, WEAK)) else set())
    kept = tuple(item for item in whole if item.topic in names)
    clear = len(found) == 1 and found[0].points >= PLAIN and found[0].lead >= PLAIN_LEAD
    if not kept and clear and not (names & {"unclear", "other-desk"} or any(item.topic == HAZARD for item in whole)):
        return found
    return tuple(item for item in whole if item.topic in names | told) if kept else whole


def _of_the_whole(request: Request, message: Message, span: Span) -> Request:
    """The request as the whole message tells its figure: volts that were read under load before the question came."""
    asked = message.text[slice(*span)]
    under, rest = (
        any(item.fact == fact and re.search(rf"(?<![\d.,]){re.escape(item.text.split()[0])}(?![\d])", asked)
            for item in message.stated)
        for fact in ("reading.load_voltage", "reading.voltage")
    )  # fmt: skip
    return replace(request, topic="load-voltage") if request.topic == "rest-voltage" and under and not rest else request
