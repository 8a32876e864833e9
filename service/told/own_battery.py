"""Whether a battery of the thruster's own is asked for as the cure of an engine that will not start."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

OWN = r"\b(?:separate|second|dedicated|another|its own|their own|an own|own) (?:thruster |bow )?batter(?:y|ies)\b"
CURES = r"\b(?:cure|help|solve|fix|sort|stop|prevent|mend|avoid|be the answer)\w*\b"
ASKED = regex(rf"{OWN}[^.?!;]{{0,40}}{CURES}|{CURES}[^.?!;]{{0,40}}{OWN}", re.IGNORECASE)
ENGINE = regex(
    r"\b(?:engine(?:['’]s)?|start(?:er|ing)?)[ -]?(?:start(?:er|ing)? )?batter(?:y|ies)\b"
    r"|\bengine (?:then |often |sometimes )?"
    r"(?:will not|won['’]?t|does not|doesn['’]?t|would not|cannot|can['’]?t|fails to) (?:start|turn|crank)",
    re.IGNORECASE,
)


def would_cure(text: str) -> bool:
    """Whether it is asked if its own battery would cure that.

    >>> would_cure("It hangs on the engine battery. Would a separate battery cure it?")
    True
    >>> would_cure("the thruster has its own battery, the engine won't start"), would_cure("a second battery helps?")
    (False, False)
    """
    return ASKED.search(text) is not None and ENGINE.search(text) is not None
