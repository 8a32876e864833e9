"""More of the panel that was spoken of: "twice that panel", "add another 60 W panel"."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Message, Stated
from grammar.text.patterns import regex
from service.turns.thread import Thread

POWER = "solar.power"
DOUBLE = regex(
    r"\b(?:twice|double|doubling|2 ?x) (?:as (?:big|large) an? )?(?:the |my |that |this )?(?:panels?|watts|that|it)\b"
    r"|\b(?:two|2) (?:of (?:them|those|these)|such panels?|panels? like (?:that|it|this))\b"
    r"|\b(?:a|with a) (?:second|2nd) (?:panel|one)\b",
    re.IGNORECASE,
)
ONE_MORE = regex(r"\b(?:add(?:ed|ing)?|another|one more|a second|plus)\b[^.?!;]{0,16}\d+ ?w(?:atts?)?\b", re.IGNORECASE)


def more_of_it(message: Message, thread: Thread) -> Message:
    """The message with the watts of all the panels, where it tells of more of those that were told."""
    before = thread.facts.get(POWER)
    if before is None or thread.topics != ("solar",):
        return message
    told = next((item for item in message.stated if item.fact == POWER), None)
    found = (DOUBLE if told is None else ONE_MORE).search(message.text)
    if found is None:
        return message
    if told is None:
        twice = Stated(POWER, 2 * float(before.value), before.unit, found.group(), found.span(), how="asked")
        return replace(message, stated=(*message.stated, twice))
    if not found.start() <= told.span[0] < found.end():
        return message
    summed = replace(told, value=float(before.value) + float(told.value))
    return replace(message, stated=tuple(summed if item is told else item for item in message.stated))
