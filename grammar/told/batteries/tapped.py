"""Volts that are taken from one battery of a bank: "12 volts for the anchor light from the lower one". No bank's."""

from __future__ import annotations

import re

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

FACT, SERIES = "bank.voltage", ("series", "series-parallel")
TAKEN = r"\b(?:from|off|out of|across|between|on)\b"
PART = (
    r"\b(?:(?:just |only )?one\b(?! bank)|(?:a )?single|lower|upper|first|second|last|bottom|top|either|middle|half"
    r"|centre|center|each of|the other)\b"
)
LOW = regex(r"\b(?:12|twelve)[ -]?v(?:olts?)?\b", re.IGNORECASE)
AFTER = regex(rf"^[^.?!;:]{{0,50}}{TAKEN}[^.?!;:]{{0,20}}{PART}", re.IGNORECASE)
FEEDS = regex(  # "one battery gives 12 V for the VHF", "one of them feeds the 12 V radio"
    r"\b(?:one|1|a single|either|the (?:lower|upper|first|second|other|bottom|top))"
    r"(?: battery| one| of (?:them|those|the (?:two|pair|batteries)))? (?:also )?"
    r"(?:gives?|feeds?|supplies|powers?|runs?|does|drives?|lights?)\b[^.?!;:]{0,24}\b(?:12|twelve)[ -]?v(?:olts?)?\b",
    re.IGNORECASE,
)
TAP = regex(r"\b(?:tap|tapped|tapping|tap off)\b[^.?!;:]{0,30}$", re.IGNORECASE)
THINGS = r"(?:lights?|lamps?|radio|vhf|pumps?|plotter|stereo|fridge|heater|fan|socket|gadgets?)"
SMALL = regex(
    rf"^[ -]{{0,2}}(?:v|volts?)?[ ,]*(?:for (?:the |a |an |my |our )?)?(?:\w+ )?{THINGS}\b",
    re.IGNORECASE,
)
THEIR_VOLTS = regex(  # "my lamps are 12 V"
    rf"\b{THINGS}\b(?: (?:is|are|was|were|still|only|all|just|stay|stays|take|takes|need|needs|want|wants|on|a))+ $",
    re.IGNORECASE,
)


def without_taps(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """Without the volts at a tap, where batteries are told to be in series or their bank to have more volts."""
    known = [*stated, *scene.said]
    volts = [item for item in stated if item.fact == FACT and isinstance(item.value, float)]
    most = max((float(item.value) for item in known if item.fact == FACT), default=0.0)
    joined = any(item.fact == "bank.layout" and item.value in SERIES for item in known)
    sixes = any(item.fact == "battery.nominal" and item.value == 6.0 for item in known)
    low = [item for item in volts if float(item.value) < most or (joined and not sixes and item.value == 12.0)]
    gone = [item for item in low if _is_tap(scene.text, item)]
    return [item for item in stated if item not in gone]


def asks_to_tap(text: str) -> bool:
    """Whether 12 V are to be taken from a part of a bank: "may the 12 V plotter hang on half of it"."""
    taken = any(AFTER.search(text[found.end() : found.end() + 80]) for found in LOW.finditer(text))
    return taken or FEEDS.search(text) is not None


def _is_tap(text: str, item: Stated) -> bool:
    """Whether these volts are taken from a part of the bank, or are those of a small thing."""
    after, before = text[item.span[1] : item.span[1] + 80], text[max(0, item.span[0] - 40) : item.span[0]]
    return any((AFTER.search(after), SMALL.search(after), TAP.search(before), THEIR_VOLTS.search(before)))
