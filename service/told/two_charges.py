"""Two charges of which the same is asked: "will a full one freeze, and a half empty one"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

CHARGE = (
    r"(?:(?P<{0}half>half[- ](?:full|charged|empty|flat|discharged|dead))"
    r"|(?P<{0}flat>(?:completely |fully )?(?:flat|empty|discharged|dead))"
    r"|(?P<{0}full>(?:fully |full[- ]?)?(?:charged|full))|(?P<{0}share>\d{{1,3}}) ?(?:%|per ?cent))"
)
THING = r"(?: (?:flooded|wet|agm|gel|lead|charged))?(?: (?:one|battery|batteries))?"
BOTH = regex(
    rf"\b(?<!not )(?:an?|the|my|is|at|(?:if|when)(?: it(?:['’]s| is))?|of an?) {CHARGE.format('a')}"
    r"(?:(?! now\b| then\b| since\b)[^.!;]){0,60}?"
    r"(?:\b(?:and|or|vs\.?|versus)\b|\?)(?:(?! now\b| then\b| since\b| but\b)[^.!;?]){0,30}?"
    rf"\b(?:an?|the|at|(?:if|when)(?: it(?:['’]s| is))?|of an?) {CHARGE.format('b')}{THING}",
    re.IGNORECASE,
)
IFS = regex(  # "will it freeze if full? if half empty?"
    rf"\bif (?:it(?:['’]s| is) )?{CHARGE.format('a')}\W+(?:(?:and|or|but) )?(?:what )?(?:about )?"
    rf"if (?:it(?:['’]s| is) )?(?:only )?{CHARGE.format('b')}",
    re.IGNORECASE,
)
SHARES = {"half": 50.0, "flat": 0.0, "full": 100.0}


def told(text: str) -> tuple[float, float] | None:
    """The two charges in percent, the fuller one first; None where one question is asked of one charge.

    >>> told("will a full battery freeze at -20, and will a half empty one?")
    (100.0, 50.0)
    >>> told("Will it freeze if full? And if it is half empty?"), told("does it freeze when full? when flat?")
    ((100.0, 50.0), (100.0, 0.0))
    >>> told("my half empty battery, will it freeze?"), told("it was a full one and now it is flat")
    (None, None)
    """
    found = BOTH.search(text) or IFS.search(text)
    if found is None:
        return None
    shares = [_share(found, side) for side in ("a", "b")]
    if shares[0] == shares[1]:
        return None
    return max(shares), min(shares)


def _share(found: re.Match[str], side: str) -> float:
    if typed := found[f"{side}share"]:
        return float(typed)
    return next(value for name, value in SHARES.items() if found[f"{side}{name}"])
