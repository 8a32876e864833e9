"""Which of a charger's settings to take, where several are told: "gel, AGM and wet"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from grammar.told.chargers.listed_settings import place_of
from service import say
from service.case import Case
from service.judgements import charge_volts, charging
from service.judgements.charge_volts import stage
from service.judgements.charger_suits import SEALED, TOO_HIGH, WORD
from service.reply import Answer
from service.told import charger_settings
from service.topic import Topic

EQUALISING = regex(r"\b(?:eq\b|equali[sz]\w*)", re.IGNORECASE)


def judged(topic: Topic, case: Case, chemistry: str) -> Answer | None:
    """The setting to take: the battery's own, else the one that goes least high; None where none are listed."""
    volts, battery = float(case["bank.voltage"]), charging.called(chemistry)
    most, figures = stage(chemistry, "absorption", volts), charge_volts.figures(case, chemistry)
    shown = charger_settings.with_volts(case.text)
    offers = tuple(shown) or charger_settings.offered(case)
    if not offers:
        return None
    case.source("settings-by-kind")
    name, own = shown.get(chemistry, (WORD[chemistry], most.aim))
    if chemistry in offers and stage(chemistry, "absorption").holds(own):
        why = f"its {say.volts(own)} suits {battery}, which takes {most}" if shown else f"{most} for absorption"
        place = place_of(case.text, chemistry)
        at = f"position {place}, the {name} setting" if place else f"the {name} setting"
        never = "; never the equalising one" if chemistry in SEALED and EQUALISING.search(case.text) else ""
        return topic.says("information", f"Use {at}: {why}{never}.", *figures)
    others = {kind: stage(kind, "absorption", volts).high for kind in offers if kind != chemistry}
    if shown or not others:
        return None
    least = min(others, key=lambda kind: others[kind])
    if others[least] > most.high + charging.NEAR and charger_settings.plain_one(case):
        case.because(TOO_HIGH[chemistry], "settings-by-kind")
        head = f"Neither is made for {battery}: {WORD[least]} goes up to {say.volts(others[least])}, so use the other "
        head += f"only if its manual keeps it at or under {say.volts(most.high)}."
        return topic.says("no", head, *figures)
    if others[least] > most.high + charging.NEAR:
        head = f"None of them: each goes over the {say.volts(most.high)} that {battery} takes at most."
        return topic.says("no", head, *figures)
    wet = "; the wet-cell one only if its manual says it never equalises"
    wet = wet if least != "flooded" and others.get("flooded", 99.0) <= most.high + charging.NEAR else ""
    fills = "" if others[least] >= most.aim + charging.NEAR else ", which may not quite fill it"
    head = f"None is made for {battery}: take the {WORD[least]} one, up to {say.volts(others[least])}{fills}{wet}."
    return topic.says("marginal", head, *figures)
