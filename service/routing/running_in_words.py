"""Topics of how long a battery runs its load, which words put plainly."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service.routing.seen import Seen
from service.told import amp_hours_taken

HOURS_LEFT = regex(
    r"\bhow (?:many (?:hours|minutes)|long)\b[^.?!;]{0,12}\b(?:have|do|will|would|might|can) (?:i|we)\b[^.?!;]{0,24}"
    r"\b(?:got|get|have|left)\b(?! (?:it|them|to (?:wait|charge|replace))\b)",
    re.IGNORECASE,
)
LOAD = frozenset({"load.kind", "load.current", "load.model", "load.power"})
OF_ITS_DUTY = ("request:which", "request:versus", "request:may_i")
SUITED = regex(
    r"\b(?:right|wrong|proper|same|good|suit\w*|ok(?:ay)?|fit) (?:kind|type|sort|breed|battery|one|for)\b|\bsuits?\b",
    re.IGNORECASE,
)


def hours_left(seen: Seen) -> bool:
    """ "A deep-cycle and a trolling motor. How many hours have I got?": its duty is only told."""
    about = {"battery-duty"} <= seen.found <= {"battery-duty", "run-time", "unclear"} and bool(LOAD & seen.told)
    text = seen.message.text
    plain = not seen.says(*OF_ITS_DUTY) and not SUITED.search(text) and not seen.message.dangers
    return about and plain and HOURS_LEFT.search(text) is not None


def taken(seen: Seen) -> bool:
    """ "250 A for 3 minutes, how many amp hours is that?": no battery is sought for it."""
    others = seen.found - {"run-time", "run-check", "bank-size", "rating-convert", "unclear"}
    return (
        not others
        and seen.told >= amp_hours_taken.FACTS
        and amp_hours_taken.asked(seen.message.text)
        and not seen.message.dangers
    )


def runs_so_long(seen: Seen) -> bool:
    """ "A fridge of 3 A, gel of 90 Ah. After what period must it be switched off?": nothing drains it unseen."""
    told = {"load.current", "battery.capacity"} <= seen.told and "drain.current" not in seen.told
    drained = (
        {"standing-drain"} <= seen.found <= {"standing-drain", "run-time"}
        and seen.says("request:how_long")
        and not seen.message.dangers
    )
    return told and drained and seen.says("about:consumer")
