"""Whether batteries may be joined at all: their kinds, strength and age, their volts at rest, how many, their maker."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import joining, new_and_old
from service.judgements.joining import figures, pair
from service.judgements.unlike import LIMITS, age_apart, capacity_apart, duty_apart, in_words
from service.kinds import LEAD
from service.reply import Answer
from service.topic import Topic

VOLTS_ASKED = regex(r"\b(?:what|which|how (?:many|much)) volt(?:s|age)?\b", re.IGNORECASE)


def kinds_apart(topic: Topic, case: Case) -> Answer | None:
    """Unlike kinds, or one lead battery whose kind is not known."""
    both = pair(case, "battery.chemistry")
    if not both and case.says("detail:mixed_kind"):
        both = ("", "other")
    if not both or both[0] == both[1]:
        return None
    if "lead" in both and all(kind in LEAD for kind in both):
        apart = strength_apart(topic, case)
        if apart and apart.verdict == "no":
            return apart  # whatever the other one's kind
        known = say.CHEMISTRY[str(both[0] if both[1] == "lead" else both[1])]
        head = f"We can't say yet: a battery beside {known} must be {known} too, so the kind of the other one decides."
        return topic.needs("battery.chemistry", headline=head)
    case.step("Unlike kinds want unlike charging volts and wear each other out", LIMITS["kind"].cite)
    names = [say.CHEMISTRY.get(str(kind), "") for kind in both]
    told = f"{names[0]} and {names[1]} batteries" if all(names) else "batteries of unlike kinds"
    head = f"No: {told} must not be joined, in series or in parallel; keep them apart, each with its own charging."
    if new_and_old.new_with_old(case.text):
        head = f"No: {told} must not be joined; a new one and an old one of the same kind only just do in parallel."
    return topic.says("no", head)


def strength_apart(topic: Topic, case: Case) -> Answer | None:
    """Unlike capacity or age: no in series, only just in parallel."""
    reasons = [*duty_apart(case), *capacity_apart(case), *age_apart(case)]
    if not reasons:
        return None
    reason = in_words(reasons)
    how = new_and_old.layout_meant(case)
    if how is None:
        head = f"We can't say yet: {reason} may only just do in parallel, and never in series."
        return topic.needs("bank.layout", headline=head, figures=figures(case, "parallel") if case.second else ())
    asked = new_and_old.both_or_one(case, how, reasons[0])
    if how == "parallel" and (many := too_many(topic, case, sum(joining.of_each(case)), how)):
        return many
    if how == "parallel":
        head = (
            asked or f"Only just: {reason} work in parallel, but the weaker one wears the other; alike ones are better."
        )
        both = new_and_old.side_by_side(case) if new_and_old.planned(case) else case
        return topic.says("marginal", head, *figures(both, how))
    shown = figures(case, how)
    made = say.quantity(float(shown[0].value), "V")
    made = f", though they would make {made}" if VOLTS_ASKED.search(case.text) else ""
    head = asked or f"No: {reason} must not be joined in series{made}, as the weaker one is emptied too far."
    return topic.says("no", head, *shown)


def charged_first(topic: Topic, case: Case) -> Answer | None:
    """Two batteries that rest at unlike volts are brought together before they are joined."""
    both, most = pair(case, "reading.voltage"), LIMITS["before_joining"]
    if not both or abs(float(both[0]) - float(both[1])) <= float(most.value) * (1 + 1e-9):
        return None
    low, apart = min(map(float, both)), abs(float(both[0]) - float(both[1]))
    case.step(f"They rest {say.volts(apart, 2)} apart, and {say.volts(float(most.value))} is the most", most.cite)
    told = say.volts(low, 2)
    head = f"Not yet: charge the one at {told} alone first; of one kind, size and age they may be joined then."
    return topic.says("marginal", head)


def not_allowed(topic: Topic, case: Case, how: str, may: bool, family: str | None) -> Answer | None:
    """What the number of batteries or their maker forbids, or leaves open."""
    in_parallel, in_series = float(case["bank.in_parallel"]), float(case["bank.in_series"])
    if not may:
        return None
    if many := too_many(topic, case, in_parallel, how):
        return many
    if family != "lithium":
        return None
    for way, count in (("series", in_series), ("parallel", in_parallel)):
        fact = f"battery.max_in_{way}"
        allowed = case.said(fact)
        if count > 1 and allowed is None:
            return topic.needs(fact, figures=figures(case, how))
        if allowed is not None and count > float(allowed):
            case.step(f"The maker allows {say.number(allowed)} in {way}", LIMITS["kind"].cite)
            head = f"No: the maker allows {say.number(allowed)} in {way}, and you would join {say.number(count)}."
            return topic.says("no", instead(case, way, float(allowed)) or head, *figures(case, how))
    return None


def instead(case: Case, way: str, allowed: float) -> str:
    """What to do in its place, where that is asked: "so what now?"; "" where it is not."""
    if not case.says("detail:what_now"):
        return ""
    if way == "parallel":
        return f"Join {say.number(allowed)} in parallel at most: larger batteries, or ones whose maker allows more."
    volts = say.quantity(float(case["bank.voltage"]), "V") if "bank.voltage" in case else "the whole"
    most = f"with {say.number(allowed)} in series, " if allowed > 1 else ""
    limit = f"{most}these cannot make {volts} within their maker's limit"
    return f"Take batteries of more volts, or one of {volts}: {limit}."


def too_many(topic: Topic, case: Case, in_parallel: float, how: str) -> Answer | None:
    """That so many in parallel do not share the current; None for fewer."""
    most = LIMITS["parallel"]
    if in_parallel <= float(most.value):
        return None
    case.step("More than 4 in parallel do not share the current evenly", most.cite)
    head = f"No: {say.number(in_parallel)} in parallel are too many; more than 4 do not share the current evenly."
    return topic.says("no", head, *figures(case, how))
