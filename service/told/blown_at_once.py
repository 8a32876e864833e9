"""A fuse that blows in the first second: far more flows than the load takes, and a larger fuse mends nothing."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

FUSE = regex(r"\b(?:fuses?|breakers?|anl|mega)\b", re.IGNORECASE)
BLOWS = r"(?:blow(?:s|n|ing)?|blew|trip(?:s|ped|ping)?|pop(?:s|ped|ping)?|goes|went|gone|melt(?:s|ed)?|fail(?:s|ed))"
FAST = (
    r"(?:at once|straight ?away|right away|instant(?:ly|aneously)|immediately|the (?:very )?(?:moment|instant|second)"
    r"|as soon as"
    r"|(?:with)?in (?:about |only |less than |under )?(?:a|one|half a|a split|the first|1) second"
    r"|after (?:about |only |less than |roughly )?(?:a|one|half a|1) second)"
)
AT_ONCE = regex(
    rf"\b{BLOWS}\b(?! (?:for|to) )[^.?!;]{{0,40}}?\b{FAST}\b|\b{FAST}\b[^.?!;]{{0,30}}?\b{BLOWS}\b", re.IGNORECASE
)
ALLOWED = regex(r"\b(?:not|never|doesn'?t|does not|didn'?t|won'?t|without)\b[^.?!;]{0,20}$", re.IGNORECASE)


def told(text: str) -> bool:
    """Whether a fuse is told to blow at once, when the load starts.

    >>> told("the 200 A fuse trips after about a second"), told("the fuse blew after two minutes")
    (True, False)
    >>> told("250 A fuse pops the moment I press"), told("fuse that does not blow at once on the start")
    (True, False)
    """
    found = AT_ONCE.search(text)
    return found is not None and FUSE.search(text) is not None and ALLOWED.search(text[: found.start()]) is None
