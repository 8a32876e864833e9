"""Conversations with the desk, for tests."""

from __future__ import annotations

from service.leadsman import default_desk
from service.reply import Answer, Reply


def talk(*turns: str) -> Reply:
    """The reply to the last of these turns, each said in the thread of those before."""
    desk, reply = default_desk(), None
    for turn in turns:
        reply = desk.ask(turn, thread=reply.thread if reply else None)
    assert reply is not None, "a talk has a turn"
    return reply


def only(*turns: str) -> Answer:
    """The one answer to the last of these turns."""
    (found,) = talk(*turns).answers
    return found


def plain(text: str) -> str:
    """A text with ordinary spaces between numbers and units."""
    return text.replace("\u00a0", " ")


def on(topic: str, *turns: str) -> Answer:
    """The answer of one topic to the last of these turns."""
    return next(item for item in talk(*turns).answers if item.topic == topic)
