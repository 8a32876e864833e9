"""Volts of one turn and a gravity of another, of one battery, that cannot both be right: the older one is kept, so that
the answer names both. Else the newer reading takes the older one's place."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Message
from grammar.text.patterns import regex
from service.case import Case
from service.judgements import doubt
from service.turns.thread import Thread

VOLTS, GRAVITY = "reading.voltage", "reading.gravity"
SINCE = regex(  # what may have changed the charge between the two
    r"\b(?:charg|recharg|drain|used|using|ran|run|motor(?:ed|ing)|topped|equali|later|since|after|meanwhile|next|"
    r"tomorrow|now|today|new|other|another|different)\w*",
    re.IGNORECASE,
)


def with_opposed(before: Thread, after: Thread, message: Message) -> Thread:
    """The thread with the reading that the newest one contradicts, where nothing tells of a charge in between."""
    told = {item.fact for item in message.stated}
    for new, old in ((VOLTS, GRAVITY), (GRAVITY, VOLTS)):
        if new not in told or old in told or old not in before.facts or new not in after.facts:
            continue
        kept = replace(before.facts[old], origin="thread", span=None)
        both = {**after.facts, old: kept}
        if not SINCE.search(message.text) and doubt.opposed(Case(both)) is not None:
            return replace(after, facts=both)
    return after
