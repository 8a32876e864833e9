"""A charger that was there before its battery: "my old charger from 2009, it has only one setting"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

OLD = regex(
    r"\b(?:old(?:er)?|existing|present|same|previous|keep(?:ing)?|car|ordinary|normal)\b[^.?!;]{0,20}\bcharger\b"
    r"|\bcharger\b[^.?!;]{0,20}\bfrom (?:(?:19|20)\d\d|the (?:shed|garage|car))\b"
    r"|\b(?:has|have|got|with) (?:only |just )?(?:one|1|a single) (?:setting|mode|programme?|position)\b",
    re.IGNORECASE,
)


def told(text: str) -> bool:
    """Whether the charger is one that knows nothing of a new kind of battery, as far as is said.

    >>> told("can I keep my 25 A charger?"), told("a 25 A charger for 100 Ah"), told("which 25 A charger?")
    (True, False, False)
    >>> told("the charger has only one mode")
    True
    """
    return OLD.search(text) is not None
