"""Somebody hurt who was looked at since and is well: "the doctor says all fine"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

WELL = regex(
    r"\b(?:doctors?|nurse|hospital|clinic|gp|medics?|paramedics?|casualty|a&e|e\.?r\.?)\b[^.?!;]{0,40}"
    r"\b(?:(?:all |quite |perfectly )?(?:fine|ok(?:ay)?|well|good|clear|right)|no (?:harm|damage|burns?)"
    r"|nothing (?:wrong|to worry))\b"
    r"|\bback from (?:the )?(?:hospital|doctors?|clinic|casualty)\b|\bwith the (?:medics|paramedics|doctors?)\b"
    r"|\b(?:ambulance|medics?|paramedics?) (?:has |have |came and )?(?:took|taken|has|have|got|fetched|collected)"
    r" (?:him|her|them)\b"
    r"|\b(?:doctor|medic|paramedic|nurse) (?:saw|looked at|checked|treated)"
    r" (?:him|her|me|us|them|everyone|everybody|it)\b",
    re.IGNORECASE,
)
NOT_SO = regex(
    r"\b(?:not|no doctor|isn['’]?t|if|until|till|when|should|shall|must|need|call|ring|see|go to|waiting)\b",
    re.IGNORECASE,
)


def is_well(text: str) -> bool:
    """Whether a doctor has found somebody well.

    >>> is_well("Doctor says all fine. How do I top it up?"), is_well("should I see a doctor, it is fine now")
    (True, False)
    >>> is_well("the doctor says it is not all right")
    False
    """
    found = WELL.search(text)
    return found is not None and not NOT_SO.search(text[max(0, found.start() - 24) : found.end()])
