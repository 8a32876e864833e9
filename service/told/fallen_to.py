"""Volts to which a battery may have fallen while it stood: "full it cannot freeze, but if it has dropped to 12 V?"."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from grammar.text.patterns import regex
from service.case import Known

REST, LOADED, CHARGE = "reading.voltage", "reading.load_voltage", "battery.charge"
LOADS = ("load.model", "load.current", "load.peak", "load.power", "reading.current")
BUT = regex(r"\b(?:but|however|what if|what about|and if|or if|though|whereas)\b")


def at_rest(text: str, stated: Mapping[str, Known]) -> dict[str, Known]:
    """The facts of a battery that only stands, by the volts that were told last.

    A drop is none under a load where no load is told of, and a full charge that stands before a "but" is not its own.
    """
    facts = dict(stated)
    if LOADED in facts and REST not in facts and not any(load in facts for load in LOADS):
        facts[REST] = replace(facts.pop(LOADED), fact=REST)
    read, charge = facts.get(REST), facts.get(CHARGE)
    if read and charge and read.span and charge.span and BUT.search(text.lower(), charge.span[1], read.span[0]):
        del facts[CHARGE]
    return facts
