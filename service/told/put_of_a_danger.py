"""What is asked beside a danger: to go on, a larger fuse, whether it is normal; how warm a battery is told to be."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

CARRY_ON = regex(r"\b(?:carry|go|keep) on(?: (?:with it|as it is|using it|then|now))?\W*\?", re.IGNORECASE)
MODAL = r"\b(?:can|could|may|might|shall|should|must|would|dare|(?:ok|okay|safe|fine|all ?right) to)\b"
OUR_THINGS = r"(?:it|them|that|(?:the|my|our) (?:bow |stern )?(?:thruster|batter(?:y|ies)|charger|lithium|agm|bank))"
USED_ON = regex(
    rf"{MODAL}(?:(?!\b(?:stop|not|never|before|after)\b)[^.?!;]){{0,40}}?"
    rf"\b(?:use|run|operate|charge|recharge) {OUR_THINGS}\b",
    re.IGNORECASE,
)
NORMAL = regex(
    r"(?<!not )(?<!n['’]t )\bnormal(?: then| for (?:it|that|them))?\W*\?|\bnormal or (?:not|what)\b"
    r"|\b(?:is|are) (?:that|this|it|they) normal\b|\b(?:should|supposed to) (?:that |it |this )?happen\b",
    re.IGNORECASE,
)
LARGER = (
    r"(?:(?:larger|bigger|higher|heavier|stronger)(?:[- ]\w+)? fuse|fuse of more"
    r"|\d+ ?a(?:mps?)?(?: fuse)? instead of\b[^.?!;]{0,12}\d)"
)
LARGER_FUSE = regex(rf"\b{LARGER}", re.IGNORECASE)
LARGER_ASKED = regex(
    rf"(?:{MODAL}|\bdo (?:i|we) need\b)[^.?!;]{{0,40}}\b{LARGER}|\b{LARGER}[^.?!;]{{0,200}}\?", re.IGNORECASE
)
DEGREES = regex(r"\b(\d{2,3})(?:[.,]\d+)? ?(?:°|deg|[cf]\b|celsius|fahrenheit)", re.IGNORECASE)


def carry_on(text: str) -> bool:
    """Whether leave is asked to go on as it is: "can we carry on?"."""
    return CARRY_ON.search(text) is not None


def normal(text: str) -> bool:
    """Whether it is asked if something is normal.

    >>> normal("it gets lukewarm, is that normal?"), normal("NORMAL?"), normal("is this normal or not")
    (True, True, True)
    >>> normal("what is the normal voltage?"), normal("it is swollen, its volts are normal.")
    (False, False)
    """
    return NORMAL.search(text) is not None


def larger_fuse(text: str) -> bool:
    """Whether a larger fuse is spoken of."""
    return LARGER_FUSE.search(text) is not None


def larger_fuse_asked(text: str) -> bool:
    """Whether a larger fuse is asked about.

    >>> larger_fuse_asked("put a larger fuse in?"), larger_fuse_asked("I fitted a larger fuse and it smokes. What now")
    (True, False)
    """
    return LARGER_ASKED.search(text) is not None


def forbidden(text: str) -> bool:
    """Whether a message asks what a danger forbids: further use, a larger fuse, or whether such a thing is normal.

    >>> forbidden("can we still use it to get back?"), forbidden("can we use the radio to call?")
    (True, False)
    """
    return USED_ON.search(text) is not None or normal(text) or larger_fuse_asked(text)


def hottest(text: str) -> float:
    """The most degrees that a text names, in whichever scale; 0 where it names none."""
    return max(map(float, DEGREES.findall(text)), default=0.0)
