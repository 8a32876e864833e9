"""Whether it is asked if a dirty or loose joint is what makes a motor weak."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

JOINT = (
    r"(?:posts?|terminals?|lugs?|clamps?|joints?|connections?|connectors?|contacts?|studs?|nuts?|rings?|cable ends?)"
)
BAD = (
    r"(?:loose|dirty|corro\w+|crust\w*|furr\w*|powder\w*|fuzz\w*|oxidi[sz]\w+|verdigris|rust\w*|green|white|blue|bad|poor"
    r"|not tight)"
)
AT_FAULT = regex(rf"\b{BAD}\b[^.?!;]{{0,40}}\b{JOINT}\b|\b{JOINT}\b[^.?!;]{{0,40}}\b{BAD}\b", re.IGNORECASE)
WEAK = (
    r"(?:weak\w*|slow\w*|sluggish\w*|tired|feebl\w+|lazy|gutless|less (?:power|push|thrust)|no (?:power|push|thrust))"
)
CAUSES = regex(
    r"\b(?:can|could|may|might|will|would|does|do|is|are)\b[^.?!;]{0,60}?"
    rf"\b(?:mak(?:e|es|ing)|caus\w+|behind|why|reason\w*|explain\w*|to blame|leave|leaving|turn)\b"
    rf"[^.?!;]{{0,40}}?\b{WEAK}"
    rf"|\b{WEAK}\b[^.?!;]{{0,40}}\b(?:because of|due to|from|on account of|down to)\b[^.?!;]{{0,30}}"
    rf"\b(?:{JOINT}|{BAD})\b",
    re.IGNORECASE,
)
LOOSE = regex(r"\b(?:loose|not tight)\b", re.IGNORECASE)


def asked(text: str) -> bool:
    """Whether it is asked if such a joint makes it weak.

    >>> asked("could corroded lugs be why my thruster is slow?"), asked("is it weak because of the loose clamp?")
    (True, True)
    >>> asked("how do I clean the green posts?"), asked("the thruster is weak, what do I measure?")
    (False, False)
    """
    return AT_FAULT.search(text) is not None and CAUSES.search(text) is not None


def is_loose(text: str) -> bool:
    """Whether the joint is loose rather than dirty."""
    return LOOSE.search(text) is not None
