"""Questions of a fuse that no sum answers: whether a BMS makes it needless, and where it goes."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

BMS_ENOUGH = regex(
    r"\bbms\b[^.?!;]{0,24}\b(?:enough|do(?:es)? (?:that|it|the)|instead|already|suffic\w+|protect\w*)\b", re.IGNORECASE
)
WHERE_IT_GOES = regex(
    r"\W*(?:(?:and|so|ok|then|but)\W+)*where (?:does|do|should|must|will|would) (?:it|the fuse|that|this|they)"
    r" (?:go|sit|be|belong)(?: then)?\W*",
    re.IGNORECASE,
)


def bms_enough(text: str) -> bool:
    """Whether it is asked if a BMS will do in the place of a fuse.

    >>> bms_enough("is the bms not enough then"), bms_enough("the bms allows 200 A")
    (True, False)
    """
    return BMS_ENOUGH.search(text) is not None


def where_it_goes(text: str) -> bool:
    """Whether it is asked where it goes, and nothing else.

    >>> where_it_goes("and where does it go?"), where_it_goes("where does it go wrong")
    (True, False)
    """
    return WHERE_IT_GOES.fullmatch(text) is not None
