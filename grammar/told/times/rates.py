"""The hours by which a capacity is rated: "amp hours at the 20-hour rate", "110 Ah (20HR)". No load runs in them."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

RATED = frozenset({5.0, 10.0, 20.0, 72.0, 100.0, 120.0})  # hours by which makers rate
AH = r"(?:ah|amp[ -]?hours?)"
BEHIND = regex(  # "the 20 hour rate", "20-hr rating", "the ten hour figure is 95 Ah"
    rf"^[ -]?(?:discharg(?:e|ing)[ -]|{AH} |capacity )?(?:rate[ds]?|ratings?|scale|basis|figures?)\b", re.IGNORECASE
)
ITS_CAPACITY = regex(r"^[ -]?capacit(?:y|ies)\b", re.IGNORECASE)  # "ten hours capacity" may be what is wished for
THE = regex(r"\b(?:the|its|their|at|a) $", re.IGNORECASE)
AHEAD = regex(
    rf"(?<![a-z]){AH} ?(?:[(/@] ?|\( ?(?:at|@) ?|(?:at|over) (?:the )?)$"
    r"|\b(?:rated|rating|printed) (?:at|by|over) (?:the )?$",
    re.IGNORECASE,
)
BARE = regex(rf"\b\d+ ?{AH} ?$", re.IGNORECASE)  # "110Ah 20HR": as labels have it
ASKED = (  # "what does 20HR mean on the label"
    regex(r"\bwhat(?:['’]?s| is| does| do| are)? (?:(?:the|an?|that|this) )?[\"'“‘]?$", re.IGNORECASE),
    regex(r"^[\"'”’]? (?:means?|stands?|on (?:the|my|a|its) (?:label|sticker|battery|case))\b", re.IGNORECASE),
)
OF_LABEL = regex(r"^\W*(?:$|[.?!;,)]|battery|label|agm|gel|wet|lead)", re.IGNORECASE)


def is_rate(hours: float, ahead: str, after: str) -> bool:
    """Whether hours between these words are those of a rating.

    >>> is_rate(20, "what Ah at the ", " rate do I need"), is_rate(20, "110 Ah (", "), how long")
    (True, True)
    >>> is_rate(20, "a rate of 5 A for ", ""), is_rate(20, "how many Ah for ", " at 5 A")
    (False, False)
    """
    if BEHIND.match(after):
        return True
    if hours not in RATED:
        return False
    if ITS_CAPACITY.match(after) and THE.search(ahead):
        return True
    if all(part.search(side) for part, side in zip(ASKED, (ahead, after), strict=True)):
        return True
    return AHEAD.search(ahead) is not None or (BARE.search(ahead) is not None and OF_LABEL.match(after) is not None)
