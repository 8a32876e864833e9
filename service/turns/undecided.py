"""What a message leaves open and its question or its other facts tell.

Whose amps they are: "8 A, 30 Ah, how long till full?". The kind of a battery into which a float was dipped.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from grammar.facts import facts
from grammar.reading import Message, Stated
from service.topic import Topic
from service.turns.thread import Thread

DIPPED = frozenset({"reading.gravity", "reading.gravity_spread"})  # only cells with caps can be read so
AMPS = frozenset({"load.current", "charger.current"})  # what the reader takes amps for where nothing tells

GOES_BY = {  # what the thing that a topic is about goes by: "got a 25" of a charger, "a 350 on that" of a fuse
    "fuse-size": "fuse.rating",
    "charge-time": "charger.current",
    "charger-size": "charger.current",
    "charger-setting": "charger.current",
    "charger-banks": "charger.current",
    "dc-dc": "charger.current",
    "ventilation": "charger.current",
    "cable-size": "cable.area",
    "voltage-drop": "cable.area",
    "solar": "solar.power",
    "standing-drain": "drain.current",
}

RATINGS = {  # what was asked the meaning of, and the figure that "mine's 600" then is
    "term:cca": "battery.cca",
    "term:ca": "battery.ca",
    "term:rc": "battery.reserve",
}


def likely(thread: Thread) -> tuple[str, ...]:
    """The facts that a bare number states where it names one of the things that were asked about last."""
    rated = [RATINGS[cue] for cue in thread.cues if cue in RATINGS] if "meaning" in thread.topics else []
    things = [GOES_BY[name] for name in thread.topics if name in GOES_BY]
    return tuple(dict.fromkeys([*things, *(rated if len(rated) == 1 else ())]))


def by_topic(message: Message, topics: Iterable[Topic]) -> Message:
    """The message with its undecided amps as the first topic takes them; as they are where a topic asked needs that."""
    wanted = [topic.amps for topic in topics if topic.amps]
    if not wanted or wanted[0] in {item.fact for item in message.stated}:
        return message
    return replace(message, stated=tuple(_taken(item, wanted) for item in message.stated))


def _taken(item: Stated, wanted: list[str]) -> Stated:
    if item.how != "default" or item.fact not in AMPS or item.fact in wanted:
        return item
    spec = facts()[wanted[0]]
    amps = float(item.value)
    if (spec.low is not None and amps < spec.low) or (spec.high is not None and amps > spec.high):
        return item
    return replace(item, fact=spec.name, how="topic")


def dipped(message: Message, thread: Thread) -> Message:
    """The message with the kind of its battery, where a hydrometer was read and no kind was told."""
    found = next((item for item in message.stated if item.fact in DIPPED), None)
    known = {item.fact for item in message.stated} | set(thread.facts)
    if found is None or "battery.chemistry" in known:
        return message
    kind = Stated("battery.chemistry", "flooded", "", found.text, found.span, how="implied")
    return replace(message, stated=(*message.stated, kind))
