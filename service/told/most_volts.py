"""A limit that somebody names and asks about: "gel must never see more than 14.4 V, true?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

NEVER = r"(?:must|should|may|can|shall|ought|is|are|do|does)(?:n['’]?t| not| never)|never|no"
MORE = r"(?:more than|over|above|beyond|past|higher than|exceed(?:s|ing)?)"
LIMIT = regex(rf"\b(?:{NEVER})\b[^.?!;,]{{0,24}}?\b{MORE} (?:of )?\d", re.IGNORECASE)


def named(text: str) -> bool:
    """Whether a message names a most that is not to be passed.

    >>> named("they say lithium must never go above 14.6 volts, right?"), named("no more than 14.4 V, true?")
    (True, True)
    >>> named("is 14.4 V too much for gel?"), named("my charger never stops, is more than 14.4 V bad?")
    (False, False)
    """
    return LIMIT.search(text) is not None
