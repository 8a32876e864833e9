"""What is asked of the water in a battery beyond when to look: whether it wants some at this level, and which water."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

LOW = regex(
    r"\b(?:just|only just|barely|hardly)\b[^.?!;]{0,24}\b(?:cover\w*|over|above|at)\b(?! (?:a|an|one|two|\d))"
    r"(?=[^.?!;]{0,20}(?:plates?|[.?!;,)]|$))"
    r"|\b(?:level with|at the top of|down to) the plates\b",
    re.IGNORECASE,
)
PLATES = regex(r"\bplates?\b", re.IGNORECASE)
NONE_LEFT = regex(  # "out of distilled", "mineral water instead of deionised"
    r"\b(?:out of|no|any|without|instead of|in place of|rather than|replace|haven['’]?t got|not got)"
    r" (?:any |more |the |my )*(?:distilled|distiled|deioni[sz]ed|demineralised|demineralized)\b",
    re.IGNORECASE,
)
NAMED = regex(
    r"\b(?:(?:filtered|rain|bottled|boiled|spring|mineral|softened|drinking|river|mains|city|hose)[ -]?)+water\b",
    re.IGNORECASE,
)
OTHER_WATER = regex(
    r"\b(?:filter\w*|filtered|rain|bottled|boiled|spring|mineral|kettle|jug|purified|softened|drinking)\b"
    r"(?: (?:water|jug|one|stuff))?|\b(?:which|what|what kind of|what sort of) water\b",
    re.IGNORECASE,
)
WATER = regex(r"\b(?:water|distilled|deioni[sz]ed|top\w*|jug|fill\w*)\b", re.IGNORECASE)

STOOD_DRY = regex(  # some time ago, and filled since
    r"\b(?:(?:boiled|ran|run|gone|went|dried|cooked)(?: (?:itself|themselves|completely|nearly))? (?:dry|out)"
    r"|plates (?:were|was|stood) (?:bare|dry|exposed|showing))\b[^?!]{0,60}"
    r"\b(?:topped|filled|refilled) (?:it|them|up|all|the|each|every)\b",
    re.IGNORECASE,
)


def is_low(text: str) -> bool:
    """Whether the water stands just over the plates.

    >>> is_low("does she need water, plates just covered"), is_low("the water's just over the plates, top up?")
    (True, True)
    >>> is_low("just over a year old, plates of lead"), is_low("it is just right")
    (False, False)
    """
    return PLATES.search(text) is not None and LOW.search(text) is not None


def which(text: str) -> bool:
    """Whether it is asked which water goes in, or whether another one than distilled does.

    >>> which("distilled or will the filtered jug do for topping"), which("what water do I top up with")
    (True, True)
    >>> which("how often do I look at the water")
    False
    """
    return OTHER_WATER.search(text) is not None and WATER.search(text) is not None


def in_its_place(text: str) -> bool:
    """Whether distilled water is named only as what another one is to stand in for.

    >>> in_its_place("out of distilled, will spring water do"), in_its_place("distilled or tap water?")
    (True, False)
    """
    return NONE_LEFT.search(text) is not None


def named(text: str) -> str:
    """The water they would use, by their word for it where they have one.

    >>> named("bottled spring water from the galley?"), named("straight from the tap?"), named("the filtered jug?")
    ('bottled spring water', 'tap water', 'other water')
    """
    found = NAMED.search(text)
    return found[0].lower() if found else "other water" if OTHER_WATER.search(text) else "tap water"


def filled_since(text: str) -> bool:
    """Whether cells stood dry and have been filled since.

    >>> filled_since("they ran dry in August and I topped them up"), filled_since("it boiled dry, shall I top it up?")
    (True, False)
    """
    return STOOD_DRY.search(text) is not None
