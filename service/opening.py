"""The first word of an answer, fitted to how the question was put.

A verdict says whether things are all right; the headline answers the question. "Is it too thin?" turns Yes and No
round, "the battery or the cable?" wants neither.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.reading import Message, Span
from grammar.tokens import ENDS
from service.as_told import mends_the_kind
from service.evidence import asks_outright
from service.reply import Answer
from service.route import Request
from service.thread import Thread

AS_PUT = "as_put:"  # cue of a thread: how its last question was put
FIRST = {"yes": ("Yes",), "marginal": ("Only just", "Just enough"), "no": ("No, not yet", "No")}
TURNED = {"yes": "No", "no": "Yes"}
BOTH = {"yes": "Good", "marginal": "In between", "no": "Bad"}  # "good or bad?" of a reading
READINGS = frozenset({"rest-voltage", "specific-gravity", "load-voltage"})
WORDS = {word for words in FIRST.values() for word in words} | {"A little"}
OPEN = re.compile(
    r"\W*(?:(?:and|so|but|then|now|ok|well|hi|hello) )*"
    r"(?:what|which|where|how|why|when(?! (?:it|its|it's|the|i)\b))",  # "and when it's freezing" asks no time
    re.IGNORECASE,
)
LED_IN = re.compile(  # "OK, scrap it then?"
    r"\W*(?:ok|okay|right|well|fine|good)\b"
    r"(?=,| (?:so|then|scrap|bin|replace|is|are|do|does|can|should|will|what|but)\b)",
    re.IGNORECASE,
)
GOOD_OR_BAD = re.compile(
    r"\b(?:good|ok|okay|fine|healthy)\b,? or (?:is (?:it|that) )?(?:bad|low|poor|not good|flat|no good)\b",
    re.IGNORECASE,
)
DEED = re.compile(
    r"(?P<told>.+), so (?P<deed>(?:charge|look|switch|ask|test|fit|use|read|clean|have|take|do not|change|keep)\b.+)\.$"
)
FIRST_WORDS = re.compile(r"^[^:,.\d]{1,24}: ")  # "Perhaps soon: "
EITHER = re.compile(r"\w,? or \w", re.IGNORECASE)


def opened(answer: Answer, put: str) -> Answer:
    """The answer with its first word as the question wants it. `put`: "good", "bad", "both", "do" or "open"."""
    first, mark, rest = answer.headline.partition(": ")
    if put == "do":
        return replace(answer, headline=deed_first(answer, rest if mark and first in WORDS else answer.headline))
    if not mark or first not in WORDS or put == "good":
        return answer
    if put == "both" and answer.topic in READINGS and answer.verdict in BOTH:
        return replace(answer, headline=f"{BOTH[answer.verdict]}{mark}{rest}")
    if put == "bad" and first not in FIRST.get(answer.verdict, ()):  # the topic has turned it already
        return answer
    if put == "bad" and answer.verdict in TURNED:
        return replace(answer, headline=f"{TURNED[answer.verdict]}{mark}{rest}")
    return replace(answer, headline=f"{rest[:1].upper()}{rest[1:]}")


def deed_first(answer: Answer, told: str) -> str:
    """A headline that opens with what to do: "Charge it soon: 12.3 V means ..."."""
    found = DEED.match(told)
    if found:
        deed = found["deed"]
        return f"{deed[:1].upper()}{deed[1:]}: {FIRST_WORDS.sub('', found['told'])}."
    if answer.topic in READINGS and answer.verdict == "yes":
        return f"Nothing needs doing: {told}"
    return f"{told[:1].upper()}{told[1:]}"


def put(message: Message, request: Request, requests: tuple[Request, ...], thread: Thread) -> str:
    """How one question of a message is put: "good", "bad", "both" ("good or bad?"), "do" (what to do) or
    "open" (a choice, what, how).

    A turn that asks nothing, and only tells more or puts right what was told, has the question of the turn before.
    """
    before = next((cue.removeprefix(AS_PUT) for cue in thread.cues if cue.startswith(AS_PUT)), "")
    if before and request.topic in thread.topics and not asks_outright(message):
        return before
    if mends_the_kind(message):  # "the label was wrong" asks nothing
        return "good"
    ways = (_way(message, span) for span in _asking(message, request, requests))
    if own := next((way for way in ways if way), ""):
        return own
    others = {_way(message, clause.span) for clause in message.clauses if clause.asks} - {""}
    return "good" if "good" in others or not others else "open"  # told beside another question


def _asking(message: Message, request: Request, requests: tuple[Request, ...]) -> Iterator[Span]:
    """The sentences that ask one question: from its own clause up to that of the next one."""
    end = min((other.span[0] for other in requests if other.span[0] > request.span[0]), default=len(message.text))
    asking = [clause.span for clause in message.clauses if clause.asks and request.span[0] <= clause.span[0] < end]
    while asking:
        start, last = asking.pop(0)
        while asking and message.text[last - 1] not in ENDS:  # a comma parts what is one question
            last = asking.pop(0)[1]
        yield start, last


def _way(message: Message, span: Span) -> str:
    """How one sentence asks; "" where it does not tell."""
    text = message.text[span[0] : span[1]]
    names = ("bad", "good", "choice", "about", "hedge")
    bad, good, choice, about, hedge = (message.says(f"put:{name}", span) for name in names)
    if message.says("detail:what_now", span):
        return "do"
    led = LED_IN.match(text)
    if led and good:  # "OK, scrap it then?"
        good = message.says("put:good", (span[0] + led.end(), span[1]))
    on = message.text[span[1] :].lstrip(" ,").lower().startswith("or ")
    either = not (about or hedge) and (on or bool(EITHER.search(text)))
    if GOOD_OR_BAD.search(text):
        return "both"
    if (OPEN.match(text) and not about) or (bad and either):
        return "open"
    if bad and good:
        return "good"
    good = good or message.says("put:leave", span)
    if bad or good:
        return "open" if choice and not (about or hedge) else "bad" if bad else "good"
    return "open" if choice or either or hedge else ""
