"""How many amps of charger a battery or bank wants, and whether the one at hand fits."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.text.patterns import regex
from service import likely, reference, say
from service.calculators import charging as sums
from service.case import Case, Value
from service.judgements import charging, stays_on, too_many_volts
from service.judgements.charge_amps import TOO_MUCH
from service.judgements.charging import Span
from service.kinds import CHARGED
from service.reply import Answer, Figure, Option
from service.told import banks_apart, deadline, in_its_place, old_charger, single_battery
from service.topic import Lever, Topic

MILD = f"10{say.NB}°C"  # above it lithium takes all that suits it
TOO_LITTLE = "A battery that is seldom charged full loses strength, and a small charger takes very long"
SLOW = "A small charger takes very long to fill it"  # lithium need not be full


def fitting(case: Case) -> Iterator[Value]:
    """The ends of the suitable range, the nearer one first."""
    case = case.fresh()
    chemistry, amps = charging.known_kind(case), case.get("charger.current")
    if chemistry in (*CHARGED, "lead") and amps and "charge.capacity" in case:
        found = charging.span(case, chemistry, charging.capacity(case))
        yield from sorted((found.low, found.high), key=lambda end: abs(end - amps))


def fitting_words(case: Case, value: Value) -> str:
    """A larger charger, or a smaller one."""
    more = float(value) > float(case["charger.current"])
    return f"a charger of {say.amps(float(value))} or {'more' if more else 'less'}"


KEEPS_FULL = "only keeps it full"  # what a charger does that is too small to fill the battery
TOPIC = Topic(
    "charger-size",
    "Amps of the charger",
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
        Lever("charger.current", fitting, fitting_words),
        charging.WARMER,
    ),
    likely={"battery.chemistry": likely.KIND},
    unsure={"battery.capacity": "We can't say yet: the amp-hours of all the batteries it charges decide the amps."},
    of_two="worst",
)


PLENTY = regex(r"\b(?:plenty|all it needs|more than enough|ample)\b", re.IGNORECASE)
MOST_HOURS = 48  # of a charge that days on shore power surely have room for


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The range that suits, and a stated charger against it."""
    in_its_place.without_the_old(case)
    single_battery.by_itself(case)
    chemistry = charging.known_kind(case)
    stopped = charging.barred(TOPIC, case, chemistry) or too_many_volts.judged(TOPIC, case)
    if stopped:
        return stopped
    if kept_on := stays_on.judged(TOPIC, case):
        return kept_on
    if pair := two_banks(case):
        return of_each_bank(case, pair)
    if "charge.capacity" not in case:
        return TOPIC.needs("battery.capacity", *(() if chemistry else ("battery.chemistry",)))
    amp_hours = charging.capacity(case)
    if chemistry is None:
        return of_any_kind(case, amp_hours)
    found = charging.span(case, chemistry, amp_hours)
    amps = case.get("charger.current")
    verdict = found.verdict(amps, charging.unregulated(case)) if amps else "information"
    if verdict in ("no", "marginal"):
        slow = SLOW if chemistry == "lfp" else TOO_LITTLE
        case.because(TOO_MUCH if found.over(amps) else slow, "charging-by-kind")
    head = judged(case, found, amps, verdict) if amps else advice(case, found)
    head = f"{head.removesuffix('.')}{stays_on.also_told(case)}."
    if verdict == "yes" and its_setting_decides(case, chemistry):
        head = f"Only if it has a lithium setting: {head.partition(': ')[2]}"
        return TOPIC.needs("charger.setting", headline=head, figures=figures(found))
    kind_decides = chemistry == "lead" and bool(amps) and found.over(amps) and verdict == "marginal"
    asks = (TOPIC.ask("battery.chemistry", (("AGM", "agm"), ("gel", "gel"), ("wet-cell", "flooded"))),)
    return TOPIC.says(
        verdict, head, *figures(found), asks=asks if kind_decides else (), compare=apart(case, chemistry, verdict)
    )


def two_banks(case: Case) -> tuple[banks_apart.Bank, banks_apart.Bank] | None:
    """Two banks of unlike kinds without a charger, the one that is asked about first; lithium in the cold is no case
    for both at once."""
    pair = banks_apart.told(case.text) if case.said("charger.current") is None else None
    cold_lithium = case.said("ambient.temperature") is not None and pair and "lfp" in {bank.kind for bank in pair}
    return None if cold_lithium else pair


def of_each_bank(case: Case, pair: tuple[banks_apart.Bank, banks_apart.Bank]) -> Answer:
    """What each of two banks takes by itself; the figures are those of the one that is asked about."""
    for fact in ("battery.capacity", "battery.chemistry", "battery.count"):
        case.known(fact)
        if fact in case.second:
            case.used.setdefault((fact, 2), replace(case.second[fact], of=2))
    spans = [charging.span(case, one.kind, one.amp_hours) for one in pair]
    options = tuple(Option(bank(found), "information", figures(found)) for found in spans)
    first, other = spans
    head = (
        f"{bank(first)} takes {suits(first)}, {bank(other)} {suits(other)}: each from an output or charger of its own."
    )
    return TOPIC.says("information", head, *figures(first), compare=options)


def its_setting_decides(case: Case, chemistry: str) -> bool:
    """Whether a charger from before the lithium is put up, of which only the amps are told."""
    told = case.said("charger.setting") is not None or case.said("charger.voltage") is not None
    return chemistry == "lfp" and old_charger.told(case.text) and not told and "charger-setting" not in case.beside


def figures(found: Span) -> tuple[Figure, ...]:
    """Both ends of the range; in the cold the range that suits when it is warmer as well."""
    ends = (
        Figure("charger_current_low", "at least", found.low, "A"),
        Figure("charger_current_high", "at most in this cold" if found.warm else "at most", found.high, "A"),
    )
    if not found.warm:
        return ends
    low, high = found.warm
    return (*ends, Figure("charger_current_warm", f"from {MILD} on", high, "A", low, high))


def cold(case: Case, found: Span) -> str:
    """The temperature that caps the current, " at 3 °C"; "" where none does."""
    return f" at {say.temperature(float(case['ambient.temperature']))}" if found.warm else ""


def bank(found: Span) -> str:
    """The bank in words: "220 Ah of gel"."""
    return f"{say.amp_hours(found.capacity)} of {say.CHEMISTRY[found.kind]}"


def range_of(case: Case, found: Span) -> str:
    """The range in words, in the cold its cap."""
    return f"{say.at_most(found.high)} at most{cold(case, found)}" if found.warm else suits(found)


def suits(found: Span) -> str:
    """The range in words, one value where both ends meet."""
    return say.within(found.low, found.high)


def advice(case: Case, found: Span) -> str:
    """The headline where no charger is put up."""
    volts = float(case["bank.voltage"])
    of_both = case.second.keys() & {"battery.capacity", "battery.chemistry"}  # whose volts are told is open
    sort = f"a {say.quantity(volts, 'V')} charger" if volts > 12 and not of_both else "a charger"
    if found.warm:
        low, high = found.warm
        most = f"{say.at_most(found.high)} at most{cold(case, found)}"
        return f"{bank(found)} takes {sort} of {most}, {say.within(low, high)} when it is warmer than {MILD}."
    return f"{bank(found)} takes {sort} of {suits(found)}."


def judged(case: Case, found: Span, amps: float, verdict: str) -> str:
    """The headline for a stated charger; it opens with the answer to the question as it was put."""
    big, small = case.says("detail:too_big"), case.says("detail:too_small")
    this, most = say.amps(amps), say.at_most(found.high)
    if case.says("request:what_size") and verdict in ("no", "marginal"):
        how = "is too much" if found.over(amps) else slowly(found, amps)
        return f"{suits(found)} suits {bank(found)}; your {this} {how}."
    if verdict == "yes":
        opening = "No, it fits" if big or small else "Yes"
        if amps < found.low * (1 - charging.NEAR):
            return f"{opening}: {this} will do for {bank(found)}, just under the {suits(found)} that suits it."
        return f"{opening}: {this} suits {bank(found)}, which takes {range_of(case, found)}."
    if verdict == "no":
        reason = " from a charger that does not regulate" if charging.unregulated(case) else ""
        takes = f"{bank(found)}, which takes {most} at most{cold(case, found)}"
        return f"{'Yes, too big' if big else 'No'}: {this}{reason} is too much for {takes}."
    if found.over(amps):
        opening = "Yes, rather big" if big else "Only just"
        only = "use it only if it regulates its voltage"
        return f"{opening}: {this} is more than the {most} that suits {bank(found)}; {only}."
    opening = "Yes, rather small" if small else "Only just"
    if found.maintains(amps) and PLENTY.search(case.text):
        opening = "No"
    if deadline.for_days(case.text) and not charging.unregulated(case) and (filled := fills(case, found)):
        return f"{opening}: {range_of(case, found)} suits {bank(found)}, but left on for days {this} {filled}."
    return f"{opening}: for {bank(found)} {this} {slowly(found, amps)}; {range_of(case, found)} suits it."


def fills(case: Case, found: Span) -> str:
    """What too few amps do in days together, from the charge to which such a battery is used down; "" over two days."""
    family = "lithium" if found.kind == "lfp" else "lead"
    used = reference.row("usable", family=family)["share"]
    row = reference.row("charge_factor", chemistry=found.kind)
    amps, back = float(case["charger.current"]), found.capacity * float(used.value) / 100 * float(row["factor"].value)
    hours = round(sums.time(back, amps, row["absorption"].value))
    if hours > MOST_HOURS:
        return ""
    told = f"{say.quantity(back, 'Ah', 0)} at {say.amps(amps)} is {say.quantity(hours, 'h')} to full"
    case.step(told, row["factor"].cite, "absorption-time")
    return f"fills it from {say.number(100 - float(used.value))}{say.NB}% in about {say.duration(hours * 60)}"


def slowly(found: Span, amps: float) -> str:
    """What too few amps do."""
    return KEEPS_FULL if found.maintains(amps) else "fills it slowly"


def of_any_kind(case: Case, amp_hours: float) -> Answer:
    """The kind is not known: each kind's range, and an answer only where all kinds agree."""
    spans = [charging.span(case, chemistry, amp_hours) for chemistry in CHARGED]
    amps = case.get("charger.current")
    verdicts = [found.verdict(amps, charging.unregulated(case)) if amps else "" for found in spans]
    sides = tuple(
        Option(say.CHEMISTRY[found.kind], verdict or "information", figures(found))
        for found, verdict in zip(spans, verdicts, strict=True)
    )
    agreed = set(verdicts) if amps else set()
    if len(agreed) == 1 and "yes" not in agreed:
        verdict = verdicts[0]
        over = all(found.over(amps) for found in spans)
        kept = bool(amps) and all(found.maintains(amps) for found in spans)
        bank_of_any = f"{say.amp_hours(amp_hours)} of any kind"
        does = f"is too much for {bank_of_any}" if over else f"fills only slowly {bank_of_any}"
        does = f"only keeps {bank_of_any} full" if kept and not over else does
        start = "No" if verdict == "no" else "Only just"
        head = f"{start}: {say.amps(amps)} {does}."
        return TOPIC.says(verdict, head, compare=sides, asks=(TOPIC.ask("battery.chemistry"),))
    if amps and set(verdicts[:3]) == {"yes"}:
        lead_takes = say.within(spans[0].low, spans[2].high)
        head = f"If it is lead, {say.amps(amps)} suits {say.amp_hours(amp_hours)}, whatever its kind ({lead_takes})"
        head = f"{head}; lithium {suits(spans[3])}, so the kind decides."
        return replace(TOPIC.needs("battery.chemistry", headline=head), compare=sides)
    head = (
        f"We can't say yet: {say.amp_hours(amp_hours)} of lead takes {say.within(spans[0].low, spans[2].high)} "
        f"whatever its kind, lithium {suits(spans[3])}, so the kind decides."
    )
    return replace(TOPIC.needs("battery.chemistry", headline=head), compare=sides)


def apart(case: Case, chemistry: str, verdict: str) -> tuple[Option, ...]:
    """What each of two batteries joined in parallel would take alone."""
    other = case.second.get("battery.capacity")
    if other is None or case.get("bank.layout") != "parallel":
        return ()
    spans = [charging.span(case, chemistry, float(value)) for value in (case["battery.capacity"], other.value)]
    return tuple(Option(f"{say.amp_hours(found.capacity)} alone", verdict, figures(found)) for found in spans)
