"""Volts of a charge that is asked about, "what voltage is a half full AGM?", and of a second kind beside a reading."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import stop_reading
from service.reply import Figure
from service.rules import readings
from service.rules.readings import limit
from service.sentences import wording
from service.told import volts_of_charge

WHAT = regex(r"\b(?:what(?:['’]?s)?|which|how (?:many|much))\b", re.IGNORECASE)
NEAR = 40  # characters between the question and the kind


def asks_volts(case: Case) -> bool:
    """Whether a charge is told only to ask which volts it shows."""
    told = case.stated.get("battery.charge")
    asked = (
        volts_of_charge.asked(case.text) and case.said("battery.chemistry") != "lithium-other"
    )  # other volts, and none of ours
    return asked and told is not None and told.origin == "message" and told.span is not None


def asks_full_volts(case: Case) -> bool:
    """Whether the volts of a full battery are asked for, and no charger's."""
    return volts_of_charge.of_a_full_one(case.text) and case.said("charger.voltage") is None


def of_charge(case: Case, charge: float, kind: str) -> tuple[str, tuple[Figure, ...]]:
    """The volts that a battery so full shows at rest, as a headline, and as figures."""
    count = (readings.said_system(case) or 12.0) / 12
    volts = readings.volts_for(charge, kind) * count
    case.source(*readings.charge_of(12.5, kind).cites)
    if wording.kind_is_open(case):
        case.assume("battery.chemistry", "flooded", "the kind is not said")
        agm = say.volts(readings.volts_for(charge, "agm") * count, 2)
        case.step(f"An AGM shows {agm} then", *readings.charge_of(12.5, "agm").cites)
    name = say.CHEMISTRY[kind]
    article = "an" if name.startswith("A") else "a"
    head = f"About {say.volts(volts, 2)} at rest: {article} {name} battery shows that at {say.charge(charge)}."
    found = Figure("voltage_per_battery", "volts at rest", volts / count, "V")
    half = limit("lead-half")
    return stop_reading.headline(case, head, half), (found, *stop_reading.figures(case, half))


def with_the_other_kind(case: Case, head: str) -> str:
    """The headline on a reading with the volts that are good of a second kind, where they are asked for as well."""
    other, read = case.second.get("battery.chemistry"), case.stated.get("reading.voltage")
    if not (other and read and other.span and read.span) or other.value not in ("flooded", "agm", "gel", "lfp"):
        return head
    asked = WHAT.search(case.text, read.span[1])
    if asked is None or abs(asked.start() - other.span[0]) > NEAR or readings.said_system(case) not in (None, 12.0):
        return head
    kind = str(other.value)
    case.others().known("battery.chemistry")
    least = limit("lithium-good" if kind == "lfp" else "lead-good")
    volts = say.volts(readings.volts_for(least, kind), 2)
    case.source(*readings.charge_of(12.5, kind).cites)
    name = "lithium" if kind == "lfp" else say.CHEMISTRY[kind]
    return f"{head.removesuffix('.')}; {name} is good from {volts} on ({say.charge(least)})."
