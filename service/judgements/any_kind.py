"""What is true of settings and volts before the battery's kind is known, or where several kinds are weighed."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import charge_volts, charging
from service.judgements.charge_volts import stage
from service.judgements.charger_suits import EQUALISES, SEALED, equalised, found, opening
from service.kinds import CHARGED
from service.reply import Answer, Option
from service.told import caps, charger_settings, no_equalising
from service.topic import Topic

UNLABELLED = regex(
    r"\b(?:just|only) says? (?:leisure|marine|deep[ -]?cycle|domestic|battery)\b"
    r"|\bno (?:other )?(?:label|sticker|markings?)\b"
    r"|\b(?:label|sticker) (?:is |has )?(?:gone|missing|worn|off|says nothing|unreadable|illegible)\b",
    re.IGNORECASE,
)


def judged(topic: Topic, case: Case, chemistry: str | None) -> Answer:
    """The volts of each kind that is named, else an answer that holds for any kind."""
    return of_each_kind(topic, case) or of_any_kind(topic, case, chemistry)


def of_each_kind(topic: Topic, case: Case) -> Answer | None:
    """The volts of each kind, where several are named and none is the battery's; None else."""
    kinds = charger_settings.named(case.text)
    if len(kinds) < 2 or charger_settings.offered(case) or charge_volts.put_out(case) or case.said("charger.setting"):
        return None
    sides, told = [], []
    for kind in kinds:
        sides.append(Option(say.capital(say.CHEMISTRY[kind]), "information", charge_volts.figures(case, kind)))
        ends = (str(stage(kind, name, float(case["bank.voltage"]))) for name in ("absorption", "float"))
        told.append(f"{say.CHEMISTRY[kind]} {', '.join(ends)}")
    head = f"Absorption, then float: {'; '.join(told)}." if len(told) < 4 else "Each kind has its own volts, as listed."
    return topic.says("information", head, compare=tuple(sides))


def before_the_kind(case: Case) -> str:
    """What is true before the kind is known: of the settings on offer, and of volts that the battery shows."""
    limit = charger_settings.printed_limit(case.text)
    kinds = {kind: stage(kind, "absorption").high for kind in CHARGED}
    out = [say.CHEMISTRY[kind] for kind, most in kinds.items() if limit and limit > most + charging.NEAR]
    if limit and out:
        case.source("settings-by-kind")
        rest = f"never use a setting that goes above {say.volts(limit)}"
        return f"We can't say yet: {say.volts(limit)} printed on it rules out {say.listed(out)} alone; {rest}."
    if UNLABELLED.search(case.text):
        rest = "without them its seller names the kind, and the charger stays off until then"
        return f"We can't say yet: caps that unscrew over the cells mean wet-cell; {rest}."
    if charger_settings.offered(case):
        least = min(kinds, key=lambda kind: kinds[kind])
        lowest = f"{say.CHEMISTRY[least]} takes {say.volts(kinds[least])} at most and other settings go higher"
        return f"We can't say yet: leave the switch alone until the kind is known, because {lowest}."
    return ""


def of_any_kind(topic: Topic, case: Case, chemistry: str | None) -> Answer:
    """The kind is not known: an answer only where every kind says no."""
    kinds = CHARGED[:3] if chemistry == "lead" else CHARGED
    verdicts = {found(case.supposing({"battery.chemistry": kind}), kind)[0] for kind in kinds}
    put = charge_volts.put_out(case)
    if put and (over := charge_volts.over_its_own_limit(case, put)):
        return topic.says("no", f"{opening(case, 'no')}: {over}.")
    if verdicts == {"no"} and put:
        case.step("No kind of battery's absorption, float or equalising range holds it", "settings-by-kind")
        head = f"No: {say.volts(put.each * float(case['bank.voltage']) / 12)} is wrong for every kind of battery."
        return topic.says("no", head, asks=(topic.ask("battery.chemistry", topic.likely["battery.chemistry"]),))
    on_sealed = case.said("charger.setting") in SEALED  # "a desulphate charger on AGM" is on one
    if case.says(*EQUALISES) and (on_sealed or caps.has_none(case)) and not no_equalising.denied(case.text):
        return topic.says(*equalised(case, str(case.said("charger.setting") or chemistry), put))
    if case.says(*EQUALISES):
        head = "We can't say yet: only a wet-cell battery with caps may be equalised, never AGM, gel or lithium."
        return topic.needs("battery.chemistry", headline=head)
    return topic.needs("battery.chemistry", headline=before_the_kind(case))
