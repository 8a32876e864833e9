"""A converter that the desk itself sized in the conversation: "what size of converter?", "and the cable for it?"."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from service.case import Known, Value
from service.topic import CIRCUIT
from service.turns.thread import Thread
from service.turns.worked import OUTPUT

AMPS = ("load.", "charger.current")  # what else a cable could be for


def with_the_converter(thread: Thread, topics: Iterable[str]) -> Thread:
    """The thread with the converter that the desk sized, where its cable or its fuse is asked for."""
    sized = thread.worked.get(OUTPUT)
    if sized is None or not set(topics) <= CIRCUIT or any(fact.startswith(AMPS) for fact in thread.facts):
        return thread
    made: tuple[tuple[str, Value, str], ...] = (("charger.current", sized, "A"), ("charger.kind", "dc-dc", ""))
    facts = {fact: Known(fact, value, "thread", unit) for fact, value, unit in made}
    return replace(thread, facts={**thread.facts, **facts})
