"""Whether the size of a battery switch is asked: "what size isolator for a Pike"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

SWITCH = r"(?:(?:battery|main|master|isolat\w+|cut[- ]?off|kill|disconnect) switch|isolators?)"
SIZED = r"(?:size|sized|rating|rated|amps?|big|large|strong)"
ASKED = regex(
    rf"\b(?:what|which|how)\b[^.?!;]{{0,30}}\b{SWITCH}\b|\b{SWITCH}\b[^.?!;]{{0,30}}\b{SIZED}\b"
    rf"|\b{SIZED}\b[^.?!;]{{0,20}}\b{SWITCH}\b",
    re.IGNORECASE,
)
NEEDED = regex(
    r"\b(?:need\w*|must|have to|should|necessary|required)\b[^.?!;]{0,24}\bswitch\b(?! (?:it|off|on|over|to)\b)"
    r"|\bswitch\b[^.?!;]{0,12}\b(?:needed|necessary|required|too|as well)\b",
    re.IGNORECASE,
)
PLACE = regex(r"\b(?:where|before|after|off|on|hot|warm|melt\w*|leave|left|turn\w*)\b", re.IGNORECASE)


def asked(text: str) -> bool:
    """Whether it is asked how large the switch must be.

    >>> asked("battery switch rating for a 260 A thruster"), asked("where do I put the isolator, before the fuse?")
    (True, False)
    """
    return ASKED.search(text) is not None and PLACE.search(text) is None


def needed(text: str) -> bool:
    """Whether it is asked if there must be a switch.

    >>> needed("and do I need a switch as well"), needed("must I switch it off")
    (True, False)
    """
    return NEEDED.search(text) is not None
