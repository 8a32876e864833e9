"""Times of what people do: hours of a lesson in which the thruster is only pushed ("we practise for an hour, 4 s at a
time"), and days until they leave ("we sail in ten days")."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

EXERCISE = r"(?:practi[sc]\w*|train(?:s|ed|ing)?|drill\w*|lessons?|sessions?|courses?|class(?:es)?|exercises?|tuition)"
BEFORE = regex(
    rf"\b{EXERCISE}\b(?: (?!thruster|pushes|bursts)[a-z]+){{0,4}}? (?:for|takes?|took|lasts?|of|is|over|during|in)"
    r"(?: (?:about|around|some|up to|nearly|over))* $",
    re.IGNORECASE,
)
AFTER = regex(rf"^(?:['’]s?)?(?:-| )?(?:long |of )?(?:(?:mooring|docking|harbour|boat) )?{EXERCISE}\b", re.IGNORECASE)
PUSHED = regex(r"\d ?(?:s|secs?|seconds?)\b|\b(?:two|three|four|five|six|eight|ten|few) seconds?\b", re.IGNORECASE)

UNDER_WAY = regex(  # "after 20 minutes away it hardly turns": so long it was used
    r"^ (?:away\b|out\b(?! of\b)|under ?way\b|afloat\b|on the (?:water|river|lake|sea)\b|at sea\b|(?:of )?sailing\b"
    r"|of use\b|off the (?:dock|berth|mooring|quay)\b|from (?:the )?(?:dock|berth|marina|quay|shore)\b)",
    re.IGNORECASE,
)
UNTIL = regex(  # "we leave in", "the race is in about"
    r"\b(?:leav(?:e|es|ing)|sail(?:s|ing)?|depart\w*|set(?:ting)? off|(?:are|am|is|we['’]?re|i['’]?m) off"
    r"|go(?:ing)? away|races?|regatta|trip|cruise|holidays?|wedding|season (?:starts|begins))\b[^.?!;,\d]{0,20}\bin"
    r"(?: (?:about|just|only|under|less than|around))? $",
    re.IGNORECASE,
)


def is_until(before: str) -> bool:
    """Whether a time behind these words is the one until people leave.

    >>> is_until("We leave on holiday in "), is_until("we leave her for "), is_until("it is flat in ")
    (True, False, False)
    """
    return UNTIL.search(before) is not None


def is_under_way(after: str) -> bool:
    """Whether hours or minutes before these words are those of a boat that is out, and no rest of its battery.

    >>> is_under_way(" away it hardly turns"), is_under_way(" off charge"), is_under_way(" out of use")
    (True, False, False)
    """
    return UNDER_WAY.match(after) is not None


def is_outing(text: str, before: str, after: str) -> bool:
    """Whether a time between these words is of an exercise, where the pushes in it are told in seconds.

    >>> is_outing("we drill docking for 2 hours, 5 s each push", "we drill docking for ", ", 5 s each push")
    True
    >>> is_outing("the pump runs for 2 hours, 5 s each", "the pump runs for ", ", 5 s each")
    False
    """
    return (BEFORE.search(before) or AFTER.match(after)) is not None and PUSHED.search(text) is not None
