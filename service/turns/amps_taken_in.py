"""Amps that a DC-to-DC charger is told to take in, as those it then gives: "30 A in", "draws 40 A on the 12 V side".

The fact is what a charger puts out, as the length of a cable is one way: the other side is worked back to it.
"""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Message
from grammar.text.patterns import regex
from service import reference
from service.calculators import dc_dc
from service.case import Case
from service.judgements import converter
from service.question import known
from service.turns.thread import Thread

AMPS, KIND = "charger.current", "charger.kind"
NAMED = ("thing:dcdc", "word:boost")
SIDE = r"(?:(?P<volts>\d{2}) ?v(?:olts?)?|input|engine|start(?:er)?|alternator|house|low(?:er)?) (?:side|end|battery)"
AFTER = regex(
    rf" ?(?:(?:of )?input\b|in(?= ?(?:$|[,.;?!)]|(?:at|on|from|and)\b))|(?:on|from|off|at|of) (?:the |its )?{SIDE})",
    re.IGNORECASE,
)
BEFORE = regex(r"\binput(?: current| amps| side)?(?: of| is| at|:)? ?$", re.IGNORECASE)


def as_given(message: Message, thread: Thread) -> Message:
    """The message with the amps that a converter takes in turned to those it gives, by its volts on both sides."""
    told = next((item for item in message.stated if item.fact == AMPS and item.of == 1), None)
    if told is None or not (BEFORE.search(message.text[: told.span[0]]) or AFTER.match(message.text, told.span[1])):
        return message
    facts = {**thread.facts, **{item.fact: known(item) for item in message.stated if item.of == 1}}
    case = Case(facts)
    if not (any(message.says(cue) for cue in NAMED) or case.get(KIND) == "dc-dc"):
        return message
    source, target = converter.volts(case)
    side = AFTER.match(message.text, told.span[1])
    if side is not None and side["volts"] and float(side["volts"]) == target != source:  # "15 A on the 24 volt side"
        return message
    share = float(reference.value("dc_dc", "efficiency").value)
    given = dc_dc.output_current(source, float(told.value), target, share)
    others = (replace(item, value=given) if item is told else item for item in message.stated)
    return replace(message, stated=tuple(others))
