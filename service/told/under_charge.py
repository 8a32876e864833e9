"""Leave asked to take a cable off a battery while its charger is on."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

LEAVE = r"\b(?:can|could|may|should|shall|ok(?:ay)?|safe|fine|all ?right|allowed)\b"
UNDONE = (
    r"(?:(?:undo|loosen|disconnect|remove|unscrew|unbolt|pull off|change|touch|tighten|clean)(?:ing)?"
    r" (?:\w+ ){0,3}?PART"
    r"|(?:take|taking|pull|pulling|get|lift) (?:off )?(?:\w+ ){0,3}?PART(?: off)?"
    r"|work(?:ing)? (?:on|at) (?:\w+ ){0,2}?PART)"
).replace("PART", r"(?:terminals?|clamps?|posts?|lugs?|leads?|cables?|connections?|nuts?|battery)\b")
ON = (
    r"(?:charger (?:still |left )?(?:is |stays |staying |was )?(?:still |left )?(?:on|running|connected|plugged in)\b"
    r"|(?:with|leave|leaving|keep|keeping) (?:the |my )?charger (?:still )?on\b|\bwhile (?:it['’]?s |it is |they are )?"
    r"(?:charging|on charge)\b|\bwith shore power on\b|\bon charge\b)"
)
ASKED = regex(rf"{LEAVE}[^.?!;]{{0,48}}?\b{UNDONE}", re.IGNORECASE)
LEFT_ON = regex(
    rf"{LEAVE}[^.?!;]{{0,24}}?\b(?:leave|keep|have)\b[^.?!;]{{0,16}}\bon (?:while|when)\b[^.?!;]{{0,16}}\b{UNDONE}",
    re.I,
)
IS_ON = regex(ON, re.IGNORECASE)
OFF_FIRST = regex(
    r"\b(?:charger|shore power)\b[^.?!;]{0,16}\b(?:off|unplugged|out)\b|\bswitch(?:ed)? off\b", re.IGNORECASE
)


def asked(text: str) -> bool:
    """Whether leave is asked to work at the posts with the charger on.

    >>> asked("may I undo the clamps with the charger on?"), asked("charger is on, can I take the leads off")
    (True, True)
    >>> asked("charger off, can I undo the clamps?"), asked("can I leave the charger on all winter?")
    (False, False)
    """
    on = IS_ON.search(text) is not None and OFF_FIRST.search(text) is None
    return (on and ASKED.search(text) is not None) or LEFT_ON.search(text) is not None
