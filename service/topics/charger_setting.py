"""Which setting and which volts a battery is charged with, and whether this charger suits it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.text.patterns import regex
from grammar.told.chargers.listed_settings import place_of
from service import likely, say
from service.case import Case, Value
from service.judgements import (
    by_degree,
    charge_amps,
    charge_volts,
    charging,
    chosen_volts,
    long_bulk,
    new_charger,
    stays_on,
    two_stages,
)
from service.judgements.charge_volts import Put, stage
from service.kinds import CHARGED
from service.reply import Answer, Figure, Option, Urgency, strictness
from service.told import caps, charger_settings, in_its_place, most_volts
from service.topic import Lever, Topic

LONGEST = 30  # words of a headline
SEALED = ("agm", "gel", "lfp")
EQUALISES = ("detail:equalise", "detail:equalising")
NEVER_EQUALISES = regex(
    r"\b(?:no|not|never|without|doesn'?t|does not|can'?t|cannot)\W+(?:\w+\W+){0,2}?(?:desul|equali|recondition|repair)",
    re.I,
)
WORD = {"flooded": "wet-cell (flooded)", "agm": "AGM", "gel": "gel", "lfp": "lithium"}
TOO_HIGH = {
    "flooded": "Above its limit it boils off water and wears its plates",
    "agm": "Above its limit it gasses, and a sealed battery cannot get the lost water back",
    "gel": "Above its limit the jelly dries out, and that cannot be undone",
    "lfp": "Above its limit the BMS (the safety switch inside) cuts off, or the cells are harmed",
}
GOOD_FIRST = regex(r"[^.?!]*\b(?:ok|okay|good|fine|right|suit\w*|safe|do)\b[^.?!]*\?", re.IGNORECASE)
HARMS = regex(r"\b(?:harm|matter|hurt|damag|kill|bad|ruin|wrong|cook|problem|worr|too high)\w*", re.IGNORECASE)
FOR_HOURS = regex(
    r"\bfor (?:\w+ ){0,2}hours\b|\bhours (?:on end|now|long|and hours)\b|\ball (?:day|afternoon|evening|morning)\b",
    re.IGNORECASE,
)
WHICH_SETTING = regex(r"\b(?:wh?ich|what)(?: \w+){0,2} (?:setting|mode|programme?|position|profile)s?\b", re.IGNORECASE)
SET_TOO_HIGH = regex(
    r"\bcharg\w+\b[^.?!;]{0,24}\b(?:set |turned |running )?(?:too high|over ?charging)\b"
    r"|\b(?:is|am|are) (?:it|i|we) over ?charging\b",
    re.IGNORECASE,
)
EQUALISING = regex(r"\b(?:eq\b|equali[sz]\w*)", re.IGNORECASE)
UNLABELLED = regex(
    r"\b(?:just|only) says? (?:leisure|marine|deep[ -]?cycle|domestic|battery)\b"
    r"|\bno (?:other )?(?:label|sticker|markings?)\b"
    r"|\b(?:label|sticker) (?:is |has )?(?:gone|missing|worn|off|says nothing|unreadable|illegible)\b",
    re.IGNORECASE,
)
SINCE = ("detail:since_months",)  # it has been on for long
LEFT = ("detail:left_on", "detail:held", "detail:never_drops", "word:winter")


def own_setting(case: Case) -> Iterator[Value]:
    """The setting of the battery's own kind."""
    chemistry = charging.known_kind(case)
    if chemistry in CHARGED and (case.said("charger.setting") or charger_settings.lacks(case, str(chemistry))):
        yield str(chemistry)


def own_words(case: Case, value: Value) -> str:
    """The setting to choose, or a charger that has it."""
    name = f"the {WORD[str(value)]} setting"
    return f"a charger that has {name}" if charger_settings.lacks(case, str(value)) else name


def right_volts(case: Case) -> Iterator[Value]:
    """The nearest volts that suit: of the float where they are held, else of the absorption."""
    chemistry, put = charging.known_kind(case), charge_volts.put_out(case)
    if chemistry in CHARGED and put is not None:
        found = stage(str(chemistry), "float" if put.held else "absorption", float(case["bank.voltage"]))
        yield from (found.high, found.low) if put.each > found.high else (found.low, found.high)


def automatic(case: Case) -> Iterator[Value]:
    """A charger that switches itself down."""
    if charging.unregulated(case):
        yield "smart"


TOPIC = Topic(
    "charger-setting",
    "Setting and volts of the charger",
    amps="charger.current",
    cautions=(
        "lithium-kind",
        "lithium-cold",
        "alternator-lithium",
        "isolated-outputs",
        "explosive-gas",
        "equalise",
        "manual-first",
        "mains",
    ),
    levers=(
        Lever("charger.setting", own_setting, own_words),
        Lever("charger.voltage", right_volts, "{value} from the charger"),
        Lever("charger.current", charge_amps.largest, "a charger of {value} or less"),
        Lever("charger.kind", automatic, "an automatic charger, which drops to float by itself"),
        charging.WARMER,
    ),
    likely={
        "battery.chemistry": likely.KIND,
        "charger.setting": (("wet-cell or flooded", "flooded"), ("AGM", "agm"), ("gel", "gel"), ("lithium", "lfp")),
        "charger.kind": likely.FROM_THE_ENGINE,
    },
    unsure={"battery.chemistry": "We can't say yet: each kind of battery has its own charging volts."},
    idle={"bank-size": ("load.current", "load.power", "load.model", "load.time")},
    meanwhile="leave the charger off until then",
    of_two="worst",
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The kind's own volts, and what was said of the charger against them: the strictest finding stands."""
    in_its_place.without_the_old(case)
    chemistry = charging.known_kind(case)
    stopped = charging.barred(TOPIC, case, chemistry, alternator="dc-dc" not in case.beside)
    if stopped := stopped or new_charger.judged(TOPIC, case):
        return stopped
    whatever = system_apart(case) or long_bulk.judged(TOPIC, case) or blind(case)
    if whatever:
        return whatever
    if found_so := untold(case, chemistry) or by_degree.judged(TOPIC, case):
        return found_so
    if chemistry not in CHARGED:
        return of_each_kind(case) or of_any_kind(case, chemistry)
    if chosen := choice(case, str(chemistry)) or chosen_volts.judged(TOPIC, case, str(chemistry)):
        return chosen
    figures = charge_volts.figures(case, str(chemistry))
    if both := two_stages.judged(case, str(chemistry)):
        head = f"{opening(case, both.verdict)}: {both.say}."
        if both.verdict == "yes" and (amps := charge_amps.judged(case, str(chemistry))):
            return with_amps(
                case, amps, f"{opening(case, 'yes')}: {both.short}", "both volts are right, but ", *figures
            )
        over = both.verdict == "no" and beyond(case, str(chemistry))
        urgency: Urgency = "today" if over else "routine"
        verdict, head = amps_as_well(case, str(chemistry), both.verdict, head)
        return TOPIC.says(verdict, head, *figures, compare=both.sides, would_change=both.changes, urgency=urgency)
    verdict, head = found(case, str(chemistry))
    if verdict == "needs-facts":
        return TOPIC.needs("charger.setting", headline=head, figures=figures)
    if verdict == "yes" and (amps := charge_amps.judged(case, str(chemistry))):
        why = "the setting is right, but " if case.said("charger.setting") else ""
        return with_amps(case, amps, head.rstrip("."), why, *figures)
    over = verdict == "no" and beyond(case, str(chemistry))
    verdict, head = amps_as_well(case, str(chemistry), verdict, head)
    return TOPIC.says(verdict, head, *figures, urgency="today" if over else "routine")


def amps_as_well(case: Case, chemistry: str, verdict: str, head: str) -> tuple[str, str]:
    """Verdict and headline where setting or volts do not suit, with too many amps named beside them."""
    if verdict not in ("no", "marginal") or case.says(*EQUALISES) or "charger-size" in case.beside:
        return verdict, head
    if "battery.capacity" in case.second and case.get("bank.layout") != "parallel":  # each has amps of its own
        return verdict, head
    amps = charge_amps.judged(case.fresh(), chemistry)
    if amps is None or not amps.short:
        return verdict, head
    charge_amps.judged(case, chemistry)  # with its steps
    worst = max(verdict, amps.verdict, key=strictness)
    first = f"{opening(case, verdict)}: "
    head = f"{opening(case, worst)}: {head.removeprefix(first)}" if head.startswith(first) else head
    both = f"{head.rstrip('.')}; and {amps.short}."
    return worst, both if len(both.split()) <= LONGEST else head


def untold(case: Case, chemistry: str | None) -> Answer | None:
    """What is asked of a charger of which neither volts nor setting are told: may it stay on, does it go too high."""
    if charge_volts.put_out(case) is not None or case.said("charger.setting") or case.says(*EQUALISES):
        return None
    alone = not case.says("word:setting") and "storage" not in case.beside  # else it is the setting that is asked
    if alone and (kept_on := stays_on.judged(TOPIC, case)):
        return kept_on
    if alone and stays_on.beside_size(case) and (kept_on := stays_on.of_its_kind(TOPIC, case)):
        return kept_on
    return set_too_high(case, chemistry) if SET_TOO_HIGH.search(case.text) else None


def set_too_high(case: Case, chemistry: str | None) -> Answer:
    """Whether a charger goes too high, told by a sign of it alone: the volts that it gives decide."""
    start = "Not by itself" if "maintenance" in case.beside else "We can't say yet"
    head = f"{start}: read the volts on the posts near the end of a charge; those and the battery's kind tell it."
    more = () if chemistry in CHARGED else ("battery.chemistry",)
    return TOPIC.needs("charger.voltage", *more, headline=head)


def with_amps(case: Case, amps: charge_amps.Finding, head: str, but: str, *figures: Figure) -> Answer:
    """The answer where setting and volts are right: what its amps make of it."""
    if amps.wants:
        return TOPIC.needs(*amps.wants, headline=f"We can't say yet: {amps.say}.", figures=figures)
    if amps.verdict == "yes":
        both = f"{head}; {amps.say}."
        return TOPIC.says("yes", both if len(both.split()) <= LONGEST else f"{head}.", *figures)
    return TOPIC.says(amps.verdict, f"{opening(case, amps.verdict)}: {but}{amps.say}.", *figures)


def found(case: Case, chemistry: str) -> tuple[str, str]:
    """Verdict and headline for a battery whose kind is known."""
    put, setting = charge_volts.put_out(case), case.said("charger.setting")
    if case.says(*EQUALISES) and not NEVER_EQUALISES.search(case.text):
        return equalised(case, chemistry, put)
    if put and (over := charge_volts.over_its_own_limit(case, put)):
        return "no", f"{opening(case, 'no')}: {over}."
    findings = [of_volts(case, put, chemistry)] if put else []
    findings += [of_setting(case, str(setting), chemistry)] if setting else []
    if findings:
        return max(findings, key=lambda item: strictness(item[0]))
    if case.get("charger.kind") == "smart" and case.says(*LEFT) and chemistry != "lfp":
        return "yes", f"Yes: a smart charger on its {WORD[chemistry]} setting drops to float, so it may stay on."
    if case.says("detail:same_charger"):
        kinds = list(dict.fromkeys((chemistry, *told(case))))
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
    if setting == "flooded" and chemistry in SEALED and case.says(*LEFT) and not NEVER_EQUALISES.search(case.text):
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
    if verdict == "yes" and FOR_HOURS.search(case.text):
        case.step("Absorption is a stage that ends; held for days it dries out and wears the plates", "held-voltage")
        ends = f"if it drops to a float of {floating} after some hours"
        return verdict, f"{start}: {this} is inside the {absorption} of {battery}, {ends}."
    if verdict == "yes":
        return verdict, f"{start}: {this} is inside the {absorption} of {battery}, as a stage that ends by itself."
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


def blind(case: Case) -> Answer | None:
    """A charger that cannot see the battery: a timer or an unregulated trickle charger, whatever the battery; where it
    is left on, one without a float stage as well."""
    name = charging.must_come_off(case)
    if not name or not (charging.unregulated(case) or case.says(*LEFT)) or charge_volts.put_out(case):
        return None
    timer = case.get("charger.kind") == "timer"
    if charging.unregulated(case):
        case.step(f"A {'clock' if timer else 'steady current'} cannot see when the battery is full", "timer-charger")
    else:
        case.step("Absorption is a stage that ends; held for days it dries out and wears the plates", "held-voltage")
    if case.says("detail:watched") and not case.says(*LEFT):
        return TOPIC.says("marginal", f"Only just: a {name} will do while somebody watches and ends the charge.")
    why = "because it goes on when the battery is full"
    if case.says(*SINCE):
        short = "timer" if timer else "unregulated" if charging.unregulated(case) else "old"
        case.because("Warm, swollen or smelling: leave it alone and tell us", "timer-charger")
        case.because("Else let it rest for 12 hours, read the volts, then test it under load", "timer-charger")
        head = f"{opening(case, 'no')}: take the {short} charger off now, with the hatches open, {why}."
        return TOPIC.says("no", head)
    return TOPIC.says("no", f"{opening(case, 'no')}: a {name} must not stay on, {why}.")


def system_apart(case: Case) -> Answer | None:
    """A 24 V charger on a 12 V battery."""
    apart = charge_volts.systems_apart(case)
    if apart is None:
        return None
    charger, battery = (say.quantity(volts, "V") for volts in apart)
    case.step("A charger drives its full voltage into whatever battery is on it", "settings-by-kind")
    return TOPIC.says("no", f"No: a {charger} charger must never go on a {battery} battery, not even for a minute.")


def choice(case: Case, chemistry: str) -> Answer | None:
    """Which of a charger's settings, where several are told: the battery's own, else the one that goes least high."""
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
        return TOPIC.says("information", f"Use {at}: {why}{never}.", *figures)
    others = {kind: stage(kind, "absorption", volts).high for kind in offers if kind != chemistry}
    if shown or not others:
        return None
    least = min(others, key=lambda kind: others[kind])
    if others[least] > most.high + charging.NEAR and charger_settings.plain_one(case):
        case.because(TOO_HIGH[chemistry], "settings-by-kind")
        head = f"Neither is made for {battery}: {WORD[least]} goes up to {say.volts(others[least])}, so use the other "
        head += f"only if its manual keeps it at or under {say.volts(most.high)}."
        return TOPIC.says("no", head, *figures)
    if others[least] > most.high + charging.NEAR:
        head = f"None of them: each goes over the {say.volts(most.high)} that {battery} takes at most."
        return TOPIC.says("no", head, *figures)
    wet = "; the wet-cell one only if its manual says it never equalises"
    wet = wet if least != "flooded" and others.get("flooded", 99.0) <= most.high + charging.NEAR else ""
    fills = "" if others[least] >= most.aim + charging.NEAR else ", which may not quite fill it"
    head = f"None is made for {battery}: take the {WORD[least]} one, up to {say.volts(others[least])}{fills}{wet}."
    return TOPIC.says("marginal", head, *figures)


def of_each_kind(case: Case) -> Answer | None:
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
    return TOPIC.says("information", head, compare=tuple(sides))


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


def of_any_kind(case: Case, chemistry: str | None) -> Answer:
    """The kind is not known: an answer only where every kind says no."""
    kinds = CHARGED[:3] if chemistry == "lead" else CHARGED
    verdicts = {found(case.supposing({"battery.chemistry": kind}), kind)[0] for kind in kinds}
    put = charge_volts.put_out(case)
    if verdicts == {"no"} and put:
        case.step("No kind of battery's absorption, float or equalising range holds it", "settings-by-kind")
        head = f"No: {say.volts(put.each * float(case['bank.voltage']) / 12)} is wrong for every kind of battery."
        return TOPIC.says("no", head, asks=(TOPIC.ask("battery.chemistry", TOPIC.likely["battery.chemistry"]),))
    on_sealed = case.said("charger.setting") in SEALED  # "a desulphate charger on AGM" is on one
    if case.says(*EQUALISES) and (on_sealed or caps.has_none(case)) and not NEVER_EQUALISES.search(case.text):
        return TOPIC.says(*equalised(case, str(case.said("charger.setting") or chemistry), put))
    if case.says(*EQUALISES):
        head = "We can't say yet: only a wet-cell battery with caps may be equalised, never AGM, gel or lithium."
        return TOPIC.needs("battery.chemistry", headline=head)
    return TOPIC.needs("battery.chemistry", headline=before_the_kind(case))


def beyond(case: Case, chemistry: str) -> bool:
    """Whether a battery is being charged over its absorption range now."""
    put = charge_volts.put_out(case)
    if put is None or case.says(*EQUALISES):
        return False
    return put.each > stage(chemistry, "absorption").high + charging.NEAR
