"""Whether volts are those of somebody else's charger, on a battery of theirs: "his charger does 14.8 on wet"."""

from __future__ import annotations

import re

from grammar.reading import Span
from grammar.text.patterns import regex

PEOPLE = (
    r"neighbou?r|friend|mate|brother|cousin|uncle|father|dad|guy|chap|bloke|fellow|lad|man|buddy|pal|skipper|owner"
    r"|someone(?: else)?|somebody(?: else)?"
)
THEIRS = regex(  # not "her charger", which may be the boat's
    rf"\b(?:his|their|(?:{PEOPLE})['’]s) (?:(?!batter|gel|agm)\w+ ){{0,2}}charger\b[^.?!;]{{0,60}}$", re.IGNORECASE
)
OURS = regex(r"\b(?:my|mine|ours?|(?:i|we)(?:['’]ve| have| own))\b", re.IGNORECASE)
CLIENT = regex(r"\b(?:clients?|customers?)\b", re.IGNORECASE)  # "his charger" is the one that is asked of
FAR = 110  # characters
NO_LEAVE = "".join(rf"(?<!\b{word} )" for word in ("can", "may", "could", "should", "shall", "do"))
USES = (
    r"us(?:e|ed|ing)|charg(?:e|ed|ing)|leave|left|keep|kept|put|run|ran|running|hook\w*|connect\w*|borrow\w*"
    r"|ha(?:d|ve) it"
)
BY_US = regex(  # their charger on our battery: "I've had my gel on it"; leave that is asked is no use yet
    rf"{NO_LEAVE}\b(?:i|we)(?:['’](?:ve|m|re|d))? (?:\w+ ){{0,2}}?(?:{USES})\b"
    r"|\b(?:lent|lends|loaned|gave|given) (?:it |this |that |one )?(?:to )?(?:me|us)\b"
    r"|\b(?:my|our|mine|ours)\b[^.?!;]{0,30}\b(?:is|are|was|were|been|sits?|hangs?|charges|charging)"
    r" (?:on|with|at|off)\b|\b(?:had|have|got) (?:my|our|mine|ours)\b[^.?!;]{0,30}\b(?:on|with|off)\b",
    re.IGNORECASE,
)


def told(text: str, span: Span | None) -> bool:
    """Whether the volts at this place are of another's charger, and nothing tells that it charges the customer's.

    >>> told("His charger does 14.8 on wet. May I do so with my gel too?", (18, 22))
    True
    >>> told("His charger does 14.8 on wet. I use it on my gel.", (18, 22)), told("Mine does 14.8", (10, 14))
    (False, False)
    """
    if span is None:
        return False
    ahead = text[max(0, span[0] - FAR) : span[0]]
    if OURS.search(text) is None or CLIENT.search(text):
        return False
    return THEIRS.search(ahead) is not None and BY_US.search(text) is None
