"""Which way the posts of a battery look: towards the hull or away from it; not in which order its leads come off."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

POSTS = r"(?:posts?|terminals?|poles?)"
SIDE = (
    r"(?:hull|side|skin|bulkhead|metal|inboard|outboard|inwards?|outwards?|aft|forward|middle|centre|tray|locker|wall)"
)
WAY = regex(
    rf"\b(?:which|what) way(?: round)?\b[^.?!;]{{0,40}}\b{POSTS}\b[^.?!;]{{0,24}}\b(?:go|face|look|point|sit|{SIDE})\b"
    rf"|\b{POSTS}\b[^.?!;]{{0,20}}\b(?:towards?|to|facing|away from|against|next to|near)\b[^.?!;]{{0,12}}\b{SIDE}\b",
    re.IGNORECASE,
)
OFF = regex(r"\b(?:off|undo|take|remove|disconnect\w*|come|first|last)\b", re.IGNORECASE)


def asked(text: str) -> bool:
    """Whether it is asked which way the posts look.

    >>> asked("which way round do the posts go vs the hull"), asked("posts towards the hull or away from it?")
    (True, True)
    >>> asked("which way round do I take the terminals off"), asked("the post is too thick")
    (False, False)
    """
    found = WAY.search(text)
    return found is not None and OFF.search(found[0]) is None
