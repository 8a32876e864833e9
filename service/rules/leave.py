"""Whether leave is asked to charge or to use a battery: "can I charge it again tomorrow?"."""

from __future__ import annotations

import re

MAY = (
    r"\b(?:can|could|may|might|shall|should|dare|must)(?:n['’]?t)? (?:i|we|one|he|she|they|it|you|that|the|my|our)\b"
    r"|\b(?:ok|okay|safe|fine|all ?right|allowed|possible|sensible|wise) (?:to|if|for)\b|\bgood to go\b"
    r"|\b(?:so|then|now) (?:i|we|it) (?:can|could|may|should)\b"
)
UP_TO = r"(?:(?!\b(?:stop|not|never|without|avoid|quit|off|before|after|when|while|because)\b)[^.?!;])*?"
CHARGE = r"\b(?:re-?)?charg(?:e|ed|es|ing)\b|\bplug (?:it|them|the charger|everything) (?:back )?in\b"
USE = (
    r"\b(?:us(?:e|ed|ing)|run|start|jump(?: ?start)?|try|connect|reconnect|operate) "
    r"(?:it|them|that|this|mine|ours|one|the|my|our|again|a)\b(?! (?:fire|extinguisher|soda|water|blanket|gloves))"
    r"|\b(?:switch|turn|put)(?: \w+){0,3} (?:back )?on\b|\bcarry on\b|\bgo on (?:with|using)\b|\bkeep (?:using|on)\b"
    r"|\b(?:use|run|go on)\b(?=\W*(?:again|now|today|tomorrow|then)?\W*(?:[?.!]|$))"
    r"|\bstay in use\b|\bstill be used\b|\bbe used\b"
)
ASKED = {
    deed: re.compile(rf"(?:{MAY}){UP_TO}(?:{words})", re.IGNORECASE)
    for deed, words in (("charge", CHARGE), ("use", USE))
}


def asked(text: str) -> str:
    """ "charge" or "use" where a message asks leave for it, else "".

    >>> asked("It is cold now. Can I charge it again tomorrow?"), asked("Can we stop charging it?")
    ('charge', '')
    """
    return next((deed for deed, words in ASKED.items() if words.search(text)), "")
