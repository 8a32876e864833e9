"""No charge before somebody has looked for ice: an empty lead battery in the frost may have frozen."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service.calculators import freezing
from service.case import Case
from service.judgements.frost import TEMPERATURE, point_at_charge
from service.kinds import LITHIUM
from service.reply import Answer
from service.rules.readings import limit

FROST = regex(  # it was cold, or something froze; not "before it freezes", nor a freezer
    r"(?<!before it )(?<!before the )\b(?:snow(?:s|ed|ing|y)?|frost(?:s|y)?|icy|ice|freez(?:es|ing)|froze|frozen"
    r"|sub-?zero|below (?:zero|freezing))\b(?!-| (?:free|box|cream))",
    re.IGNORECASE,
)
HAS_FROZEN = regex(  # it is asked whether it froze, which the past or the present alone can tell
    r"\b(?:has|have|had|did|is|are|was|were|could|can|may|might|if|whether|think|afraid|sure)\b[^.?!]{0,40}?"
    r"\b(?:frozen|froze|been frosted)\b"
    r"|\bdid (?:it|they|mine|that|the \w+|my \w+) freeze\b"
    r"|\b(?:frozen|ice in it|frost damage|frost damaged)\s*(?:now|already|yet|through|solid|inside|too)?\s*\?",
    re.IGNORECASE,
)
LOOK = "look for ice or a bulge before any charge"
WHY = "Ice or a bulge means that it has frozen, and then it must not be charged"
ADVICE = (  # how an answer sends somebody to the charger, and what stands there instead
    (regex(r", so charge [^;:]*(?=\.$)"), f", so {LOOK}"),
    (regex(r"; a full charge today, then a load test tells(?=\.$)"), f"; {LOOK}"),
    (regex(r"; it may be damaged, and a test after charging tells(?=\.$)"), f"; {LOOK}"),
    (regex(r"; charge it slowly with somebody beside it, rest it a day, and a load test decides"), f"; {LOOK}"),
    (regex(r"; charge longer or equalise it by its manual, then read again"), f"; {LOOK}"),
)
AT_ONCE = regex(r"^(?:Often yes|Yes, charge it soon): (?P<told>[^;]*?)(?P<end>; .*|\.)$")


def due(case: Case, charge: float) -> bool:
    """Whether a lead battery so full may have frozen, by a temperature that is told or by words of frost."""
    if case.said("battery.chemistry") in LITHIUM:
        return False
    celsius = case.said(TEMPERATURE)
    if celsius is not None:
        return freezing.judged(float(celsius), point_at_charge(charge), limit("freezing-margin")) != "yes"
    return charge < limit("lead-half") and bool(FROST.search(case.text))


def held(case: Case, charge: float, headline: str) -> str:
    """A headline that sends nobody to the charger before the battery has been looked at, where that is due."""
    if not due(case, charge):
        return headline
    told = AT_ONCE.sub(lambda found: f"Not yet: {found['told']}{found['end']}", headline)
    if told != headline and ";" not in told:
        told = f"{told.removesuffix('.')}, so {LOOK}."
    for words, instead in ADVICE:
        told = words.sub(instead, told)
    if told != headline:
        case.because(WHY, "frozen-charge")
    return told


def comes(answer: Answer) -> bool:
    """Whether an answer says that nothing is charged before somebody has looked for ice."""
    return LOOK in answer.headline or (answer.verdict == "no" and "look for ice" in answer.headline)


def first(case: Case, charge: float) -> str:
    """What comes before a low battery is used: a charge, or a look for ice before that."""
    return LOOK if due(case, charge) else "charge it first"


def has_it_frozen(text: str) -> bool:
    """Whether a message asks if a battery has frozen, not if it will.

    >>> has_it_frozen("It snowed, has it frozen?"), has_it_frozen("Will it freeze at -10 C?")
    (True, False)
    """
    return bool(HAS_FROZEN.search(text))
