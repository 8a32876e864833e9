"""Topics that only stand in passing beside another: an age told with a reading, a cable whose loss alone is asked.

Each is opened by what a message tells. It is answered where the message also asks it, in words of its own.
"""

from __future__ import annotations

import re
from collections.abc import Set

from grammar.reading import Message
from grammar.text.patterns import regex
from service.routing.listed import asking

AGE = "battery.age"
APART = " ... "  # between the sentences that ask
OLD = regex(r"[\s-]*(?:old\b|of age\b)?", re.IGNORECASE)
READINGS = frozenset({"load-voltage", "rest-voltage", "specific-gravity", "maintenance"})
LIFE = regex(  # asked of how long a battery lives, anywhere in a message
    r"\b(?:replac\w*|renew\w*|exchang\w*|swap\w*|chang\w*|new(?:er)? (?:one|ones|battery|batteries|set|pair|agm|gel)"
    r"|lasts?|lasting|li[fv]\w*|finished|ends?|ending|dead|dying|die[ds]?|going|ages?|aged|old(?:er)?|scrap\w*|bin(?:ned)?"
    r"|chuck\w*|toss\w*|ditch\w*"
    r"|goners?|worn|due|keep (?:it|them|the batter\w+)|time|shot|done|knackered|kaput|stuffed|toast"
    r"|tired|past|had it|saved?|saving|health\w*|trust\w*|rely|worth|more|longer|still|buy\w*|left in|get out of"
    r"|good for|any good|years?|seasons?|retire\w*|fail\w*|spent)\b"
    r"|(?:^|[.?!;,]) *(?:is|are) *$",
    re.IGNORECASE,
)
THEIRS = regex(  # another man's: "his have lasted six years", "the neighbour's went eight years"
    r"\b(?:his|hers|theirs|\w+(?:['’]s|s['’]) (?:batter\w+|agms?|gels?|ones?|have|had|went|lasted|are|were|did))\b"
    r"[^.?!;,]{0,30}$",
    re.IGNORECASE,
)
SIZE = regex(
    r"\b(?:sizes?|thick\w*|thin\w*|enough|ok|okay|right|big|heavy|large|which|cables?|wires?|gauge|awg|mm2?|carry|stand"
    r"|suit\w*|need|upgrade|fit|do it|cope|safe|good|fine|too|ought|should|instead|replace|normal|legal)\b",
    re.IGNORECASE,
)
LOST = regex(r"\b(?:volts?|drop|loss|lose|lost)\b", re.IGNORECASE)
WILL_READ = regex(r"\bwill\b[^.?!]{0,20}\b(?:read|show|say|be at|stand at)\b", re.IGNORECASE)
NOW = regex(r"\b(?:full|soc|charged|normal|good|bad|fine|enough|low|state|how|right now|today)\b", re.IGNORECASE)
OF_CHARGER = regex(r"\b(?:chargers?|units?|outputs?|legs?|both (?:from|off|with|at once))\b", re.IGNORECASE)
WHERE_IT = regex(  # "what fuse, and where should it sit"
    r"\bfuses?\b[^.?!]{0,200}"
    r"\bwhere (?:should|does|do|must|would|will|shall) (?:it|this|that|one|they|i|we|the fuse)\b",
    re.IGNORECASE,
)
WHICH_FUSE = regex(r"\b(?:what|which)(?: size| rating)?(?: of)? (?:fuse|breaker)s?\b", re.IGNORECASE)
OF_BATTERY = regex(r"\b(?:cca|ah|amp[- ]?hours|batter(?:y|ies)(?! (?:or|plus|end|post)))\b", re.IGNORECASE)
HELD = regex(
    r"\b(?:strap\w*|h[eo]ld\w*|fasten\w*|tray|box|shelf|upright|lying|on its side|mount\w*"
    r"|batter(?:y|ies) (?:sit|go|stand|live|be))\b",
    re.IGNORECASE,
)


NO_BATTERY = (
    r"(?:anchor|chain|dinghy|tender|outboard|engine|keel|ballast|boat|yacht|hull|mast|dog|fish|catch|bicycles?|bikes?"
    r"|raft|liferaft|thruster|gearbox|winch|toolbox|crew|we)"
)
LENGTH = "cm|mm|m|in|inch(?:es)?|ft|feet"
# What is told by the way, of which topic it has a sign, and what would ask of that topic elsewhere in the message.
ASIDES = (
    (
        "other-desk",  # "my order number is 4711", "I found your address"
        regex(
            r"\b(?:order|customer|account) (?:number|no\b\.?|ref\w*)(?: is|:|,)? ?#?[\w-]*\d\w*"
            r"|\b(?:find|found|get|got|have|had|looked?|read|searched|been|saw|seen)\b[^.?!]{0,16}"
            r"\byour (?:address|e-?mail|number|web ?site|web ?page|home ?page|site|page)\b",
            re.IGNORECASE,
        ),
        regex(
            r"\b(?:order|invoic|pric|cost|quot|deliver|ship|refund|return|warrant|guarant|buy|stock|sell|sale|pay|account"
            r"|receipt|parcel|catalog|brochure|courier|complain|discount|spare|repair|job)\w*",
            re.IGNORECASE,
        ),
    ),
    (
        "maintenance",  # "the mooring has no water tap"
        regex(
            r"\b(?:mooring|pontoon|quay|jetty|berth|marina|harbour|yard|club|dock|pier)s? (?:has|have|had|is|are|got)"
            r" (?:\w+ ){0,3}?(?:water|taps?|hose)(?: (?:taps?|supply|hose))?\b",
            re.IGNORECASE,
        ),
        regex(
            r"\b(?:top(?:ped|ping)?[- ]?up|water|distill|deionis|plates?|caps|grease|clean|service[ds]?|maint|upkeep"
            r"|equali[sz]|check|look after|care)\w*",
            re.IGNORECASE,
        ),
    ),
    (
        "run-time",  # "it took us two hours to get out of the lock"
        regex(
            r"\btook (?:us|me|him|her|them|the \w+) (?:[\w-]+ ){0,4}?(?:hours?|minutes|mins) to"
            r" (?:get|drive|sail|motor|row|walk|come|cross|find|reach|leave|go|moor|dock|park|tow|pass|clear)\b",
            re.IGNORECASE,
        ),
        regex(
            r"\b(?:lasts?|lasting|hours?|minutes?|mins?|long|until|till|bursts?|goes|time|enough|run|power|keep|night"
            r"|morning|flat|empty)\b",
            re.IGNORECASE,
        ),
    ),
    (
        "battery-type",  # "our old boat had nothing of this kind"
        regex(r"\b(?:of|no|nothing) (?:this|that|the|any|such) (?:kind|sort|type)\b(?! of)", re.IGNORECASE),
        regex(
            r"\b(?:kind|type|sort|agm|gel|lithium|lifepo4|lfp|wet|flooded|lead|better|instead|which battery|difference"
            r"|worth|switch|chang|upgrad|suit)\w*",
            re.IGNORECASE,
        ),
    ),
    (
        "rating-convert",  # "how close is that in inches", of a fuse, with no figure to convert
        regex(
            r"\bhow (?:close|far|near|long|deep|high|thick|wide)\b[^.?!;]{0,24}"
            r"\b(?:in|into) (?:inch(?:es)?|mm|cm|millimet(?:re|er)s|centimet(?:re|er)s|feet|met(?:re|er)s)\b",
            re.IGNORECASE,
        ),
        regex(r"\d|\bconver\w*|\bequal\w*|\bequivalent\b|\bthe same as\b", re.IGNORECASE),
    ),
    (
        "load-voltage",  # "no load test done", "I haven't load-tested it yet"
        regex(
            r"\b(?:no|not|never|without|have ?n[o'’]?t|has ?n[o'’]?t|did ?n[o'’]?t|was ?n[o'’]?t)(?: (?:\w+ ){0,3}?| )"
            r"load[- ]?test(?:ed|ers?|s|ing)?\b",
            re.IGNORECASE,
        ),
        regex(
            r"\bload\b|\bunder\b|\bwhile\b|\bwhen\b|\b(?:drop|fall|fell|sag|dip|sink|sank|collaps|crank|turn|spin)\w*"
            r"|\b(?:pass|fail)\w*|\bhow (?:do|to|does|would|should|can)\b|\btest(?:s|er|ing)?\b",
            re.IGNORECASE,
        ),
    ),
    (
        "meaning",  # "answer in plain English please"
        regex(
            r"\b(?:answer|reply|write|talk|say it|keep it)\b[^.?!]{0,16}\b(?:plain|simple|everyday|normal)"
            r" (?:english|words|terms|language)\b",
            re.IGNORECASE,
        ),
        regex(r"\bmean\w*|\bstands? for\b|\bexplain\w*|\bwhat(?:['’]?s| is| are| does)\b|\bjargon\b", re.IGNORECASE),
    ),
    (
        "group-size",  # "the locker measures 60 by 45 cm"
        regex(
            r"\b(?:locker|box|space|cupboard|compartment|cabin|berth) (?:is|measures|has) (?:about |only )?"
            rf"\d[\d.]* ?(?:{LENGTH})? ?(?:by|x) ?\d[\d.]*(?: ?(?:{LENGTH}))?",
            re.IGNORECASE,
        ),
        regex(
            r"\bfits?\b|\bgroup\b|\bgo(?:es)? in\b|\bdimensions?\b|\btoo (?:long|wide|tall|big|high)\b|\broom for\b"
            r"|\bdrops? in\b|\bcase\b|\btray\b|\bmeasure",
            re.IGNORECASE,
        ),
    ),
    (
        "weight",  # "I weigh 95 kg", "the anchor is 16 kg"
        regex(
            rf"\b(?:(?:i|he|she|wife|husband|son|skipper) weighs?"
            rf"|{NO_BATTERY} (?:is|are|weighs?|has|of|comes to|takes))(?: (?:about|only|over|some))? ?\d[\d.,]* ?"
            r"(?:kgs?|kilos?|kilograms?|lbs?|pounds?|tons?|tonnes?|stone|t)\b",
            re.IGNORECASE,
        ),
        regex(r"\b(?:light|heav|weigh|kilo|kg|lbs?\b|pounds?\b|sav|carry|lift|lug)\w*", re.IGNORECASE),
    ),
    (
        "battery-type",  # "which setting? I don't know what kind of battery it is"
        regex(
            r"\b(?:(?:do|does|did)(?:n['’]?t| not)|dont|can(?:no|['’])?t|not|no (?:idea|clue)|never|unsure|dunno)\b"
            r"(?: (?:know|knows|knew|say|tell|sure|certain|found|out|really|of)){0,3},? (?:what|which)"
            r" (?:kind|type|sort|chemistry)\b(?![^,.;?!]{0,40}\b(?:to|should|best|better|need|suits?|choose|want)\b)"
            r"[^,.;?!]{0,40}",
            re.IGNORECASE,
        ),
        regex(
            r"\b(?:kinds?|types?|sorts?|chemistry|versus|vs|better|best|instead|difference|recommend|find out"
            r"|recogni[sz]e|identify|agm|gel|lithium|lfp|wet|flooded|lead|buy|new|(?:which|what) (?:battery|one)"
            r"|(?:can|do|could) (?:i|we|you) (?:tell|say|see))\b",
            re.IGNORECASE,
        ),
    ),
)
PANEL_KEEPS_UP = regex(  # "a tracker takes 0.1 A: will the panel keep pace"
    r"\b(?:panel|solar|sun)\b(?: \w+){0,3}? (?:keep (?:pace|up|level|ahead)|cope|match|hold its own"
    r"|(?:be )?enough|cover|balance|offset|make up|suffice|do)\b",
    re.IGNORECASE,
)
OF_THE_DRAIN = regex(
    r"\bhow (?:long|soon|many|fast|quick\w*)\b|\b(?:flat(?:ten\w*)?|lasts?|run(?:s|ning)? down|empt\w+|dead|half|normal"
    r"|find|cause\w*|culprit|why|trace|too much|drain(?:s|ed|ing)|days|weeks|months|all ?right"
    r"|what (?:is|could|else|draws|pulls|takes))\b",
    re.IGNORECASE,
)
DONE_FOR = regex(  # "12.1 after a night. toast?": asked of the reading alone
    r"(?:^|[.?!,;:–-]) *(?:so |and |is (?:it|she|he|that) )?"
    r"(?:toast|dead|shot|knackered|done(?: for)?|gone|finished|an? goner|kaput|stuffed|scrap|had it|past it)\s*\?",
    re.IGNORECASE,
)


def in_passing(message: Message, found: Set[str]) -> set[str]:
    """The topics among these that are only told of beside another one."""
    idle = {topic for topic, tells, asks in ASIDES if _may_be_idle(topic, found) and _aside(message, tells, asks)}
    asked = APART.join(message.text[slice(*span)] for span in asking(message.text))
    if not asked:
        return idle
    if "replacement" in found and found & READINGS and _only_aged(message):
        idle.add("replacement")
    if {"solar", "standing-drain"} <= found and _only_made_up_for(message):
        idle.add("standing-drain")
    if found == {"rest-voltage", "replacement"} and _of_the_reading(message):
        idle.add("replacement")
    if {"cable-size", "voltage-drop"} <= found and LOST.search(asked) and APART not in asked and not SIZE.search(asked):
        idle.add("cable-size")  # "70 mm2, 300 A, 4 m: how many volts do I lose"
    if {"bank-size", "fuse-size"} <= found and WHICH_FUSE.search(asked) and not OF_BATTERY.search(asked):
        idle.add("bank-size")  # "what size fuse do we need, and where should it sit"
    if {"mounting", "fuse-size"} <= found and WHERE_IT.search(message.text) and not HELD.search(message.text):
        idle.add("mounting")
    if {"charger-banks", "rest-voltage"} <= found and two_read(message) and not OF_CHARGER.search(message.text):
        idle.add("charger-banks")  # "12.8 and 12.3 in series: charge each alone first"
    if {"rest-voltage", "storage"} <= found and WILL_READ.search(asked) and not NOW.search(asked):
        idle.add("rest-voltage")  # "12.7 now, what will it read in spring"
    return idle


def _may_be_idle(topic: str, found: Set[str]) -> bool:
    """Whether a topic may be left out: beside another one, and what another thing weighs in any case."""
    return topic in found and (len(found) > 1 or topic == "weight")


def _aside(message: Message, tells: re.Pattern[str], asks: re.Pattern[str]) -> bool:
    """Whether a message tells something by the way, and has no other word that asks of it."""
    rest = tells.sub(" ", message.text)
    return rest != message.text and asks.search(rest) is None


def _only_made_up_for(message: Message) -> bool:
    """Whether a drain is told for the panel that is to make up for it, and no battery that it empties."""
    sized = any(item.fact == "battery.capacity" for item in message.stated)
    kept_up = PANEL_KEEPS_UP.search(message.text) and not OF_THE_DRAIN.search(message.text)
    return bool(kept_up) and not sized


def _of_the_reading(message: Message) -> bool:
    """Whether a word asks if a battery is done for, of which nothing but volts at rest is told."""
    told = {item.fact for item in message.stated}
    return AGE not in told and "reading.voltage" in told and DONE_FOR.search(message.text) is not None


def two_read(message: Message) -> bool:
    """Whether the volts at rest of two batteries are told."""
    return {1, 2} <= {item.of for item in message.stated if item.fact == "reading.voltage"}


def _only_aged(message: Message) -> bool:
    """Whether of a battery's life nothing is said but its age."""
    ages = [(item.span[0], _to_old(message.text, item.span[1])) for item in message.stated if item.fact == AGE]
    if not ages:
        return False
    told = [start for start, _ in ages if not any(first <= start < last for first, last in asking(message.text))]
    if len(told) == len(ages) and all(THEIRS.search(message.text[:start]) for start in told):
        return True
    starts, ends = [0, *(end for _, end in ages)], [*(start for start, _ in ages), len(message.text)]
    return not any(LIFE.search(message.text[start:end]) for start, end in zip(starts, ends, strict=True))


def _to_old(text: str, end: int) -> int:
    """Where "3 years old" ends."""
    found = OLD.match(text, end)
    return found.end() if found else end
