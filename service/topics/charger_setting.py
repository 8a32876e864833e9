"""Which setting and which volts a battery is charged with, and whether this charger suits it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.text.patterns import regex
from service import likely, say
from service.case import Case, Value
from service.judgements import (
    any_kind,
    by_degree,
    charge_amps,
    charge_volts,
    charging,
    chosen_setting,
    chosen_volts,
    long_bulk,
    new_charger,
    stays_on,
    too_many_volts,
    two_stages,
    warmth_asked,
)
from service.judgements.charge_volts import stage
from service.judgements.charger_suits import EQUALISES, LEFT, WORD, beyond, found, opening
from service.kinds import CHARGED
from service.reply import Answer, Figure, Urgency, strictness
from service.told import charger_fault, charger_settings, in_its_place, may_i
from service.topic import Lever, Topic

LONGEST = 30  # words of a headline
SET_TOO_HIGH = regex(
    r"\bcharg\w+\b[^.?!;]{0,24}\b(?:set |turned |running )?(?:too high|over ?charging)\b"
    r"|\b(?:is|am|are) (?:it|i|we) over ?charging\b",
    re.IGNORECASE,
)
SPECIAL = regex(  # "does gel need a special charger"
    r"\b(?:do|does|must|will|would|should)\b[^.?!;]{0,40}\b(?:special|particular|different|dedicated|other|own)"
    r" (?:kind of |sort of |type of )?charger\b",
    re.IGNORECASE,
)
SINCE = ("detail:since_months",)  # it has been on for long


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
    whatever = (
        too_many_volts.judged(TOPIC, case)
        or too_many_volts.half(TOPIC, case)
        or long_bulk.judged(TOPIC, case)
        or blind(case)
    )
    if whatever:
        return whatever
    found_so = untold(case, chemistry) or by_degree.judged(TOPIC, case) or warmth_asked.judged(TOPIC, case, chemistry)
    if found_so:
        return found_so
    if chemistry not in CHARGED:
        return any_kind.judged(TOPIC, case, chemistry)
    chosen = chosen_setting.judged(TOPIC, case, str(chemistry)) or chosen_volts.judged(TOPIC, case, str(chemistry))
    if chosen := chosen or in_the_cold(case, str(chemistry)):
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
    return as_found(case, str(chemistry), *figures)


def as_found(case: Case, chemistry: str, *figures: Figure) -> Answer:
    """What was said of the charger against the kind's own volts, and whether it may stay on at them."""
    verdict, head = found(case, chemistry)
    if verdict == "information" and SPECIAL.search(case.text):
        head = with_its_setting(chemistry, head)
    if verdict == "needs-facts":
        return TOPIC.needs("charger.setting", headline=head, figures=figures)
    if verdict == "information" and charging.cold_share(case, chemistry):
        slowly = f"{head.rstrip('.')}; and only slowly at {say.temperature(float(case['ambient.temperature']))}."
        if (amps := charge_amps.judged(case, chemistry)) is not None:
            case.because(say.capital(amps.say), "lithium-charge-cold")
        return TOPIC.says(verdict, slowly if len(slowly.split()) <= LONGEST else head, *figures)
    if verdict == "yes" and (kept_on := stays_on.at_its_volts(TOPIC, case, chemistry)):
        return replace(kept_on, figures=figures)
    if verdict == "yes" and (amps := charge_amps.judged(case, chemistry)):
        why = "the setting is right, but " if case.said("charger.setting") else ""
        return with_amps(case, amps, head.rstrip("."), why, *figures)
    over = verdict == "no" and beyond(case, chemistry)
    verdict, head = amps_as_well(case, chemistry, verdict, head)
    return TOPIC.says(verdict, head, *figures, urgency="today" if over else "routine")


def with_its_setting(chemistry: str, head: str) -> str:
    """Whether a kind needs a charger of its own: only one that has its setting."""
    opens = "No special one" if chemistry == "flooded" else "Yes"
    volts = head.partition(": ")[2].removesuffix(".")
    return f"{opens}: one with {article(WORD[chemistry])} {WORD[chemistry]} setting, {volts}."


def article(word: str) -> str:
    """ "a" or "an" before the name of a setting."""
    return "an" if word[0] in "aeiouA" else "a"


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
    if charger_fault.told(case.text):
        head = (
            "We can't say yet: its own manual tells what that lamp or beep means; the volts on the posts, with it on, "
            "tell us more."
        )
        return TOPIC.needs("charger.voltage", headline=head)
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


def in_the_cold(case: Case, chemistry: str) -> Answer | None:
    """Leave to charge lithium just above freezing, of which no setting is asked: only slowly, as its amps decide."""
    leave = may_i.asked(case.text) == "charge"
    set_so = case.says("word:setting") or case.said("charger.setting") or charge_volts.put_out(case) is not None
    if not leave or set_so or not charging.cold_share(case, chemistry):
        return None
    figures = charge_volts.figures(case, chemistry)
    amps = charge_amps.judged(case, chemistry)
    if amps is not None and amps.wants:
        return TOPIC.needs(*amps.wants, headline=f"Only slowly: {amps.say}.", figures=figures)
    return None if amps is None else TOPIC.says(amps.verdict, f"{opening(case, amps.verdict)}: {amps.say}.", *figures)


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
