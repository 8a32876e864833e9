"""Two supplies of which one is to be chosen, each told by its number: "two 6 V batteries in series or one 12 V"."""

from __future__ import annotations

import re
from functools import lru_cache

from grammar.reading import Span
from grammar.text.patterns import regex
from service.case import Case, Known

COUNT = r"(?:one|a single|single|two|three|four|[1-4] ?x|[1-4]|an?)"
VOLTS = r"\b(?:6|12)[ -]?v(?:olts?)?\b"
SAME = r"(?:(?!\b(?:or|than|vs|versus)\b)[^.?!;])"
RATHER = regex(r"\b(?:or|than|vs|versus|instead)\b", re.IGNORECASE)
CHOICE = regex(
    rf"\b(?P<first>{COUNT} {SAME}{{0,50}}?{VOLTS}{SAME}{{0,45}}?)"
    rf",? (?:or|better than|than|vs\.?|versus|rather than|instead of)(?: just| only)? "
    rf"(?P<other>{COUNT} [^.?!;]{{0,25}}?{VOLTS}[^.?!;,]{{0,200}}?)(?= for (?:an?|my|the|our)\b|[.?!;,]|$)",
    re.IGNORECASE,
)
RATED = ("battery.cca", "battery.max_current")
OF_BATTERY = ("battery.", "bank.layout", "bank.voltage", "bank.count")


def rated_and_not(case: Case) -> tuple[Case, Case] | None:
    """The cases of the option whose rating is told and of the other one; None where no such two are weighed."""
    found = _choice(case.text)
    if found is None or "battery.count" in case.second:
        return None
    spans = (found.span("first"), found.span("other"))
    sides = [_alone(case, span, spans) for span in spans]
    rated = [any(fact in side.stated for fact in RATED) for side in sides]
    if sum(rated) != 1:
        return None
    first = rated.index(True)
    return sides[first], sides[1 - first]


def weighed(text: str) -> bool:
    """Whether two supplies are put up to be chosen between.

    >>> weighed("two 6V 220 Ah in series or one 12 V AGM 800 CCA?"), weighed("two 12V in series, 24V or 12 V?")
    (True, False)
    """
    return _choice(text) is not None


@lru_cache(maxsize=4)  # each answer to a message asks it
def _choice(text: str) -> re.Match[str] | None:
    return CHOICE.search(text) if RATHER.search(text) else None


def _alone(case: Case, span: Span, spans: tuple[Span, Span]) -> Case:
    """The case with what is told of one option, and of nothing of the other."""
    told = [*case.stated.values(), *case.second.values()]
    own = [item for item in told if item.span and span[0] <= item.span[0] < span[1]]
    shared = [item for item in case.stated.values() if not _in_either(item, spans) and not _of_battery(item)]
    alone = case.fresh()
    alone.stated = {item.fact: item for item in (*shared, *own)}
    alone.second = {}
    return alone


def _of_battery(item: Known) -> bool:
    return item.fact.startswith(OF_BATTERY)


def _in_either(item: Known, spans: tuple[Span, Span]) -> bool:
    return item.span is not None and any(start <= item.span[0] < end for start, end in spans)
