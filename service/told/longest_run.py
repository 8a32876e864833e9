"""How long a cable of a told size may be: "how far may the battery be from it with 70 mm2"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

RUN = r"(?:run|cable|lead)"
FAR = (
    rf"\b(?:how (?:far|long an? {RUN}|long (?:can|may|could) (?:the|my|a|that|this) {RUN}"
    r"|long (?:can|may|could) (?:it|that|this|they) be)"
    r"|what(?: is|['’]?s) the (?:longest|furthest|farthest|maximum|max)"
    r"|(?:longest|maximum|max) (?:cable )?(?:run|length|distance))\b"
)
ASKED = regex(FAR, re.IGNORECASE)
FUSES = regex(r"\b(?:fuse|breaker|isolator|switch)\w*\b", re.IGNORECASE)
TO_GO = regex(r"\bhow far (?:will|does|would) (?:it|that|the boat|she|we)\b|\bcruise\b", re.IGNORECASE)
SENTENCE = regex(r"[.?!;]\s|\band (?=(?:what|how|which)\w*\b)|(?<=\s)(?=\(?\d[).] ?)")
FROM_IT = regex(  # "how far may the battery be from the thruster", "how far away can the batteries go"
    r"\bhow far(?: away| off| apart)? (?:can|may|could|should|must|is it ok for)\b[^.?!;]{0,24}"
    r"\b(?:batter(?:y|ies)|bank)\b[^.?!;]{0,24}\b(?:from|be|go|stand|sit)\b"
    r"|\bhow far(?: away| off)? from (?:the|my|our|a) (?:\w+ )?"
    r"(?:thruster|motor|windlass|winch)\b[^.?!;]{0,24}\b(?:batter(?:y|ies)|bank)\b",
    re.IGNORECASE,
)
SIZES = frozenset({"cable.gauge", "cable.area"})


def from_the_load(text: str) -> bool:
    """Whether it is asked how far a battery may stand from its motor.

    >>> from_the_load("how far may the battery be from the thruster"), from_the_load("how far will the battery take us")
    (True, False)
    """
    return FROM_IT.search(text) is not None and not FUSES.search(text) and not TO_GO.search(text)


def asked(text: str, told: frozenset[str] | set[str]) -> bool:
    """Whether the longest run of a cable is asked for, whose size is told and its length is not.

    >>> asked("how far can I go with 70 mm2", {"cable.area"}), asked("how far must the fuse be", {"cable.area"})
    (True, False)
    """
    if not SIZES & told or "cable.length" in told:
        return False
    return any(
        ASKED.search(part) and not FUSES.search(part) and not TO_GO.search(part) for part in SENTENCE.split(text)
    )
