"""A charger that suits, of which it is asked if its heat is normal: no yes that could be taken for that."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service.reply import Answer

OF_ITS_HEAT = regex(
    r"\b(?:normal|usual|ok(?:ay)?|all ?right|fine|should|supposed|expected|bad|safe|worry)\b[^.?!;]{0,32}\bcharger\b"
    r"[^.?!;]{0,24}\b(?:hot|warm|heats?|buzz\w*|hum\w*|smell\w*)\b"
    r"|\bcharger\b[^.?!;]{0,24}\b(?:hot|warm|heats? up|buzz\w*|hum\w*|smell\w*)\b[^.!;]{0,40}"
    r"\b(?:normal|usual|ok(?:ay)?|all ?right|fine|bad|safe|worry)\b",
    re.IGNORECASE,
)
TOPICS = frozenset({"charger-size", "charger-setting"})
YES = "Yes: "
LOOKED_AT = "too hot to keep a hand on, switch it off and have it looked at"


def without_its_yes(answer: Answer, text: str) -> Answer:
    """The answer as it is, or told of the amps alone, with what to do about the heat."""
    if answer.topic not in TOPICS or not answer.headline.startswith(YES) or not OF_ITS_HEAT.search(text):
        return answer
    told = answer.headline.removeprefix(YES).rstrip(".")
    return replace(answer, headline=f"{told[:1].upper()}{told[1:]}; {LOOKED_AT}.", route="technician")
