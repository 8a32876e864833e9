"""A danger seen to by somebody who knows it: the fire service, an engineer, an electrician; a boat that lies safe."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

OF_THE_AIR = frozenset({"fire", "smoke", "fuel-vapour", "gas-alarm", "co-alarm-near-battery"})
OF_A_CIRCUIT = frozenset(
    {"burnt-cable", "no-fuse", "short-by-tool", "spark-big", "reversed-polarity", "thruster-runs-on"}
)
ADRIFT = "boat-disabled"
SHOCK = "shore-shock"

FIRE_SERVICE = (
    r"(?:fire (?:brigade|service|department|crew|officer)|firemen|fire ?fighters?"
    r"|(?:gas|heating) (?:engineer|fitter|man))"
)
ALL_WELL = (
    r"(?:(?:gave|given|say|says|said|got|it['’]?s|is)\b[^.?!;]{0,24}\b"
    r"(?:all[- ]clear|safe|all right|ok(?:ay)?|over|fine)"
    r"|all[- ]clear|fixed it|(?:leak|fault|burner|heater|pipe|hose)\b[^.?!;]{0,16}\b(?:fixed|mended|repaired|replaced))"
)
CLEARED = regex(
    rf"\b{FIRE_SERVICE}\b[^.?!;]{{0,48}}\b{ALL_WELL}\b|\ball[- ]clear from (?:the )?{FIRE_SERVICE}\b", re.IGNORECASE
)
TRADE = r"(?:electricians?|technicians?|(?:marine )?engineers?|mechanics?|boat ?yard|yard|fitters?|riggers?|sparky)"
MADE_GOOD = (
    r"(?:crimped|replaced|fitted|renewed|fixed|repaired|mended|rewired|redid|redone|re-?made|put right|sorted|rebuilt)"
)
BY_TRADE = regex(
    rf"\b{MADE_GOOD}\b[^.?!;]{{0,32}}\bby (?:an?|the|our|my)? ?(?:\w+ )?{TRADE}\b"
    rf"|\b{TRADE} (?:came |has |have |had |and |just |then |since |now )*{MADE_GOOD}\b",
    re.IGNORECASE,
)
NOT_SO = regex(
    r"\b(?:not|no|never|isn['’]?t|haven['’]?t|hasn['’]?t|if|until|till|when|should|shall|must|need|can|could|may|would|will"
    r"|call|ring|wait\w*|tomorrow|next|still|again|but|only)\b",
    re.IGNORECASE,
)
SAFE = regex(
    r"\banchor(?:['’]s| is| has|s)? (?:now )?(?:down|set|out and holding|hold(?:s|ing))\b"
    r"|\b(?:at|lying to) anchor\b|\banchored\b"
    r"|\b(?:safely )?(?:moored|tied up|alongside)\b|\b(?:towed|been towed|tow) (?:us )?(?:in|back|home)\b"
    r"|\bback (?:in|at|on) (?:the|our|my) (?:berth|harbour|harbor|marina|dock|pontoon|mooring|slip)\b",
    re.IGNORECASE,
)
NOT_SAFE = regex(
    r"\b(?:not|won['’]?t|isn['’]?t|doesn['’]?t|drags?|dragging|drift\w*|still|again|if|try\w*|can|could|should|how|until"
    r"|help|aground|sink\w*|towards?|rocks?|almost|nearly|about to|no)\b",
    re.IGNORECASE,
)
REACH = 24  # characters before it that may deny it or only suppose it


def over(text: str) -> frozenset[str]:
    """The families of danger that a text tells to be over, as those say who know.

    >>> "fire" in over("fire brigade gave the all clear, the pipe is mended"), over("will the firemen say all clear?")
    (True, frozenset())
    >>> "burnt-cable" in over("lug renewed by the electrician"), "burnt-cable" in over("lug renewed by me")
    (True, False)
    >>> over("anchor's down, all well"), over("the anchor is down but drags")
    (frozenset({'boat-disabled'}), frozenset())
    """
    found: set[str] = set()
    if (cleared := CLEARED.search(text)) and not NOT_SO.search(text, max(0, cleared.start() - REACH), cleared.end()):
        found |= OF_THE_AIR
    if (mended := BY_TRADE.search(text)) and not NOT_SO.search(text, max(0, mended.start() - REACH), mended.end()):
        found |= {*OF_A_CIRCUIT, SHOCK}
    if SAFE.search(text) and not NOT_SAFE.search(text):
        found.add(ADRIFT)
    return frozenset(found)
