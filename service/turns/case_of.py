"""The case of a turn: what a topic is given to answer from."""

from __future__ import annotations

from collections.abc import Sequence

from service import say
from service.case import Case
from service.house import House
from service.question import denied_in
from service.reply import Answer
from service.turns.turn import Turn
from service.turns.worked import kept


def case_of(turn: Turn, house: House, hazard: bool = False, found: Sequence[Answer] = ()) -> Case:
    """A fresh case of a turn: its facts, the house, its cues, and what the answers `found` so far worked out."""
    return Case(
        stated=turn.thread.facts,
        house=house,
        second=turn.thread.second,
        cues=frozenset(turn.cues),
        text=turn.message.text,
        show=say.fact,
        denied=denied_in(turn.message),
        hazard=hazard,
        asked=turn.thread.asks,
        before=turn.thread.topics,
        beside=tuple(item.topic for item in turn.requests),
        worked=kept(turn.thread.worked, found, turn.thread.facts),
    )
