"""How long a battery lasts at a current, and how many bursts that makes: Peukert's law to the usable limit."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from grammar.text.patterns import regex
from service import chart, reference, say
from service.calculators import peukert
from service.case import Case
from service.judgements import lithium, session, stop_reading, supply, supply_levers
from service.reply import Answer, Change, Figure
from service.rules.battery import capacity_share
from service.sentences.run_asked import judged, wanted
from service.topic import Lever, Topic


def enough_capacity(case: Case) -> Iterator[float]:
    """Amp-hours of one battery that last for the time asked for."""
    case = case.fresh()  # its steps are no part of the answer
    asked = wanted(case)
    if asked and "load.current" in case and "battery.capacity" in case:
        kind = str(case.get("battery.chemistry", "lead"))
        k, family = reference.row("peukert", chemistry=kind)["k"].value, "lithium" if kind == "lfp" else "lead"
        share = usable_share(case, family, float(case.get("battery.charge", 100.0))) * cold(case, family)
        if share > 0:
            need = peukert.required_capacity(asked / 60, float(case["load.current"]), k, share)
            each = need / float(case["bank.in_parallel"])
            yield from (float(math.ceil(each * more)) for more in (1, 1.1, 1.25, 1.5, 2))


def full(case: Case) -> Iterator[float]:
    """A full battery."""
    if "battery.charge" in case.stated or "reading.voltage" in case.stated:
        yield 100.0


CHARGED = ("word:charge", "about:charger", "about:charging", "thing:charger")
SAME = 1e-9  # no difference worth a range
SEVERAL = regex(r"\b(?:batteries|banks?|agms|gels|lithiums|wets)\b", re.IGNORECASE)
AROUND = (0.5, 0.6, 0.7, 0.85, 1.0, 1.25, 1.5, 1.75, 2.0)  # currents of the picture, times the customer's

LEFT = {"lead": 50.0, "lithium": 20.0}  # percent at the usable limit
BEYOND = 10.0  # amps for each Ah that no battery is asked for

TOPIC = Topic(
    "run-time",
    "How long it lasts",
    amps="load.current",
    of_two="worst",
    cautions=("lithium-kind", "lithium-cut-out", "start-battery", "motor-duty", "estimate"),
    levers=(
        Lever("battery.capacity", enough_capacity, "{value} or more"),
        Lever("battery.charge", full, "charged full", without=("reading.voltage",)),
    ),
    unsure={
        "battery.capacity": "We can't say yet: the amp-hours of the battery decide how long it lasts.",
    },
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Time to the usable limit and to empty, and bursts; no time for a lithium battery over its limit."""
    if case.get("battery.family") == "lithium-other":
        head = "We can't say: this lithium battery is not of the iron phosphate kind, so a technician will look at it."
        return TOPIC.says("needs-facts", head, route="technician", asks=(TOPIC.ask("battery.max_current"),))
    if "load.current" not in case and (drain := case.stated.get("drain.current")):
        case.assume("load.current", float(drain.value), "what goes out is the load", unit="A")
    if found := session.used_up(case):
        return used_up(case, *found)
    lacking = [fact for fact in ("load.current", "battery.capacity") if fact not in case]
    if lacking:
        return ask_back(case, lacking)
    if unfit := of_other_volts(case):
        return unfit
    running = float(case["load.current"])
    if case.get("battery.family") == "lithium" and (over := over_the_limit(case, running)):
        return over
    if "load.current" not in case.stated and running > BEYOND * float(case["bank.capacity"]):
        head = f"{say.amps(running)} cannot be right for {supply.load_name(case)}: please tell us its running amps."
        return TOPIC.needs("load.current", headline=head)
    return lasting(case, running)


def ask_back(case: Case, lacking: list[str]) -> Answer:
    """What is missing, the current first; a case size gives the usual range and no more."""
    if lacking[0] == "load.current":
        return TOPIC.needs(*lacking, headline=supply.no_current(case, "decide how long it lasts"))
    usual = supply.usual(case, "low", "high", "Ah")
    head = f"We can't say yet: {usual}, so please tell us the Ah on its label." if usual else ""
    return TOPIC.needs("battery.capacity", headline=head)


def of_other_volts(case: Case) -> Answer | None:
    """No time at all for a load of other volts than the batteries have; None where they suit or are not known."""
    wanted, name = case.get("load.voltage") or case.said("bank.voltage"), supply.load_name(case)
    if differ := supply.mismatch(case):
        built, wanted = differ
        case.step(
            f"The batteries give {say.quantity(built, 'V')}, the load takes {say.quantity(wanted, 'V')}", "od1002"
        )
        head = f"No: your batteries give {say.quantity(built, 'V')}, and {name} needs {say.quantity(wanted, 'V')}."
        return TOPIC.says("no", head)
    if not supply.count_is_open(case):
        return None
    one, whole = say.quantity(float(case["battery.nominal"]), "V"), say.quantity(float(wanted), "V")
    if SEVERAL.search(case.text):
        head = (
            f"We can't say yet: one {one} battery has too few volts for {name}, so tell us how many make the {whole}."
        )
        return TOPIC.needs("battery.count", headline=head)
    case.step("In series (plus to minus) the volts add", "od1002")
    head = f"No: one {one} battery cannot run {name}, which needs {whole}: that takes two alike in series."
    return TOPIC.says("no", head)


def over_the_limit(case: Case, running: float) -> Answer | None:
    """The answer for a lithium bank that may not give this current, or None."""
    found = lithium.limits(case)
    if found is None:
        return None
    inrush = float(case["load.peak"]) if supply.is_motor(case) else running
    name = supply.load_name(case)
    peak_exceeded = found.peak is not None and inrush > max(found.peak, found.continuous)
    if running <= found.continuous and not peak_exceeded:
        return None
    if not found.stated and running <= lithium.value("too-much") * found.continuous and not peak_exceeded:
        usual = say.amps(found.continuous)
        head = (
            f"We can't say yet: {supply.does(case, 'give')} about {usual}, and {name} draws {say.amps(running)}: "
            "the limit on the label decides."
        )
        peak = ("battery.peak_current",) if inrush > running else ()
        return TOPIC.needs("battery.max_current", *peak, headline=head)
    return TOPIC.says("no", lithium.words(case, "no", running, inrush, found), would_change=label_needed(case, running))


def label_needed(case: Case, running: float) -> tuple[Change, ...]:
    """The limit that the label would have to show."""
    if not lithium.cold_share(case):
        return ()
    each = supply_levers.limit_each(case, running)
    return (Change("battery.max_current", each, "A", f"a label that allows {say.amps(each)} all the time"),)


def used_up(case: Case, words: str, figure: Figure) -> Answer:
    """The amp-hours of a run, and beside them how long the battery that is told of lasts at that current."""
    over = case.get("battery.family") == "lithium" and over_the_limit(case, float(case["load.current"]))
    if "battery.capacity" not in case or over:
        return over or TOPIC.says("information", f"{words}.", figure)
    found = lasting(case, float(case["load.current"]))
    return replace(found, headline=f"{words}; {without_opening(found.headline)}", figures=(figure, *found.figures))


def without_opening(headline: str) -> str:
    """A headline as the second half of another one, without its yes or no."""
    rest = headline.partition(": ")[2] if headline.partition(": ")[0] in ("Yes", "No", "Only just") else headline
    return f"{rest[:1].lower()}{rest[1:]}"


def lasting(case: Case, running: float) -> Answer:
    """The times, held against what was asked for."""
    usual = "lfp" if case.get("battery.family") == "lithium" else "lead"
    kind = str(supply.taken(case, "battery.chemistry", usual, "the kind is not said"))
    family = "lithium" if kind == "lfp" else "lead"
    k = reference.row("peukert", chemistry=kind)["k"]
    capacity = float(case["bank.capacity"]) * cold(case, family)
    hours = peukert.run_time(capacity, running, k.value)
    case.step(law(capacity, running, k.value, hours), k.cite, "peukert-limits")
    charge = float(case.get("battery.charge", 100.0))
    if usable_share(case, family, charge) <= 0 and case.says(*CHARGED):  # "and what charger fills it from 20 percent"
        case.step(f"{say.quantity(charge, '%')} is where charging starts; the time is from full", "usable-depth")
        charge = 100.0
    usable = usable_share(case, family, charge)
    on = session.share_on(case)
    to_limit, to_empty = hours * 60 * usable / on, hours * 60 * charge / 100 / on
    spread = by_the_range(case, kind, capacity, running)
    case.step(f"{say.quantity(usable * 100, '%')} of that is usable: {say.lasting(to_limit * on)}", "usable-depth")
    if on < 1:
        case.step(
            f"It runs for {say.quantity(on * 100, '%', 0)} of the time: {say.duration(to_limit)}", "drain-arithmetic"
        )
    if family == "lead" and running > capacity:
        case.because("At more than 1 A for each Ah the volts may end a run before the charge does", "peukert-limits")
    figures = (
        estimate("time_to_usable_limit", f"to {'half' if family == 'lead' else '20 % left'}", to_limit, spread, "min"),
        estimate("time_to_empty", "to empty", to_empty, spread, "min"),
        *(bursts(case, to_limit, spread) if on == 1 else ()),
        *session.figures(case, running),
        *stop_reading.figures(case, LEFT[family]),
        *session.trips(case, to_limit),
    )
    verdict, head = judged(case, to_limit, usable, running, to_empty)
    if verdict == "yes" and (left := left_after(case, charge, to_empty / charge * 100, figures)):
        head = f"About {say.still_in(float(left.value))} is left after that: {without_opening(head)}"
        figures = (*(item for item in figures if item.name != left.name), left)
    return TOPIC.says(
        verdict,
        stop_reading.headline(case, head, LEFT[family]) if usable > 0 else head,
        *figures,
        plot=plot(case, kind, capacity, running, usable),
        urgency="today" if family == "lead" and charge < 50 else "routine",
    )


def law(capacity: float, running: float, k: float, hours: float) -> str:
    """Peukert's law in numbers; at small currents it is the amp-hours alone that count."""
    ah, amps, most = say.amp_hours(capacity), say.amps(running), capacity / running
    if hours >= most - SAME:
        return f"{ah} / {amps} = {say.lasting(hours * 60)} from full to empty: Peukert's law takes nothing off that"
    used = f"20 h x ({ah} / (20 h x {amps}))^{k:g} = {say.lasting(hours * 60)}"
    return f"Peukert's law: {used} from full to empty (never more than Ah / A, {say.lasting(most * 60)})"


def by_the_range(case: Case, kind: str, capacity: float, running: float) -> tuple[float, float]:
    """What the ends of the source's range of k make of a time, as shares of it; 1 and 1 where k does not matter."""
    row = reference.row("peukert", chemistry=kind)
    low, middle, high = (peukert.run_time(capacity, running, row[name].value) for name in ("k_high", "k", "k_low"))
    shares = low / middle, high / middle
    if shares[1] - shares[0] > SAME:
        spread = f"{row['k_low'].value:g} to {row['k_high'].value:g}"
        ends = say.between_times(low * 60, high * 60, given=True)
        case.step(f"The exponent is given as {spread} for this kind, so {ends} from full to empty", row["k"].cite)
    return shares


def estimate(name: str, label: str, value: float, spread: tuple[float, float], unit: str = "") -> Figure:
    """A figure with the range that the source's own range makes of it."""
    low, high = (value * share for share in spread)
    if high - low <= SAME * value:
        return Figure(name, label, value, unit)
    return Figure(name, label, value, unit, low, high)


def cold(case: Case, family: str) -> float:
    """What is left of the capacity at the stated temperature, as a share."""
    found = capacity_share(family, case.said("ambient.temperature"))
    if found is None:
        return 1.0
    celsius = say.temperature(float(case["ambient.temperature"]))
    case.step(f"At {celsius} about {say.quantity(found.value, '%')} of the capacity is left", found.cite)
    return float(found.value) / 100


def usable_share(case: Case, family: str, charge: float) -> float:
    """The share of a full battery that may still be used: the usable part less what is already gone."""
    share = float(reference.row("usable", family=family)["share"].value)
    return max(0.0, share - (100 - charge)) / 100


def bursts(case: Case, minutes: float, spread: tuple[float, float]) -> tuple[Figure, ...]:
    """How many bursts of the stated length fit in, rounded down."""
    one = case.said("load.burst")
    if one is None:
        return ()
    least, count, most = (math.floor(minutes * share * 60 / float(one) + 1e-9) for share in (spread[0], 1, spread[1]))
    case.step(
        f"{say.quantity(minutes * 60, 's', 0)} / {say.quantity(float(one), 's')}: {say.so_many(count)} bursts",
        "drain-arithmetic",
    )
    ends = (float(least), float(most)) if least < most else (None, None)
    return (Figure("burst_count", "bursts", float(count), "", *ends),)


def left_after(case: Case, charge: float, to_empty: float, figures: tuple[Figure, ...]) -> Figure | None:
    """What the battery still holds after the time asked for, where that is asked. `to_empty`: minutes from full."""
    if not case.says("detail:left_after"):
        return None
    of_bursts = next((item for item in figures if item.name == "state_of_charge_left"), None)
    used = (wanted(case) or 0.0) / to_empty * 100
    if of_bursts is None:
        case.step(f"The run takes about {say.quantity(used, '%', 0)} of a full battery", "drain-arithmetic")
    return of_bursts or Figure("state_of_charge_left", "charge left after it", charge - used, "%")


def plot(case: Case, kind: str, capacity: float, running: float, usable: float) -> dict[str, Any]:
    """Minutes to the usable limit against the current, with the customer's own current and the time asked for."""
    row = reference.row("peukert", chemistry=kind)
    currents = [running * share for share in AROUND]
    curves = [
        (name, [(amps, peukert.run_time(capacity, amps, row[k].value) * 60 * usable) for amps in currents])
        for name, k in (("to the limit", "k"), ("at worst", "k_high"))
    ]
    asked, at = wanted(case), AROUND.index(1.0)
    return chart.chart(
        "line",
        "Time to the usable limit against the current",
        ("current", "A"),
        ("time", "min"),
        curves if row["k_high"].value > row["k"].value else curves[:1],
        [("asked for", asked)] if asked else [],
        ("yours", running, float(curves[0][1][at][1])),
    )
