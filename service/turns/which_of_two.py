"""Of two batteries that were told of, the one that a later message is of: "the AGM fell to 9.2 V", "if the 140 is gel".

It is named by its kind or by its size.
"""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Message
from grammar.text.patterns import regex
from service.turns.thread import Thread

KIND = "battery.chemistry"
OF_ONE = ("battery.age", KIND)
RATINGS = ("battery.capacity", "battery.cca")
BY_SIZE = regex(  # what stands before its kind: "the 140 is a", "if the 90 Ah one were an"
    r"\bthe (?P<size>\d{2,4})(?: ?-?(?:ah?|amp[- ]?hours?|cca)\b)?(?: one| battery)?"
    r"\W?(?:is|s|was|were|would be|became)(?: an?)? $",
    re.IGNORECASE,
)
AND_THE = regex(
    r"\W*(?:and|or|but|so|what about|how about|and what about|and how about) the (?:\w+)(?: one| battery)?\W*$",
    re.IGNORECASE,
)
GONE = regex(
    r"(?: one| battery)? (?:goes|comes|is|gets|was|were|has|went)(?: (?:taken|thrown|chucked|been))?"
    r" (?:out|gone|removed|sold|scrapped|binned|off|dead and gone)\b|(?: one| battery)? leaves\b",
    re.IGNORECASE,
)


def spoken_of_first(message: Message, thread: Thread) -> Thread:
    """The thread with the battery first that the message names by its kind, where it tells a reading of it."""
    kind = _named(message)
    first, second = (facts.get(KIND) for facts in (thread.facts, thread.second))
    if not kind or first is None or second is None or second.value != kind or first.value == kind:
        return thread
    return _turned(thread)


def asked_of(message: Message, thread: Thread) -> tuple[Message, Thread]:
    """Both with the battery first that a message names and tells nothing of: "and the lithium?" of two told before."""
    first, second = (facts.get(KIND) for facts in (thread.facts, thread.second))
    kinds = [item for item in message.stated if item.of == 1]
    if first is None or second is None or len(kinds) != 1 or len(message.stated) != 1 or kinds[0].fact != KIND:
        return message, thread
    named = kinds[0].value == second.value != first.value and AND_THE.match(message.text)
    return (replace(message, stated=()), _turned(thread)) if named else (message, thread)


def with_the_other(before: Thread, after: Thread, message: Message) -> Thread:
    """The thread after it with the other battery's kind and age, which a reading of the first one does not change."""
    first = before.facts.get(KIND)
    if KIND not in before.second or first is None or first.value != _named(message):
        return after
    kept = {name: before.second[name] for name in OF_ONE if name in before.second}
    return replace(after, second={**kept, **after.second})


def named_by_size(message: Message, thread: Thread) -> tuple[Message, Thread]:
    """Both with the one last that the message names by its size, where it tells its kind: "and if the 140 is gel?"."""
    kind = next((item for item in message.stated if item.fact == KIND and item.of == 1), None)
    found = BY_SIZE.search(message.text, 0, kind.span[0]) if kind else None
    if kind is None or found is None or KIND in thread.second:
        return message, thread
    size = float(found["size"])
    sides = [
        {side[name].value for name in RATINGS if name in thread.second and name in side}
        for side in (thread.facts, thread.second)
    ]
    if sum(size in values for values in sides) != 1:
        return message, thread
    inside = (item for item in message.stated if not found.start() <= item.span[0] < found.end())
    stated = tuple(replace(item, of=2) if item is kind else item for item in inside)
    return replace(message, stated=stated), _turned(thread) if size in sides[0] else thread


def without_the_one_gone(message: Message, thread: Thread) -> tuple[Message, Thread]:
    """Both without the one of two batteries that is to go: "and which programme if the AGM goes out?"."""
    kind = next((item for item in message.stated if item.fact == KIND and item.of == 1), None)
    kinds = {facts[KIND].value for facts in (thread.facts, thread.second) if KIND in facts}
    if kind is None or kind.value not in kinds or len(kinds) < 2 or not GONE.match(message.text, kind.span[1]):
        return message, thread
    left = _turned(thread) if thread.facts[KIND].value == kind.value else thread
    stated = tuple(item for item in message.stated if item is not kind)
    return replace(message, stated=stated), replace(left, second={})


def _turned(thread: Thread) -> Thread:
    """The thread with the second battery first."""
    facts = {**thread.facts, **{name: replace(item, of=1) for name, item in thread.second.items()}}
    other = {name: replace(thread.facts[name], of=2) for name in thread.second if name in thread.facts}
    return replace(thread, facts=facts, second=other)


def _named(message: Message) -> object:
    """The kind of the one battery of which a message tells a reading; None without one."""
    stated = message.stated
    reads = any(item.fact.startswith("reading.") for item in stated) and all(item.of == 1 for item in stated)
    return next((item.value for item in stated if item.fact == KIND), None) if reads else None
