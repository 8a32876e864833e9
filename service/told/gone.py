"""A battery that is off the boat, with another in its place: its swelling or smell harms nobody aboard any more."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

KIND = r"(?:agms?|gels?|lithiums?|life?po4?|lfp|wets?|flooded|batter(?:y|ies)|accus?|set|pair|bank|ones?)"
OLD = rf"(?:it|that|they|both|all|(?:the|my|our|that) (?:(?!new\b)\w+ ){{0,2}}?{KIND})"
AWAY = (
    r"(?:at|to|in|on its way to) (?:the|a) (?:tip|dump|skip|scrap\w*|recycl\w+)|scrapped|binned|recycled|disposed of"
    r"|(?:taken|carted|hauled|driven) (?:away|off)|thrown (?:out|away)|with the (?:scrap|recycl)\w*"
)
GONE = regex(
    rf"\b{OLD}(?:['’](?:s|re|ve)| is| are| was| were| has been| have been| went| got| gone)"
    rf"(?: (?:now|all|already|been|out|off|ashore|gone|safely|and)){{0,4}},? (?:{AWAY})\b"
    rf"|\b(?:binned|scrapped|recycled|dumped) (?:it|them|both|the (?:\w+ )?{KIND})\b",
    re.IGNORECASE,
)
NEW = regex(
    rf"\b(?:bought|fitted|installed|got|have|put in|took|mounted|ordered)(?: \w+){{0,3}}? (?:new )?{KIND}\b"
    rf"|\b(?:new|fresh|another|replacement) {KIND}\b",
    re.IGNORECASE,
)
NOT_YET = regex(
    r"\b(?:shall|should|must|can|could|may|might|will|would|wouldn['’]t|gonna|going to|have to|need to|want to|before"
    r"|until|till|once|when|if|unless|not|never|tomorrow|soon)\b[^.?!;]{0,200}$",
    re.IGNORECASE,
)
NEW_CHARGER = regex(
    r"\b(?:(?:bought|fitted|installed|got|have|put in|took|mounted|with) (?:an?|the|my|our) (?:new|other) charger"
    r"|(?:an? |the )?(?:new|replacement) charger"
    r"(?=[,:;.]| (?:now|is (?:in|on|here|fitted)|fitted|instead|here))"
    r"|charger (?:was|has been|is|got) (?:replaced|exchanged|swapped|changed))",
    re.IGNORECASE,
)
WANTED = regex(r"[^.!;]{0,12}\?")


def replaced(text: str) -> bool:
    """Whether the battery spoken of has left the boat and another is told of.

    >>> replaced("It's gone to the tip. Fitted a new gel: which float?"), replaced("Should it be scrapped? A new AGM?")
    (True, False)
    >>> replaced("the swollen one is at the dump, the other AGM hisses")
    False
    """
    gone = any(not NOT_YET.search(text[: item.start()]) for item in GONE.finditer(text))
    return gone and any(not NOT_YET.search(text[: item.start()]) for item in NEW.finditer(text))


def charger_replaced(text: str) -> bool:
    """Whether the charger spoken of has another in its place, which is there already.

    >>> charger_replaced("new charger now, 25 A on AGM. Is 14.7 normal?"), charger_replaced("do I need a new charger?")
    (True, False)
    """
    found = NEW_CHARGER.search(text)
    return found is not None and NOT_YET.search(text, 0, found.start()) is None and not WANTED.match(text, found.end())
