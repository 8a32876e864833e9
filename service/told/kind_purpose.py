"""What a kind of battery is sought for, beside a thruster: a house bank, the cold, a quick charge, a long life."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

PURPOSES = {
    "house": regex(
        r"\b(?:house|service|domestic|leisure|hotel) (?:bank|batter(?:y|ies)|side|loads?)\b"
        r"|\bfor (?:the|my|our) house\b|\b(?:fridge|lights|cool ?box|instruments|plotter)\b",
        re.IGNORECASE,
    ),
    "deep": regex(r"\bdeep[- ](?:discharge|cycling|use)\b|\btrolling\b", re.IGNORECASE),
    "cold": regex(
        r"\b(?:for|in|of|with|about) (?:the |very |really )?cold\b"
        r"|\bcold (?:climates?|countr(?:y|ies)|regions?|winters?)\b",
        re.IGNORECASE,
    ),
    "charge": regex(
        r"\bcharg\w*\b[^.?!;]{0,16}\b(?:fast\w*|quick\w*|sooner|soonest)\b|\b(?:fast\w*|quick\w*) (?:to )?charg\w*",
        re.IGNORECASE,
    ),
    "life": regex(
        r"\blasts? (?:the )?long(?:est|er)\b|\blong(?:est|er)? li(?:fe|ved)\b|\bmost (?:years|cycles)\b", re.IGNORECASE
    ),
    "care": regex(
        r"\bnobody looks after\b|\b(?:no|least|less|little|low)[- ](?:care|upkeep|work|maintenance)\b|\bforget it\b",
        re.IGNORECASE,
    ),
}
SLOW = ("house", "deep")
MOTORS = regex(r"\b(?:thrusters?|windlass\w*|winch\w*|start(?:er|ing)?|engine|minnow|pike|sturgeon)\b", re.IGNORECASE)


def purpose(text: str) -> str:
    """The first of the purposes above that is told; "" for none. Slow use beside a motor that jumps is none.

    >>> purpose("gel or wet for the house bank"), purpose("gel or AGM for thruster and house bank")
    ('house', '')
    """
    motor = MOTORS.search(text) is not None
    return next((name for name, told in PURPOSES.items() if told.search(text) and not (name in SLOW and motor)), "")
