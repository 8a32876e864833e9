"""What is told of a battery that is not aboard: the former one, a neighbour's, a drill's: "my last one showed 12.7"."""

from __future__ import annotations

import re

from grammar.reading import Span, Stated
from grammar.text.patterns import regex

KIND, OF_IT = "battery.chemistry", ("battery.", "reading.", "charger.setting")
BATTERY = (
    r"(?:batter\w+|batts?|one|ones|pair|bank|set|agms?|gels?|wet(?: one| cell)?|lead(?:[- ]acid)?|lithiums?|lifepo4?"
    r"|flooded)"
)
PAST = r"(?:showed|was|were|had|read|held|gave|stood|lasted|went|got|came|rested|sat|lived|died|kept|ran|took)"
FORMER = regex(
    rf"\b(?:previous|former|last(?! (?:\w+day|night)\b)) (?:\w+ ){{0,3}}?{BATTERY}\b[^.?!;]{{0,30}}?\b{PAST}\b"
    rf"|\bold (?:\w+ ){{0,2}}?{BATTERY}\b[^.?!;]{{0,20}}?\b(?:always|used to|usually|in its day)\b"
    rf"|\b{BATTERY}\b(?: (?:that|which))? (?:i|we) (?:had|used) (?:before|then|earlier|until|till|last year)\b"
    r"|\b(?:before (?:this|that|it)|until (?:then|last \w+)|in those days|formerly|earlier),?"
    r" (?:i|we) (?:had|used|ran)\b"
    r"|\b(?:in|on) (?:my|our|the|his|her) (?:old|last|former|previous|other) boat\b",
    re.IGNORECASE,
)
THEIRS = regex(
    r"\b(?:neighbou?r|mate|friend|brother|uncle|father|cousin|colleague|dealer|salesman|seller|shop|forum|everyone"
    r"|everybody|people|others)s?(?: \w+){0,4}? (?:has|have|had|runs?|ran|fitted|bought|got|uses?|went"
    r"|(?:swears?|swore) (?:by|on)|talks?|talked|raves?|raved|sells?|sold|likes?|praises?)\b"
    r"(?! (?:me|us|ours?)\b)[^.?!;,]{0,30}"
    r"|\b(?:lithium|lead|agm|gel|lfp) (?:\w+ )?(?:drill|phone|torch|laptop|scooter|screwdriver|power ?bank|toy|camera"
    r"|bicycle|bike|headlamp)s?\b",
    re.IGNORECASE,
)
THEIR_READING = regex(
    r"\b(?:neighbou?r|friend|mate|pal|brother|uncle|dad|father|cousin|next boat|other boat|next door)(?:'s|s'|’s)"
    r"(?: (?:battery|agm|gel|wet|one|only|just|always|never|reads|shows|goes|falls|drops|sinks|stays|holds|sits|to|at"
    r"|down|is|has|was|gets|under|load|about|still)){1,6} $",
    re.IGNORECASE,
)
AHEAD = 80  # characters
ENDS = regex(
    r"[.?!;](?=\s|$)|, (?=(?:is|are|does|do|will|can|should|would)\b)"
    r"|,? \b(?:now|but|whereas|while|and (?:now|the new|this|the present|today))\b",
    re.IGNORECASE,
)
CHOICE = regex(r"\bwhich (?:of|one|is|are|would|kind|type|sort|batter|do|should|suits?)", re.IGNORECASE)
ASKS = regex(r"\?|\b(?:why|is that|was that|did it|compared?|than)\b", re.IGNORECASE)


def without_absent(text: str, stated: list[Stated]) -> list[Stated]:
    """The facts without those of such a battery, where others are told of one that is there."""
    gone = [span for found in FORMER.finditer(text) if (span := _clause(text, found)) is not None]
    old = [item for item in stated if item.fact.startswith(OF_IT) and _within(item, gone)]
    theirs = [] if CHOICE.search(text) else [found.span() for found in THEIRS.finditer(text)]
    other = [item for item in stated if item.fact == KIND and _within(item, theirs) and not _again(text, item)]
    if any(item.fact == KIND for item in stated if item not in other):
        old += other
    kept = [item for item in stated if item not in old]
    return kept if any(item.fact.startswith(OF_IT) for item in kept) else stated


def without_theirs(text: str, stated: list[Stated]) -> list[Stated]:
    """The facts without the readings of a neighbour's battery: "the neighbour's only goes to 11"."""
    return [
        item
        for item in stated
        if not item.fact.startswith("reading.") or not THEIR_READING.search(text[: item.span[0]][-AHEAD:])
    ]


def _clause(text: str, found: re.Match[str]) -> Span | None:
    """The part of the sentence that tells of it; None where it asks of it."""
    start = max((end.end() for end in ENDS.finditer(text, 0, found.start())), default=0)
    after = ENDS.search(text, found.end())
    end = after.end() if after else len(text)
    return None if ASKS.search(text, start, end) else (start, end)


def _within(item: Stated, spans: list[Span]) -> bool:
    return any(start <= item.span[0] < end for start, end in spans)


def _again(text: str, item: Stated) -> bool:
    """Whether a kind is named again, perhaps as ours."""
    return text.lower().count(item.text.lower()) > 1
