"""What a run took out, and how often it runs: "put that back", "after 3 minutes of thruster", "2 minutes a day"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

AWAY = r"(?! (?:to|in (?:the )?(?:water|port|harbour)|home|on)\b)"
BACK = regex(
    rf"\b(?:put|get|getting|putting|win|bring)\b[^.?!;]{{0,16}}\bback\b{AWAY}"
    r"|\b(?:replac|restor|recover|recoup|make up|makes up)\w*\b[^.?!;]{0,20}\b(?:charge|ah|amp[- ]?hours|that|what)\b"
    r"|\bafter (?:\w+ ){0,3}?(?:\d+|one|two|three|four|five|ten) ?(?:min|minutes?|mins|s|secs?|seconds?)\b"
    r"(?: (?:of|on|with|at|running|the|my|our|bow|full))* ?"
    r"(?:thruster|thrusting|pushing|use|pike|minnow|sturgeon|\d+ ?a(?:mps?)?\b)",
    re.IGNORECASE,
)
OFTEN = (  # how often, days between
    (regex(r"\b(?:a|per|each|every) day\b|\bdaily\b|\bdays?\b(?= each)", re.IGNORECASE), 1.0),
    (
        regex(
            r"\b(?:a|per|each|every|the|at|on) ?weekends?\b|\bweekends\b|\b(?:a|per|each|every) week\b|\bweekly\b", re.I
        ),
        7.0,
    ),
    (regex(r"\b(?:a|per|each|every) (?:fortnight|two weeks)\b|\bfortnightly\b", re.IGNORECASE), 14.0),
    (regex(r"\b(?:a|per|each|every) month\b|\bmonthly\b", re.IGNORECASE), 30.0),
)


def asked(text: str) -> bool:
    """Whether it is asked of putting back what a run took.

    >>> asked("how long to put it back with a 15 A charger?"), asked("I put the battery back in the water")
    (True, False)
    """
    return BACK.search(text) is not None


def days_between(text: str) -> float | None:
    """Days from one such run to the next; None where it is not told how often.

    >>> days_between("3 minutes per weekend"), days_between("2 minutes a day"), days_between("for 3 minutes")
    (7.0, 1.0, None)
    """
    return next((days for said, days in OFTEN if said.search(text)), None)
