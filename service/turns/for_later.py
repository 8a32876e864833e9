"""Batteries that are only thought of for later: "is 20 A enough for my two? And could I add a third next year?".

What is asked before them goes by those that are there; so too before "and could I put a 70 Ah one next to it?".
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace

from grammar.reading import Message
from grammar.text.patterns import regex
from grammar.told.batteries.further import to_come
from service.case import Case
from service.routing.request import Request

COUNT, SIZE, WIRING = "battery.count", "battery.capacity", "bank-wiring"
OF_BOTH = (COUNT, "bank.layout")
IF_ADDED = regex(r"\bif (?:i|we|you) (?:add|added|put in|fit|fitted|buy|bought)\b[^.?!;]{0,30}$", re.IGNORECASE)
MAY_JOIN = regex(
    r"\b(?:can|could|may|might|should|would|shall)\b[^.?!;]{0,40}?\b(?:add|put|fit|join|connect|link|wire|hook|hang|couple"
    r"|combine|mix|parallel|go|stand|sit|work|live|be)\b[^.?!;]{0,200}",
    re.IGNORECASE,
)


def without_those_to_come(case: Case, request: Request, requests: Iterable[Request], message: Message) -> Case:
    """The case of a question before the one in which another battery is thought of, with those that are there."""
    case = _without_one_to_join(case, request, requests, message)
    told = case.stated.get(COUNT)
    if told is None or told.span is None or not isinstance(told.value, float):
        return case
    at = told.span[0]
    if (
        IF_ADDED.search(message.text[: told.span[1]])
        and request.topic != WIRING
        and WIRING in {item.topic for item in requests}
    ):
        less = told.value - (to_come(message.text, at) or 1.0)  # "and what happens if I add a second one"
        return replace(case, stated={**case.stated, COUNT: replace(told, value=less)}) if less > 0 else case
    asked_there = [item for item in requests if item.span[0] <= at < item.span[1] and item.topic != request.topic]
    if request.span[0] <= at < request.span[1] or request.span[0] > at or not asked_there:
        return case
    more = to_come(message.text, at)
    if not 0 < more < told.value:
        return case
    return replace(case, stated={**case.stated, COUNT: replace(told, value=told.value - more)})


def _without_one_to_join(case: Case, request: Request, requests: Iterable[Request], message: Message) -> Case:
    """The case of a question before "and could I put a second one of 70 Ah beside it", with the first alone."""
    size = case.second.get(SIZE)
    asked = [item.span[0] for item in requests if item.topic == WIRING and item.span[0] >= request.span[1]]
    if size is None or size.span is None or not asked:
        return case
    found = next((hit for hit in MAY_JOIN.finditer(message.text, min(asked)) if hit.end() > size.span[0]), None)
    if found is None or size.span[0] < found.start():
        return case
    there = {
        fact: item
        for fact, item in case.stated.items()
        if not (fact in OF_BOTH and item.span and found.start() <= item.span[0] < found.end())
    }
    alone = {fact: item for fact, item in case.second.items() if not (item.span and item.span[0] >= found.start())}
    return replace(case, stated=there, second=alone)
