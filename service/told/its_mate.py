"""Whether the other battery of a pair goes with the one that failed: "do I have to change both?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

FAILED = r"(?:dead|dud|failed|failing|shot|gone|bad|finished|knackered|faulty|died|goosed|scrap\w*)"
GO = r"(?:chang\w*|replac\w*|swap\w*|renew\w*|go|goes|bin\w*|scrap\w*|buy)"
SO_MANY = r"(?:two|three|four|six|[2-8])"
BOTH = (
    r"(?:both|(?<!one of )the pair|the (?:whole )?(?:set|bank|string)|(?:the )?rest of (?:the|it)\w*"
    r"|(?:the |its )other(?: one| battery)?|the others|its mate|the (?:good|healthy|sound) one|all of them"
    rf"|all (?:the )?{SO_MANY}|all (?:the|my|our) batteries)"
)
ASKED = regex(
    rf"\b{GO}\b[^.?!;]{{0,30}}\b{BOTH}\b"
    rf"|\b{BOTH}\b[^.?!;]{{0,30}}\b(?:have to |need to |must |should )?{GO}\b[^.?!;]{{0,20}}"
    r"\b(?:too|as well|also|with it)\b"
    rf"|\b{BOTH}\b (?:have|need|got) to (?:be )?{GO}\b",
    re.IGNORECASE,
)
JUST_ONE = regex(  # none that has been done: "may I replace only the dud", no "we replaced one only"
    r"\b(?:change|replace|swap|renew)\b[^.?!;,]{0,24}\b(?:just|only)\b[^.?!;]{0,20}\b(?:one|dud|battery|half)\b"
    r"|\b(?:just|only) (?:change|replace|swap|renew)\b[^.?!;]{0,20}\b(?:one|dud|battery)\b",
    re.IGNORECASE,
)
ONE = regex(
    r"\b(?:one|a|the) (?:\w+ )?(?:cell|battery|of (?:the|my|our|them))\b"
    rf"|\bone(?: (?:of \w+|is|was|has|just|went))* {FAILED}\b",
    re.IGNORECASE,
)
DEAD = regex(rf"\b{FAILED}\b", re.IGNORECASE)
SEVERAL = regex(
    rf"\b(?:batteries|pair|bank|set|both|{SO_MANY} (?:agms|gels|wets|lithiums|12s|at once)|one of)\b"
    rf"|\b{SO_MANY}\b[^.?!;]{{0,12}}\b(?:agm|gel|wet|lithium|12|6)|\bin (?:series|parallel)",
    re.IGNORECASE,
)


def asked(text: str) -> bool:
    """Whether one battery of several has failed, and it is asked if the others go with it.

    >>> asked("One of my two 12s in series failed. Do I have to change both?")
    True
    >>> asked("one cell 1.120. dead? rest of the string go with it, 2 in series for 24")
    True
    >>> asked("We replaced one of the pair only, a dead one. Was that daft?")
    False
    >>> asked("may I replace only one battery of the pair?"), asked("should I replace just the battery, not the cable?")
    (True, False)
    >>> asked("Can I change both to lithium?"), asked("one battery failed, what now?")
    (False, False)
    """
    if just_one(text) and SEVERAL.search(text):
        return True
    return ASKED.search(text) is not None and ONE.search(text) is not None and DEAD.search(text) is not None


def just_one(text: str) -> bool:
    """Whether it is put so that only the failed one is changed: a no is then what "do both go" takes a yes for."""
    return JUST_ONE.search(text) is not None
