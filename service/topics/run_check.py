"""Whether a battery runs a thruster or another motor: volts in the first instant (lead), current limits (lithium)."""

from __future__ import annotations

import math
from dataclasses import replace

from service import say
from service.case import Case
from service.judgements import (
    abreast,
    cranking,
    deciding,
    lithium,
    new_and_old,
    proposed_cable,
    session,
    supply,
    supply_levers,
)
from service.judgements.deciding import by_house, by_volts, opening
from service.reply import Answer, Asked, Choice, Figure
from service.sentences.supply import (
    by_its_cranking_amps,
    by_its_own,
    by_its_reading,
    by_its_size,
    itself,
    measured,
    of_one_battery,
    off_the_house,
    on_other_volts,
    on_paper,
    over_the_run,
    reached,
    tested_on_board,
    through_a_converter,
)
from service.sentences.unrated import as_cranking_amps, cca_ask, unlabelled, unrated
from service.told import culprit, in_its_place, one_battery, two_options, used_in_cold
from service.topic import Topic

TOPIC = Topic(
    "run-check",
    "Will the battery run it",
    amps="load.current",
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
        "estimate",
    ),
    levers=supply_levers.LEVERS,
)
FREEZING = 0.0  # °C
COLDS = tuple(Choice(f"{degrees:g}{say.NB}°C", degrees, "C") for degrees in (5.0, -5.0, -15.0))


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The verdict on one battery; of two batteries the better one, of two loads the heavier."""
    case = in_its_place.new_one(case)
    if "charger.current" not in case.stated:  # whose cable may be the one that was asked for
        case = proposed_cable.put_in(case)
    if case.get("battery.family") == "lithium-other":
        return other_lithium(case)
    if both := supply.two_loads(case):
        return TOPIC.needs("load.current", headline=both)
    case = abreast.beside_a_model(case)
    if "reading.voltage" in case.second:
        case = abreast.emptier(case)
    if {"load.current", "load.model"} & case.second.keys():
        return abreast.loads(case, judge)
    if options := two_options.rated_and_not(case):
        return abreast.by_the_rated(case, options, judge)
    if abreast.are_joined(case):
        return abreast.unlike(case, judge)
    if "ambient.temperature" in case.second:
        return abreast.temperatures(case, judge)
    if abreast.are_weighed(case):
        return abreast.batteries(case, judge)
    beside = new_and_old.planned(case) and not supply.shares_the_engines(case)
    return abreast.one_and_two(case, judge) if beside else judge(case)


def other_lithium(case: Case) -> Answer:
    """Another lithium than iron phosphate: no figure, a technician."""
    if differ := supply.packs_apart(case):
        built, wanted = (say.quantity(volts, "V") for volts in differ)
        case.step(f"The batteries give {built}, the load takes {wanted}", "od1002")
        if stepped := through_a_converter(case):
            return TOPIC.says("no", stepped, *known_currents(case), route="technician")
        head = f"No: {built} packs do not suit {supply.load_name(case)}, which takes {wanted}; one of our technicians "
        return TOPIC.says("no", f"{head}will look, as they are not of the iron phosphate kind.", route="technician")
    head = (
        "We can't say: this lithium battery is not of the iron phosphate kind, so one of our technicians will look "
        "at its data sheet"
    )
    volts = ", and until then we give no charging volts for it" if case.says("word:setting") else ""
    head += f"{volts}."
    return TOPIC.says("needs-facts", head, route="technician", asks=(TOPIC.ask("battery.max_current"),))


TWELVE = 12.0  # volts


def judge(case: Case) -> Answer:
    """The verdict on the battery and the load of this case."""
    if unfit := of_one_battery(case) or on_other_volts(case):
        return TOPIC.says("no", unfit, *known_currents(case))
    if cured := by_its_own(case):
        return TOPIC.says("information", cured, *known_currents(case), asks=(TOPIC.ask("load.time"),))
    if supply.count_is_open(case):
        if one_battery.told(case.text):
            return one_alone(case, float(case["battery.nominal"]))
        head = "We can't say yet: tell us how many batteries there are, because one alone has too few volts."
        return TOPIC.needs("battery.count", headline=head, figures=known_currents(case))
    single = case.said("battery.count") == 1 and not {"battery.nominal", "bank.voltage"} & set(case.stated)
    if single and "battery.cca" in case.stated and float(case.get("load.voltage") or TWELVE) > TWELVE:
        return one_alone(case, TWELVE)  # batteries that show a CCA have 12 V
    if differ := supply.mismatch(case):
        built, wanted = (say.quantity(volts, "V") for volts in differ)
        case.step(f"The batteries give {built}, the load takes {wanted}", "od1002")
        head = f"No: your batteries give {built}, and {supply.load_name(case)} needs {wanted}."
        return TOPIC.says("no", through_a_converter(case) or head, *known_currents(case))
    if "load.current" not in case:
        return without_load(case)
    running, inrush = float(case["load.current"]), float(case["load.peak"])
    series = float(case.get("bank.in_series", 1))
    if series > 1 and not {"battery.count", "bank.layout", "battery.nominal"} & set(case.stated):
        each, whole = (say.quantity(float(case[fact]), "V") for fact in ("battery.volts", "bank.voltage"))
        supply.taken(case, "battery.count", series, f"{each} each, in series for {whole}")
    family = case.get("battery.family") or ("lead" if "lfp" in case.denied.get("battery.chemistry", ()) else None)
    if family == "lithium":
        return limited(case, running, inrush)
    return lead(case, running, inrush) if family == "lead" else unknown(case, running, inrush)


def one_alone(case: Case, volts: float) -> Answer:
    """One battery that has half of the motor's volts."""
    wanted, one = (
        say.quantity(value, "V") for value in (float(case.get("load.voltage") or case["bank.voltage"]), volts)
    )
    case.step("In series (plus to minus) the volts add", "od1002")
    head = f"No: one {one} battery has too few volts for a {wanted} motor; two alike in series make {wanted}."
    return TOPIC.says("no", head, *known_currents(case))


def known_currents(case: Case) -> tuple[Figure, ...]:
    """The load's two currents, where they are known."""
    if "load.current" not in case:
        return ()
    return supply.load_figures(float(case["load.current"]), float(case["load.peak"]))


def without_load(case: Case) -> Answer:
    """Nothing tells the current: thrust or the boat's length does not."""
    if deciding.demand_is_told(case):
        return as_asked_for(case)
    more = () if case.get("battery.family") else ("battery.cca",)
    return TOPIC.needs("load.current", *more, headline=off_the_house(case) or supply.no_current(case, "decide"))


def as_asked_for(case: Case) -> Answer:
    """By the CCA that the load's manual asks for, where nothing tells the amps."""
    supply.taken(case, "battery.chemistry", "lead", "its load asks for a CCA")
    wanted = cranking.demanded(case)
    if "bank.cca" not in case:
        head = f"We can't say yet: {supply.load_name(case)} asks for {say.cca(wanted)}, and that of yours is not known."
        return TOPIC.needs("battery.cca", headline=head, figures=(needed(wanted),))
    ground = deciding.deciding(deciding.demand_grounds(case))
    head = opening(ground).format(load=supply.load_name(case))
    return TOPIC.says(ground.verdict, head, needed(wanted))


def unknown(case: Case, running: float, inrush: float) -> Answer:
    """Nothing tells whether the battery is lead or lithium."""
    supply.taken(case, "battery.chemistry", "lead", "CCA worked out for a lead battery")
    need = cranking.required_cca(case, inrush)
    head = (
        f"We can't say yet: {supply.load_name(case)} needs a battery of {say.cca(math.ceil(need - 1e-6))} or more, "
        "and the CCA of yours is not known."
    )
    head = by_its_size(case, need) or head
    asks = (cca_ask(TOPIC, case, inrush, need), TOPIC.ask("battery.chemistry"))
    head = over_the_run(case, head)
    if case.says("note:no_idea"):
        head, asks = tested_on_board(case), (TOPIC.ask("reading.load_voltage"), asks[0])
    elif case.says("unknown:battery.cca"):  # of an earlier turn: what decides without it is a test
        head, asks = by_its_reading(case) or head, (TOPIC.ask("reading.load_voltage"), asks[1])
    return TOPIC.says("needs-facts", head, *supply.load_figures(running, inrush), needed(need), asks=asks)


def needed(need: float) -> Figure:
    """The CCA for a clear yes."""
    return Figure("required_cca", "CCA for a clear yes", need, "A")


def lead(case: Case, running: float, inrush: float) -> Answer:
    """Volts in the first instant, the house's own demand, charge, cable and whose battery it is."""
    supply.taken(case, "battery.chemistry", "lead", "it has a lead battery's ratings")
    if case.says("detail:en_rating"):
        case.step("EN amps are counted as CCA at most", "en-rating")
    volts = cranking.terminal_voltage(case, inrush) if "battery.cca" in case else None
    need = cranking.required_cca(case, inrush)
    figures: tuple[Figure, ...] = (*supply.load_figures(running, inrush), needed(need))
    if volts is None:
        return unrated(TOPIC, case, inrush, need, figures)
    at_load = cranking.voltage_at_load(case, volts, inrush)
    scale = float(case["bank.voltage"]) / 12
    if volts > 0:
        figures += (Figure("terminal_voltage_at_inrush", "at the battery", volts * scale, "V"),)
    if at_load is not None and at_load > 0:
        figures += (Figure("voltage_at_load", "at the motor", at_load, "V"),)
    figures += session.figures(case, running)
    grounds = [
        by_volts(case, volts, scale),
        *by_house(case),
        *deciding.cable_grounds(case, running, at_load),
        *deciding.charge_grounds(case),
        *deciding.other_grounds(case),
    ]
    ground = deciding.deciding(grounds)
    flat = any(item.verdict == "no" and item.fact == "charge" for item in grounds)
    head = (itself(case, grounds[0], ground, volts * scale) or opening(ground)).format(load=supply.load_name(case))
    asks: tuple[Asked, ...] = ()
    if unlabelled(case):
        head, asks = as_cranking_amps(case, head), (cca_ask(TOPIC, case, inrush, need),)
    if ground.verdict == "yes":
        head = measured(case, reached(case, at_load, scale) or head, volts * scale)
    head = by_its_cranking_amps(case, ground.verdict, head)
    if ground.verdict == "yes" and (colder := in_the_cold(case, running, inrush)):
        return replace(colder, figures=figures)
    if (
        ground.verdict == "yes"
        and (
            case.says("detail:weak_motor", "detail:dead_motor")
            or culprit.is_weak(case.text, str(case.get("load.model")))
        )
        and case.said("reading.load_voltage") is None
    ):
        head, asks = on_paper(case, head), (*asks, TOPIC.ask("reading.load_voltage"))
    return TOPIC.says(
        ground.verdict,
        head,
        *figures,
        plot=cranking.plot(case, inrush, volts, scale),
        urgency="today" if flat else "routine",
        asks=asks,
    )


def in_the_cold(case: Case, running: float, inrush: float) -> Answer | None:
    """What decides where a use in the cold is told without its degrees, and 0 °C already takes the clear yes away."""
    if case.said("ambient.temperature") is not None or not used_in_cold.told(case.text):
        return None
    at_zero = lead(case.supposing({"ambient.temperature": FREEZING}), running, inrush)
    volts = [item.value for item in at_zero.figures if item.name == "terminal_voltage_at_inrush"]
    name, zero = supply.bank_name(case), say.temperature(FREEZING)
    if at_zero.verdict == "yes" and volts:
        case.because(f"At {zero} it still holds about {say.volts(float(volts[0]))}", "load-test-resistance")
    if at_zero.verdict == "yes" or not volts:
        return None
    case.because(
        f"At {zero} it drops to about {say.volts(float(volts[0]))} in the first instant", "load-test-resistance"
    )
    head = (
        f"We can't say yet: {name} is enough at 21{say.NB}°C, but no more than just enough in frost: how cold decides."
    )
    asked = replace(TOPIC.ask("ambient.temperature"), replies=COLDS)
    return TOPIC.says("needs-facts", head, asks=(asked,))


def limited(case: Case, running: float, inrush: float) -> Answer:
    """Running current and first instant against what a lithium bank may give."""
    case.get("battery.chemistry")  # shown as understood, or as taken for iron phosphate
    figures: tuple[Figure, ...] = supply.load_figures(running, inrush)
    found, name = lithium.limits(case), supply.load_name(case)
    if found is None:
        head = (
            f"We can't say yet: {name} draws {say.amps(running)} running and {say.amps(inrush)} at first, and the "
            "battery's limits are not known."
        )
        asks = limit_asks(case, "battery.max_current", "battery.peak_current")
        return TOPIC.says("needs-facts", head, *figures, asks=asks)
    figures += (Figure("limit_current", "battery limit", found.continuous, "A"), *session.figures(case, running))
    verdict, plot = lithium.judged(running, inrush, found), lithium.plot(running, inrush, found)
    case.because(lithium.above(case) if verdict in ("no", "peak", "limits") else lithium.WITHIN, "lithium-limits")
    if verdict not in ("peak", "limits"):
        return TOPIC.says(verdict, lithium.words(case, verdict, running, inrush, found), *figures, plot=plot)
    wanted = ["battery.max_current"] if verdict == "limits" else []
    wanted += ["battery.peak_current"] if found.peak is None and inrush > running else []
    head = lithium.still_open(case, found, running, inrush)
    return TOPIC.says("needs-facts", head, *figures, asks=limit_asks(case, *wanted), plot=plot)


def limit_asks(case: Case, *facts: str) -> tuple[Asked, ...]:
    """The questions for the limits with the replies that decide."""
    replies = supply_levers.limit_replies(case)
    return tuple(replace(TOPIC.ask(fact), replies=replies[fact]) for fact in facts)
