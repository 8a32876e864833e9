"""A numbered list of questions taken apart, so that each is answered with its own facts and those around the list."""
from __future__ import annotations

import re
from dataclasses import dataclass, replace

from service.leadsman import Leadsman, withheld
from service.reply import Answer, Reply
from service.triage import triage

ITEM = re.compile(r"(?:^[ \t]*\(?|(?<=\s)\()(\d{1,2}|[a-z])(?:(?<=\(\w)\)|(?<=\(\w\w)\)|(?<!\(\w)[.):])[ \t]+(?=\S)", re.MULTILINE | re.IGNORECASE)
REFERS = re.compile(r"\b(?:it|its|that|this|them|those|these|same|the other|one)\b", re.IGNORECASE)
FEWEST = 2  # items that make a list
HANDED_OVER = ("unclear", "other-desk")


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
    if not items:
        reply = desk.ask(text, thread)
        return Answered(reply, ("",) * len(reply.answers))
    rest = desk.ask(around, thread) if around.strip() else None
    found = [(item, "") for item in rest.answers if item.topic not in HANDED_OVER] if rest else []
    token = rest.thread if rest else thread
    last = token
    for item in items:
        reply = desk.ask(item.text, token)
        if not reply.answers or all(answer.topic == "unclear" for answer in reply.answers):
            reply = desk.ask(item.text, last)  # "and for gel?" goes on from the question before
        last = reply.thread
        found += [(_moved(answer, item.at), " ".join(item.text.split())) for answer in reply.answers]
    return _together(desk, found, last)


def listed(text: str) -> tuple[str, list[Asked]]:
    """The words around a numbered list and its items; no items where the message holds no such list.

    >>> listed("Hello. 1. What is CCA?")
    ('Hello. 1. What is CCA?', [])
    >>> [item.text for item in listed("Two things:\\n1. What is CCA?\\n2) What is AGM?")[1]]
    ['What is CCA?', 'What is AGM?']
    """
    marks = list(ITEM.finditer(text))
    marks = [mark for number, mark in enumerate(marks) if mark[1].lower() in (str(number + 1), chr(97 + number % 26))]
    if len(marks) < FEWEST:
        return text, []
    ends = [mark.start() for mark in marks[1:]]
    gap = text.find("\n\n", marks[-1].end())
    ends.append(len(text) if gap < 0 else gap)
    items = [Asked(text[mark.end() : end].strip(), mark.end()) for mark, end in zip(marks, ends, strict=True)]
    if sum("?" in item.text for item in items) < FEWEST:
        return text, []  # a list of things told, or steps
    return f"{text[: marks[0].start()]}\n{text[ends[-1] :]}".strip(), [item for item in items if item.text]


def _moved(answer: Answer, by: int) -> Answer:
    shifted = tuple(
        replace(item, span=(item.span[0] + by, item.span[1] + by)) if item.span else item for item in answer.understood
    )
    return replace(answer, understood=shifted)


def _together(desk: Leadsman, found: list[tuple[Answer, str]], thread: str | None) -> Answered:
    """One reply of all answers: hazards first, and while one stands nothing says yes."""
    found = sorted(found, key=lambda item: item[0].verdict != "stop")
    if found and found[0][0].verdict == "stop":
        found = [found[0], *((withheld(answer), words) for answer, words in found[1:])]
    answers = tuple(answer for answer, _ in found)
    reply = Reply(desk.new_id(), thread or "", triage(answers), answers)
    return Answered(reply, tuple(words for _, words in found))

