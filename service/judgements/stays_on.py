"""Whether a charger may stay on: its kind decides, never its amps."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service import say
from service.case import Case
from service.judgements import charge_volts, charging
from service.judgements.charge_volts import STAGED, stage
from service.reply import Answer
from service.rules import readings
from service.told import charger_left_on
from service.topic import Topic

KIND = "charger.kind"
OF_A_CHARGE = {"charger-size", "charge-time", "charger-setting"}  # topics after which "it" is the charger
OVERNIGHT = regex(r"\b(?:overnight|over night|tonight|all night|the night)\b", re.IGNORECASE)
REPLIES = (("it drops to float by itself", "smart"), ("it has a timer, or never drops", "timer"))
OF_FLOAT = "only a charger that drops to float by itself may stay on"
OPEN = f"We can't say yet: {OF_FLOAT}"
LITHIUM = "Better not: lithium needs no charger while it stands, so switch it off once the battery is full."


def judged(topic: Topic, case: Case) -> Answer | None:
    """The answer where it is asked whether the charger may stay on; None where it is not, or its size is asked too."""
    asked = (later(case) or charger_left_on.asked(case.text)) and not beside_size(case)
    return of_its_kind(topic, case) if asked else None


def later(case: Case) -> bool:
    """Whether it is asked after an answer on a charge: "may it stay on then?"."""
    return bool(OF_A_CHARGE & set(case.before)) and charger_left_on.asked_of_it(case.text)


def at_its_volts(topic: Topic, case: Case, chemistry: str) -> Answer | None:
    """The answer where a charger of absorption volts is to stay on: held all the time they are wrong, so it is asked
    whether it drops to float; None where it is told to, or where nobody asks that it stays on."""
    put = charge_volts.put_out(case)
    if put is None or put.held or "charger.setting" in case.stated or STAGED.search(case.text):
        return None
    stays = case.says("detail:left_on") or charger_left_on.asked(case.text) or later(case)
    if not stays or put.each < stage(chemistry, "absorption").low - charging.NEAR:
        return None
    kept = of_its_kind(topic, case)
    if kept is None or kept.verdict != "needs-facts":
        return kept if kept and kept.verdict != "yes" else None
    volts = say.volts(put.each * float(case["bank.voltage"]) / 12)
    return replace(kept, headline=f"We can't say yet: {volts} suits only as a stage that ends, so {OF_FLOAT}.")


def beside_size(case: Case) -> bool:
    """Whether it is asked beside the size of the charger, which is an answer of its own."""
    return charger_left_on.asked_beside_its_size(case.text)


def also_told(case: Case) -> str:
    """A word on staying on for an answer on the size that has none on it beside it; "" else."""
    if not beside_size(case) or {"charger-setting", "storage"} & set(case.beside):
        return ""
    if charging.known_kind(case) == "lfp":
        return "; once it is full, better switch it off"
    smart = case.said(KIND) == "smart" or charger_left_on.floats(case.text)
    return "; it may stay on" if smart else "; it may stay on only if it drops to float by itself"


def of_its_kind(topic: Topic, case: Case) -> Answer | None:
    """Whether it may stay on by its own kind and that of the battery."""
    if case.says("detail:watched"):
        return None
    if charging.known_kind(case) == "lfp" and (OVERNIGHT.search(case.text) or charging.cold_share(case, "lfp")):
        return None
    if charging.known_kind(case) == "lfp":
        case.step(
            "Lithium is stored about half full, and no charger is needed for that", readings.cite("lithium-store")
        )
        return topic.says("marginal", LITHIUM)
    case.step("Absorption is a stage that ends; held for days it dries out and wears the plates", "held-voltage")
    if name := charging.must_come_off(case):
        return topic.says("no", f"No: a {name} must not stay on, because it goes on when the battery is full.")
    if case.said(KIND) == "smart" or case.says("detail:regulated") or charger_left_on.floats(case.text):
        return topic.says("yes", "Yes: a charger that drops to float by itself may stay on; look at it every month.")
    if case.said(KIND) is not None:
        return None
    rest = ", and its amps do not tell that" if "charger.current" in case.stated else ""
    return topic.needs(KIND, headline=f"{OPEN}{rest}.", likely=REPLIES)
