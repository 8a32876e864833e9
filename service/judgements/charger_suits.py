"""How a charger's setting or volts suit a battery of a known kind: the strictest finding stands."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.case import Case, Value
from service.judgements import charge_volts, charging, warmth_asked
from service.judgements.charge_volts import Put, stage
from service.reply import strictness
from service.told import caps, charger_settings, most_volts, no_equalising, old_charger, others_charger

SEALED = ("agm", "gel", "lfp")
EQUALISES = ("detail:equalise", "detail:equalising")
WORD = {"flooded": "wet-cell (flooded)", "agm": "AGM", "gel": "gel", "lfp": "lithium"}
TOO_HIGH = {
    "flooded": "Above its limit it boils off water and wears its plates",
    "agm": "Above its limit it gasses, and a sealed battery cannot get the lost water back",
    "gel": "Above its limit the jelly dries out, and that cannot be undone",
    "lfp": "Above its limit the BMS (the safety switch inside) cuts off, or the cells are harmed",
}
GOOD_FIRST = regex(r"[^.?!]{0,200}\b(?:ok|okay|good|fine|right|suit\w*|safe|do)\b[^.?!]{0,200}\?", re.IGNORECASE)
HARMS = regex(r"\b(?:harm|matter|hurt|damag|kill|bad|ruin|wrong|cook|problem|worr|too high)\w*", re.IGNORECASE)
TOO_MUCH = regex(r"\btoo (?:much|high|hard)\b", re.IGNORECASE)
FOR_HOURS = regex(
    r"\bfor (?:\w+ ){0,2}hours\b|\bhours (?:on end|now|long|and hours)\b|\ball (?:day|afternoon|evening|morning)\b",
    re.IGNORECASE,
)
WHICH_SETTING = regex(r"\b(?:wh?ich|what)(?: \w+){0,2} (?:setting|mode|programme?|position|profile)s?\b", re.IGNORECASE)
LEFT = ("detail:left_on", "detail:held", "detail:never_drops", "word:winter")


def found(case: Case, chemistry: str) -> tuple[str, str]:
    """Verdict and headline for a battery whose kind is known."""
    put, setting = charge_volts.put_out(case), case.said("charger.setting")
    if case.says(*EQUALISES) and not no_equalising.denied(case.text):
        return equalised(case, chemistry, put)
    if put and (over := charge_volts.over_its_own_limit(case, put)):
        return "no", f"{opening(case, 'no')}: {over}."
    findings = [of_volts(case, put, chemistry)] if put else []
    findings += [of_setting(case, str(setting), chemistry)] if setting else []
    if findings:
        return max(findings, key=lambda item: strictness(item[0]))
    if case.get("charger.kind") == "smart" and case.says(*LEFT) and chemistry != "lfp":
        return "yes", f"Yes: a smart charger on its {WORD[chemistry]} setting drops to float, so it may stay on."
    one_of_before = case.says("detail:same_charger") or old_charger.told(case.text)
    if one_of_before and not WHICH_SETTING.search(case.text) and chemistry not in charger_settings.listed(case):
        kinds = list(dict.fromkeys((chemistry, *(kind for kind in told(case) if kind in WORD))))
        if len(kinds) > 1:
            names = say.listed([WORD[str(kind)] for kind in kinds], "or")
            return "needs-facts", f"We can't say yet: the charger must have a setting for the kind you take, {names}."
        article = "an" if chemistry == "agm" else "a"
        return "needs-facts", f"We can't say yet: the charger must have {article} {WORD[chemistry]} setting."
    absorption, floating = (stage(chemistry, name, float(case["bank.voltage"])) for name in ("absorption", "float"))
    best = f"absorption {absorption} (best {say.volts(absorption.aim)}), then float {floating}"
    if charger_settings.unnamed(case.text):
        then = f"then {floating}; leave it on no position that goes over {say.volts(absorption.high)}"
        return "information", f"Look for {absorption} at the posts (best {say.volts(absorption.aim)}), {then}."
    if charger_settings.lacks(case, chemistry):
        head = f"None of its settings is made for {charging.called(chemistry)}: use one only if it stays within"
        return "information", f"{head} {absorption} in absorption and {floating} in float."
    never = ", if it never equalises" if chemistry == "flooded" and caps.has_none(case) else ""
    return "information", f"Use the {WORD[chemistry]} setting{never}: {best}."


def told(case: Case) -> tuple[Value, ...]:
    """The kinds of battery that the message names."""
    named = (facts.get("battery.chemistry") for facts in (case.stated, case.second))
    return tuple(item.value for item in named if item)


def opening(case: Case, verdict: str) -> str:
    """The answer to the question as it was put: "is it good" or "does it harm"."""
    asked_good = GOOD_FIRST.match(case.text)  # "Is it ok for lithium? ... which I should worry about?"
    if case.says("detail:harm") and not (asked_good and not HARMS.search(asked_good.group())):
        return {"yes": "No, it suits", "marginal": "Not much", "no": "Yes, it matters"}[verdict]
    return {"yes": "Yes", "marginal": "Only just", "no": "No"}[verdict]


def of_setting(case: Case, setting: str, chemistry: str) -> tuple[str, str]:
    """A setting against the battery's own absorption range."""
    verdict = charge_volts.verdict_of_setting(setting, chemistry)
    volts = float(case["bank.voltage"])
    theirs, own = stage(setting, "absorption", volts), stage(chemistry, "absorption", volts)
    battery, name = charging.called(chemistry), WORD[setting]
    start = opening(case, verdict)
    case.source("settings-by-kind", theirs.cite, own.cite)
    if verdict == "no":
        case.because(TOO_HIGH[chemistry], "settings-by-kind")
        least = f"{say.volts(own.high)} or less on that setting, and that never equalises"
        case.because(f"Only a charger whose manual shows {least}, will do", "settings-by-kind")
        most = f"{battery} takes {say.volts(own.high)} at most"
        if WHICH_SETTING.search(case.text) and not charger_settings.lacks(case, chemistry):
            use = f"Use the {WORD[chemistry]} setting ({own}, best {say.volts(own.aim)})"
            return "no", f"{use}: the {name} one goes up to {say.volts(theirs.high)}, and {most}."
        return "no", f"{start}: the {name} setting goes up to {say.volts(theirs.high)}, and {most}."
    if verdict == "yes":
        return "yes", f"{start}: the {name} setting, {own} in absorption, suits {battery}."
    if setting == "flooded" and chemistry in SEALED and case.says(*LEFT) and not no_equalising.denied(case.text):
        case.step("Equalising overcharges on purpose; a sealed battery cannot get lost water back", "no-equalising")
        use = "" if charger_settings.lacks(case, chemistry) else f"; use the {WORD[chemistry]} setting"
        return (
            "no",
            f"{opening(case, 'no')}: a wet-cell setting left on may equalise by itself, which ruins {battery}{use}.",
        )
    if setting == "flooded" and chemistry in SEALED:
        case.because(
            "If its manual says that this setting equalises by itself, it is a plain no: a sealed battery cannot get "
            "lost water back",
            "no-equalising",
        )
    better = f"another kind; use the {WORD[chemistry]} one"
    better = "another kind, as all of yours are" if charger_settings.lacks(case, chemistry) else better
    within = f"{start}: the {name} setting stays within the {say.volts(own.high)} of {battery}"
    return "marginal", f"{within}, but it is made for {better}."


def by_an_alternator(case: Case) -> bool:
    """Whether an alternator charges, with no regulator that is told to end its stages."""
    named = case.said("charger.kind") == "alternator" or case.says("thing:alternator")
    return named and not case.says("thing:charger", "thing:dcdc") and not charge_volts.STAGED.search(case.text)


def in_absorption(case: Case, put: Put, chemistry: str, start: str) -> tuple[str, str]:
    """A voltage inside absorption: good as a stage that ends, which an alternator has not."""
    times = float(case["bank.voltage"]) / 12
    absorption, floating = (stage(chemistry, name, times * 12) for name in ("absorption", "float"))
    this, battery = say.volts(put.each * times), charging.called(chemistry)
    for_hours, at_the_top = FOR_HOURS.search(case.text), put.each * times > absorption.aim + charging.NEAR
    if for_hours or (at_the_top and by_an_alternator(case)):
        case.step("Absorption is a stage that ends; held for days it dries out and wears the plates", "held-voltage")
    if for_hours:
        ends = f"if it drops to a float of {floating} after some hours"
        return "yes", f"{start}: {this} is inside the {absorption} of {battery}, {ends}."
    if at_the_top and by_an_alternator(case):
        asks_bad = case.says("detail:harm", "detail:asks_bad") or TOO_MUCH.search(case.text)
        top = f"{battery} takes {say.volts(absorption.high)} at most, and an alternator holds its {this} for hours"
        return "marginal", f"{'A little' if asks_bad else 'Only just'}: {top}, with no drop to float ({floating})."
    return "yes", f"{start}: {this} is inside the {absorption} of {battery}, as a stage that ends by itself."


def of_volts(case: Case, put: Put, chemistry: str) -> tuple[str, str]:
    """A charging voltage against absorption and float."""
    verdict = charge_volts.verdict_of_volts(put, chemistry)
    times = float(case["bank.voltage"]) / 12
    absorption, floating = (stage(chemistry, name, times * 12) for name in ("absorption", "float"))
    this, battery, start = say.volts(put.each * times), charging.called(chemistry), opening(case, verdict)
    if most_volts.named(case.text):
        over = put.each - stage(chemistry, "absorption").high
        held = "True" if abs(over) <= charging.NEAR else "Less than that" if over > 0 else "Not quite"
        most = f"{battery} takes {say.volts(absorption.high)} at most"
        return verdict, f"{held}: {most}, and that only as a stage that ends."
    if put.each > stage(chemistry, "absorption").high + charging.NEAR:
        case.because(TOO_HIGH[chemistry], "settings-by-kind")
        return verdict, f"{start}: {this} is too high for {battery}, which takes {say.volts(absorption.high)} at most."
    if verdict == "no":
        case.step("Absorption is a stage that ends; held for days it dries out and wears the plates", "held-voltage")
        return verdict, f"{start}: {this} suits {battery} only as a stage that ends; held all the time use {floating}."
    if verdict == "yes" and floating.holds(put.each * times) and case.says("detail:never_drops"):
        return verdict, f"{start}: at {this} it need not switch down, because {battery} floats at {floating}."
    if verdict == "yes" and floating.holds(put.each * times):
        return verdict, f"{start}: {this} is a good float for {battery} and may stay on; to fill it takes {absorption}."
    if verdict == "yes" and (hot := warmth_asked.too_much_in_heat(case, chemistry, put.each * times)):
        asks_bad = case.says("detail:harm", "detail:asks_bad") or TOO_MUCH.search(case.text)
        return "marginal", f"{'A little' if asks_bad else 'Only just'}: {hot}."
    if verdict == "yes":
        return in_absorption(case, put, chemistry, start)
    if put.each > stage(chemistry, "float").high:
        why = f"more than a float ({floating}) and less than absorption ({absorption})"
        return verdict, f"{start}: for {battery} {this} is {why}."
    return verdict, f"{start}: {this} is too low to keep {battery} full; its float is {floating}."


def equalised(case: Case, chemistry: str, put: Put | None) -> tuple[str, str]:
    """A programme that equalises, desulphates or reconditions."""
    case.step("Equalising overcharges on purpose; a sealed battery cannot get lost water back", "no-equalising")
    if chemistry in SEALED or caps.has_none(case):
        battery = charging.called(chemistry) if chemistry in SEALED else "a battery without caps"
        never = f"{battery} must not be equalised or desulphated"
        return "no", f"{opening(case, 'no')}: {never}, so use a charger or setting that never does it."
    most = stage("flooded", "equalise")
    if put and put.each > most.high + charging.NEAR:
        return "no", f"No: {say.volts(put.each)} is too high even to equalise, which takes {most}."
    if caps.may_have_none(case):
        head = (
            f"Only if it has caps that unscrew: then at {most}, watched all the time; without caps never equalise it."
        )
        return "marginal", head
    if case.says("detail:by_itself"):
        head = "Only just: a wet-cell battery may be equalised, but only watched, so switch the automatic off."
        return "marginal", head
    return "yes", f"Yes, a wet-cell battery with caps may be equalised at {most}, with somebody watching all the time."


def beyond(case: Case, chemistry: str) -> bool:
    """Whether a battery is being charged over its absorption range now."""
    put = charge_volts.put_out(case)
    if put is None or case.says(*EQUALISES):
        return False
    named = case.stated.get("charger.voltage")
    if named is not None and others_charger.told(case.text, named.span):
        return False
    return put.each > stage(chemistry, "absorption").high + charging.NEAR
