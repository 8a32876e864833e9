"""How a message was understood, as `leadsman why` prints it."""

from __future__ import annotations

from collections.abc import Iterable

from grammar.figures.weighed import HOW
from grammar.reader import why_weighed
from service.reply import Answer
from service.routing.in_order import SHOWN
from service.turns.turn import Turn


def why(turn: Turn, answers: Iterable[Answer]) -> Iterable[str]:
    """How a message was understood: facts, cues, points, and the steps of each answer."""
    for item in turn.message.stated:
        yield f"fact   {item.fact} = {item.value} ({item.how}: {item.text!r}{', second' if item.of > 1 else ''})"
        if item.how == HOW:
            yield f"       {', '.join(why_weighed(turn.message.text, item)[:SHOWN])}"
    for danger in turn.message.dangers:
        yield f"danger {danger.family}, {danger.status}: {danger.text!r}"
    if turn.alarm:
        yield f"danger unnamed, present: {turn.alarm.why()}"
    yield "cues   " + ", ".join(f"{cue.name} {cue.text!r}" for cue in turn.message.cues)
    yield from (f"belief {item.text('id')}{', denied' * item.denied}" for item in turn.beliefs)
    for request in (*turn.requests, *turn.asides):
        yield f"topic  {request.topic}: {request.why()}"
    for answer in answers:
        yield from (f"step   {answer.topic}: {step.say} [{', '.join(step.cites)}]" for step in answer.working)
