"""A charger that stays in bulk or absorption for days: what that may mean, and when it comes off."""

from __future__ import annotations

import re
from functools import lru_cache

from grammar.text.patterns import regex
from service.case import Case
from service.judgements import charge_volts
from service.reply import Answer
from service.topic import Topic

LONG = (
    r"(?:\b(?:\d{2,3}|two|three|four|five|six|several|many|some|[2-9]) ?(?:days?|d|nights?|weeks?)\b"
    r"|\b(?:[2-9]\d|1\d\d) ?(?:hours?|h|hrs)\b|\bsince (?:mon|tues|wednes|thurs|fri|satur|sun)day\b"
    r"|\bfor days\b|\bdays on end\b|\ball week(?:end)?\b|\ba week\b)"
)
NEVER = (
    r"(?:\b(?:never|not|no longer)|n['’]?t)\b[^.?!;]{0,16}"
    r"\b(?:reach\w*|go(?:es)?|gets?|switch\w*|finish\w*|change\w*|leaves?)\b"
)
BULK = r"(?<!buy in )(?<!bought in )(?<!order in )\bbulk\b(?! (?:price|buy|order|discount|rate))"
ABSORPTION = r"\babsor[pb]tion\b[?)]{0,2}"
PAST = r"(?:\b(?:never|not|no longer)|n['’]?t)\b[^.?!;]{0,16}\b(?:leaves?|past|beyond|out of|ends?|finish\w*)\b"
STAYS = regex(rf"{BULK}[^.?!;]{{0,40}}(?:{LONG}|{NEVER})|(?:{LONG}|{NEVER})[^.?!;]{{0,30}}{BULK}", re.IGNORECASE)
ABSORBS = regex(
    rf"{ABSORPTION}[^.?!;\d]{{0,24}}(?:{LONG}|\bnever (?:ends|stops|finishes)\b)"
    rf"|(?:{LONG}|{PAST})[^.?!;]{{0,30}}{ABSORPTION}",
    re.IGNORECASE,
)
HEAD = (
    "{} that does not end in a day means a battery that never gets full: a load, too small a charger or a bad cell; {}."
)
WARM = "Warm, swollen, hissing or smelling: out of that space, charger off at the shore end, and no more charging"
LOADS = "All loads off, charger on for a night: if bulk ends, a load took the amps"
ALONE = "If it does not end, take the charger off, let the battery rest for 12 hours and read its volts"


@lru_cache(maxsize=4)  # several parts of an answer ask it
def told(text: str) -> bool:
    """Whether a charger is told to stay in bulk, or in absorption, for days.

    >>> told("my charger has the bulk light on for 2 days"), told("it never gets out of bulk")
    (True, True)
    >>> told("what is bulk?"), told("bulk for 2 hours, then float")
    (False, False)
    >>> told("in absorption for 3 days now"), told("it never gets to absorption"), told("absorption for 3 hours")
    (True, False, False)
    """
    return (STAYS.search(text) or ABSORBS.search(text)) is not None


def judged(topic: Topic, case: Case) -> Answer | None:
    """What it may mean where it is told; None where it is not."""
    if not told(case.text) or (not STAYS.search(case.text) and charge_volts.put_out(case)):  # by its volts
        return None
    case.because(WARM, "long-bulk")
    stage, then = "Bulk", "if warm, switch off"
    if not STAYS.search(case.text):
        stage, then = "Absorption", "switch it off, as days of it wear the plates"
        case.step("Absorption is a stage that ends; held for days it dries out and wears the plates", "held-voltage")
    case.because(LOADS, "long-bulk")
    case.because(ALONE, "long-bulk")
    return topic.says("no", HEAD.format(stage, then), urgency="today")
