"""Which battery, how big, how many: starting power or current limits for the motor, amp-hours for the time."""

from __future__ import annotations

import math
from dataclasses import replace

from service import reference, say
from service.calculators import peukert
from service.case import Case
from service.judgements import at_once, both_loads, case_sizes, cranking, in_a_place, lithium, session, supply
from service.reply import Answer, Figure, Option
from service.rules.battery import capacity_share
from service.told import amps_asked, to_buy, tray, twin_thrusters
from service.topic import Topic

FIGURES = (
    "battery.capacity",
    "battery.energy",
    "battery.cca",
    "battery.ca",
    "battery.reserve",
    "battery.group",
    "battery.max_current",
    "battery.peak_current",
)

MOST_NAMED = 4
TOPIC = Topic(
    "bank-size",
    "Which battery, how big",
    amps="load.current",
    idle={"run-check": FIGURES, "run-time": FIGURES},  # what it would ask back is what is asked here
    of_two="worst",
    cautions=(
        "lithium-kind",
        "lithium-cold",
        "lithium-cut-out",
        "lithium-joined",
        "start-battery",
        "no-tap",
        "cable-and-joints",
        "fuse-at-battery",
        "manual-first",
        "thruster-off",
        "motor-duty",
        "estimate",
    ),
    likely={"battery.chemistry": (("AGM", "agm"), ("wet-cell", "flooded"), ("lithium", "lfp"))},
    unsure={
        "load.time": "We can't say yet: the time decides the amp-hours, so tell us how long it is to run in all.",
    },
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Starting power (lead) or limits (lithium) with a motor load, and the capacity for the time asked for."""
    if case.get("battery.family") == "lithium-other":
        head = "We can't say: for lithium that is not iron phosphate a technician has to look at the data sheet."
        return TOPIC.says("needs-facts", head, route="technician", asks=(TOPIC.ask("battery.chemistry"),))
    if both := of_two_loads(case) or both_loads.judged(case, answer, held) or at_two_temperatures(case):
        return both
    if "load.current" not in case:
        more = () if case.get("load.time") else ("load.time",)
        return TOPIC.needs("load.current", *more, headline=supply.no_current(case, "decide the size"))
    if found := session.used_up(case):
        return TOPIC.says("information", f"{found[0]}; a battery must hold more, as it is not to be emptied.", found[1])
    running, motor = float(case["load.current"]), supply.is_motor(case)
    inrush = float(case["load.peak"]) if motor else running
    hours = time_asked(case, motor)
    if hours is None and not motor:
        return TOPIC.needs("load.time")
    lithium_asked = to_buy.its_bms(case.text) and not case.said("battery.chemistry")
    if case.get("battery.chemistry") == "lfp" or case.get("battery.family") == "lithium" or lithium_asked:
        return with_amps(case, running, of_lithium(case, running, inrush, hours))
    return with_amps(case, running, of_lead(case, running, inrush, hours, motor))


def with_amps(case: Case, running: float, found: Answer) -> Answer:
    """The answer opened with the amps that it draws, where they are asked as well and nobody told them."""
    if "load.current" in case.stated or not amps_asked.running(case.text):
        return found
    return replace(found, headline=f"{say.amps(running)} running; {found.headline[:1].lower()}{found.headline[1:]}")


def of_two_loads(case: Case) -> Answer | None:
    """Two thrusters on one battery: what both at once want, and one at a time; None where one load is told of."""
    named = supply.two_loads(case)
    each = twin_thrusters.told(case.text) and "load.current" in case.second
    if not (named or each):
        return None
    options = [
        Option(way, "information", answer(side).figures)
        for way, side in (("both at once", at_once.joined(TOPIC.name, case)), ("one at a time", heavier(case)))
    ]
    both, one = (of_figures(option) for option in options)
    if not both or not one:
        return TOPIC.needs("load.current", headline=named)
    case.source("drain-arithmetic", reference.row("usable", family="lead")["share"].cite)
    if any(item.name == "required_cca" for option in options for item in option.figures):
        case.source("load-test-resistance")
    who = supply.both_named(case) or "both thrusters"
    head = f"We can't say yet: {who} at once want {both}, one at a time {one}; do they ever run together?"
    return replace(TOPIC.needs("load.current", headline=head), compare=tuple(options))


def at_two_temperatures(case: Case) -> Answer | None:
    """What is wanted at each of two temperatures; the figures are those of the colder. None where one is told."""
    other = case.second.get("ambient.temperature")
    if other is None or "load.current" not in case or len(case.second) > 1:
        return None
    sides = (case.supposing({}), case.others())
    sides[0].second = {}
    found = sorted(
        ((float(side["ambient.temperature"]), answer(side), side) for side in sides), key=lambda item: item[0]
    )
    if any(one.verdict != "information" for _, one, _ in found):
        return None
    case.follow(found[0][2])
    case.used.setdefault(("ambient.temperature", 2), other)
    options = tuple(Option(say.temperature(celsius), "information", one.figures) for celsius, one, _ in found)
    told = [f"{of_figures(option)} or more at {option.label}" for option in reversed(options)]
    return replace(found[0][1], headline=f"{say.capital(say.listed(told))}.", compare=options)


def heavier(case: Case) -> Case:
    """The case of the one of two loads that draws more, by itself."""
    sides = [case.fresh(), case.others()]
    for side in sides:
        side.second = {fact: known for fact, known in side.second.items() if not fact.startswith("load.")}
        side.text = ""
    return max(sides, key=lambda side: float(side["load.current"]))


def of_figures(option: Option) -> str:
    """What a battery must have, in words: "700 CCA and 60 Ah"."""
    units = {"required_cca": "CCA", "required_limit_current": "A", "required_capacity": "Ah"}
    wanted = [
        say.quantity(math.ceil(float(item.value) - 1e-6), units[item.name])
        for item in option.figures
        if item.name in units
    ]
    return say.listed(wanted)


def time_asked(case: Case, motor: bool) -> float | None:
    """Hours to run in all: stated, as bursts, or three minutes for a thruster."""
    seconds, count, one = (case.said(fact) for fact in ("load.time", "load.bursts", "load.burst"))
    if seconds is None and count and one:
        seconds = float(count) * float(one)
    if seconds is None and motor and case.get("load.kind", "thruster") in ("thruster", at_once.PAIR):
        usual = reference.value("ratings", "thruster-time")
        why = "no time is said"
        seconds = case.assume("load.time", float(usual.value), why, usual.cite, unit="s")
    return None if seconds is None else float(seconds) / 3600


def held(case: Case) -> float:
    """The amp-hours that the time asked for takes."""
    kind = "lfp" if case.get("battery.family") == "lithium" else str(case.get("battery.chemistry", "lead"))
    return capacity(case, kind, float(case["load.current"]), time_asked(case, supply.is_motor(case)) or 0.0)


def capacity(case: Case, kind: str, running: float, hours: float) -> float:
    """The smallest C20 that lasts so long to the usable limit."""
    family = "lithium" if kind == "lfp" else "lead"
    k, share = reference.row("peukert", chemistry=kind)["k"], reference.row("usable", family=family)["share"]
    need = peukert.required_capacity(hours, running, k.value, share.value / 100)
    left = capacity_share(family, case.said("ambient.temperature"))
    if left:
        need /= left.value / 100
        case.step(f"In the cold {say.quantity(left.value, '%')} of the capacity is left", left.cite)
    used = f"{say.amps(running)} for {say.duration(hours * 60)}, using {say.quantity(share.value, '%')}"
    case.step(f"{used}, by Peukert's law with k {k.value:g}: {say.amp_hours(need)}", k.cite, share.cite)
    return max(need, supply.least_capacity(case))


def of_lead(case: Case, running: float, inrush: float, hours: float | None, motor: bool) -> Answer:
    """CCA for the first instant and amp-hours for the time."""
    kind = str(supply.taken(case, "battery.chemistry", "lead", "the kind is not said"))
    need = cranking.required_cca(case, inrush) if motor else None
    amp_hours = capacity(case, kind, running, hours) if hours else None
    figures = currents(running, inrush)
    figures += (Figure("required_cca", "CCA", need, "A"),) if need else ()
    figures += (Figure("required_capacity", "capacity", amp_hours, "Ah"),) if amp_hours else ()
    count = number(case, [(need, case.get("battery.cca")), (amp_hours, case.get("battery.capacity"))])
    figures += (Figure("battery_count", "batteries", count),) if count else ()
    options: tuple[Option, ...] = ()
    if need and not case.said("battery.chemistry") and "bank.voltage" not in case.second:
        other = of_lithium(case.supposing({"battery.chemistry": "lfp"}), running, inrush, hours)
        case.source(reference.value("lithium", "per-hour").cite)
        options = (Option("lead", "information", figures), Option("lithium", "information", other.figures))
    head = lead_words(case, need, amp_hours, count)
    if cases := case_sizes.told(case):
        head, options = cases
    elif need and case["bank.in_series"] == 1 and (place := in_a_place.measured(case)):
        case.step("What a case usually has is no promise: the label decides", "typical-case", "group-pages")
        head = f"{head.partition(': ')[0].removesuffix('.')}; {in_its_place(place, need)}."
    return TOPIC.says("information", head, *figures, compare=options)


def currents(running: float, inrush: float) -> tuple[Figure, ...]:
    """The load's currents; no first instant where the load has none."""
    return supply.load_figures(running, inrush)[: 2 if inrush > running else 1]


def of_lithium(case: Case, running: float, inrush: float, hours: float | None) -> Answer:
    """Limits for the currents, amp-hours for the time and for the running current."""
    kind = str(supply.taken(case, "battery.chemistry", "lfp", "lithium taken as lithium iron phosphate"))
    by_current = running / lithium.value("per-hour")
    case.step(f"At 1 A for each Ah {say.amps(running)} want {say.amp_hours(by_current)}", "lithium-limits")
    need = max(by_current, capacity(case, kind, running, hours) if hours else 0.0)
    figures = (
        *currents(running, inrush),
        Figure("required_limit_current", "limit all the time", running, "A"),
        Figure("required_peak_current", "limit for a few seconds", inrush, "A"),
        Figure("required_capacity", "capacity", need, "Ah"),
    )
    shared = lithium.value("parallel")
    count = number(
        case,
        [
            (running, case.said("battery.max_current")),
            (inrush, case.said("battery.peak_current")),
            (by_current, None if case.said("battery.max_current") else case.get("battery.capacity")),
        ],
        shared,
        [(need, case.get("battery.capacity"))],
    )
    figures += (Figure("battery_count", "batteries", count),) if count else ()
    peak = f" and {say.amps(inrush)} for a few seconds" if inrush > running else ""
    ah, limit = say.quantity(math.ceil(need - 1e-6), "Ah"), f"{say.amps(running)} all the time{peak}"
    head = f"Look for a lithium battery of {ah} or more, whose label allows {limit}."
    if count and count > case["bank.in_series"]:
        head = f"{so_many(case, count)}: together they must hold {ah} and allow {limit}."
    elif to_buy.its_bms(case.text):
        head = f"A BMS that allows {limit}, as a battery of {ah} or more usually has."
    elif count and count > 1:
        head = f"{in_series(case, count)}, each of {ah} or more, whose label allows {limit}."
    return TOPIC.says("information", head, *figures)


def so_many(case: Case, count: float) -> str:
    """How many of the batteries they name, and how they stand: "Eight of your batteries, four pairs in parallel"."""
    abreast, series = count / float(case["bank.in_series"]), float(case["bank.in_series"])
    case.because("Ask before you buy whether their maker allows so many in parallel", "lithium-limits")
    said = f"{supply.counted(count).capitalize()} of your batteries"
    sets = {1.0: "", 2.0: "pairs "}.get(series, f"sets of {say.number(series)} in series ")
    return f"{said}, {supply.counted(abreast)} {sets}in parallel" if sets and abreast > 1 else said


def number(
    case: Case,
    demands: list[tuple[float | None, float | None]],
    shared: float = 1.0,
    plain: list[tuple[float | None, float | None]] | None = None,
) -> float | None:
    """How many batteries of the size named meet all demands, with those in series for the volts; None for one unnamed.

    Of several in parallel `shared` of each demand's sum counts; `plain` demands add up in full.
    """
    strings = [needed(need, one, shared) for need, one in demands if need and one]
    strings += [needed(need, one, 1.0) for need, one in plain or () if need and one]
    series = float(case["bank.in_series"])
    if not strings:
        case.source("od1002")
        return series if series > 1 else None
    count = max(strings)
    many = "in parallel give" if count > 1 else "battery gives"
    case.step(f"{supply.counted(count).capitalize()} {many} it", "od1002")
    return count * series


def needed(need: float, one: float, shared: float) -> float:
    """The least number in parallel that adds up to the need."""
    return 1.0 if need <= one + 1e-6 else float(math.ceil(need / (one * shared) - 1e-6))


def lead_words(case: Case, need: float | None, amp_hours: float | None, count: float | None) -> str:
    """The headline for a lead bank."""
    name, kind = supply.load_name(case), say.CHEMISTRY.get(str(case.said("battery.chemistry") or ""), "lead")
    size = [say.cca(math.ceil(need - 1e-6))] if need else []
    size += [say.quantity(math.ceil(amp_hours - 1e-6), "Ah")] if amp_hours else []
    wanted = say.listed(size)
    if count and ("battery.cca" if need else "battery.capacity") in case:
        one = say.cca(float(case["battery.cca"])) if need else say.amp_hours(float(case["battery.capacity"]))
        batteries = "battery" if count == 1 else "batteries"
        return f"{supply.counted(count).capitalize()} {one} {batteries}: {name} wants {wanted} or more in all."
    if count and count > 1 and case["bank.in_series"] == count:
        return f"{in_series(case, count)}, each of {wanted} or more."
    if need and to_buy.cheapest(case.text) and not case.said("battery.chemistry"):
        case.because("The CCA decides, and a plain wet-cell starting battery has it as well as any", "kinds-in-use")
        return f"A wet-cell starting battery of {wanted} or more: of those that run {name} it usually costs least."
    because = f": {name} takes {say.amps(float(case['load.peak']))} in the first instant" if need else ""
    return f"Look for {'an' if kind == 'AGM' else 'a'} {kind} battery of {wanted} or more{because}."


def in_its_place(place: tray.Place, need: float) -> str:
    """Which cases that can have such a CCA go into the place that was measured."""
    fit, tight = in_a_place.those_that_go_in(place, need)
    low = "" if place.height is not None else ", if it is high enough"
    named = say.listed((fit or tight)[:MOST_NAMED], "or")
    if not named:
        return f"no case of our table that can have it goes into {in_a_place.inside(place)}"
    return f"into {in_a_place.inside(place)} goes group {named}{'' if fit else ' only just'}{low}"


def in_series(case: Case, count: float) -> str:
    """The batteries that make the load's volts: "Two 12 V batteries in series for 24 V"."""
    volts, each = (say.quantity(float(case[fact]), "V") for fact in ("bank.voltage", "battery.volts"))
    return f"{supply.counted(count).capitalize()} {each} batteries in series for {volts}"
