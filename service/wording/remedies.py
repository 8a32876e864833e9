"""The first word where a deed is asked of: whether one must charge it, or go there now."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service import say
from service.judgements import ice_first
from service.reply import Answer

READINGS = frozenset({"rest-voltage", "specific-gravity", "load-voltage"})
CARE = READINGS | {"storage"}  # where a charge is the remedy: "do I need to charge it"
GOES = CARE | {"freeze-point"}  # what one goes to the boat for
MAY_FREEZE = ("It may", "Not for sure")
ADVISED = regex(r"\bcharge (?:it|the )", re.IGNORECASE)
NEEDS = regex(
    r"\bwhat (?:\w+ )?(?:do|should|would|must) (?:i|we) (?:need|get|buy|fit|want|look for)\b"
    r"|\bwhat (?:should|must|can|could|do|shall) (?:i|we) (?:do|change)\b|\bwhat now\b"
    r"|\bwhat (?:is|would be)(?: \w+)? needed\b",
    re.IGNORECASE,
)
TOO_SMALL = regex(r"\btoo (?:small|little|weak for)\b|\bundersized\b|\bnot (?:big|large) enough\b", re.IGNORECASE)
MOST_WORDS = 34  # of a headline that names two currents and what is wanted
FIRST = {"yes": ("Yes",), "marginal": ("Only just", "Just enough"), "no": ("No, not yet", "No")}
WORDS = {word for words in FIRST.values() for word in words} | {"A little", "Usually yes"}


def gone(answer: Answer, first: str, rest: str) -> Answer:
    """ "Must I go there now?": yes where it is not well; the answer's own words where they say as much."""
    if first in WORDS or first in MAY_FREEZE:
        return replace(answer, headline=f"{'No' if answer.verdict == 'yes' else 'Yes'}: {rest}")
    return answer


def remedied(answer: Answer, rest: str) -> Answer:
    """ "Should I charge it?": no where all is well, yes where the answer goes on to say so, else neither word."""
    cold = any(item.fact == "ambient.temperature" and float(item.value) <= 0 for item in answer.understood)
    lithium = any(item.fact == "battery.chemistry" and item.value == "lfp" for item in answer.understood)
    if answer.verdict == "yes":
        return replace(answer, headline=f"No: {rest}")
    if ice_first.comes(answer):
        return replace(answer, headline=f"Not yet: {rest}")
    if ADVISED.search(rest) and "deeply flat" not in rest and not (cold and lithium):
        return replace(answer, headline=f"Yes: {rest}")
    return replace(answer, headline=say.capital(rest))


def with_what_it_takes(answer: Answer, text: str) -> Answer:
    """ "It trips: what do I need?" of a supply that will not do: the no with the least change that turns it."""
    if answer.topic != "run-check" or answer.verdict != "no" or not answer.would_change or not NEEDS.search(text):
        return answer
    whole = f"{answer.headline.removesuffix('.')}; it takes {answer.would_change[0].say}."
    return replace(answer, headline=whole) if len(whole.replace(say.NB, " ").split()) <= MOST_WORDS else answer
