"""Whether leave is asked to charge or to use a battery: "can I charge it again tomorrow?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

MAY = (
    r"\b(?:can|could|may|might|shall|should|dare|must)(?:n['’]?t)? (?:i|we|one|he|she|they|it|you|that|the|my|our)\b"
    r"|\b(?:ok|okay|safe|fine|all ?right|allowed|possible|sensible|wise) (?:to|if|for)\b|\bgood to go\b"
    r"|\b(?:so|then|now) (?:i|we|it) (?:can|could|may|should)\b"
)
UP_TO = r"(?:(?!\b(?:stop|not|never|without|avoid|quit|off|before|after|when|while|because)\b)[^.?!;]){0,200}?"
CHARGE = r"\b(?:re-?)?charg(?:e|ed|es|ing)\b|\bplug (?:it|them|the charger|everything) (?:back )?in\b"
USE = (
    r"\b(?:us(?:e|ed|ing)|run|start|jump(?: ?start)?|try|connect|reconnect|operate) "
    r"(?:it|them|that|this|mine|ours|one|the|my|our|again|a)\b(?! (?:fire|extinguisher|soda|water|blanket|gloves))"
    r"|\b(?:switch|turn|put)(?: \w+){0,3} (?:back )?on\b|\bcarry on\b|\bgo on (?:with|using)\b|\bkeep (?:using|on)\b"
    r"|\b(?:use|run|go on)\b(?=\W*(?:again|now|today|tomorrow|then)?\W*(?:[?.!]|$))"
    r"|\bstay in use\b|\bstill be used\b|\bbe used\b"
)
ASKED = {
    deed: regex(rf"(?:{MAY}){UP_TO}(?:{words})", re.IGNORECASE) for deed, words in (("charge", CHARGE), ("use", USE))
}


BARE = regex(  # "it's 4 degrees. Charge it now?"
    r"(?:^|[.,!;:] *)(?:(?:so|and|ok(?:ay)?|then) )*(?:re-?)?charge (?:it|them|her|mine|ours|(?:the|my|our) \w+)"
    r"(?! (?:on|with|by|to)\b)(?: \w+){0,5}\?",
    re.IGNORECASE,
)


def asked(text: str) -> str:
    """ "charge" or "use" where a message asks leave for it, else "".

    >>> asked("It is cold now. Can I charge it again tomorrow?"), asked("Can we stop charging it?")
    ('charge', '')
    >>> asked("It's 4 degrees in there. Charge it now?"), asked("How often do I charge it?")
    ('charge', '')
    """
    if BARE.search(text):
        return "charge"
    return next((deed for deed, words in ASKED.items() if words.search(text)), "")


HITHERTO = regex(r"\b(?:until|till|til|up to) (?:now|today)\b", re.IGNORECASE)
A_CHARGER = regex(
    r"\b(?:us(?:e|ing)|try|connect|put|run) (?:\w+ ){1,4}?(?:charger|alternator|regulator|panel)\b", re.IGNORECASE
)
UNDER_WAY = regex(
    r"\b(?:now|since|already|currently|been|keeps?|kept|keep(?:ing)?|again|still|while|overnight|night|yesterday|today|"
    r"lately|gets?|getting|charging|charged|reads?|shows?|showed|meter|gauge|needle|is on|are on|was|were|left|leave|"
    r"hangs?|hung|feeds?|into|carry|go on|hot|warm|smell\w*|ran|runs)\b",
    re.IGNORECASE,
)


def only_planned(text: str) -> bool:
    """Whether leave is asked for a charge of which nothing tells that it is under way or has been.

    >>> only_planned("May I charge a lithium with my old charger, it gives 14.8 V?")
    True
    >>> only_planned("May I charge on? It gives the lithium 14.8 V since noon.")
    False
    """
    leave = asked(text)
    of_charging = leave == "charge" or (leave == "use" and A_CHARGER.search(text))
    return bool(of_charging) and not UNDER_WAY.search(HITHERTO.sub("", text))


MODE = r"\b(?:mode|program(?:me)?|stage|function|setting)\b['’\")]*"
OF_A_MODE = regex(
    r"\b(?:can|could|may|might|should|shall|would)\b[^.?!;]{0,200}?"
    rf"(?:{MODE},? ?\(?(?:at |of |with )?\d+(?:[.,]\d+)? ?v\b|\b\d+(?:[.,]\d+)? ?v(?:olts?)? (?:[\w'’-]+ )?{MODE})",
    re.IGNORECASE,
)
IN_USE = regex(
    r"\b(?:sits?|sat|stays?|stands?|stood|why|went|gone|in (?:the |its |a )?(?:[\w'’.,-]+ ){0,3}(?:mode|stage))\b",
    re.IGNORECASE,
)


def of_a_mode(text: str) -> bool:
    """Whether leave is asked for a mode of a charger that is named with its volts, and nothing tells that it runs.

    >>> of_a_mode("Could the repair mode (16 V) be used on my gel?"), of_a_mode("Is it in repair mode at 16 V now?")
    (True, False)
    """
    return bool(OF_A_MODE.search(text)) and not IN_USE.search(text) and not UNDER_WAY.search(HITHERTO.sub("", text))
