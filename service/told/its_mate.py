"""Whether the other battery of a pair goes with the one that failed: "do I have to change both?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

FAILED = r"(?:dead|dud|failed|failing|shot|gone|bad|finished|knackered|faulty|died|goosed|scrap\w*)"
GO = r"(?:chang\w*|replac\w*|swap\w*|renew\w*|go|goes|bin\w*|scrap\w*|buy)"
BOTH = (
    r"(?:both|(?<!one of )the pair|the (?:whole )?(?:set|bank|string)|(?:the )?rest of (?:the|it)\w*"
    r"|(?:the |its )other(?: one| battery)?|the others|its mate|the (?:good|healthy|sound) one|all of them)"
)
ASKED = regex(
    rf"\b{GO}\b[^.?!;]{{0,30}}\b{BOTH}\b"
    rf"|\b{BOTH}\b[^.?!;]{{0,30}}\b(?:have to |need to |must |should )?{GO}\b[^.?!;]{{0,20}}"
    r"\b(?:too|as well|also|with it)\b",
    re.IGNORECASE,
)
ONE = regex(r"\b(?:one|a|the) (?:\w+ )?(?:cell|battery|of (?:the|my|our|them))\b", re.IGNORECASE)
DEAD = regex(rf"\b{FAILED}\b", re.IGNORECASE)


def asked(text: str) -> bool:
    """Whether one battery of several has failed, and it is asked if the others go with it.

    >>> asked("One of my two 12s in series failed. Do I have to change both?")
    True
    >>> asked("one cell 1.120. dead? rest of the string go with it, 2 in series for 24")
    True
    >>> asked("We replaced one of the pair only, a dead one. Was that daft?")
    False
    >>> asked("Can I change both to lithium?"), asked("one battery failed, what now?")
    (False, False)
    """
    return ASKED.search(text) is not None and ONE.search(text) is not None and DEAD.search(text) is not None
