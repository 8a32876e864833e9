"""The first word of an answer, fitted to how the question was put.

A verdict says whether things are all right; the headline answers the question. "Is it too thin?" turns Yes and No
round, "the battery or the cable?" wants neither.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from grammar.reading import Message, Span, Stated
from grammar.text.patterns import regex
from grammar.text.tokens import ENDS
from service import say
from service.reply import Answer
from service.routing.asking import asks_outright
from service.routing.goes_on import mends_the_kind
from service.routing.listed import OPENS
from service.routing.route import Request
from service.wording import blamed, claims, compared, remedies, sides
from service.wording.either_or import taken
from service.wording.forms import (
    AND_ASKS,
    INDIRECT,
    POLAR,
    TAG,
)
from service.wording.manner import only_tells, sentence_before, way
from service.wording.on_condition import granted
from service.wording.summed import has_opening, lower, summed

MOST_ASKED = 60  # questions of a message that are looked at; one with more is no mail
TURNED = {"yes": "No", "no": "Yes"}
BOTH = {"yes": "Good", "marginal": "In between", "no": "Bad"}  # "good or bad?" of a reading
TROUBLE = {"yes": "No problem", "marginal": "A small one", "no": "That is a problem"}  # "not a problem?"
AGREED = {"yes": "It is good", "marginal": "Not very", "no": "No, it is not"}  # "it's not good, is it?"
ENOUGH = {"yes": "It is enough", "marginal": "Just enough", "no": "Not enough"}  # "not enough, is it?"
PASSED = {"yes": "Pass", "marginal": "Just a pass", "no": "Fail"}  # "pass/fail"
TOO_THICK = regex(r"\btoo thick\b|\boverkill\b|\bthicker than (?:needed|it need)", re.IGNORECASE)
CABLES = frozenset({"cable-size", "voltage-drop"})
BUT = ", but look every"  # "Yes, but look every 90 days"
WAY = "way:"  # how a topic was asked, as a thread carries it
DEED = regex(
    r"(?P<told>.+), so (?P<deed>(?:charge|look|switch|ask|test|fit|use|read|clean|have|take|do not|change|keep)\b.+)\.$"
)
FIRST_WORDS = regex(r"^[^:,.\d]{1,24}: ")  # "Perhaps soon: "


def as_put(
    answer: Answer,
    message: Message,
    request: Request,
    requests: tuple[Request, ...],
    claimed: Iterable[Stated] = (),
    before: Iterable[str] = (),
) -> Answer:
    """The answer to one question of a message with its first word as that is put; a claim is answered, and its sums.

    `before`: what `kept` wrote of the turn before.
    """
    if decided := sides.taken(answer, message, requests):
        return decided
    if beside := compared.taken(answer, message.text, before):
        return beside
    if close := claims.near_enough(answer, message.text):
        return close
    asking = list(_asking(message, request, requests))
    if not any(POLAR.match(message.text, *span) for span in asking):  # figures in a sentence of their own
        asking += [item.span for item in message.clauses if item.asks]
    if part := blamed.opened(answer, (message.text[slice(*span)] for span in asking[:MOST_ASKED])):
        return part
    way = claims.way(message, request, len(requests) == 1)
    first = opened(answer, way or put(message, request, requests, before), message.text)
    first = remedies.with_what_it_takes(first, message.text) if len(requests) == 1 else first
    given = granted(first)
    if given is not first:
        goes_on = f"{WAY}{request.topic}:good" in before and not asks_outright(message)
        first = given if goes_on or asks_leave(message, request, requests) else first
    return summed(first, way or claims.own(message, claimed), claimed)


def asks_leave(message: Message, request: Request, requests: tuple[Request, ...]) -> bool:
    """Whether one question of a message asks outright if it may be so: no choice, no "which", no "do I need"."""
    spans = list(_asking(message, request, requests))
    ways = {way(message, span) for span in spans}
    polar = any(POLAR.match(message.text, *span) for span in spans)
    return (ways == {"good"} or (polar and ways == {""})) and not message.says("put:need", spans[0])


def _own_part(message: Message, span: Span, request: Request, requests: tuple[Request, ...]) -> Span:
    """The part of a sentence that is one question's, where it asks as many things as topics share it."""
    sharing = [other.topic for other in requests if other.span == request.span]
    if len(sharing) < 2:
        return span
    cuts = [found.start() for found in AND_ASKS.finditer(message.text, *span)]
    if len(cuts) != len(sharing) - 1:
        return span
    places = (span[0], *cuts, span[1])
    at = sharing.index(request.topic)
    return (places[at], places[at + 1])


def opened(answer: Answer, put: str, text: str = "") -> Answer:
    """The answer with its first word as the question wants it.

    `put`: how it is put (`put` below) or "do"; `text`: the message, for a choice that it puts.
    """
    if special := _by_their_word(answer, put, text) or (taken(answer, text) if put in ("open", "good") else None):
        return special
    first, mark, rest = answer.headline.partition(": ")
    if put == "do":
        return replace(
            answer, headline=deed_first(answer, rest if mark and first in remedies.WORDS else answer.headline)
        )
    if mark and BUT in first:
        return _looked_after(answer, put)
    if put == "go" and mark and answer.topic in remedies.GOES:
        return remedies.gone(answer, first, rest)
    if not mark or first not in remedies.WORDS or put == "good":
        return answer
    if put in ("both", "passed") and answer.topic in remedies.READINGS and answer.verdict in BOTH:
        return replace(answer, headline=f"{(BOTH if put == 'both' else PASSED)[answer.verdict]}{mark}{rest}")
    if put == "remedy":
        return (
            remedies.remedied(answer, rest)
            if answer.topic in remedies.CARE and answer.verdict in remedies.FIRST
            else answer
        )
    if put == "bad":
        return _turned(answer, first, rest, text)
    if (answer.topic, answer.verdict) == ("run-time", "no") and not answer.figures:
        return replace(answer, headline=f"Not at all: {rest}")  # "how long" over its limit
    return replace(answer, headline=say.capital(rest))


def _by_their_word(answer: Answer, put: str, text: str) -> Answer | None:
    """ "Not a problem?", "it's not good, is it?": opened by the word itself; None where it is put otherwise."""
    words = {"trouble": TROUBLE, "agreed": AGREED, "enough": ENOUGH}.get(put, {})
    if answer.topic in CABLES and answer.headline.startswith(("Yes: ", "No: ")) and TOO_THICK.search(text):
        return replace(answer, headline=f"No: {answer.headline.partition(': ')[2]}")  # a thick one does no harm
    if answer.verdict not in words:
        return None
    has = has_opening(answer.headline)
    rest = answer.headline.partition(": ")[2] if has else lower(answer.headline)
    return replace(answer, headline=f"{words[answer.verdict]}: {rest}")


def _turned(answer: Answer, first: str, rest: str, text: str) -> Answer:
    """ "Is it too thin?": yes and no turned round, where the topic has not done it already."""
    if first not in remedies.FIRST.get(answer.verdict, ()):
        return answer
    if answer.topic in remedies.READINGS and remedies.TOO_SMALL.search(text):
        return replace(answer, headline=say.capital(rest))  # volts tell a charge, no size
    opens = f"{TURNED[answer.verdict]}: " if answer.verdict in TURNED else ""
    return replace(answer, headline=f"{opens}{rest}" if opens else say.capital(rest))


def _looked_after(answer: Answer, put: str) -> Answer:
    """ "Yes, but look every 90 days: ..." as the question wants it."""
    bare, _, then = answer.headline.partition(BUT)
    if answer.verdict == "yes" and put in ("remedy", "bad"):
        return replace(answer, headline=f"No{answer.headline.removeprefix(bare)}")
    return replace(answer, headline=f"Look every{then}") if put == "open" else answer


def deed_first(answer: Answer, told: str) -> str:
    """A headline that opens with what to do: "Charge it soon: 12.3 V means ..."."""
    found = DEED.match(told)
    if found:
        deed = found["deed"]
        return f"{say.capital(deed)}: {FIRST_WORDS.sub('', found['told'])}."
    if answer.topic in remedies.READINGS and answer.verdict == "yes" and not answer.asks:
        return f"Nothing needs doing: {told}"
    return say.capital(told)


def put(message: Message, request: Request, requests: tuple[Request, ...], before: Iterable[str] = ()) -> str:
    """How one question of a message is put.

    "good", "bad", "both" ("good or bad?"), "passed", "trouble" ("not a problem?"), "agreed" ("it's not good, is it?"),
    "enough" ("not enough, is it?"), "remedy" ("do I need to charge it"), "go" ("must I go there") or "open" (a choice,
    what, how). `before`: what `kept` wrote of the turn before, which a turn that only corrects a figure goes on with.
    """
    goes_on = message.says("note:correction") or message.says("note:ellipsis") or not asks_outright(message)
    cue = f"{WAY}{request.topic}:"
    earlier = next((one.removeprefix(cue) for one in before if one.startswith(cue)), "good") if goes_on else "good"
    if mends_the_kind(message):  # "the label was wrong" asks nothing
        return earlier
    ways = (way(message, span) for span in _asking(message, request, requests))
    if own := next((way for way in ways if way), ""):
        return own
    if any(INDIRECT.search(message.text, *span) for span in _asking(message, request, requests)):
        return "good"
    asking = [clause.span for clause in message.clauses if clause.asks]
    others = {way(message, span) for span in asking[:MOST_ASKED]} - {""}
    if "go" in others:  # "Density 1.14. Must I go there now?": all that is told of it bears on that
        return "go"
    if len(requests) == 1 and len(others) == 1:  # "Should I worry? It rests at 12.1 V": one question in two sentences
        return others.pop()
    polar = any(POLAR.match(message.text, *span) for span in _asking(message, request, requests))
    return "good" if polar or "good" in others else "open" if others else earlier  # told beside another question


def kept(message: Message, requests: tuple[Request, ...], before: Iterable[str]) -> tuple[str, ...]:
    """How the topics of a turn were asked: a thread's cues for the next turn."""
    ways = {item.topic: put(message, item, requests, before) for item in requests}
    return tuple(f"{WAY}{topic}:{way}" for topic, way in ways.items())


def _asking(message: Message, request: Request, requests: tuple[Request, ...]) -> Iterator[Span]:
    """The sentences that ask one question: from its own clause up to that of the next one."""
    end = min((other.span[0] for other in requests if other.span[0] > request.span[0]), default=len(message.text))
    inside = (clause for clause in message.clauses if request.span[0] <= clause.span[0] < end)
    asking = [item.span for item in inside if item.asks or OPENS.match(message.text[slice(*item.span)])]
    if any(message.text[:last].rstrip().endswith("?") for _, last in asking):  # "it cuts out. What do I tell him?"
        asking = [span for span in asking if not only_tells(message.text, span)]
    while asking:
        start, last = asking.pop(0)
        while asking and message.text[last - 1] not in ENDS:  # a comma parts what is one question
            last = asking.pop(0)[1]
        tag = TAG.fullmatch(message.text[start:last])
        whole = (sentence_before(message, start), start) if tag else (start, last)
        yield _own_part(message, whole, request, requests)
