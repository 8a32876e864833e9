"""Whether a charge is told of that took place, so that degrees told beside it are those it was charged at; and the
rule that is asked for: "must lithium be kept from charging in frost".
"""

from __future__ import annotations

import re

from grammar.text.patterns import regex

TIMES = (
    r"(?:all|over|last|every|each|the whole|this|that) ?(?:night|day|morning|evening|week)s?\b|\bovernight\b"
    r"|\byesterday\b|\bsince\b|\bfor (?:an?|\d+|two|three|four|some|several|a few) (?:hours?|days?|nights?|weeks?)\b"
)
CHARGED = regex(
    r"\b(?:puts?|had|has|left|leaves|was|were|kept|keeps|stood|ran|went|been)\b"
    r"(?: (?!not\b|never\b|n't\b|to\b|if\b)[\w'’]+){0,4}? on (?:charge|the charger)\b"
    rf"|\b(?:charged|charging|been charging|charger (?:ran|was|has been|came) on)\b[^.?!;,]{{0,24}}?\b(?:{TIMES})"
    r"|\bcharger(?:['’]?s| has| had) been (?:humming|running|working|feeding|pushing|going|on)\b"
    r"|\b(?:put|hung|clipped|connected|plugged) (?:(?:the|a|my|our|his|her|shore|mains) ){1,3}charger"
    r" (?:on|onto|to|into)\b",
    re.IGNORECASE,
)
MINE = regex(  # "it must not be charged under 0, and mine was"
    r"\bcharged?\b[^.?!;]{0,40}?\b(?:and|but|yet) (?:mine|ours) (?:was|were|has been|have been)\b(?! (?:not|never)\b)",
    re.IGNORECASE,
)
NOT_DONE = regex(
    r"\b(?:if|should|would|could|can|may|must|will|shall|plan|planning|going to|want|wants|before|unless|until"
    r"|never|not|no|without|\w+n['’]t)\b[^.?!;]{0,60}$",
    re.IGNORECASE,
)
RULE = regex(
    r"\b(?:must|should|shall|ought|has|have|does|do)\b[^.?!;]{0,50}?\bbe (?:kept|protected|prevented|stopped|barred"
    r"|saved|shielded|guarded|held|spared) (?:from|off|against)"
    r" (?:(?:being|a|the|any|its|their) ){0,2}charg(?:e|ed|ing)\b",
    re.IGNORECASE,
)
LEAVE = regex(
    r"\b(?:can|could|may|might|should|shall|must)\b[^.?!;]{0,40}?\bbe (?:re)?charged\b[^.?!;]{0,30}?"
    r"\b(?:frost\w*|freez\w+|(?:below|under) zero|sub-?zero|minus)",
    re.IGNORECASE,
)
REACH = 80  # characters before it that may deny it or only suppose it


def told(text: str) -> bool:
    """Whether a charge is told, and neither asked for nor planned.

    >>> told("a timer put the lithium on charge every night"), told("it was charging all night, -4 in there")
    (True, True)
    >>> told("can I leave it on charge all winter?"), told("it has not been on charge since"), told("it is -4 here")
    (False, False, False)
    """
    return MINE.search(text) is not None or any(
        not NOT_DONE.search(text[max(0, at.start() - REACH) : at.start()]) and not _asked(text, at.end())
        for at in CHARGED.finditer(text)
    )


def rule(text: str) -> bool:
    """Whether it is asked if a battery must be kept from charging: then "yes" forbids it.

    >>> rule("must lithium be kept from charging in frost?"), rule("it was kept from charging in frost")
    (True, False)
    """
    return RULE.search(text) is not None


def asked(text: str) -> bool:
    """Whether the rule of charging in frost is asked for, or leave to do it."""
    return rule(text) or LEAVE.search(text) is not None


def _asked(text: str, end: int) -> bool:
    return re.match(r"[^.!;]{0,40}\?", text[end:]) is not None
