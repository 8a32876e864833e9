"""What a later message makes of what was told before it: another season, a reading, the end at which volts were read.

Each gives the thread without what no longer holds, before the message is taken into it.
"""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Message
from grammar.text.patterns import regex
from service.turns.thread import Thread

TEMPERATURE = "ambient.temperature"
POSTS, MOTOR = "reading.load_voltage", "reading.load_voltage_at_load"
KIND = "battery.chemistry"
REST, REST_TIME, STATE = "reading.voltage", "reading.rest_time", "reading.state"
LATER = regex(  # "next day: 12.3", "two days later it reads 12.4"
    r"\b(?:the )?(?:next|following) (?:day|morning|evening)\b|\b(?:day|morning) after\b|\bthis morning\b"
    r"|\b(?:a|one|two|three|four|\d+) (?:days?|weeks?) (?:later|after|on)\b|\bafter (?:a|the) night\b",
    re.IGNORECASE,
)
ON_EACH = regex(
    r"(?<![\d.,])(?P<volts>\d{2}[.,]\d{1,2})(?: ?v(?:olts?)?)? (?:on|at|for|in) (?:the )?(?:one|first)\b[^.?!;\d]{0,24}"
    r"(?<![\d.,])(?P<again>\d{2}[.,]\d{1,2})(?: ?v(?:olts?)?)? (?:on|at|for|in) (?:the )?(?:other|second)\b",
    re.IGNORECASE,
)
WEIGHED = regex(
    r"\b(?:worth (?:getting|buying|going|changing|swapping|it)|should i (?:get|buy|go|swap|switch|change)"
    r"|(?:better|wiser) (?:to|off)|makes? sense)\b",
    re.IGNORECASE,
)
COLD, WARM = 10.0, 15.0  # °C: no summer is colder, no winter warmer
SUMMER = regex(
    r"\b(?:(?:in|during|over|come|for) (?:the |high |mid)?(?:summer(?:time)?|june|july|august)"
    r"|(?:when|once|if) (?:it|it's|its|it is)(?: is| gets)? (?:warm|warmer|hot|summer)\b"
    r"|in warm weather|in the warm)\b",
    re.IGNORECASE,
)
WINTER = regex(
    r"\b(?:(?:in|during|over|come) (?:the |deep |mid)?(?:winter(?:time)?|january|february|december)"
    r"|(?:when|once|if) (?:it|it's|its|it is)(?: is| gets)? (?:cold|colder|winter)\b"
    r"|in cold weather|in the cold)\b",
    re.IGNORECASE,
)


def meant(message: Message, thread: Thread) -> Message:
    """The message with its values at the batteries of which they are told."""
    return read_on_each(only_weighed(of_the_denied(message, thread), thread))


def in_its_season(message: Message, thread: Thread) -> Thread:
    """The thread without its degrees, where a message asks of the other season and tells none: "and in July?"."""
    known = thread.facts.get(TEMPERATURE)
    if known is None or isinstance(known.value, str) or any(item.fact == TEMPERATURE for item in message.stated):
        return thread
    celsius = float(known.value)
    other = (celsius < COLD and SUMMER.search(message.text)) or (celsius > WARM and WINTER.search(message.text))
    if not other:
        return thread
    return replace(thread, facts={fact: item for fact, item in thread.facts.items() if fact != TEMPERATURE})


def read_at_the_motor(message: Message, thread: Thread) -> Thread:
    """The thread without volts at the battery that turn out to be those at the motor: "I had the meter up there"."""
    there = next((item.value for item in message.stated if item.fact == MOTOR), None)
    before = thread.facts.get(POSTS)
    if before is None or there != before.value or any(item.fact == POSTS for item in message.stated):
        return thread
    return replace(thread, facts={fact: item for fact, item in thread.facts.items() if fact != POSTS})


def read_another_day(message: Message, thread: Thread) -> Thread:
    """The thread without how long a reading before had rested, or its charging, where this one is of a later day."""
    told = {item.fact for item in message.stated}
    if REST not in told or told & {REST_TIME, STATE} or not LATER.search(message.text):
        return thread
    kept = {fact: item for fact, item in thread.facts.items() if fact not in (REST_TIME, STATE)}
    return replace(thread, facts=kept)


def read_on_each(message: Message) -> Message:
    """The message with the same reading of both, told one by one: "12.7 on one and 12.7 on the other"."""
    found = ON_EACH.search(message.text)
    first = next((item for item in message.stated if item.fact == REST), None)
    if found is None or first is None or any(item.of > 1 for item in message.stated):
        return message
    other = replace(first, of=2, span=found.span("again"))
    return replace(message, stated=(*message.stated, other)) if found["volts"] == found["again"] else message


def only_weighed(message: Message, thread: Thread) -> Message:
    """The message with another kind that is only weighed against theirs as the second of two: what was read of theirs
    is not its own."""
    told = {item.fact for item in message.stated}
    before = thread.facts.get(KIND)
    read = any(fact.startswith("reading.") for fact in thread.facts)
    if told != {KIND} or before is None or not read or not WEIGHED.search(message.text):
        return message
    kinds = (replace(item, of=2) if item.of == 1 and item.value != before.value else item for item in message.stated)
    return replace(message, stated=tuple(kinds))


def of_the_denied(message: Message, thread: Thread) -> Message:
    """The message with a value that takes the place of the second of two, where that is what it denies: "the house one
    is gel, not AGM"."""
    gone = {(item.fact, item.value) for item in message.denied}
    return replace(
        message,
        stated=tuple(
            replace(item, of=2)
            if item.of == 1
            and (second := thread.second.get(item.fact)) is not None
            and (item.fact, second.value) in gone
            and item.fact in thread.facts
            and thread.facts[item.fact].value not in (second.value, item.value)
            else item
            for item in message.stated
        ),
    )
