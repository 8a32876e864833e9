"""One battery read in two places: by a gauge on the panel, and by a meter on its own posts."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

VOLTS = r"(?<![\d.,])(?P<{0}>\d{{1,2}}(?:[.,]\d{{1,2}})?)(?![\d%]|[.,]\d) ?(?:v(?:olts?)?\b)?"
THE = r"(?:(?:the|my|our|a|its|their) )?(?:\w+ )?"
GAUGE = (
    r"(?:(?:switch|control|instrument|engine|dash)[ -]?(?:panel|board)|panel|gauge|dash|display|plotter|chartplotter"
    r"|voltmeter)"
)
POSTS = (
    r"(?:multi-?meter|hand[- ]?held|(?:hand|pocket|good) meter"
    r"|(?:at|on|across) (?:(?:the|its|my) )?(?:battery(?:['’]s)? ?)?(?:posts?|terminals?|battery))"
)
BY = r"(?:(?:on|at|by|from|with|across|in|says) "
ANOTHER = regex(  # whose volts may be those of another battery, or of another day
    r"\b(?:both|each|house|domestic|leisure|start(?:er|ing)?|engine battery|bow battery|stern battery|second|other"
    r"|number (?:1|2|one|two)|batteries|banks|last \w+|yesterday|ago|earlier|before|later|now|today)\b",
    re.IGNORECASE,
)
Place = tuple[re.Pattern[str], re.Pattern[str]]


def _of(place: str) -> Place:
    """The volts that stand before a place ("12.3 at the posts"), and those after it ("the panel says 11.9")."""
    before = rf"{VOLTS.format('volts')} ?{BY}{THE})?\b{place}\b"
    return regex(before, re.IGNORECASE), regex(rf"\b{place}\b[^.?!;,\d]{{0,30}} {VOLTS.format('volts')}", re.IGNORECASE)


ON_GAUGE, ON_POSTS = _of(GAUGE), _of(POSTS)


def told(text: str) -> tuple[float, float] | None:
    """The volts of the gauge and those on the posts, where both are told of one battery; None else.

    >>> told("12.3 at the posts but the panel in the cockpit says 11.9"), told("dash 12.2, my hand meter 12.5")
    ((11.9, 12.3), (12.2, 12.5))
    >>> told("panel says 12.4 for the house, 12.7 at the start battery"), told("12.4 at the battery, 11.2 at the motor")
    (None, None)
    """
    if ANOTHER.search(text):
        return None
    gauge, posts = _volts(ON_GAUGE, text), _volts(ON_POSTS, text)
    return None if gauge is None or posts is None or gauge == posts else (gauge, posts)


def _volts(place: Place, text: str) -> float | None:
    found = place[0].search(text) or place[1].search(text)
    return float(found["volts"].replace(",", ".")) if found else None
