"""A request beside the things it asks for: "what size of cable and fuse", "drop ok?", "which mm2 instead?"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Set

from grammar.text.patterns import regex
from service.topic import CIRCUIT

CHARGING = frozenset({"charger-setting", "charger-size", "charge-time"})
SIZED = frozenset({"cable.area", "cable.gauge"})
CABLE = (
    r"(?:(?:battery |supply |power )?(?:cables?|wires?|wiring|leads?)(?: (?:size|gauge|section))?|awg|gauge|mm2|mm²)"
)
FUSE = r"(?:main )?(?:fuses?|fusing|breakers?)(?: (?:size|rating|value))?"
ASKED = (
    r"\b(?:what|which|wot|wat|whats|recommend\w*|advise|suggest\w*|need|quote|sizes?(?: of| for)?)"
    r"(?:\W+(?:is|are|the|a|an|my|of|size|sort|kind|rating|thickness|right|best|correct|for|do|i|we|need|suitable)){0,4}\W+"
)
JOINT = r"\s*(?:,|&|\+|/|\band\b|\bn\b|\bplus\b|\bas well as\b)+\s*(?:(?:what|which|size|of|the|a|my|its)\s+)*"
BOTH = regex(rf"{ASKED}(?:{CABLE}{JOINT}{FUSE}|{FUSE}{JOINT}{CABLE})\b", re.IGNORECASE)
LOSS = regex(
    r"(?:^|[.?!;,\n])\s*(?:is (?:the|that|my) )?(?:volt(?:age)? |v )?(?:drop|loss|vd)"
    r"\s*(?:ok(?:ay)?|fine|acceptable|allowed|all ?right|good|too (?:much|big|high|great))\s*\?",
    re.IGNORECASE,
)
ONE_OR_TWO = regex(
    r"\b(?:1|one|single) (?:big )?(?:chgr|charger) or (?:2|two)\b|\b(?:1|one) or (?:2|two) (?:chgr|charger)s?\b",
    re.IGNORECASE,
)
OUTPUTS = regex(r"\bhow many (?:\w+ ){0,2}?(?:outputs?|outlets?)\b(?! (?:has|have|is|are) (?:it|there))", re.IGNORECASE)
LIMITS = regex(  # "between what limits should the charger's current lie", "what range of amps from the charger"
    r"\b(?:what|which) (?:limits?|range|span|band)\b[^.?!;:]{0,24}"
    r"\b(?:charg\w+'?s? (?:current|amps)|(?:current|amps)\b[^.?!;:]{0,16}\bcharg)\w*",
    re.IGNORECASE,
)
SECTION = regex(  # which to fit, and no other name of one that is there
    r"\b(?:what|which)\s+(?:mm2|mm²|awg|gauge|section|square)\b"
    r"\s+(?:should|shall|would i|do i|do we|must|ought|cable|wire|instead|then|needed|to (?:fit|use))\b",
    re.IGNORECASE,
)

PLUGGED_IN = regex(  # "second, how long should I leave it plugged in?": till it is full, and no season
    r"[.?!]\s[^.?!]{0,16}\bhow long (?:should|must|do|does|shall|would) (?:i|we|it|one|you|they) (?:have to |need to )?"
    r"(?:leave|keep|stay|be|remain)(?: (?:it|them|that|this|the (?:charger|battery|batteries)))?"
    r" (?:plugged in|on charge|on the charger|connected to the charger)\W*(?:for it to be full\W*)?$",
    re.IGNORECASE,
)

TERM = (
    r"(?:an? )?[\"'“‘]?(?:c\.?c\.?a|m\.?c\.?a|hca|rc|reserve capacity|soc|dod|bms|agm|lfp|lifepo4|awg|aic|sulphation"
    r"|sulfation|ampacity|class[- ]t(?: fuse)?|reserve minutes"
    r"|float|absorption|equali[sz]ation|(?:cold|marine)[- ]cranking(?: amps?)?)[\"'”’]?"
)
MEANT = regex(  # "bms is wot.", "what's CCA short for", "wots rc, 160 in ah": a word that is asked by the way
    rf"(?<!\bis )(?<!\bin )\b(?:what(?:['’]?s| is| does| do)|wots?|wats?) {TERM}"
    r"(?: (?:short for|stands? for|mean)\b| ?(?:[.?!,;]|$)"
    r"| (?:n|and|&|plus) (?:have|is|are|do|does|will|would|can|how)\b)"
    rf"|\bwhat (?:in (?:god|heaven)['’]?s name |on earth |the (?:hell|devil|deuce) |exactly |strictly ){{1,2}}"
    rf"(?:is|are) {TERM}(?: ?(?:[.?!,;]|$)| and\b)"
    rf"|\bwhat(?:['’]?s| is) meant,?(?: (?:strictly|exactly),?)? by {TERM}|\bwhat (?:does )?signif(?:y|ies) {TERM}"
    rf"|\bwhich thing (?:is|are) (?:this |that )?{TERM} ?(?:[.?!,;]|$)"
    rf"|\b(?:say|tell me|tell us|explain)(?: me)? what {TERM} (?:is|are|means?)\b"
    rf"|\b{TERM} (?:against|versus|vs\.?) {TERM}, (?:the |what(?:['’]?s| is) the )?difference\b"
    rf"|\b{TERM} (?:is|means?) (?:wot|wat|what) ?(?:[.?!,;]|$)|\b{TERM},? short for\b"
    rf"|\bdefin(?:e|ition of) {TERM}|\b{TERM} ?[-–—:] ?what is (?:that|it)\b",
    re.IGNORECASE,
)
LIGHTER = regex(  # of a lithium battery in the place of lead
    r"\bhow (?:much )?(?:lighter|liter|lite)\b|\b(?:its|their) weight (?:too|also|as well)\b"
    r"|\b(?:lithium|lfp|lifepo4)\b[^.?!,;]{0,20}\b(?:take|knock|shave) off what\b"
    r"|\b(?:lithium|lfp|lifepo4) (?:would |will )?saves? how (?:much|many) (?:kilos?|kgs?|weight|lbs?|pounds)\b",
    re.IGNORECASE,
)
SIDE_BY_SIDE = regex(  # "new beside old allowed"
    r"\b(?:an? )?new (?:one |battery )?(?:beside|next to|alongside|in with|together with) (?:an? |the )?old"
    r" (?:one |battery )?(?:allow\w*|ok(?:ay)?|fine|possible|wise|all ?right|bad|harm\w*)\b",
    re.IGNORECASE,
)
BY_THE_WAY = (("meaning", MEANT), ("weight", LIGHTER), ("bank-wiring", SIDE_BY_SIDE))  # asked beside any other topic


def framed(text: str, topics: Set[str], told: Set[str]) -> Iterator[str]:
    """The topics of a circuit or a charger that are asked for in so many words, beside one of them that was found.

    >>> sorted(framed("what size cable n fuse for it", {"fuse-size"}, set()))
    ['cable-size', 'fuse-size']
    >>> list(framed("bms is wot. will a 100 Ah lithium run a Minnow", {"run-check"}, set()))
    ['meaning']
    >>> list(framed("the cable and fuse are in. Which charger?", {"fuse-size"}, set()))
    []
    """
    if topics & CHARGING and ONE_OR_TWO.search(text):
        yield "charger-banks"
    if OUTPUTS.search(text):
        yield "charger-banks"
    if topics & CHARGING and LIMITS.search(text):
        yield "charger-size"
    if "charger-setting" in topics and "storage" not in topics and PLUGGED_IN.search(text):
        yield "charge-time"
    yield from (topic for topic, words in BY_THE_WAY if topic not in topics and words.search(text))
    if not topics & CIRCUIT:
        return
    if BOTH.search(text):
        yield from ("cable-size", "fuse-size")
    if "cable.length" in told and told & SIZED and LOSS.search(text):
        yield "voltage-drop"
    if SECTION.search(text):
        yield "cable-size"
