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
AIRED = (
    r"(?:(?:meter|sniffer|detector|alarm|sensor)\b[^.?!;]{0,16}\b(?:zero|silent|quiet|clear|nothing)"
    r"|no (?:more )?(?:smell|gas|fumes|vapou?r)|nothing (?:any ?more|to smell))"
)
NO_SMELL = regex(rf"\b{AIRED}\b", re.IGNORECASE)
RAN_COLD = regex(r"\b(?:stone[- ]cold|all cool|stays? cool|ran cold|load[- ]tested|aired)\b", re.IGNORECASE)
CLEARED = regex(
    rf"\b{FIRE_SERVICE}\b[^.?!;]{{0,48}}\b{ALL_WELL}\b|\ball[- ]clear from (?:the )?{FIRE_SERVICE}\b", re.IGNORECASE
)
TRADE = r"(?:electricians?|technicians?|(?:marine )?engineers?|mechanics?|boat ?yard|yard|fitters?|riggers?|sparky)"
MADE_GOOD = (
    r"(?:crimped|replaced|fitted|renewed|fixed|repaired|mended|rewired|redid|redone|re-?made|put right|sorted|rebuilt"
    r"|swapped|changed|exchanged|installed|put in|cut out)"
)
BY_TRADE = regex(
    rf"\b{MADE_GOOD}\b[^.?!;]{{0,32}}\bby (?:an?|the|our|my)? ?(?:\w+ )?{TRADE}\b"
    rf"|\b{TRADE} (?:came |has |have |had |and |just |then |since |now )*{MADE_GOOD}\b"
    rf"|\b{TRADE} (?:came|found|traced|saw|looked)\b[^.?!;]{{0,60}}?\b{MADE_GOOD}\b"
    rf"|\b(?:gas|heating) (?:engineer|fitter|man) (?:has |came and |came, )?{MADE_GOOD}\b",
    re.IGNORECASE,
)
PASSED = regex(  # "the technician tested both and cleared them", "tested good by the shop"
    rf"\b(?:{TRADE}|shop|garage|surveyors?|dealer)\b[^.?!]{{0,80}}?\b(?:cleared|passed)\b[^.?!]{{0,16}}"
    r"\b(?:it|them|both|for use|as (?:fine|good|safe|sound))\b"
    r"|\b(?:tested|checked|cleared|passed)(?: as)? (?:good|fine|ok(?:ay)?|sound|healthy|safe)"
    rf" by (?:an?|the|our|my) (?:\w+ )?(?:{TRADE}|shop|garage|dealer)\b"
    rf"|\b{TRADE} (?:has )?(?:tested|checked)\b[^.?!;]{{0,60}}\b(?:and|:|all|is|are)"
    r" (?:it['’]?s |they['’]?re |all |is |are )?(?:fine|good|sound|ok(?:ay)?|well|healthy)\b",
    re.IGNORECASE,
)
FUSED = regex(  # "bolt out, 250 A fuse in now", "fitted a 200 A at the battery, tested"
    r"\b(?:fitted|installed|put in|mounted) (?:an?|the|our|my) (?:proper |right |new |correct |class t )?"
    r"(?:\d{2,3} ?a(?:mps?)?\b(?! (?:charger|alternator|thruster|motor|dc|converter|solar|battery|bank))|fuse\b)"
    r"|\b(?:\d{2,3} ?a(?:mps?)? )?fuse(?:['’]?s| is| has been)? (?:now )?(?:in|fitted|installed)(?: now| place)?"
    r"(?=\s*[.,;!?]|$| and\b)",
    re.IGNORECASE,
)
CLEAR_OF_IT = regex(  # "he's out, the rope's off"
    r"\b(?:he|she|they|everybody|everyone|all|kids?|diver|swimmer|husband|wife|son|daughter)(?:['’]?s|['’]?re| is| are)"
    r"(?: now| all| both| safely| back)*"
    r" (?:out|clear|aboard|on deck|on board|ashore|on the (?:dock|quay|pontoon|platform))\b",
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
NOT_FUSED = regex(
    r"\b(?:not|no|never|if|until|till|when|once|should|shall|must|need|can|could|may|would|will|have to|going to"
    r"|tomorrow)\b",
    re.IGNORECASE,
)
NOT_CLEAR = regex(r"\b(?:not|n['’]t|still|trapped|stuck|caught|hurt|bleed\w*|unconscious|breath\w*|again|cold)\b", re.I)
NO_FUSE, PROPELLER = "no-fuse", "person-near-propeller"
REACH = 24  # characters before it that may deny it or only suppose it


def over(text: str) -> frozenset[str]:
    """The families of danger that a text tells to be over, as those say who know.

    >>> "fire" in over("fire brigade gave the all clear, the pipe is mended"), over("will the firemen say all clear?")
    (True, frozenset())
    >>> "burnt-cable" in over("lug renewed by the electrician"), "burnt-cable" in over("lug renewed by me")
    (True, False)
    >>> over("bolt out, 250 A fuse in now"), over("if I had a fuse in now")
    (frozenset({'no-fuse'}), frozenset())
    >>> over("anchor's down, all well"), over("the anchor is down but drags")
    (frozenset({'boat-disabled'}), frozenset())
    """
    found: set[str] = set()
    mended = BY_TRADE.search(text)
    if (
        mended
        and (NO_SMELL.search(text) or RAN_COLD.search(text))
        and not NOT_SO.search(text, max(0, mended.start() - REACH), mended.end())
    ):
        found |= OF_THE_AIR
    if (cleared := CLEARED.search(text)) and not NOT_SO.search(text, max(0, cleared.start() - REACH), cleared.end()):
        found |= OF_THE_AIR
    if mended and not NOT_SO.search(text, max(0, mended.start() - REACH), mended.end()):
        found |= {*OF_A_CIRCUIT, SHOCK}
    if (fused := FUSED.search(text)) and not NOT_FUSED.search(text, max(0, fused.start() - REACH), fused.end()):
        found.add(NO_FUSE)
    if CLEAR_OF_IT.search(text) and not NOT_CLEAR.search(text):
        found.add(PROPELLER)
    if SAFE.search(text) and not NOT_SAFE.search(text):
        found.add(ADRIFT)
    return frozenset(found)


def is_passed(text: str) -> bool:
    """Whether somebody who knows batteries has tested what showed the sign and passed it.

    >>> is_passed("The technician tested both and cleared them for use"), is_passed("tested good by the shop")
    (True, True)
    >>> is_passed("should a technician test it and clear it for use?")
    False
    """
    found = PASSED.search(text)
    return found is not None and not NOT_SO.search(text, max(0, found.start() - REACH), found.end())
