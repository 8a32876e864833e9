"""A numbered list of questions taken apart, so that each is answered with its own facts and those around the list."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace

from service.leadsman import LONGEST, Leadsman
from service.reply import Answer, Reply
from service.triage import handed_on, triage
from service.turns.thread import Thread
from service.wording.withheld import withheld

MARK = re.compile(
    r"^[ \t]*\(?(\d{1,2}|[a-z])(?:[.):]| [-–])[ \t]+(?=\S)|(?<=\s)\((\d|[a-z])\)[ \t]+(?=\S)", re.MULTILINE | re.I
)
BULLET = re.compile(r"^[ \t]*[-*•–][ \t]+(?=\S)", re.MULTILINE)
REFERS = re.compile(r"\b(?:it|its|that|this|them|those|these|same|the other)\b", re.I)  # to the question before
FEWEST, MOST = 2, 40  # questions that make a list; of more a person makes sense


@dataclass(frozen=True, slots=True)
class Asked:
    """A question of a list and where it stands in the message."""

    text: str
    at: int


@dataclass(frozen=True, slots=True)
class Answered:
    """The reply to a mail; over each answer the words that asked, "" where the message was one piece."""

    reply: Reply
    headings: tuple[str, ...]


def ask(desk: Leadsman, text: str, thread: str | None) -> Answered:
    """Ask the desk a message, or each question of its list by itself."""
    around, items = listed(text)
    if sum(asks(desk, item.text) for item in items) < FEWEST:  # no list, or one of things told
        reply = desk.ask(text, thread)
        return Answered(reply, ("",) * len(reply.answers))
    rest = desk.ask(around, thread) if around else None
    found = [(item, "") for item in rest.answers if item.topic != "unclear"] if rest else []
    left: list[str | None] = []
    token = last = rest.thread if rest else thread
    for item in items:
        reply = desk.ask(item.text, last if REFERS.search(item.text) else token)
        if all(answer.topic == "unclear" for answer in reply.answers):
            reply = desk.ask(item.text, last)  # "and for gel?" goes on from the question before
        last = reply.thread
        left.append(reply.left_open)
        found += [(_moved(answer, item.at), " ".join(item.text.split())) for answer in reply.answers]
    return _together(desk, found, last, " ".join(filter(None, left)) or None)


def asks(desk: Leadsman, text: str) -> bool:
    """Whether something is asked, or a danger told, in these words."""
    if not text.strip():
        return False
    turn = desk.taken_up(text[:LONGEST], Thread())
    return bool(turn.message.dangers) or any(item.topic != "unclear" for item in turn.requests)


def listed(text: str) -> tuple[str, list[Asked]]:
    """The words around a numbered or dotted list, and its items; no items where there is no list.

    >>> listed("Hello. What is CCA?")
    ('Hello. What is CCA?', [])
    >>> [item.text for item in listed("Two things:\\n1. What is CCA?\\n2) What is AGM?")[1]]
    ['What is CCA?', 'What is AGM?']
    """
    marks = _in_order(MARK.finditer(text))
    if len(marks) < FEWEST:
        marks = list(BULLET.finditer(text))
    if not FEWEST <= len(marks) <= MOST:
        return text, []
    gap = text.find("\n\n", marks[-1].end())
    ends = [*(mark.start() for mark in marks[1:]), len(text) if gap < 0 else gap]
    items = [Asked(text[mark.end() : end].strip(), mark.end()) for mark, end in zip(marks, ends, strict=True)]
    return f"{text[: marks[0].start()]}\n{text[ends[-1] :]}".strip(), items


def _in_order(found: Iterable[re.Match[str]]) -> list[re.Match[str]]:
    """The marks that count on from 1 or from a."""
    marks: list[re.Match[str]] = []
    for mark in found:
        if (mark[1] or mark[2]).lower() in (str(len(marks) + 1), chr(ord("a") + len(marks))):
            marks.append(mark)
    return marks


def _moved(answer: Answer, by: int) -> Answer:
    shifted = tuple(
        replace(item, span=(item.span[0] + by, item.span[1] + by)) if item.span else item for item in answer.understood
    )
    return replace(answer, understood=shifted)


def _together(desk: Leadsman, found: list[tuple[Answer, str]], thread: str | None, left: str | None) -> Answered:
    """One reply of all answers: hazards first, and while one stands nothing says yes. `left`: what has no answer."""
    found = sorted(found, key=lambda item: item[0].verdict != "stop")
    if found and found[0][0].verdict == "stop":
        found = [found[0], *((withheld(answer, found[0][0].cites[:1]), words) for answer, words in found[1:])]
    answers = tuple(answer for answer, _ in found)
    route = handed_on(triage(answers)) if left else triage(answers)
    reply = Reply(desk.new_id(), thread or "", route, answers, left, left_open=left)
    return Answered(reply, tuple(words for _, words in found))
