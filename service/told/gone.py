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
DUMP = r"(?:tip|dump|skip|scrap\w*|recycl\w+|breakers?)"
LEFT = regex(  # "went to the scrap dealer", "the yard took it ashore", "fetched by the dangerous goods people"
    rf"\b{OLD}(?:['’](?:s|re|ve)| is| are| was| were| has been| have been| went| got| gone)(?: \w+){{0,2}}?"
    rf" to (?:the |a )?{DUMP}\b"
    rf"|\b{OLD} (?:is|are|was|were|has been|got) (?:\w+ )?(?:fetched|collected|picked up|taken) by\b"
    rf"|\b{OLD} (?:is|are) (?:now )?(?:out of|off) the boat\b"
    r"|\b(?:took|carted|hauled|fetched|collected)"
    r" (?:it|them|both|that one|the (?:old|swollen|bad|dead|burst|hot) (?:one|battery))"
    rf"(?: away| ashore| out| off)?(?: and)?(?: off)? to (?:the |a |their )?{DUMP}\b",
    re.IGNORECASE,
)
NEW = regex(
    rf"\b(?:bought|fitted|installed|got|have|put in|took|mounted|ordered)(?: \w+){{0,3}}? (?:new )?{KIND}\b"
    rf"|\b(?:new|fresh|another|replacement) {KIND}\b",
    re.IGNORECASE,
)
THE_OLD = rf"(?:it|them|both|that (?:one|battery)|(?:the|my|our|that) (?:(?!new\b)\w+ ){{0,2}}?{KIND})"
A_NEW = rf"(?:an?|the|my|our|another|two|both)? ?(?:\w+ ){{0,2}}?(?:new|replacement|fresh|other) (?:\w+ ){{0,2}}?{KIND}"
DONE = r"(?:replaced|exchanged|swapped|renewed)"
BY_TRADE = r"(?:maker|manufacturer|supplier|dealer|yard|shop|seller|chandler|installer|electrician|fitter|technician)s?"
SWAPPED = regex(  # put in the place of the old one, and done
    rf"\b(?:new|replacement|fresh) (?:\w+ ){{0,2}}?{KIND}(?: (?:is|are|has been|was|now|already|been))*"
    r" (?:fitted|installed|put in|connected|in place|in now|in(?=\W*$|[,.;]))"
    rf"|\b(?:fitted|installed|put in|swapped in|mounted|connected) {A_NEW}\b"
    rf"|\b(?:{DONE}|changed) {THE_OLD}(?: out)? (?:for|with|by)\b"
    rf"|\b{THE_OLD}(?:['’](?:s|ve)| is| are| was| were| has| have| got)(?: (?:now|since|all|been|already))* {DONE}\b"
    rf"|\b(?:i|we|he|they|{BY_TRADE})(?:['’]ve)?(?: (?:have|has|since|then|now|already|just))* {DONE} {THE_OLD}\b",
    re.IGNORECASE,
)
THE_SAME = regex(  # it is the one with the sign that is new: "it's a new battery, only fitted in May"
    r"\b(?:only|ago|since|last|old|months?|years?|weeks?"
    r"|(?:in|since) (?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)\w*"
    r"|spring|summer|autumn|winter|recently|too|also|as well|again|same|still|keeps?|yesterday)\b"
    r"|\b(?:it|this|that|they)(?:['’]s|['’]re|s| is| are| was| were) (?:an? |the )?(?:\w+ )?(?:new|replacement)\b",
    re.IGNORECASE,
)
ANOTHER_PART = regex(  # "the fuse blew, I replaced it with a new one"
    r"\b(?:fuses?|breaker|charger|cables?|wires?|leads?|lugs?|terminals?|clamps?|switch|relay|caps?|lid|strap|box|tray"
    r"|regulator|alternator|monitor|pump|bms|thruster|motor)\b",
    re.IGNORECASE,
)
BOUGHT = regex(
    rf"\b(?:bought|got|have|ordered) {A_NEW}\b|\b(?:bought|got|ordered) (?:a|the) replacement\b", re.IGNORECASE
)
OF_THE_NEW = regex(r"\b(?:that|the new|this new|the replacement) (?:one|battery)\b|\bthe replacement\b", re.IGNORECASE)
BESIDE = regex(
    r"\b(?:beside|next to|together|parallel|series|with (?:it|the)|to the old|old one|both|join\w*|mix\w*|swollen"
    r"|bulg\w*)\b",
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


def off_the_boat(text: str) -> bool:
    """Whether the battery spoken of has left the boat for good, whatever takes its place.

    >>> off_the_boat("the old battery is gone to scrap"), off_the_boat("it went to the scrap dealer this morning")
    (True, True)
    >>> off_the_boat("the yard took it ashore and to the recycler"), off_the_boat("should it go to the tip?")
    (True, False)
    """
    return any(
        not NOT_YET.search(text, 0, item.start()) and not WANTED.match(text, item.end())
        for pattern in (GONE, LEFT)
        for item in pattern.finditer(text)
    )


def charger_replaced(text: str) -> bool:
    """Whether the charger spoken of has another in its place, which is there already.

    >>> charger_replaced("new charger now, 25 A on AGM. Is 14.7 normal?"), charger_replaced("do I need a new charger?")
    (True, False)
    """
    found = NEW_CHARGER.search(text)
    return found is not None and NOT_YET.search(text, 0, found.start()) is None and not WANTED.match(text, found.end())


def swapped(text: str) -> bool:
    """Whether another battery is told to stand in the place of the one spoken of.

    >>> swapped("new battery fitted, 95 Ah gel"), swapped("the maker replaced it"), swapped("swapped it for a new AGM")
    (True, True, True)
    >>> swapped("shall I have it replaced with a new one?"), swapped("it's a new battery, only fitted in May")
    (False, False)
    """
    done = any(
        not NOT_YET.search(text, 0, item.start())
        and not WANTED.match(text, item.end())
        and not ANOTHER_PART.search(_sentence(text, item.start(), item.end()))
        for item in SWAPPED.finditer(text)
    )
    return done and THE_SAME.search(text) is None


def _sentence(text: str, start: int, end: int) -> str:
    """The sentence that holds this part of a text."""
    first = max(text.rfind(mark, 0, start) for mark in ".?!;") + 1
    after = [at for mark in ".?!;" if (at := text.find(mark, end)) >= 0]
    return text[first : min(after, default=len(text))]


def another_asked(text: str) -> bool:
    """Whether a question is of a new battery that was bought, apart from the one with the sign.

    >>> another_asked("bought a replacement, 85ah gel, how do i charge that one")
    True
    >>> another_asked("bought a replacement. can i put the new one in parallel?")
    False
    """
    bought = any(not NOT_YET.search(text, 0, item.start()) for item in BOUGHT.finditer(text))
    return bought and OF_THE_NEW.search(text) is not None and BESIDE.search(text) is None
