"""What somebody only warns of: "a box wants air or it blows up, what vent do I cut" asks of no explosion."""

from __future__ import annotations

import re

from grammar.reading import Danger
from grammar.text.patterns import regex

WARNED_OF = frozenset({"explosion", "fire"})  # what people are told may come of it
ELSE = frozenset({"hazard", "unclear", "meaning", "other-desk"})  # topics that are no other question than the danger
HEARD = regex(  # who warns, or that it is the reason for what is asked
    r"\b(?:said|says?|saying|told|tells?|reckons?|reckoned|warn(?:s|ed|ing)?|heard|hear|read|insists?|swears?|thinks?"
    r"|or|else|otherwise|because|cos|afraid|scared|worried|worries|fears?|frightened|risk)\b",
    re.IGNORECASE,
)
ASKS = regex(  # the clause of the danger is itself the question
    r"(?:^|[.?!;:,]|\b(?:so|and|but)\b) *(?:do|does|can|could|will|would|might|may|is|are|why|when|how"
    r"|what|should|did)\b[^.?!;:,]{0,200}$",
    re.IGNORECASE,
)
PURPOSE = regex(  # "how big a vent so that they don't", "what keeps it from"
    r"\b(?:so|that) (?:that )?(?:it|they|the \w+|nothing) (?:(?:do|does|wo|ca)n['’]?t|cannot|never|not) $"
    r"|\b(?:stop|stops|keep|keeps|prevent|prevents) (?:it|them|the \w+|us|that) (?:from )?$",
    re.IGNORECASE,
)


def is_only_warned(text: str, sign: Danger) -> bool:
    """Whether a sign that is told in general is what somebody says may happen, and not what is asked.

    >>> said = Danger("explosion", "general", "explode", (26, 33))
    >>> is_only_warned("he says vent it or it can explode. how big a hole?", said)
    True
    >>> is_only_warned("heard this, but can a box explode?", said)
    False
    """
    if sign.family not in WARNED_OF or sign.status != "general":
        return False
    ahead = text[: sign.span[0]]
    if PURPOSE.search(ahead):
        return True
    return ASKS.search(ahead) is None and HEARD.search(ahead + text[sign.span[1] :]) is not None
