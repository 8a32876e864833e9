"""Answers that a reply to what was asked back leaves as they were: beside the one that was still open they are not told
again."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from grammar.reading import Message
from service.reply import Answer
from service.routing.asking import asks_outright
from service.routing.goes_on import replies
from service.routing.request import HANDED_OVER, Request
from service.routing.tally import HAZARD
from service.turns.thread import Thread, fingerprint

APART = (HAZARD, *HANDED_OVER)  # a danger is told as often as it is spoken of
OPEN = ("needs-facts", "no")  # what still decides, and what must not be done
TOLD = "told:"  # begins the cue of an answer that asked for nothing


def tells_on(message: Message, thread: Thread) -> bool:
    """Whether a message replies to what was asked back, or only tells a fact more: "insulation says 90 C"."""
    return replies(message, thread.asks) or (bool(message.stated) and not asks_outright(message))


def without(answers: Sequence[Answer], message: Message, thread: Thread) -> list[Answer]:
    """The answers to a reply, without those that it leaves word for word; all of them where nothing else is left."""
    if not tells_on(message, thread):
        return list(answers)
    return [item for item in answers if _cue(item) not in thread.cues] or list(answers)


def stand(requests: Iterable[Request], answers: Sequence[Answer], message: Message, thread: Thread) -> tuple[str, ...]:
    """The cues of the answers that were left out as told already: the thread goes on with their topics as well."""
    if not tells_on(message, thread):
        return ()
    asked = {item.topic for item in requests} - set(_topics(answers))
    return tuple(name for name in thread.cues if name.startswith(TOLD) and topic_of(name) in asked)


def kept(answers: Iterable[Answer]) -> tuple[str, ...]:
    """The cues of the answers that asked for nothing, for the next turn."""
    told = (item for item in answers if item.topic not in APART and not item.asks and item.verdict not in OPEN)
    return tuple(map(_cue, told))


def topic_of(cue: str) -> str:
    """The topic of such a cue."""
    return cue.split(":")[1]


def _topics(answers: Iterable[Answer]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(item.topic for item in answers))


def _cue(answer: Answer) -> str:
    return f"{TOLD}{answer.topic}:{fingerprint([answer.headline])}"
