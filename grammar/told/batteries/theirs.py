"""The kind of a battery not on this boat: a neighbour's lithium, the one of a drill, what a dealer talked of."""

from __future__ import annotations

import re

from grammar.reading import Stated

FACT = "battery.chemistry"
AHEAD, AFTER = 60, 24  # characters
OF_A_THING = re.compile(
    r"^ (?:\w+ )?(?:drill|phone|torch|laptop|scooter|screwdriver|power ?bank|toy|camera|bicycle|bike|headlamp)s?\b",
    re.IGNORECASE,
)
OTHERS = re.compile(
    r"\b(?:neighbou?r|mate|friend|brother|uncle|father|cousin|colleague|dealer|salesman|seller|shop|forum|everyone"
    r"|everybody|people|others|some)s?(?: \w+){0,4}? (?:has|have|had|runs?|ran|fitted|bought|got|uses?|went|swears?"
    r"|swore|talks?|talked|raves?|raved|sells?|sold|likes?|praises?|wanted)\b[^.?!;,]{0,24}$"
    r"|\b(?:in|on) (?:my|our|the|his|her) (?:old|last|former|previous|other) boat\b[^.?!;,]{0,20}$",
    re.IGNORECASE,
)
FORMER = re.compile(
    r"^[^.?!;,]{0,10}\b(?:in|on) (?:my|our|the) (?:old|last|former|previous) (?:boat|one)\b", re.IGNORECASE
)
CHOICE = re.compile(r"\bwhich (?:of|one|is|are|would|kind|type|sort|batter|do|should|suits?)", re.IGNORECASE)
PUT_IN = re.compile(r"\b(?:me|us|our|ours|my|mine|we|in ours|for us)\b", re.IGNORECASE)  # "the yard sold us a gel"


def without_theirs(text: str, stated: list[Stated], weighed: bool) -> list[Stated]:
    """The facts without such a kind, where another one is told; where kinds are weighed, all of them stay."""
    kinds = [item for item in stated if item.fact == FACT]
    if weighed or CHOICE.search(text) or len({item.value for item in kinds}) < 2:
        return stated
    gone = [item for item in kinds if _is_theirs(text, item)]
    return stated if len(gone) == len(kinds) else [item for item in stated if item not in gone]


def _is_theirs(text: str, item: Stated) -> bool:
    start, end = item.span
    if text.lower().count(item.text.lower()) > 1:  # named again, perhaps as ours
        return False
    after = text[end : end + AFTER]
    if OF_A_THING.match(after) or FORMER.match(text[end : end + 2 * AFTER]):
        return True
    found = OTHERS.search(text[max(0, start - AHEAD) : start])
    return found is not None and PUT_IN.search(found[0]) is None
