"""What must stay on while nobody is aboard: a bilge pump's float switch, an alarm, a gas detector."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

OF = r"(?:gas|smoke|fire|burglar|intruder|co|carbon monoxide|high water|boat) ?"
MUST = regex(
    rf"\b(?:bilge|float switch|{OF}(?:alarms?|detectors?|sniffers?|sensors?)|sniffers?|alarms?|detectors?)\b",
    re.IGNORECASE,
)
LEFT_ON = regex(
    r"\b(?:pump|float switch|alarms?|detectors?|sniffers?)\b[^.?!;]{0,30}"
    r"\b(?:on(?! (?:the|my|a|his|her|our)\b)|running|live|connected|wired)\b"
    r"|\b(?:leav(?:e|ing)|keep(?:ing)?) (?:on )?(?:only )?the bilge\b",
    re.IGNORECASE,
)
TAKEN_OFF = regex(  # "I disconnected the alarm": it hangs on the battery no more
    r"\b(?:disconnected|unplugged|unhooked|removed|isolated|pulled|took|taken|switched|turned)\b(?: \w+){0,2}"
    rf" (?:{OF})?(?:alarms?|detectors?|sniffers?|sensors?)\b",
    re.IGNORECASE,
)
NOT_IT = regex(r"\b(?:anchor|false|clock|wake|reversing) alarms?\b|\balarm clock\b|\balarm(?:ed|ing)\b", re.IGNORECASE)


def is_told(text: str) -> bool:
    """Whether such a thing hangs on the battery.

    >>> is_told("bilge float and gas sniffer take 0.2 A"), is_told("the radio takes 0.2 A")
    (True, False)
    >>> is_told("I disconnected the alarm, it is 80 mA now")
    False
    """
    return bool(MUST.search(TAKEN_OFF.sub("", NOT_IT.sub("", text))))


def left_on(text: str) -> bool:
    """Whether such a thing is told to stay on.

    >>> left_on("with the automatic bilge pump on"), left_on("is the bilge pump fuse 10 A")
    (True, False)
    """
    return is_told(text) and bool(LEFT_ON.search(text))
