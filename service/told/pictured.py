"""A picture that came with a message, which this desk cannot see; one that is only promised is none yet."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

PICTURE = r"(?:pics?|pictures?|photos?|photograph|images?|screenshots?|snap(?:shot)?s?)"
SENT = r"(?:attached|enclosed|attachment|included|sent|uploaded|below|added)"
SHOWN = regex(
    rf"\b{PICTURE}\b[^.?!]{{0,16}}\b{SENT}\b"
    rf"|\b(?:{SENT}|attach|here(?:['’]?s| is| are)?|see)\b[^.?!]{{0,16}}\b{PICTURE}\b",
    re.IGNORECASE,
)
LATER = regex(
    rf"\b(?:i['’]?ll|will|can|could|shall|going to|want me to|would)\b[^.?!]{{0,24}}\b(?:{PICTURE}|send|attach|take)\b"
    r"|\b(?:later|tomorrow|tonight|when i(?:['’]?m| am| get))\b",
    re.IGNORECASE,
)


def shown(text: str) -> bool:
    """Whether a picture came with it.

    >>> shown("ok pic attached. does that look right?"), shown("I'll send a picture when I'm at the boat")
    (True, False)
    """
    return SHOWN.search(text) is not None and LATER.search(text) is None
