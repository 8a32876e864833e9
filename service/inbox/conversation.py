"""What a mail asks the desk: its newest words, its subject, and the earlier question that a bare reply answers."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from rapidfuzz.fuzz import partial_ratio

from grammar.facts import facts
from service.inbox.history import Earlier, pattern
from service.inbox.message import Mail
from service.inbox.newest import newest, own_words
from service.inbox.questions import asks
from service.leadsman import LONGEST, Leadsman
from service.turns.thread import Thread

MOST_EARLIER = 4  # messages of a conversation that are taken up again
SHORT = 15  # words; a longer statement is weighed like any other message
ALIKE = 88  # of 100: how near a quoted sentence must be to the desk's own question
PREFIX = r"(?:\[\d+\])?\s*:\s*"
SAID = re.compile(r"[\"“„«]([^\"“”„«»]{8,600})[\"”“»]")


@dataclass(frozen=True, slots=True)
class Asked:
    """What to ask the desk: the words, whether they were cut, and the earlier messages they may answer."""

    text: str
    subject: str
    cut: bool = False
    answers: bool = False  # it is an answer: a reply, by its subject or its quotation
    earlier: tuple[Earlier, ...] = ()


def title(subject: str) -> tuple[str, str]:
    """A subject without "Re:" and "Fwd:", and which of them came first: "reply", "forward" or ""."""
    kind, text = "", subject.strip()
    while True:
        reply = pattern("subject", "reply", after=PREFIX).match(text)
        found = reply or pattern("subject", "forward", after=PREFIX).match(text)
        if not found:
            return text, kind
        kind = kind or ("reply" if reply else "forward")
        text = text[found.end() :]


def asked(desk: Leadsman, mail: Mail) -> Asked:
    """What a mail asks, by its newest words; a passed-on message where nothing new is asked above it."""
    name = mail.sender.name if mail.sender else ""
    found = newest(mail.body, name)
    subject, kind = title(mail.subject)
    text, earlier = found.text, found.earlier
    old = kind == "reply"  # the subject is that of an earlier message
    if (found.forwarded or kind == "forward") and earlier:
        old = asks(desk, text)
        passed = [(number, words) for number, item in enumerate(earlier) if (words := own_words(item.lines))]
        number, words = passed[0] if passed else (0, "")  # what is passed on may itself have been passed on
        text = text if old else f"{text}\n\n{words}".strip()
        earlier = earlier[number + 1 :]
    elif mail.attached and kind != "reply" and not asks(desk, f"{subject}\n\n{text}"):
        text = f"{text}\n\n{newest(mail.attached).text}".strip()
    answers = kind == "reply" or bool(earlier and mail.references)
    if subject and not (text and (old or answers)):
        text = f"{subject}\n\n{text}".strip()
    return Asked(text[:LONGEST], subject, len(text) > LONGEST, answers, tuple(earlier))


def bare(desk: Leadsman, text: str) -> bool:
    """Whether the words only state something: the answer to a question that stands elsewhere."""
    message = desk.taken_up(text, Thread()).message
    if message.dangers or not (message.stated or message.quantities or message.says("note:no_idea")):
        return False
    requests = any(cue.name.startswith("request:") for cue in message.cues)
    short = len(message.words) <= SHORT and "?" not in text and not requests
    return short or not asks(desk, text)


def before(desk: Leadsman, mail: Asked) -> str | None:
    """The thread of the conversation that is quoted under a reply, or None where nothing of it is understood."""
    if desk.signer is None:
        return None
    thread: str | None = None
    for text in _customers_words(mail):
        thread = desk.ask(text[:LONGEST], thread).thread
    state = desk.signer.thread(thread) if thread else Thread()
    wanted = questions_back(mail.earlier[0].lines) if mail.earlier else ()
    if state is None or not (state.topics or wanted):
        return None
    asked_back = tuple(dict.fromkeys((*state.asks, *wanted)))
    return desk.signer.token(replace(state, asks=asked_back))


def _customers_words(mail: Asked) -> Sequence[str]:
    """What the customer asked before, the oldest first: every other quoted message, or words that the desk repeats."""
    texts = [own_words(item.lines) for item in mail.earlier[1 : 2 * MOST_EARLIER : 2]]
    texts = [text for text in reversed(texts) if text]
    if not texts and mail.earlier:
        texts = SAID.findall(" ".join(mail.earlier[0].lines))[:1]
    if mail.subject:
        texts[:1] = [f"{mail.subject}\n\n{texts[0]}" if texts else mail.subject]
    return texts


def questions_back(lines: Sequence[str]) -> tuple[str, ...]:
    """The facts that the desk asks for in these words, as it words its questions."""
    text = " ".join(" ".join(lines).lower().split())
    return tuple(name for name, spec in facts().items() if partial_ratio(spec.ask.lower(), text) >= ALIKE)
