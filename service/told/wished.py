"""Whether it is only asked to charge, jump or thaw a battery: then nothing tells that a charger is on it."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service.told import may_i

DEED = r"(?:re-?charg(?:e|ing)|charg(?:e|ing)|jump(?:ing|-?start\w*)?|boost(?:ing)?|thaw(?:ing)?|de-?frost(?:ing)?)"
HOW = regex(
    rf"\bhow (?:do|can|could|should|would|shall|must|to)\b[^.?!;]{{0,40}}?\b{DEED}\b[^.?!;]{{0,60}}", re.IGNORECASE
)
BARE = regex(rf"(?:^|[.,:;!?]\s*)(?:(?:just|ok to|so|and) )?{DEED}\b[^.?!;]{{0,80}}\?", re.IGNORECASE)
JUMP = regex(r"\b(?:jump|boost)\w*\b", re.IGNORECASE)
LEAVE = regex(rf"(?:{may_i.MAY}){may_i.UP_TO}\b{DEED}\b[^.?!;,]{{0,40}}", re.IGNORECASE)
ON = regex(
    r"\bcharg\w*|\bplug\w*|\bshore ?power\b|\bhook(?:ed)? ?up\b|\balternator\b"
    r"|\bengine (?:is |was )?(?:on|runs|running)\b",
    re.IGNORECASE,
)


def only_asked(text: str) -> bool:
    """Whether leave to charge, jump or thaw is asked, and no other words speak of a charger.

    >>> only_asked("It froze. How do I jump it?"), only_asked("froze solid, can I charge it?")
    (True, True)
    >>> only_asked("froze solid, the charger is on since noon. Can I jump it?"), only_asked("it froze on charge")
    (False, False)
    """
    asked = [found.span() for wish in (LEAVE, HOW, BARE, JUMP) for found in wish.finditer(text)]
    rest = "".join(letter for at, letter in enumerate(text) if not any(first <= at < last for first, last in asked))
    return bool(asked) and ON.search(rest) is None
