"""Two moments told in one message: a load test of some day before, and the volts at rest of today.

"Tested with 400 A, it went to 9.8, fully charged before. Today it shows 12.5": the test began at full, not at 12.5 V.
"""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Span
from grammar.text.patterns import regex
from service.case import Case, Known

REST, LOADED, CHARGE = "reading.voltage", "reading.load_voltage", "battery.charge"
AT_REST = (REST, "reading.state", "reading.rest_time")
NOW = regex(
    r"\b(?:today|tonight|this (?:morning|afternoon|evening|week)|now|at the moment|since then|meanwhile|by now"
    r"|(?:the )?next (?:day|morning|week)|afterwards"
    r"|(?:a|one|two|three|four|\d+) (?:days?|weeks?|months?) (?:later|after))\b",
    re.IGNORECASE,
)
THEN = regex(
    r"\b(?:yesterday|ago|last (?:week|month|year|autumn|spring|summer|winter|season|\w+day)|the other day|before"
    r"|earlier|was|were|had|went|fell|dropped|tested|pulled|took|sank|came|gave|did|held)\b",
    re.IGNORECASE,
)
DATED = regex(
    r"\b(?:yesterday|ago|last (?:week|month|year|autumn|spring|summer|winter|season|\w+day)|the other day|earlier"
    r"|tested)\b",
    re.IGNORECASE,
)
STOPS = regex(r"[.?!;](?=\s|$)")


def of_its_moment(case: Case, topic: str) -> Case:
    """The case of a test without the volts of a later day, and of those volts without the charge before the test."""
    rest, loaded = case.stated.get(REST), case.stated.get(LOADED)
    if rest is None or loaded is None or rest.span is None or loaded.span is None or REST in case.second:
        return case
    today, then = _sentence(case.text, rest.span), _sentence(case.text, loaded.span)
    if today == then or not NOW.search(case.text, *today) or NOW.search(case.text, *then):
        return case
    past = DATED if today < then else THEN  # "at rest this morning 12.7. Running, it dropped to 9.9": one morning
    if not past.search(case.text, *then):
        return case
    gone: set[str] = set()
    if topic == "load-voltage":
        gone = {fact for fact in (*AT_REST, CHARGE) if _within(case.stated.get(fact), today)}
    elif topic == "rest-voltage":
        gone = {CHARGE} if CHARGE in case.stated and not _within(case.stated[CHARGE], today) else set()
    return (
        replace(case, stated={fact: item for fact, item in case.stated.items() if fact not in gone}) if gone else case
    )


def _sentence(text: str, span: Span) -> Span:
    ends = [found.end() for found in STOPS.finditer(text) if found.end() <= span[0]]
    after = STOPS.search(text, span[1])
    return max(ends, default=0), after.end() if after else len(text)


def _within(item: Known | None, span: Span) -> bool:
    return item is not None and item.span is not None and span[0] <= item.span[0] < span[1]
