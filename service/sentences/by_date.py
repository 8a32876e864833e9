"""When a battery that is laid up is to be charged again, by the dates told."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.text.patterns import regex
from grammar.told.times import dates
from service import say
from service.case import Case
from service.judgements import supply
from service.judgements.laid_up import LaidUp
from service.reply import Figure
from service.sentences import wording
from service.topic import Topic

WHETHER = ("request:may_i", "request:enough", "put:good", "detail:asks_good")  # what asks if it may stand
ROUGHLY = 15.0  # days that two months by their names may be off the time that is told
SINCE = regex(  # "aboard since September, 12.55 now"
    r"\bsince (?:the |early |late |mid |end of |start of |beginning of )*"
    r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|autumn|fall|\d)",
    re.IGNORECASE,
)


def spell(case: Case) -> tuple[dates.YearDay | None, dates.YearDay | None]:
    """The dates of a lay-up that is to come; none where it began long ago and the charge is that of now."""
    read_now = case.said("reading.voltage") is not None and SINCE.search(case.text) is not None
    return (None, None) if read_now else dates.spell(case.text)


def by_the_dates(case: Case) -> float | None:
    """The days between two dates that a message names, where it asks whether all will be well until then."""
    first, last = spell(case)
    if not first or not last or not case.says("detail:asks_good", "request:is_good", "request:enough"):
        return None
    days = float(dates.between(first, last))
    why = f"from {first.words} to {last.words}"
    return float(supply.taken(case, "storage.time", days, why)) if days else None


def by_date(case: Case, found: LaidUp, days: float) -> Iterator[Figure]:
    """The day by which it wants a charge, and what is left at the end, where the message names days of the year."""
    first, last = spell(case)
    if first is None:
        return
    if days >= 1:
        case.because(f"Laid up on {first.words}, charge it by {dates.later(first, days).words}", "calendar")
    if last is None or not (until := dates.between(first, last)):
        return
    if abs(until - float(case.said("storage.time") or until)) <= ROUGHLY:
        left = found.after(until)
        case.because(
            f"On {last.words}, after {say.quantity(until, 'd')}, it is at about {wording.percent(left)}",
            "calendar",
        )
        yield Figure("state_of_charge_on_date", f"left on {last.words}", left, "%")


def opened_by(topic: Topic, case: Case, verdict: str, head: str) -> str:
    """What is to be done without power, opened by the verdict where it is asked whether the battery may stand so."""
    whether = case.says(*WHETHER) and topic.name not in case.before  # a later "no power there" asks what to do
    start = {"no": "No: ", "marginal": "Only just, so "}.get(verdict) if whether else None
    return f"{start}{head[:1].lower()}{head[1:]}" if start else head
