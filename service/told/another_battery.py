"""A battery with a sign of danger, told apart from the one that is asked about: "an old one in the garage leaks"."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise

from grammar.reading import Message, Span
from grammar.text.patterns import regex
from service.case import Case

OF_ITSELF = frozenset({"leaking-case", "swollen-case", "frozen-lead", "lithium-dropped-or-holed"})  # of one battery
PLACE = r"(?:garage|shed|workshop|barn|cellar|basement|skip|lock-?up|house|attic)"
BATTERY = r"(?:one|ones|batter(?:y|ies)|wets?|agms?|gels?|lithiums?|accu)"
APART = regex(
    rf"\b(?:in|at) (?:the|my|our|his|her|their) {PLACE}\b|\bat home\b|\bashore\b"
    rf"|\b(?:an?|the|my|our|one of (?:the|my|our)|his|her) (?:old|spare|former|previous|worn-?out)(?: \w+)? {BATTERY}\b"
    rf"|\b(?:neighbou?r|friend|brother|dad|father|mate)['’]?s (?:\w+ )?{BATTERY}\b"
    rf"|\bthe {BATTERY} (?:that )?(?:i|we) (?:took|pulled|lifted) out\b",
    re.IGNORECASE,
)
THIS_ONE = regex(
    r"\b(?:it|its|this|them|those|that one|that battery|the same|the leaking|the swollen|the split)\b", re.I
)
NAMED = frozenset({"battery.capacity", "battery.chemistry", "battery.group", "battery.cca"})
ENDS = regex(r"[.!?\n]+(?=\s|$)")


def asked_about(message: Message, span: Span, families: Iterable[str]) -> bool:
    """Whether the question that begins at `span` is of a battery apart from the one with these signs of danger."""
    of_it = _of_the_danger(message)
    if not of_it or not OF_ITSELF.issuperset(families):
        return False
    if not all(APART.search(message.text[slice(*part)]) for part in of_it):
        return False
    named = [item.span[0] for item in message.stated if item.fact in NAMED]
    rest = [part for part in _sentences(message.text) if part not in of_it and part[1] > span[0]]
    asked = [part for part in rest if any(part[0] <= at < part[1] for at in named)]
    return bool(asked) and not THIS_ONE.search(message.text[slice(*asked[0])])


def own_case(case: Case, message: Message) -> Case:
    """The case of the other battery: what is told of the one with the sign is not its own."""
    of_it = _of_the_danger(message)
    own = {fact: known for fact, known in case.stated.items() if not _within(known.span, of_it)}
    second = {fact: known for fact, known in case.second.items() if not _within(known.span, of_it)}
    taken_up = {fact: replace(known, of=1) for fact, known in second.items() if fact not in own}
    case.stated = {**own, **taken_up}
    case.second = {fact: known for fact, known in second.items() if fact not in taken_up}
    return case


def _of_the_danger(message: Message) -> list[Span]:
    """The sentences that tell of a sign of danger."""
    signs = [item.span[0] for item in message.dangers if item.status == "present"]
    return [part for part in _sentences(message.text) if any(part[0] <= at < part[1] for at in signs)]


def _sentences(text: str) -> list[Span]:
    cuts = [0, *(found.end() for found in ENDS.finditer(text)), len(text)]
    return [(one, two) for one, two in pairwise(cuts) if text[one:two].strip()]


def _within(span: Span | None, parts: Iterable[Span]) -> bool:
    return span is not None and any(start <= span[0] < end for start, end in parts)
