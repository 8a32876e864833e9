"""Whether the volts are asked for that a battery of some charge shows: "how many volts is a half full AGM?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

VOLTS = regex(
    r"\b(?:what|which|how many|how much)\b[^.?!;]{0,24}\b(?:volts?|voltages?)\b"
    r"|\b(?:volts?|voltages?) (?:of|for|when|at|if|is)\b"
    r"|\bwhat (?:does|do|should|would|will)\b[^.?!;]{0,30}\b(?:show|read|measure)\b",
    re.IGNORECASE,
)
HOW_KNOWN = regex(  # "how do I know when it is full?"
    r"\bhow (?:do|can|will|would|should|could) (?:i|we|you|one) (?:know|tell|see|check|find out)\b[^.?!;]{0,50}"
    r"\b(?:full|fully charged)\b|\bwhen is\b[^.?!;,]{0,24}\b(?:full|fully charged)\b",
    re.IGNORECASE,
)
CHARGING = regex(r"\bcharg(?:er|ers|ing)\b|\bto charge\b|\bcharge (?:it|them) (?:at|with)\b", re.IGNORECASE)
FULL = regex(r"\b(?:full|fully charged)\b", re.IGNORECASE)
SHARE = regex(r"\b(?:full|half|empty|flat|\d{1,3} ?(?:%|per ?cent))", re.IGNORECASE)

RESTED = regex(
    r"\bwhat (?:should|would|must|ought)\b[^.?!;]{0,24}\b(?:be|read|show|have)\b[^.?!;]{0,24}"
    r"\b(?:after|following) (?:an?|the|one|some|several|\d+|a few)? ?(?:whole |full )?(?:night|nite|hours?|rest|day)\b"
    r"|\bwhat (?:should|would|must|ought)\b[^.?!;]{0,24}\b(?:be|read|show|have)\b[^.?!;]{0,24}"
    r"\b(?:overnight|rested|in the morning|next morning|the next day|tomorrow)\b",
    re.IGNORECASE,
)


def asked(text: str) -> bool:
    """Whether volts are asked for, and no charger's.

    >>> asked("how many volts is a half full AGM?"), asked("which voltage should the charger put out?")
    (True, False)
    >>> asked("how can I tell that it is full?"), asked("can I tell them it is full?")
    (True, False)
    """
    return (VOLTS.search(text) or HOW_KNOWN.search(text)) is not None and CHARGING.search(text) is None


def of_a_full_one(text: str) -> bool:
    """Whether those of a full battery are.

    >>> of_a_full_one("what voltage does a full AGM show?"), of_a_full_one("what voltage does an AGM show?")
    (True, False)
    """
    return asked(text) and FULL.search(text) is not None


def of_a_charge(text: str) -> bool:
    """Whether those of any charge that is named are.

    >>> of_a_charge("what volts is 50 percent on a flooded?"), of_a_charge("what voltage is the bank?")
    (True, False)
    """
    return asked(text) and SHARE.search(text) is not None


def of_a_rested_one(text: str) -> bool:
    """Whether it is asked what it should show once it has rested.

    >>> of_a_rested_one("and what should it be after a night?"), of_a_rested_one("what should I do after a night?")
    (True, False)
    """
    return RESTED.search(text) is not None
