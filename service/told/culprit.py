"""Which part of a circuit they ask about: the battery, the cable or the motor, and whether it is the one to blame."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

PARTS = {
    "battery": r"batt(?:ery|eries|s)?",
    "cable": r"cables?|wires?|wiring|leads?|joints?|connections?|cabling",
    "motor": r"motors?|thrusters?",
}
PART = "|".join(PARTS.values())
BETWEEN = r"(?:s|is|are|it|its|it's|the|my|a|bad|just|tell|me)"
COLD = r"(?:cold|frost|temperature|weather|freez\w*)"
BATTERY = r"(?:batt(?:ery|eries|s)?)"
COLD_OR = regex(
    rf"\b{COLD}\b[^.?!;]{{0,16}}\bor\b[^.?!;]{{0,20}}\b{BATTERY}\b|\b{BATTERY}\b[^.?!;]{{0,16}}\bor\b[^.?!;]{{0,20}}\b{COLD}\b",
    re.IGNORECASE,
)
DO = r"(?:swap|check|clean|look at|replace|change|test|measure|fix|buy|renew)"
EITHER = regex(rf"\b(?:{PART}),? or (?:(?:{BETWEEN}|{DO}) )*(?:{PART})\b", re.IGNORECASE)
FIRST = regex(r"\bfirst\b", re.IGNORECASE)
WHY = regex(
    r"\bwhy\b|\bhow come\b|\bwhat makes\b"
    r"|\b(?:what(?:'?s| is| are|s)?|which) (?:the |is the )?(?:reasons?|causes?)\b",
    re.IGNORECASE,
)

LED = r"(?:the|my|our|his|her|that|this|its|a|just|only|simply|bad|to|by|of)\s"
DOES_IT = r"to\sblame|at\sfault|the\s(?:culprit|reason|cause|problem|trouble|fault)|responsible|eating\sit|doing\sit"
SIDE = r"(?:port|starboard|stbd|left|right)"
ONE_WAY = regex(
    r"\b(?:slow|weak|weaker|slower|lazy|dead|works?|turns?|pushes|runs?|only)\b[^.?!;,]{0,24}"
    r"\b(?:(?:on|in|to) one (?:side|direction)|one way)(?: only)?\b"
    rf"|\b(?:works?|runs?|turns?|pushes|full|fine|good|ok|strong)\b[^.?!;]{{0,12}}\b(?:to )?{SIDE}\b[^.?!;]{{0,16}}"
    rf"\b(?:not|but|half|weak|slow|nothing|dead)\b[^.?!;]{{0,16}}\b{SIDE}\b"
    rf"|\b{SIDE} (?:is )?(?:full|fine|good|ok|strong)\b[^.?!;]{{0,12}}\b{SIDE} (?:is )?"
    r"(?:half|weak|slow|nothing|dead)\b"
    rf"|\bonly (?:works?|runs?|turns?|pushes|goes) to (?:the )?{SIDE}\b",
    re.IGNORECASE,
)
HOW_TO_TELL = regex(
    r"\bhow (?:do|can|could|would|should|to) (?:(?:i|we|you|one) )?(?:tell|know|find out|see|decide|check|prove)\b",
    re.IGNORECASE,
)
OPEN = regex(r"\W*(?:(?:and|so|but) )?(?:how|what|which|where|why|who)\b", re.IGNORECASE)
LOOK = regex(
    r"\b(?:what|where) (?:should|do|can|could|must) (?:i|we|he) (?:look|check|test|start)\b|\bwhat to (?:look|check)\b",
    re.IGNORECASE,
)
SHOULD_READ = regex(r"\bwhat should (?:an?|it|the|my)\b", re.IGNORECASE)
AND_IS = regex(r",? (?:and|or) (?=(?:is|are|was|could|can|might|may|would|will) )", re.IGNORECASE)
BLAMES = regex(
    rf"""^\W*(?:(?:so|then|and|ok|right)\W+)*(?:it['’]?s|it\ is|that['’]?s)\ (?:{LED})*(?P<told>{PART})
      (?:\ (?:then|after\ all|alone|itself))?\W*\?\W*$ |
    ^\W*so\ (?:the\ )?(?P<so>{PART})(?:\ then)?\W*\?\W*$ |
    \b(?:is|are|was|were|could|can|might|may|would|will|do|does)\b (?:
      \ (?:it|this|that)\ (?:all\ |not\ )?(?:be\ )?(?:{LED})*(?P<it>{PART})
        (?=(?:\ (?:then|after\ all|alone|itself))?\W*$|\ (?:eating|doing|causing|that))
    | [^.?!;]{{0,40}}? (?:
        \b(?P<does>{PART})\ (?:(?:be|all|really|just)\ )*(?:{DOES_IT})\b
      | \b(?P<own>{PART})['’]?s?['’]?\ (?:fault|doing)\b
      | \b(?:down\ to|due\ to|come\ from|lie\ (?:in|with)|caused\ by|because\ of)\ (?:{LED})*(?P<from>{PART})\W*$
      | \bfault\ (?:lie|be|sit)\ (?:in|with)\ (?:{LED})*(?P<lies>{PART})\b
      )
    )""",
    re.IGNORECASE | re.VERBOSE,
)


FADED = r"(?:weak\w*|slow\w*|sluggish\w*|feebl\w*|laz(?:y|ily)|tired|faint\w*|struggl\w*|groan\w*|labour\w*|limp|worse"
FADED += r"|dies|died|fades?|fading|quits?|cuts? out|gives up|packs up|stops (?:after|by itself))"
TURNS = r"(?:thrusters?|motors?|windlass|winch|bow|{})"
BEGIN = regex(r"\bwhere (?:do|should|shall|would|must|can) (?:i|we|you|one) (?:even )?(?:begin|start)\b", re.IGNORECASE)
DASH = (
    r"(?:dash(?:board)?|helm|cockpit|switch ?panel|instrument panel|chart ?plotter|plotter|gauge|wheelhouse"
    r"|steering position|console)"
)
ON_DASH = regex(
    r"\b(?:volt ?meter|meter|gauge|reading|volts|voltage|display)\b[^.?!;,]{0,20}"
    rf"\b(?:on|at|in|by|of) (?:the |my |our )?{DASH}\b"
    rf"|\b{DASH}(?:'s)? (?:volt ?)?(?:meter|gauge|display|reads|shows|says|drops|falls|goes|dips|voltage|reading)\b",
    re.IGNORECASE,
)


def is_weak(text: str, model: str = "") -> bool:
    """Whether a motor is told to be weak, by a word for it or the name of its model.

    >>> is_weak("the thruster still feels feeble"), is_weak("Perch is sluggish", "Perch"), is_weak("battery weak?")
    (True, True, False)
    """
    thing = TURNS.format(re.escape(model) or "motor")
    told = rf"\b{thing}\b[^.?!;]{{0,40}}\b{FADED}\b|\b{FADED} (?:\w+ )?{thing}\b"
    return re.search(told, text, re.IGNORECASE) is not None


def on_the_dash(text: str) -> bool:
    """Whether the volts were read on an instrument of the boat, with its own wire between it and the battery.

    >>> on_the_dash("the voltmeter on the dash goes to 9"), on_the_dash("a meter on the posts goes to 9")
    (True, False)
    """
    return ON_DASH.search(text) is not None


def where_to_look(text: str) -> bool:
    """Whether it is asked what to look at.

    >>> where_to_look("Pushes feebly, 12.7 at rest. What should I check?"), where_to_look("what should it read?")
    (True, False)
    """
    return LOOK.search(text) is not None and SHOULD_READ.search(text) is None


def blamed(text: str) -> str:
    """The one part that a sentence asks to blame; "" where it asks of none, or of which.

    >>> blamed("Could it be just the wire eating it?"), blamed("Is the cable long enough?")
    ('cable', '')
    """
    asked = AND_IS.split(text)[-1] if OPEN.match(text) else text  # "where am I losing it, and is it the battery?"
    found = None if OPEN.match(asked) else BLAMES.search(asked)
    part = next((said for said in found.groupdict().values() if said), "") if found else ""
    return next(iter(parts_in(part)), "") if part and not either(text) else ""


def either(text: str) -> bool:
    """Whether it is asked which of two parts is at fault: "is it the cable or the battery"."""
    found = EITHER.search(text)
    return found is not None and len(parts_in(found[0])) > 1


def which_first(text: str) -> bool:
    """Whether it is asked which of two parts to see to first.

    >>> which_first("should I swap the battery or check the cables first?"), which_first("the battery or the cable?")
    (True, False)
    >>> which_first("it fades and drops to 9.1, where do I start?")
    True
    """
    return (either(text) and FIRST.search(text) is not None) or BEGIN.search(text) is not None


def asks_why(text: str) -> bool:
    """Whether the cause is asked for.

    >>> asks_why("drops to 9 V, why"), asks_why("is 9 V bad")
    (True, False)
    """
    return WHY.search(text) is not None


def cold_or_battery(text: str) -> bool:
    """Whether it is asked if the cold is at fault or the battery.

    >>> cold_or_battery("is that the cold or is the battery shot"), cold_or_battery("battery or wire")
    (True, False)
    """
    return COLD_OR.search(text) is not None


def one_way(text: str) -> bool:
    """Whether a thruster is weak in one direction only, which the battery that feeds both cannot be the cause of.

    >>> one_way("slow on one side only, port full, starboard half"), one_way("works to port but not to starboard")
    (True, True)
    >>> one_way("the bow drifts to port and the thruster is weak"), one_way("weak both ways")
    (False, False)
    """
    return ONE_WAY.search(text) is not None


def parts_in(text: str) -> set[str]:
    """The parts that a text names."""
    return {name for name, words in PARTS.items() if re.search(rf"\b(?:{words})\b", text, re.IGNORECASE)}


def how_to_tell(text: str) -> bool:
    """Whether it is asked how one finds out which of two parts is at fault.

    >>> how_to_tell("Cable or battery, he says. How do I tell?"), how_to_tell("Is it the cable or battery?")
    (True, False)
    """
    return either(text) and bool(HOW_TO_TELL.search(text))
