"""Topics of readings among those found that are only told: volts that a drop is reckoned from."""

from __future__ import annotations

import re
from collections.abc import Set

from grammar.reading import Message
from grammar.text.patterns import regex
from service.routing.as_told import HOLD
from service.routing.evidence import TERM

STAGES = ("term:absorption", "term:float", "term:bulk")
READINGS = frozenset({"reading.voltage", "battery.charge", "reading.rest_time"})
OF_ICE = regex(r"\b(?:fr[eo]ez\w*|froze\w*|ice|solid)\b", re.IGNORECASE)
OF_ITS_CHARGE = regex(  # asked of a reading beside ice: "1.200: how full is that, and will it freeze"
    r"%|\b(?:full|charged?|per ?cent|soc|good|bad|ok(?:ay)?|fine|low|dead|flat|health\w*|state|even|uneven|worst|weak"
    r"|dud|done|tell\w*|means?|meaning|readings?|worr\w*|alright|all right|normal|right|trust|left|empty|enough|agree"
    r"|what (?:is|does|do|about)|how (?:much|many|far|is|are|does|do)|which|whether|remains?|percents?|down|decent)\b",
    re.IGNORECASE,
)
LEFT_STANDING = regex(
    r"\b(?:rest\w*|full|empty|flat|stand\w*|overnight|night|morning|unplugged|off charge|charger off|left)\b", re.I
)
BOTH_READ = frozenset({"reading.voltage", "reading.load_voltage"})
OF_REST = regex(
    r"\b(?:rest\w*|full|charged?|empty|half|state|both|each|readings|first|numbers|these|those|\d\d\.\d+)\b",
    re.IGNORECASE,
)
AIR = regex(r"\b(?:vent\w*|air\w*|gas\w*|fumes?|breath\w*|holes?|hydrogen|openings?|sealed)\b", re.IGNORECASE)
OF_JOINING = ("request:what_get", "request:may_i", "detail:wise", "detail:how_wired", "request:versus")
JOIN_ASKED = regex(
    r"\b(?:voltage|capacity|total|sum|result\w*)\b"
    r"|\bwhat (?:volts|do|does|will|would)\b[^.?!;]{0,16}\b(?:give|get|make|come|have|total)\b"
    r"|\bhow (?:do|does|should|must|are|to)\b[^.?!;]{0,24}\b(?:wir|join|link|connect|cable|strap)\w*"
    r"|\b(?:series or parallel|parallel or series|may|can|could|should|ok(?:ay)? to)\b[^.?!;]{0,24}"
    r"\b(?:series|parallel|wire|join|mix|connect|link)\w*",
    re.IGNORECASE,
)
RESULTS = frozenset({"specific-gravity", "rest-voltage", "load-voltage"})
OF_THE_READING = regex(  # "what is that fourth one telling me", and no term of the trade
    r"\bwhat(?:['’]?s| is| does| do| are) (?:that|this|these|those|the|it)\b"
    r"(?! (?:\w+ )?(?:phrase|term|word|name|letters|expression|abbreviation)s?\b)(?: (?:\w+|\d[\d.,]*)){0,4}?"
    r" (?:tell(?:ing)?|say(?:ing)?|mean|point(?:ing)? (?:to|at)|signify|indicat(?:e|ing)|hint(?:ing)? at)\b",
    re.IGNORECASE,
)


def only_held(message: Message, found: Set[str], told: Set[str]) -> set[str]:
    """The volts at rest that only a drop is reckoned from, the bank in a box whose air is asked for, and the air of a
    box in which a strap is to hold."""
    idle = set()
    if {"rest-voltage", "load-voltage"} <= found and told >= BOTH_READ and not _rest_asked(message):
        idle.add("rest-voltage")  # "12.7 at rest, 9.9 with the thruster running: is that drop acceptable"
    joined = {"bank-wiring", "ventilation"} <= found and "bank.layout" in told
    if joined and not (any(map(message.says, OF_JOINING)) or JOIN_ASKED.search(message.text)):
        idle.add("bank-wiring")  # "four wired for 24 V, two strings of two. What air flow?"
    floats = {"freeze-point", "specific-gravity"} <= found and "reading.gravity" in told
    if floats and OF_ICE.search(message.text) and not OF_ITS_CHARGE.search(message.text):
        idle.add("specific-gravity")  # "1.150 and -13: ice or no ice"
    of_stages = {"rest-voltage", "charger-setting"} <= found and any(map(message.says, STAGES))
    if of_stages and not READINGS & told and not LEFT_STANDING.search(message.text):
        idle.add("rest-voltage")  # "absorption and float: what volts should mine show in each"
    if {"mounting", "ventilation"} <= found and HOLD.search(message.text) and not AIR.search(message.text):
        idle.add("ventilation")  # "the lid won't close: is a strap over the top enough"
    return idle


def _rest_asked(message: Message) -> bool:
    """Whether a clause that asks holds the volts at rest, stands next to them, or speaks of rest or charge."""
    read = [item.span[0] for item in message.stated if item.fact == "reading.voltage" and item.span]
    pulled = [item.span[0] for item in message.stated if item.fact == "reading.load_voltage" and item.span]
    asking = [clause.span for clause in message.clauses if clause.asks]
    inside = any(start <= at < end for start, end in asking for at in read)
    between = any(at < start and end <= below for start, end in asking for at in read for below in pulled)
    return inside or between or any(OF_REST.search(message.text, *span) for span in asking)


def told_by_a_reading(message: Message, found: Set[str]) -> set[str]:
    """The meaning of a term, where it is asked what a reading tells and no term is named."""
    asked = OF_THE_READING.search(message.text) if "meaning" in found and found & RESULTS else None
    terms = (cue.span[0] for cue in message.cues if cue.name.startswith(TERM))
    return {"meaning"} if asked and not any(asked.start() <= at < asked.end() for at in terms) else set()
