"""Whether a charger between two batteries must be isolated: a plain one joins the negatives of both sides."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service.case import Case
from service.judgements import converter
from service.reply import Answer, Figure
from service.topic import Topic

UNPARTED = regex(r"\b(?:non|un|not)[- ]?(?:iso|isolated)\b", re.IGNORECASE)  # the kind that joins both sides
PART = "whether the 12 V battery is one of those that make the 24 V bank"


def judged(topic: Topic, case: Case, figures: tuple[Figure, ...]) -> Answer | None:
    """Whether it may join the negatives of both sides; None where that is not the question."""
    part = case.says("detail:part_of_bank") and not case.says("detail:not_part")
    plain, common = case.get("charger.isolated"), case.get("converter.common_negative")
    asked = case.says("detail:isolated_or_not") or UNPARTED.search(case.text) is not None
    named = asked or case.says("detail:isolation")  # beside a converter's amps the bare word may tell which one it is
    if plain is None and not part and not (common is not None and named):
        return which(topic, case, figures) if asked or (named and not figures) else None
    case.step("A non-isolated converter joins the negatives of both sides", "converter-isolation")
    if part and plain is not True:
        head = "No: the 12 V battery is part of the 24 V bank, and a non-isolated converter would short it."
        return topic.says("no", head, *figures)
    if plain is True:
        head = "Yes: an isolated converter keeps the negatives apart, so it fits either way."
        return None if figures else topic.says("yes", head)
    if plain is None:
        return shared_or_not(topic, case, bool(common), figures)
    if common is None:
        head = "We can't say yet: a non-isolated converter needs one negative for both sides."
        return topic.needs("converter.common_negative", headline=head, figures=figures)
    if not common:
        head = "No: each side has its own negative, and a non-isolated converter would join them."
        return topic.says("no", head, *figures)
    apart = case.says("detail:not_part") or (case.says("detail:own_pair") and not part)
    if not apart and converter.may_be_part(case):
        head = "We can't say yet: with one negative it fits, unless the 12 V battery is part of the 24 V bank."
        found = topic.needs("bank.layout", headline=head, figures=figures)
        return replace(found, asks=(replace(found.asks[0], say=PART, where=""), *found.asks[1:]))
    head = "Yes: both sides share one negative and the batteries are apart, so a non-isolated one fits."
    return topic.says("yes", head, *figures)


def shared_or_not(topic: Topic, case: Case, common: bool, figures: tuple[Figure, ...]) -> Answer:
    """Whether an isolated one is needed, by the negatives and by whose battery it takes from."""
    if common:
        head = (
            "No, it need not be isolated: both sides share one negative, and the 12 V battery is no part of the bank."
        )
        if not case.says("detail:not_part", "detail:own_pair"):
            head = (
                "No, it need not be isolated, as both sides share one negative; only a battery in both banks wants it."
            )
        return topic.says("information", head, *figures)
    head = "Yes, isolated: each side has its own negative, and a plain converter would join them."
    return topic.says("information", head, *figures)


def which(topic: Topic, case: Case, figures: tuple[Figure, ...]) -> Answer:
    """Isolated or not, where nothing is known of the negatives."""
    case.step("A non-isolated converter joins the negatives of both sides", "converter-isolation")
    head = "We can't say yet: an isolated one fits every boat, a plain one only where both sides share one negative."
    if figures and "alternator.current" not in case:
        amps = f"It pulls about {converter.whole(float(figures[0].value))} ({converter.at_worst(figures)})"
        head = head.replace("We can't say yet:", f"{amps};")
    return topic.needs("converter.common_negative", headline=head, figures=figures)
