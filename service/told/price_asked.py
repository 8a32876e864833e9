"""Whether a message asks for nothing but the price of a thing: "how much is the 350 A fuse?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

GOODS = (
    r"(?:fuses?|breakers?|holders?|batter(?:y|ies)|agms?|gels?|lithiums?|chargers?|relays?|cables?|lugs?|switch(?:es)?"
    r"|isolators?|busbars?|thrusters?|propellers?|motors?|kits?|panels?|ones?|minnow|pike|sturgeon)"
)
LEAD = r"(?:(?!\b(?:loss|lost|drop|left|draw\w*|current|charge|power|sag|in|through|over)\b)[^.?!;]){0,40}?"
PRICE = regex(
    rf"\bhow much (?:is|are|for|do|does|would|will)\b{LEAD}\b{GOODS}"
    r"(?=\W*(?:$|[?.,;!]|(?:cost|please|from you|then|these days|delivered)\b))"
    r"|\bwhat (?:does|do|would|will)\b[^.?!;]{0,50}\b(?:cost|set me back)\b(?! (?:me )?in (?:volts|amps|power))"
    r"|\b(?:what is|what['’]?s|tell me|send me|need) (?:the|a|your) (?:price|cost|quote)\b",
    re.IGNORECASE,
)
ASKS = regex(
    r"\?|\b(?:what['’]?s?|which|how|where|when|why|who|can|could|should|shall|does|will|would|may|must|is it|do i)\b",
    re.I,
)
PART = regex(r"(?<=[?!;])\s|\.\s|\b(?:and|also) (?=(?:what|how|which|where|can|is|do|will)\w*\b)|\n")


def alone(text: str) -> bool:
    """Whether the price is asked, and nothing else.

    >>> alone("My order is wrong. How much is the 350A one"), alone("which fuse for a Pike and what does it cost")
    (True, False)
    >>> alone("how much is the loss in the cable?")
    False
    """
    asking = [part for part in PART.split(text) if ASKS.search(part)]
    return bool(asking) and all(PRICE.search(part) for part in asking)
