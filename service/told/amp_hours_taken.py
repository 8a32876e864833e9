"""Whether just the amp-hours are asked that a run of the motor takes out of the battery."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

ASKED = regex(
    r"\bho?w (?:many|much) "
    r"(?:(?:ah|amp[- ]?hours?)\b(?! (?:batter|bank|agm|gel|lithium))|of (?:a|an|the|my|our|its)\b)"
    r"[^.?!]{0,50}?"
    r"\b(?:takes?|uses?|used|using|draws?|costs?|is that|goes|gone|go|eats?|burns?)\b(?! to\b)",
    re.IGNORECASE,
)
NEEDED = regex(r"\b(?:need|needed|require|must|should|big|size)\b", re.IGNORECASE)
FACTS = frozenset({"load.current", "load.time"})


def asked(text: str) -> bool:
    """Whether it is asked how many amp-hours a run takes.

    >>> asked("How many Ah does one docking take?"), asked("How many Ah do I need for that?")
    (True, False)
    """
    return ASKED.search(text) is not None and NEEDED.search(text) is None
