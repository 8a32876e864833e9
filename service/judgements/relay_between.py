"""A charging relay or a DC-to-DC charger between two batteries: the kinds on its two sides decide."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import charging
from service.judgements.unlike import LIMITS
from service.kinds import LITHIUM
from service.reply import Answer
from service.told import charging_relay
from service.topic import Topic

SOURCE = "lithium-alternator"
BOTH = regex(r"\b(?:both|all|same kind|agms|gels)\b", re.IGNORECASE)  # one kind that is told is that of both sides


def kinds(case: Case) -> tuple[str, ...]:
    """The kinds of battery that are told of its two sides, each once."""
    other = case.second.get("battery.chemistry")
    named = (charging.known_kind(case), other.value if other else None)
    if other:
        case.used.setdefault((other.fact, 2), other)
    return tuple(dict.fromkeys(str(kind) for kind in named if kind))


def judged(topic: Topic, case: Case) -> Answer | None:
    """Which of the two may stand between the batteries; None where that is not asked."""
    if not charging_relay.weighed(case.text):
        return None
    told, choice = kinds(case), charging_relay.which(case.text)
    if any(kind in LITHIUM for kind in told):
        case.because("Lithium rests at higher volts than lead and takes all the current that it can get", SOURCE)
        joins = "a relay joins lithium straight to the other battery, with nothing to limit the current"
        if choice:
            return topic.says("information", f"The DC-to-DC charger: {joins}.")
        return topic.says("no", f"No, not with lithium: {joins}, so fit a DC-to-DC charger.")
    if len(told) > 1:
        names = " and ".join(say.CHEMISTRY[kind] for kind in told)
        case.because("Unlike kinds want unlike charging volts", LIMITS["kind"].cite)
        head = f"Better a DC-to-DC charger: a relay gives {names} the same volts, and each wants its own."
        return topic.says("information", head)
    if told and BOTH.search(case.text):
        case.because(
            "A DC-to-DC charger makes up the volts that a long cable loses, a relay does not", "converter-power"
        )
        head = (
            "Either will do between lead batteries of one kind: a relay is enough near by, a DC-to-DC charger fills "
            "better over a long cable."
        )
        return topic.says("information" if choice else "yes", head if choice else f"Yes: {head[0].lower()}{head[1:]}")
    head = (
        "We can't say yet: with lithium on either side only a DC-to-DC charger will do; between lead batteries of one "
        "kind a relay will."
    )
    return topic.needs("battery.chemistry", headline=head)


def by_the_alternator(topic: Topic, case: Case) -> Answer | None:
    """Whether the alternator charges the battery as well as a charger does; None where that is not asked."""
    if not charging_relay.alternator_as_well(case.text) or charging_relay.CONVERTER.search(case.text):
        return None
    case.because("An alternator charges only the batteries that are joined to it", "converter-power")
    how = "a DC-to-DC charger" if charging.known_kind(case) in LITHIUM else "a charging relay or a DC-to-DC charger"
    only = "" if charging.known_kind(case) else "; lithium by the latter alone"
    return topic.says("information", f"Only while the engine runs, and only where {how} joins the two{only}.")
