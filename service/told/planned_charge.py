"""A charge that is planned: "and how often do I look at it, if I charge it full first?" counts from full."""

from __future__ import annotations

import re
from collections.abc import Mapping

from grammar.text.patterns import regex
from service.case import Known

FULL = Known("battery.charge", 100.0, "assumed", "%", why="charged full first, as you plan")
NOW = ("reading.voltage", "reading.gravity", "reading.gravity_spread")  # what tells the charge before that
PARTS = regex(
    r"(?<=[.!?;])\s+|,?\s+(?:and|but)\s+(?=(?:how|what|when|will|would|can|could|is|are|does|do|should|may|must)\b)",
    re.IGNORECASE,
)
PLAN = regex(
    r"\b(?:if|when|once|after|provided|supposing|assuming|as long as)\s+(?:that\s+)?(?:"
    r"(?:i|we|he|she|they)(?:['’]ve|['’]ll)?\s+(?:have\s+|had\s+|will\s+|would\s+|first\s+|then\s+|fully\s+|only\s+)*"
    r"(?:re)?(?:charged?|fill(?:ed)?|topp?(?:ed)?)\b"
    r"|(?:it|they)(?:['’]?s|\s+is|\s+are|\s+has\s+been|\s+have\s+been|\s+gets?)\s+(?:fully\s+|first\s+)*"
    r"(?:re)?(?:charged|filled|topped)\b)[^.?!;,]{0,200}"
    r"|\b(?:once|as soon as)\s+(?:it|they)(?:['’]?s|\s+is|\s+are)\s+(?:back\s+)?full\b[^.?!;,]{0,200}",
    re.IGNORECASE,
)
IN_PART = regex(
    r"\d ?(?:%|percent|per cent|hours?\b|hrs?\b|h\b|min|v\b|volts?\b)"
    r"|\b(?:half|quarter|bit|little|partly|almost|nearly|every|each|once an?)\b",
    re.IGNORECASE,
)


def to_full(text: str, of: re.Pattern[str], without: bool = False) -> bool:
    """Whether a question plans a full charge: one that speaks of these words, or `without` one that does not.

    >>> frost = re.compile("freez")
    >>> text = "It is at 60 %. Will it freeze? And how long may it stand if I charge it full first?"
    >>> to_full(text, frost), to_full(text, frost, without=True)
    (False, True)
    """
    plans = ((part, PLAN.search(part)) for part in PARTS.split(text))
    return any(
        plan is not None and not IN_PART.search(plan[0]) and (of.search(part) is None) == without
        for part, plan in plans
    )


def charged(stated: Mapping[str, Known]) -> dict[str, Known]:
    """The facts once it is charged full; what told the charge before counts no more."""
    return {**{fact: item for fact, item in stated.items() if fact not in NOW}, FULL.fact: FULL}


def without_plans(text: str) -> str:
    """The text without what is planned: "look at it if I charge it first" asks nothing of charging."""
    return PLAN.sub("", text)
