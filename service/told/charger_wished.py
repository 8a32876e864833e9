"""Whether the size of a charger is asked as well: "how many Ah, and how large a charger goes with it?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

BETWEEN = r"(?: (?!batter|bank|for\b|if\b|with\b|when\b|than\b|from\b|on\b)[a-z'’(-]+){0,5}?"
CHARGER = r"\(?(?:battery[ -])?chargers?\b(?! (?:battery|outputs?|cables?|wires?|leads?|fuse|setting|volts|voltage))"
ASKED = regex(
    rf"\bhow (?:big|large|strong|powerful|many amps|much (?:of )?amps?){BETWEEN} {CHARGER}"
    r"|\b(?:what|which|wh?at)(?: (?:size|sort|kind|type|amps?|rating|of|an?|the|shore|amp|good|right|suitable)){0,4}"
    rf" {CHARGER}"
    r"(?! (?:is|are|was|do i have|does it have|did|has|stays?))"
    rf"|\b{CHARGER}[,:]? how (?:big|large|strong|many amps)\b|\bhow (?:big|large|strong) (?:a|the|of a) {CHARGER}",
    re.IGNORECASE,
)

OUTPUT = regex(  # its amps; "how many outputs" are banks
    r"\b(?:what|which) output (?:current )?(?:should|ought|must|does|do|would|shall|is)\b[^.?!;]{0,24}\bcharger\b"
    r"|\b(?:what|which) output (?:for|of) (?:the|its|my|our|a) (?:\w+ )?charger\b",
    re.IGNORECASE,
)


def asked(text: str) -> bool:
    """Whether it is asked how big a charger is to be, or which one to take.

    >>> asked("What Ah, and how large must the charger be?"), asked("60 Ah ok, and which charger for that?")
    (True, True)
    >>> asked("how big must the battery be for a 20 A charger"), asked("how many Ah, the charger gives 20 A")
    (False, False)
    """
    return ASKED.search(text) is not None


def output_asked(text: str) -> bool:
    """Whether it is asked how many amps a charger is to give.

    >>> output_asked("What output ought its charger to have?"), output_asked("how many outputs must the charger have")
    (True, False)
    """
    return OUTPUT.search(text) is not None
