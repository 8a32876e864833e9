"""A load whose battery has no cranking amps told: what it can be judged by instead, and what is asked."""

from __future__ import annotations

import math
import re
from dataclasses import replace

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import (
    deciding,
    supply,
    supply_levers,
)
from service.reply import Answer, Asked, Figure
from service.sentences import ageing
from service.sentences.supply import (
    by_its_size,
    over_the_run,
    tested_on_board,
)
from service.told import what_became
from service.topic import CIRCUIT, Topic

SLOW_HOURS = 5.0  # a current of C20 / 5 and less is no load to speak of
NOT_ON_IT = regex(
    r"\bnothing (?:else|more)\b|\bno (?:cca|cranking|other (?:number|figure|rating))\b|\bthat(?: i|')s all\b",
    re.IGNORECASE,
)
ITS_MAKER = "Its maker's data sheet has it, or the seller; on a label without it there is none to read."


def cca_ask(topic: Topic, case: Case, inrush: float, need: float) -> Asked:
    """The question for the CCA with the replies that decide."""
    asked = replace(topic.ask("battery.cca"), replies=supply_levers.cca_replies(case, inrush, need))
    return replace(asked, where=ITS_MAKER) if NOT_ON_IT.search(case.text) else asked


def unlabelled(case: Case) -> bool:
    """Whether the amps of the battery came without a word for their test: taken for cranking amps till it is known."""
    if "battery.cca" in case.stated or "battery.ca" not in case.stated:
        return False
    typed = case.stated["battery.ca"].text.lower()
    named = "ca" in typed or "crank" in typed or case.says("role:battery.ca")  # "that 1000 is MCA"
    if not typed or named:
        return False
    case.step("Amps without a name are taken for cranking amps at 0 °C till the label is read", "ca-over-cca")
    return True


def as_cranking_amps(case: Case, head: str) -> str:
    """The headline with the amps as they were typed, and what they are taken for: no CCA was told."""
    typed, taken = say.amps(float(case["battery.ca"])), say.cca(float(case["battery.cca"]))
    told = f"your {typed} battery, if those are cranking amps ({taken}),"
    return head.replace(f"your {taken} battery", told, 1)


def unrated(topic: Topic, case: Case, inrush: float, need: float, figures: tuple[Figure, ...]) -> Answer:
    """No cranking rating: no for a deep-cycle battery, else asked."""
    rating, name = say.cca(math.ceil(need - 1e-6)), supply.load_name(case)
    ask = cca_ask(topic, case, inrush, need)
    if slow := slow_load(topic, case):
        return slow
    thin = deciding.both(case, float(case["load.current"])) if cable_is_told(case) else None
    if thin:
        head = f"No: {thin.why}; the battery needs {rating}.".format(load=name)
        return topic.says("no", head, *figures, asks=(ask,))
    if case.said("battery.duty") == "deep-cycle":
        case.because(
            "Its thick plates give small currents for hours, so a large one pulls the volts down at once",
            "deep-cycle-rating",
        )
        head = f"No: a deep-cycle battery without a CCA rating is not made for large currents; {name} needs {rating}."
        return topic.says("no", head, *figures, asks=(ask,))
    usual = by_its_size(case, need)
    head = usual or f"We can't say yet: {name} needs {rating}, and the CCA of your battery is not known."
    head = over_the_run(case, head)
    asks: tuple[Asked, ...] = (ask, topic.ask("battery.duty"))
    if duty := case.said("battery.duty"):
        asks = (ask,)
        if duty == "cranking" and not usual:
            gives = "a starting battery gives large currents"
            head = f"We can't say yet: {gives}, but {name} needs {rating}: read its CCA."
    if supply.shares_the_engines(case):
        risk = "on the engine's battery it can leave you unable to start"
        head, asks = f"At best only just: {name} needs {rating}, and {risk}.", (ask,)
    if what_became.small_or_worn(case.text):
        head = ageing.SMALL_OR_WORN
    if case.says("note:no_idea"):
        head, asks = tested_on_board(case), (topic.ask("reading.load_voltage"), ask)
    return topic.says("needs-facts", head, *figures, asks=asks)


def cable_is_told(case: Case) -> bool:
    """Whether a cable is told in size and length, and no answer of its own judges it."""
    told = case.said("cable.length") is not None and {"cable.gauge", "cable.area"} & set(case.stated)
    return bool(told) and "cable.ampacity" in case and not CIRCUIT.intersection(case.beside)


def slow_load(topic: Topic, case: Case) -> Answer | None:
    """A load that is no motor and takes no more than the 5-hour current: its amps are no question, its time is."""
    if supply.is_motor(case) or "battery.capacity" not in case:
        return None
    running, capacity = float(case["load.current"]), float(case["bank.capacity"])
    if running > capacity / SLOW_HOURS:
        return None
    case.step(f"{say.amps(running)} is within {say.amp_hours(capacity)} / {SLOW_HOURS:g} h", "peukert")
    head = (
        f"Yes: {supply.does(case, 'give')} {say.amps(running)} easily; what counts for such a load is how many "
        "hours it runs."
    )
    return topic.says("yes", head, Figure("running_current", "running", running, "A"))
