"""A battery that takes the place of another: which of the two told of is to be judged."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service.case import WEIGHED, Case
from service.kinds import LEAD, LITHIUM

SWAP = regex(
    r"\b(?:swap|replac|chang|upgrad|exchang)\w*\b.{0,80}?\b(?:for|with|by|to|against)\b"
    r"|\bold\b.{0,80}\bnew\b",
    re.IGNORECASE | re.DOTALL,
)
JOINS = regex(r"\b(?:for|with|by|to|against|new)\b", re.IGNORECASE)
COMES_IN = regex(  # "lithium in place of the wet one", "gel where the AGM was"
    r"\b(?:in (?:the )?place of|instead of|replac(?:es|ed|ing)|(?:took|takes|taking) the place of)\b", re.IGNORECASE
)
WAS_THERE = regex(r"^\W*(?:battery |one |ones |bank )?(?:was|were|used to|stood|sat|lived|had been)\b", re.IGNORECASE)
GOES_OUT = regex(r"\b(?:swap|replac|chang|upgrad|exchang|switch|mov|go|going|went)\w*\b[^.?!]{0,40}$", re.IGNORECASE)
TO_THE_NEW = regex(r"\b(?:for|with|by|to)\b", re.IGNORECASE)
LIMITS = ("battery.max_current", "battery.peak_current")  # only lithium has them
RATINGS = ("battery.cca", "battery.ca", "battery.reserve")  # only lead has them
OF_EITHER = ("battery.count", "bank.layout", "battery.capacity", "battery.weight", "battery.age", "battery.duty")


def new_one(case: Case) -> Case:
    """The same question, in place, of the battery that comes in, where lithium takes the place of lead or lead that of
    lithium. Limits and cranking amps that are told once are those of the kind that has such."""
    first, second = case.stated.get("battery.chemistry"), case.second.get("battery.chemistry")
    if first is None or second is None or first.span is None or second.span is None or case.says(*WEIGHED):
        return case
    lithium_in = first.value in LEAD and second.value in LITHIUM
    lead_in = first.value in LITHIUM and second.value in LEAD
    limits = lithium_in and any(fact in case.stated for fact in LIMITS) and "battery.cca" not in case.second
    if not limits and not (SWAP.search(case.text) and (lithium_in or lead_in)):
        return case
    begins = where_the_new_begins(case.text, first.span[1], second.span[0])
    gone = {fact for fact in OF_EITHER if (item := case.stated.get(fact)) and (not item.span or item.span[0] < begins)}
    gone |= set(RATINGS if lithium_in else LIMITS)
    kept = {fact: item for fact, item in case.stated.items() if fact not in gone}
    case.stated = kept | {fact: replace(item, of=2) for fact, item in case.second.items()}
    case.second = {}
    return case


def without_the_old(case: Case) -> None:
    """Drops the kind of a battery that has gone, where one came in its place: what is charged is the new one."""
    first, second = case.stated.get("battery.chemistry"), case.second.get("battery.chemistry")
    if first is None or second is None or first.span is None or second.span is None or case.says(*WEIGHED):
        return
    swapped = first.span[0] > second.span[0]
    one, other = (second, first) if swapped else (first, second)
    assert one.span is not None
    assert other.span is not None
    text = case.text
    before, between, after = text[: one.span[0]], text[one.span[1] : other.span[0]], text[other.span[1] :]
    if COMES_IN.search(between) or (re.search(r"\bwhere\b", between, re.IGNORECASE) and WAS_THERE.search(after)):
        new = one
    elif GOES_OUT.search(before) and TO_THE_NEW.search(between):
        new = other
    else:
        return
    case.stated = {**case.stated, "battery.chemistry": new}
    case.second = {fact: item for fact, item in case.second.items() if fact != "battery.chemistry"}


def where_the_new_begins(text: str, first: int, second: int) -> int:
    """The place after which figures are the new battery's: the last "for" or "with" between the two kinds."""
    words = list(JOINS.finditer(text, first, second))
    return words[-1].start() if words else first
