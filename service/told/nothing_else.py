"""Whether a battery of another kind is to go in with all else left as it is, or what else must change is asked."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

IN_ITS_PLACE = regex(
    r"\b(?:swap\w*|chang\w*|replac\w*|exchang\w*|switch\w*|convert\w*|upgrad\w*|drop\w*[ -]?in|go(?:ing)?|mov(?:e|ing)"
    r"|put\w*|fit\w*|slot\w*)\b[^.?!;]{0,50}\b(?:lithium|lifepo ?4|lfp|li-?ion)\b"
    r"|\b(?:lithium|lifepo ?4|lfp)\b[^.?!;]{0,30}"
    r"\b(?:instead|in (?:its|the|their) place|in place of|drop\w*[ -]?in|swap)",
    re.IGNORECASE,
)
AS_IT_IS = regex(
    r"\b(?:without|not) (?:chang|touch|alter|do|buy|add|modify|replac|upgrad)\w*(?: out)?"
    r" (?:anything|a thing|any of|the rest)"
    r"|\b(?:nothing|no other thing|no) (?:else|other changes?|changes?)\b"
    r"|\b(?:straight|direct|simple|like[ -]for[ -]like) (?:swap|replacement|exchange|change)\b|\bdrop[ -]?in\b"
    r"|\b(?:keep|keeping|leave|leaving)\b[^.?!;]{0,50}\b(?:as (?:it|they|that) (?:is|are|was|were)|the same|alone)\b",
    re.IGNORECASE,
)
ELSE = regex(
    r"\b(?:what|anything|something) (?:else )?(?:\w+ ){0,3}?(?:chang|replac|need|alter|upgrad|buy|different)\w*",
    re.IGNORECASE,
)


def as_it_is(text: str) -> bool:
    """Whether lithium is to take the place of another battery, and all else to stay.

    >>> as_it_is("swap my gel for lithium and leave the rest as it is"), as_it_is("a straight swap to LiFePO4, ok?")
    (True, True)
    >>> as_it_is("swap my gel for lithium, what size?"), as_it_is("new AGM, nothing else changes")
    (False, False)
    """
    return IN_ITS_PLACE.search(text) is not None and AS_IT_IS.search(text) is not None


def asked(text: str) -> bool:
    """Whether it is asked what else must change with it.

    >>> asked("changing to lithium, what else must change?"), asked("lithium instead, anything else to buy?")
    (True, True)
    """
    return IN_ITS_PLACE.search(text) is not None and ELSE.search(text) is not None
