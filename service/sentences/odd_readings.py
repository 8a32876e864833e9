"""Readings that are no resting volts of this system: too many, on a charge, of two, or of no battery named."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements.charge_volts import stage
from service.judgements.doubt import shown
from service.kinds import LEAD
from service.reply import Answer, Figure
from service.rules import readings
from service.rules.readings import Charge, cite, limit
from service.sentences import at_rest, wording
from service.topic import Topic

ON_FLOAT = regex(r"\b(?:on|at|in) float\b(?! switch)|\bfloat(?:ing)? (?:reading|volts?|voltage)\b|\bfloats at\b", re.I)
KINDS = (("wet-cell (caps on top)", "flooded"), ("AGM", "agm"), ("gel", "gel"), ("lithium", "lfp"))


def too_high(topic: Topic, case: Case) -> Answer:
    """A charging voltage that harms: the hazard answer has the steps."""
    lithium = case.said("battery.chemistry") in ("lfp", "lithium-other")
    name = "lithium-overcharge" if lithium else "lead-overcharge"
    most = say.volts(limit(name))
    volts = case.said("reading.voltage") or case.said("charger.voltage")
    case.step(
        f"{shown(float(volts))} is too much: {'over' if lithium else 'from'} {most} for each 12 V a "
        f"{'lithium' if lithium else 'lead'} battery is harmed",
        cite(name),
    )
    head = f"No: switch the charger off, because {shown(float(volts))} is too high and harms the battery."
    return topic.says("stop", head, urgency="today", route="technician")


def while_charging(topic: Topic, case: Case, kind: str) -> Answer:
    """A charging voltage that is not too high: it tells nothing of the charge."""
    name = "lithium-overcharge" if kind == "lfp" else "lead-overcharge"
    most, battery = say.volts(limit(name)), f"{wording.a_kind(case, capital=False)} battery"
    case.step(f"{'Over' if kind == 'lfp' else 'From'} {most} for each 12 V {battery} is harmed", cite(name))
    volts = shown(float(case["charger.voltage"]))
    head = f"{volts} while charging is under the {most} that harms {battery}, but it tells nothing of its charge."
    return topic.says("information", head, asks=(topic.ask("reading.voltage"),))


def under_float(topic: Topic, case: Case, volts: float, count: float) -> Answer | None:
    """A lead battery's reading at float that is lower than any float: the charger does not hold it; else None."""
    rested = case.said("reading.state") == "rest" or "reading.rest_time" in case.stated
    kind = case.said("battery.chemistry")
    if rested or kind not in LEAD or not ON_FLOAT.search(case.text):
        return None
    floating = stage(str(kind), "float", 12 * count)
    if volts >= floating.low:
        return None
    case.source(floating.cite)
    held = f"a charger on float holds {wording.a_kind(case, capital=False)} battery at {floating}"
    head = f"We can't say yet: {held}, so at {shown(volts)} it is off or does not hold it."
    return topic.needs("reading.voltage", headline=head, likely=())


def no_system(topic: Topic, case: Case, volts: float) -> Answer:
    """A reading that fits no system: 12 V or 24 V is asked for."""
    if volts < limit("lead-flat"):
        case.step(f"A 12 V lead battery under {say.volts(limit('lead-flat'))} is deeply flat", cite("lead-flat"))
        head = at_rest.flat_if_of_twelve(case, f"{shown(volts)} at rest")
        more = ("battery.chemistry",) if wording.kind_is_open(case) else ()
        return replace(topic.needs("bank.voltage", *more, headline=head), urgency="today")
    case.step(f"{shown(volts)} fits no bank of 12, 24, 36 or 48 V at rest", "system-volts")
    head = f"We can't say yet: {shown(volts)} fits neither a 12 V nor a 24 V bank at rest; please tell us which it is."
    return topic.needs("bank.voltage", headline=head, likely=(("12 V", 12.0), ("24 V", 24.0)))


def equalised(topic: Topic, case: Case, volts: float) -> Answer:
    """A wet-cell battery that is equalised on purpose."""
    most = say.volts(limit("equalise-most"))
    case.step(f"Equalising takes a wet-cell battery to {most} for each 12 V at most", cite("equalise-most"))
    head = (
        f"{shown(volts)} is within the limit of {most} for equalising a wet-cell battery on purpose; it tells "
        "nothing of its charge."
    )
    return topic.says("information", head)


def over(topic: Topic, case: Case, volts: float, found: Charge) -> Answer:
    """More than a full battery shows: no charge can be told from it."""
    full = max(row for row, _ in readings.rest_rows(found.kind)) * volts / found.each
    case.step(
        f"A full one rests at {say.volts(full, 2)}; so much more is surface charge, or the charger is on",
        *found.cites,
        cite(f"{'lithium' if found.kind == 'lfp' else found.kind}-over"),
        "quick-rest",
    )
    head = (
        f"Too early to say: {shown(volts)} is more than a full {wording.kind(case)} battery shows at rest "
        f"({say.volts(full, 2)}), so some charging still shows."
    )
    asks = [topic.ask("reading.voltage")]
    if wording.kind_is_open(case):
        asks.append(topic.ask("battery.chemistry", KINDS))
    figures = () if found.each == volts else (Figure("voltage_per_battery", "each battery", found.each, "V"),)
    return topic.says("information", head, *figures, asks=tuple(asks))


def not_rested(topic: Topic, case: Case, volts: float, count: float) -> Answer:
    """A poor reading with something on: how full it is cannot be told from it."""
    case.step("With something on it reads lower than at rest", cite("rested-sealed"))
    head = (
        f"{at_rest.NO_REST} {shown(volts)} is no reading at rest, so switch all off, wait some hours and read it again."
    )
    each = Figure("voltage_per_battery", "each battery", of_each(case, volts, count), "V")
    asks = [topic.ask("reading.voltage")]
    if wording.kind_is_open(case):
        asks.append(topic.ask("battery.chemistry", KINDS))
    return topic.says("information", head, *((each,) if each.value != volts else ()), asks=tuple(asks))


def of_each(case: Case, volts: float, count: float) -> float:
    """The volts of one battery in a string of so many times 12 V; a 6 V one has half of them."""
    return volts / count / (2 if readings.six_volts(case) else 1)
