"""Whether it is asked if a battery that is there does for a load: "will the standard battery do the new thruster"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

ASKED = regex(
    r"(?<!\bwhat )(?<!\bhow )\b(?:does|will|would|can|could|might) (?:the|my|our|your|this|that|his|its|their)"
    r" (?:[\w-]+ ){0,3}(?:battery|batteries|batts?|bank)(?: (?:still|also|really|alone|as it is)){0,2}"
    r" (?:do|manage|handle|suffice|serve|work|cope)(?: (?:for|with))?"
    r" (?:(?:the|my|our|your|an?|this|that|his|its|their) )?(?:[\w-]+ ){0,3}(?:thruster|windlass|winch|bow prop)\b",
    re.IGNORECASE,
)


def asked(text: str) -> bool:
    """Whether it is.

    >>> asked("will the standard battery do the new thruster"), asked("would our old bank cope with a windlass?")
    (True, True)
    >>> asked("what does the battery do for the thruster?"), asked("which battery will do the thruster?")
    (False, False)
    """
    return ASKED.search(text) is not None
