"""How a battery is laid up: how long its charge lasts, how often to look, what is left after a time."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.text.patterns import regex
from service import likely, say
from service.case import Case, Value
from service.judgements import frost, laid_up
from service.judgements.doubt import shown
from service.judgements.laid_up import FULL, LaidUp, half_full, laid, left_on, plot, recharge_volts, start
from service.reply import Answer, Figure, Option, strictest, strictness
from service.rules.readings import NEAR, cite, limit
from service.sentences import on_the_charger, wording
from service.sentences.by_date import by_date, by_the_dates, opened_by
from service.sentences.laid_up import as_asked, how_full
from service.sentences.open_lay_up import home, in_frost, without_time
from service.told import charger_left_on, laid_up_asked, planned_charge, pump_left_on
from service.topic import Lever, Topic


def fuller(case: Case) -> Iterator[Value]:
    """More charge in steps of 5 %."""
    now = laid_up.charge_now(case, start(case))
    yield from (float(charge) for charge in range(5, 101, 5) if charge > now)


def shorter(case: Case) -> Iterator[Value]:
    """Whole days until the next charge."""
    if case.said("storage.time") is not None:
        yield float(int(laid(case).recharge + NEAR))


TOPIC = Topic(
    "storage",
    "Laying up",
    of_two="worst",
    cautions=("lithium-cold", "frost", "check-date", "short-circuit", "lift"),
    levers=(
        Lever("drain.current", lambda case: (0.0,) if case.said("drain.current") else (), "everything disconnected"),
        Lever(
            "battery.charge",
            fuller,
            "charged to {value} before it is laid up",
            without=("reading.voltage", "reading.gravity"),
        ),
        Lever("storage.time", shorter, "a charge every {value}"),
    ),
    likely={"battery.capacity": likely.CAPACITY},
)
NEARLY_FULL = 90.0  # percent
FULL_OR_HALF = regex(
    r"\bfull(?:y charged)?,? or (?:only |just |about |better )?(?:at )?half\b"
    r"|\bhalf(?: full| charged| charge)?,? or (?:quite |completely |fully |right )?(?:at )?(?:full|charged)\b",
    re.IGNORECASE,
)


FULL_ASKED = regex(  # "store it at 100 %?"
    r"\b(?:charged?|charging|stored?|keep|kept|leave|left|fill)\b[^.?!;]{0,24}"
    r"\b(?:100 ?(?:%|percent)|full\w*)[^.?!;]{0,12}\?",
    re.IGNORECASE,
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Days to a charge and between looks; a verdict for a stated time or a charge too low to store at."""
    if planned_charge.to_full(case.text, frost.WORDS, without=True) and not laid_up.is_lithium(case):
        case.stated = planned_charge.charged(case.stated)
    if how_full_is_asked(case):  # not told
        case.stated = {fact: item for fact, item in case.stated.items() if fact != "battery.charge"}
        case.second = {fact: item for fact, item in case.second.items() if fact != "battery.charge"}
    if on_the_charger.filled_first(
        case
    ):  # "how long from 50 %, and may it stay on all winter?": it is filled before that
        case.stated = planned_charge.charged(case.stated)
    if "battery.chemistry" in case.second and case.said("storage.time") is None and not left_on(case):
        return two_kinds(case)
    if "reading.voltage" in case.second and (low := one_of_them_low(case)):
        return low
    return ashore_or_aboard(case, one(case))


def one_of_them_low(case: Case) -> Answer | None:
    """Two batteries of which one reads too low to be laid up: that one is charged first; None where neither does."""
    other = case.others()
    sides = [(shown(float(item["reading.voltage"])), one(item)) for item in (case, other)]
    low = [volts for volts, found in sides if any(item.label == "charge" for item in found.figures)]  # and that now
    if not low:
        return None
    case.follow_other(other)
    options = tuple(Option(volts, found.verdict, found.figures) for volts, found in sides)
    worse = max((found for _, found in sides), key=lambda found: strictness(found.verdict))
    which = "both" if len(low) == len(sides) else f"the one at {low[0]}"
    look = say.quantity(limit("check-most"), "d", 0)
    head = f"No, not yet: charge {which} full first; then disconnect both and look at them every {look}."
    return replace(worse, headline=head, compare=options)


def how_full_is_asked(case: Case) -> bool:
    """Whether it is asked how full it is laid up; of lithium also whether full."""
    full = laid_up.is_lithium(case) and case.said("storage.time") is not None and FULL_ASKED.search(case.text)
    return bool(full or FULL_OR_HALF.search(case.text))


def ashore_or_aboard(case: Case, found: Answer) -> Answer:
    """The answer where it is asked whether it is laid up ashore or aboard: either, if it is looked at."""
    days = {figure.name: float(figure.value) for figure in found.figures if figure.unit == "d"}
    if found.verdict not in ("yes", "information") or not laid_up_asked.where(case.text) or left_on(case):
        return found
    how = f"{how_full(case, laid(case))} and disconnected"
    look, again = (say.quantity(int(days[name] + NEAR), "d", 0) for name in ("check_interval", "days_to_recharge"))
    head = f"Either will do: {how}, it needs a look every {look} and a charge after {again}; "
    return replace(found, headline=f"{head}where nobody can do that aboard, take it ashore.")


def two_kinds(case: Case) -> Answer:
    """Two kinds side by side: how full each is laid up, and the sooner look."""
    other = case.others()
    sides = [(item, one(item)) for item in (case, other)]
    case.follow_other(other)
    apart = other.used.get(("battery.charge", 1))
    if apart is not None and apart.origin == "assumed":
        case.used[("battery.charge", 2)] = replace(apart, of=2)
    names = [say.CHEMISTRY[str(item["battery.chemistry"])] for item, _ in sides]
    full = [wording.percent(laid_up.charge_now(item, start(item))) for item, _ in sides]
    values = [{figure.name: float(figure.value) for figure in found.figures} for _, found in sides]
    if not all({"check_interval", "days_to_recharge"} <= own.keys() for own in values):
        return max((found for _, found in sides), key=lambda found: strictness(found.verdict))
    look = min(own["check_interval"] for own in values)
    days = [own["days_to_recharge"] for own in values]
    again = [f"charge again after {say.quantity(int(item + NEAR), 'd', 0)}" for item in days]
    each = again if full[0] == full[1] else [f"laid up at {charge} of charge" for charge in full]
    told = "; ".join(f"{name}: {words}" for name, words in zip(names, each, strict=True))
    head = f"{say.capital(told)}; disconnect both, and look every {say.quantity(look, 'd', 0)}."
    options = tuple(Option(name, found.verdict, found.figures) for name, (_, found) in zip(names, sides, strict=True))
    worse = max(sides, key=lambda side: strictness(side[1].verdict))[1]
    head = head if worse.verdict == "information" else worse.headline
    return replace(worse, headline=head, compare=options)


def pump_on(case: Case) -> bool:
    """Whether a pump or an alarm is told to stay on, by no amps that tell how long the battery lasts."""
    told = pump_left_on.left_on(case.text) and not case.says("thing:charger", "about:charger")
    return told and case.said("drain.current") is None and case.said("solar.power") is None


def one(case: Case) -> Answer:
    """The answer for one battery."""
    if case.said("battery.chemistry") is None:
        case.assume("battery.chemistry", "lead", "the kind is not said")
    if left_on(case) and "bank.capacity" not in case:
        head = "We can't say yet: something stays on, so please tell us the capacity of the battery."
        return TOPIC.needs("battery.capacity", headline=head)
    if pump_on(case):
        head = "We can't say yet: what stays on decides; leave it on, and tell us its amps with everything else off."
        return TOPIC.needs("drain.current", headline=head)
    found = laid(case, say_it=True)
    days = min(found.recharge, limit("shown-most"))
    check = min(days, limit("check-most"))
    steps(case, found, days)
    figures = [
        Figure("days_to_recharge", "charge again after" if days else "charge", days, "d"),
        Figure("check_interval", "look every" if days else "look", check, "d"),
        laid_up.self_discharge(case),
        *recharge_volts(case),
        *by_date(case, found, days),
    ]
    if on_the_charger.asked(case):
        return on_the_charger.answer(TOPIC, case, found, figures)
    away = case.said("storage.time") or by_the_dates(case)
    if away is None:
        return without_time(TOPIC, case, found, figures)
    left = found.after(float(away))
    figures.append(Figure("state_of_charge_after", f"left after {say.quantity(float(away), 'd', 0)}", left, "%"))
    return for_a_time(case, found, float(away), figures)


def steps(case: Case, found: LaidUp, days: float) -> None:
    """Notes the days to the next charge."""
    target = limit("lithium-store-low" if laid_up.is_lithium(case) else "lead-good")
    if left_on(case):
        more = say.quantity(laid_up.drained_share(case), "%")
        case.step(f"What is left on takes {more} a day more", "drain-arithmetic")
    shown = f"about {say.quantity(int(found.recharge + NEAR), 'd', 0)}"
    capped = f", shown as {say.quantity(days, 'd', 0)} at most" if found.recharge > days + NEAR else ""
    source = "lithium-store-low" if laid_up.is_lithium(case) else "lead-good"
    told = f"From {say.charge(found.charge)} to {say.charge(target)}: {shown}{capped}"
    if found.recharge <= 0:
        told = f"{wording.percent(found.charge)} is not over {say.charge(target)}, so it wants a charge first"
    case.step(told, cite(source), cite("check-most"))


def verdict_for(case: Case, found: LaidUp, away: float) -> str:
    """yes up to the next charge, marginal to half (lithium 20 %), then no; frost may be stricter."""
    verdict = "yes" if away <= found.recharge + NEAR else "marginal" if away <= found.least + NEAR else "no"
    return strictest(verdict, in_frost(case, found.after(away)))


def for_a_time(case: Case, found: LaidUp, away: float, figures: list[Figure]) -> Answer:
    """The verdict on a stated time."""
    left, verdict = found.after(away), verdict_for(case, found, away)
    time, battery = say.quantity(away, "d", 0), f"your {wording.kind(case)} battery"
    celsius = case.said("ambient.temperature")
    at = f" at {say.temperature(float(celsius))}" if celsius is not None and not left_on(case) else ""
    when = f"after {time}{at}"
    how = f"{'laid up ' if half_full(case) else ''}{how_full(case, found)}{' with this drain' if left_on(case) else ''}"
    days, check = (float(item.value) for item in figures[:2])
    again = f"charge it within {say.quantity(int(days), 'd', 0)}" if days >= 1 else "charge it full first"
    look = f", but look every {say.quantity(check, 'd', 0)}" if away > check + NEAR else ""
    told = wording.percent(left)
    head = {
        "yes": f"Yes{look}: {how}, {battery} is still {told} full {when}.",
        "marginal": f"Only just: {how}, {battery} is down to {told} {when}, so {again}.",
        "no": f"No: {how}, {battery} is down to {told} {when}, so {again}.",
    }[verdict]
    head = half_is_better(case, found, verdict, head)
    how_much = case.says("detail:lay_up_at") or how_full_is_asked(case)
    if how_much and verdict == "yes" and (half_full(case) or found.charge >= FULL - NEAR):
        at = "about half full" if half_full(case) else "full"
        at += ", with no charge in between," if charger_left_on.in_between(case.text) else ""
        head = f"Leave it {at}{look.replace(', but', ' and')}: {battery} is still {told} full {when}."
    elif case.says("detail:left_after") and not (case.says("detail:asks_good") or half_full(case)):
        head = f"{say.capital(wording.about(told))} full {when}, {how}{look.replace(', but', ';')}."
    if celsius is not None and in_frost(case, left) == verdict != "yes":
        opening, cold = "No" if verdict == "no" else "Only just", say.temperature(float(celsius))
        head = f"{opening}: at {told} it can freeze at {cold}, so charge it full first or bring it in."
    urgent = laid_up.urgency(case, found.charge) if case.origin("battery.charge") != "assumed" else "routine"
    if home(case):
        head = {
            "yes": f"No, it may stay where it is{look}: {how}, {battery} is still {told} full {when}.",
            "marginal": f"Better so, or charge it in between: {how}, {battery} is down to {told} {when}.",
            "no": f"Yes, or charge it in between: {how}, {battery} is down to {told} {when}.",
        }[verdict]
        if celsius is not None and in_frost(case, left) == verdict != "yes":
            head = f"Yes, or charge it full first: at {told} it can freeze at {say.temperature(float(celsius))}."
    if on_the_charger.is_weighed(case) and verdict == "yes":
        head = f"Better off the charger{look.replace(', but', ' and')}: {how}, {battery} is still {told} full {when}."
    if case.says("detail:when_to_charge"):
        head = laid_up.by_when(figures)
    if case.says("detail:no_power"):
        lasts = f"needs no charge for {time}" if verdict == "yes" else f"is down to {told} {when}"
        bare = laid_up.without_power(case, verdict, f"{how}, {battery} {lasts}", away, check) or head
        head = opened_by(TOPIC, case, verdict, bare)
    if in_frost(case, left) == "yes":
        head = as_asked(case, found, verdict, away, say.quantity(check, "d", 0)) or head
    return TOPIC.says(verdict, head, *figures, urgency=urgent, plot=plot(case, found, away))


def half_is_better(case: Case, found: LaidUp, verdict: str, head: str) -> str:
    """The sentence with how full lithium is best laid up, where it is told to be full."""
    if verdict != "yes" or not laid_up.is_lithium(case) or found.charge < NEARLY_FULL:
        return head
    case.step("Lithium is stored about half full", cite("lithium-store"))
    return f"{head.removesuffix('.')}; about half full is better."
