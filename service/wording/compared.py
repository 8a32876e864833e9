""" "Would you say the same for an AGM?", "does that change it?": an answer beside the one given a turn before."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace

from grammar.text.patterns import regex
from service.reply import Answer
from service.wording.summed import has_opening, lower

SAID = "said:"  # what a topic was answered, as a thread carries it
SAME = regex(
    r"\b(?:would|do|will|could)\s+you\s+(?:still\s+|also\s+)?(?:say|advise|answer|recommend)\s+the\s+same\b"
    r"|\b(?:is|are|would|will|does)\s+(?:it|that|the\s+(?:answer|verdict|result))\s+(?:still\s+)?(?:be\s+|stay\s+)?the\s+same\b"
    r"|\bsame\s+(?:answer|verdict|result)\b|\b(?:does|would|will)\s+the\s+same\s+(?:go|hold|apply|count|be\s+true)\b"
    r"|\bstill\s+(?:the\s+same|so|true)\b",
    re.IGNORECASE,
)
CHANGES = regex(
    r"\b(?:does|would|will|could|did)\s+(?:that|it|this|which)\s+(?:then\s+)?(?:change|alter|affect)\b"
    r"|\b(?:does|would|will|could)\s+(?:that|it|this)\s+make\s+(?:a|any|much\s+of\s+a)\s+difference\b"
    r"|\bis\s+(?:it|that|the\s+answer)\s+(?:any\s+)?different\s+(?:then|with|for|if)\b",
    re.IGNORECASE,
)
STAYS = {"yes": "No, it stays a yes", "marginal": "No, still only just", "no": "No, it stays a no"}
FIGURE = "information"  # told by a number, not by a verdict
NUMBER = regex(r"\d[\d.,/]*")
TURNED = {"Yes", "No", "No, not yet", "Only just", "Just enough"}


def kept(answers: Iterable[Answer]) -> tuple[str, ...]:
    """What each topic of a turn was answered: a thread's cues for the next turn."""
    return tuple(f"{SAID}{item.topic}:{_told(item)}" for item in answers if _told(item))


def taken(answer: Answer, text: str, before: Iterable[str]) -> Answer | None:
    """The answer opened with whether it is the same as a turn ago; None where that is not asked or not known."""
    same, changes = SAME.search(text), CHANGES.search(text)
    cue = f"{SAID}{answer.topic}:"
    last = next((one.removeprefix(cue) for one in before if one.startswith(cue)), "")
    told = _told(answer)
    if not (same or changes) or not last or not told or (FIGURE in last) != (FIGURE in told):
        return None
    agrees = last == told
    if same:
        return _opened(answer, "Yes, the same" if agrees else "No, not the same")
    return _opened(answer, STAYS.get(answer.verdict, "No") if agrees else "Yes")


def _told(answer: Answer) -> str:
    """What an answer comes to: its verdict, or the number that it tells first; "" where it tells neither."""
    if answer.verdict in STAYS:
        return answer.verdict
    number = NUMBER.search(answer.headline)
    return f"{FIGURE}:{number.group()}" if answer.verdict == FIGURE and number else ""


def _opened(answer: Answer, first: str) -> Answer:
    """The headline with this in place of its own first word."""
    head, mark, rest = answer.headline.partition(": ")
    if has_opening(answer.headline) and (head in TURNED or head.startswith(("Yes", "No"))):
        return replace(answer, headline=f"{first}{mark}{rest}")
    return replace(answer, headline=f"{first}: {lower(answer.headline)}")
