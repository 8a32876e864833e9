"""Batteries that are only thought of for later: "is 20 A enough for my two? And could I add a third next year?".

What is asked before them goes by those that are there.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from grammar.reading import Message
from grammar.told.batteries.further import to_come
from service.case import Case
from service.routing.route import Request

COUNT = "battery.count"


def without_those_to_come(case: Case, request: Request, requests: Iterable[Request], message: Message) -> Case:
    """The case of a question before the one in which another battery is thought of, with those that are there."""
    told = case.stated.get(COUNT)
    if told is None or told.span is None or not isinstance(told.value, float):
        return case
    at = told.span[0]
    asked_there = [item for item in requests if item.span[0] <= at < item.span[1] and item.topic != request.topic]
    if request.span[0] <= at < request.span[1] or request.span[0] > at or not asked_there:
        return case
    more = to_come(message.text, at)
    if not 0 < more < told.value:
        return case
    return replace(case, stated={**case.stated, COUNT: replace(told, value=told.value - more)})
