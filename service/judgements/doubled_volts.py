"""Twice the volts for the same power: what "would 24 V help?" asks of a cable that was worked out for 12 V."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements.supply import load_name

HELPS = regex(
    r"\b24 ?v(?:olts?)?\b[^.?!]{0,200}\b(?:help|better|easier|improve|cure|solve|save|thinner|smaller)"
    r"|\b(?:help|better|easier|thinner|smaller)\b[^.?!]{0,200}\b24 ?v(?:olts?)?\b",
    re.IGNORECASE,
)


def put_in(case: Case) -> str:
    """Half the amps put in place of those told before, where they ask if 24 V helps; the words for it, else "".

    A model of the house keeps its own volts and amps.
    """
    volts, amps = case.stated.get("bank.voltage"), case.stated.get("load.current")
    if volts is None or amps is None or "load.model" in case.stated or not HELPS.search(case.text):
        return ""
    if volts.value != 24.0 or volts.origin != "message" or amps.origin != "thread":
        return ""
    half, why = float(amps.value) / 2, f"half of {say.amps(float(amps.value))}: the same power at twice the volts"
    case.stated = {**case.stated, amps.fact: replace(amps, value=half, origin="assumed", text="", why=why)}
    case.because("A motor is built for 12 V or for 24 V: a 12 V one never goes on a 24 V bank", "electric-power")
    return f"Yes: a 24{say.NB}V {load_name(case).removeprefix('your ')} of the same power draws about {say.amps(half)}"
