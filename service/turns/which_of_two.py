"""Of two batteries that were told of, the one that a later reading is of: "the AGM fell to 9.2 V in a load test"."""

from __future__ import annotations

from dataclasses import replace

from grammar.reading import Message
from service.turns.thread import Thread

KIND = "battery.chemistry"
OF_ONE = ("battery.age", KIND)


def spoken_of_first(message: Message, thread: Thread) -> Thread:
    """The thread with the battery first that the message names by its kind, where it tells a reading of it."""
    kind = _named(message)
    first, second = (facts.get(KIND) for facts in (thread.facts, thread.second))
    if not kind or first is None or second is None or second.value != kind or first.value == kind:
        return thread
    facts = {**thread.facts, **{name: replace(item, of=1) for name, item in thread.second.items()}}
    other = {name: replace(thread.facts[name], of=2) for name in thread.second if name in thread.facts}
    return replace(thread, facts=facts, second=other)


def with_the_other(before: Thread, after: Thread, message: Message) -> Thread:
    """The thread after it with the other battery's kind and age, which a reading of the first one does not change."""
    first = before.facts.get(KIND)
    if KIND not in before.second or first is None or first.value != _named(message):
        return after
    kept = {name: before.second[name] for name in OF_ONE if name in before.second}
    return replace(after, second={**kept, **after.second})


def _named(message: Message) -> object:
    """The kind of the one battery of which a message tells a reading; None without one."""
    stated = message.stated
    reads = any(item.fact.startswith("reading.") for item in stated) and all(item.of == 1 for item in stated)
    return next((item.value for item in stated if item.fact == KIND), None) if reads else None
