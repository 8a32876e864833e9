"""A danger that a later message takes back: only asked in general, spray that stayed on deck, warm and not hot."""

from __future__ import annotations

import re
from collections.abc import Set

from grammar.text.patterns import regex

OURS = (
    r"(?:mine|ours|(?:my|our|the) (?:own )?(?:\w+ ){0,1}?(?:battery|batteries|accu|agm|gel|lithium|one|bank)|it|they)"
)
WELL = r"(?:fine|ok(?:ay)?|cold|cool|flat|good|all right|alright|healthy|normal|sound|dry|new)"
IN_GENERAL = regex(
    r"\bin general\b|\bgenerally\b|\b(?:just|only) (?:asking|wondering|curious|a question|out of interest)\b"
    r"|\bhypothetical",
    re.IGNORECASE,
)
IS_WELL = regex(rf"\b{OURS}(?:['’]?s|['’]?re| is| are| looks?| feels?)(?: \w+)? {WELL}\b", re.IGNORECASE)
IS_DRY = regex(
    r"\b(?:battery|batteries|agm|gel|lithium|bank|box|locker|it|they|everything)(?:['’]?s|['’]?re| is| are| was| were"
    r"| stayed| stays| kept| has stayed)(?: \w+)? dry\b",
    re.IGNORECASE,
)
SPRAY = regex(
    r"\b(?:just|only|a bit of|some|light|was)\b[^.?!;]{0,12}\b(?:spray|splash\w*|drops?|mist|rain)\b", re.IGNORECASE
)
NOT_HOT = regex(
    r"\b(?:not|isn['’]?t|never) (?:really |even )?hot\b[^.?!;]{0,12}\bwarm\b|\b(?:just|only|slightly) warm\b", re.I
)
TAKES_BACK = regex(
    r"\b(?:but|though|except|melt\w*|smok\w*|discolou?r\w*|brown|still|again|lug"
    r"|joint|terminal|connector|clamp|post)\b",
    re.IGNORECASE,
)
SEA, JOINT = "immersed-sea-water", "burnt-cable"
SIZED = frozenset({"cable.area", "cable.gauge"})


def is_general(text: str) -> bool:
    """Whether it is asked in general, of a battery of theirs that is well."""
    return IN_GENERAL.search(text) is not None and IS_WELL.search(text) is not None and not TAKES_BACK.search(text)


def over(text: str, told: Set[str], of_itself: Set[str]) -> frozenset[str]:
    """The families of danger that a text takes back. `told`: the facts that are known; `of_itself`: signs of a battery.

    >>> sorted(over("just asking in general, mine is cold", set(), {"hot-to-touch"}))
    ['hot-to-touch']
    >>> over("mine is cold now", set(), {"hot-to-touch"}), over("in general it is hot", set(), {"hot-to-touch"})
    (frozenset(), frozenset())
    """
    if TAKES_BACK.search(text):
        return frozenset()
    found: set[str] = set()
    if is_general(text):
        found |= of_itself
    if SPRAY.search(text) and IS_DRY.search(text):
        found.add(SEA)
    if NOT_HOT.search(text) and "load.current" in told and told & SIZED:
        found.add(JOINT)
    return frozenset(found)
