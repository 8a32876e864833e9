"""What is told of a battery that is no longer aboard: "my previous lead battery showed 12.7 when full"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from grammar.reading import Span, Stated

OF_IT = ("battery.", "reading.", "charger.setting")
BATTERY = (
    r"(?:batter\w+|batts?|one|ones|pair|bank|set|agms?|gels?|wet(?: one| cell)?|lead(?:[- ]acid)?|lithiums?|lifepo4?"
    r"|flooded)"
)
PAST = r"(?:showed|was|were|had|read|held|gave|stood|lasted|went|got|came|rested|sat|lived|died|kept|ran|took)"
GONE = re.compile(
    rf"\b(?:previous|former|last) (?:\w+ ){{0,3}}?{BATTERY}\b[^.?!;]{{0,30}}?\b(?:always |used to |usually )?{PAST}\b"
    rf"|\bold (?:\w+ ){{0,2}}?{BATTERY}\b[^.?!;]{{0,20}}?\b(?:always|used to|usually|in its day)\b"
    rf"|\b{BATTERY}\b(?: (?:that|which))? (?:i|we) (?:had|used) (?:before|then|earlier|until|till|last year)\b"
    r"|\b(?:before (?:this|that|it)|until (?:then|last \w+)|in those days|formerly|earlier),?"
    r" (?:i|we) (?:had|used|ran)\b",
    re.IGNORECASE,
)
ENDS = re.compile(
    r"[.?!;](?=\s|$)|, (?=(?:is|are|does|do|will|can|should|would)\b)"
    r"|,? \b(?:now|but|whereas|while|and (?:now|the new|this|the present|today))\b",
    re.IGNORECASE,
)
ASKS = re.compile(r"\?|\b(?:why|is that|was that|did it|compared?|than)\b", re.IGNORECASE)


def without_former(text: str, stated: Sequence[Stated]) -> list[Stated]:
    """The facts without those of a former battery, where others are told of one that is there."""
    gone = [span for found in GONE.finditer(text) if (span := _clause(text, found)) is not None]
    if not gone:
        return list(stated)
    old = [item for item in stated if item.fact.startswith(OF_IT) and any(_within(item, span) for span in gone)]
    kept = [item for item in stated if item not in old]
    return kept if any(item.fact.startswith(OF_IT) for item in kept) else list(stated)


def _clause(text: str, found: re.Match[str]) -> Span | None:
    """The part of the sentence that tells of it; None where it asks of it."""
    start = max((end.end() for end in ENDS.finditer(text, 0, found.start())), default=0)
    after = ENDS.search(text, found.end())
    end = after.end() if after else len(text)
    return None if ASKS.search(text, start, end) else (start, end)


def _within(item: Stated, span: Span) -> bool:
    return span[0] <= item.span[0] < span[1]
