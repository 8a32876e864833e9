"""A gauge on the panel that differs from a meter on the battery's posts: the posts count."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service.case import Case, Known
from service.judgements.doubt import shown
from service.reply import Answer
from service.sentences import at_rest
from service.told import two_meters

WHICH = regex(r"\b(?:who|which|whom|what (?:do|should|can) (?:i|we) (?:trust|believe))\b", re.IGNORECASE)
READING = "reading.voltage"


def by_the_posts(case: Case) -> tuple[float, float] | None:
    """Take the reading on the posts as the battery's; the volts of the gauge and of the posts, None for no two."""
    read = two_meters.told(case.text)
    known = [item for held in (case.stated, case.second) if (item := held.get(READING))]
    if read is None or {float(item.value) for item in known} != set(read):
        return None
    gauge, posts = (_known(known, volts) for volts in read)
    case.stated = {**case.stated, READING: replace(posts, of=1)}
    case.second = {fact: item for fact, item in case.second.items() if fact != READING}
    case.used.pop((READING, 1), None)
    case.used[READING, 2] = replace(gauge, of=2)
    return read


def _known(known: list[Known], volts: float) -> Known:
    return next(item for item in known if float(item.value) == volts)


def headline(case: Case, found: Answer, gauge: float, posts: float) -> str:
    """Which of the two counts, where that is asked, how full it is, and where the rest of the volts is."""
    apart = shown(round(abs(posts - gauge), 4))
    why = (
        f"{apart} is lost in the panel's wires, or its gauge is off"
        if gauge < posts
        else "the panel's gauge reads high"
    )
    case.because(f"The meter on the battery's own posts counts: {why}", "cable-share")
    if not WHICH.search(case.text):
        return found.headline
    return f"The meter on the battery posts is right: {shown(posts)} is {at_rest.summary(found)}; {why}."
