"""Which cable: the larger of what the loss and what the current ask for, or whether the cable at hand will do."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from service import likely, reference, say
from service.calculators import cable
from service.calculators.cable import Size
from service.case import Case, Missing
from service.judgements import beside_battery, circuit, doubled_volts, longest_run, parallel_cables
from service.judgements import proposed_cable as proposal
from service.judgements.fitting import (
    THICKER,
    Choice,
    by_the_catalogue,
    chosen,
    fitting,
    needed,
    to_fit,
    us_first,
)
from service.judgements.named_cable import judged, share, two_cables
from service.reply import Answer, Figure, Option
from service.rules.cable import INSULATION, PER_MM2, TABLE_5, K
from service.sentences.cables_abreast import several_per_pole, together
from service.told import ampacity_asked, equal_cables, household_wire, must_have, welding_cable
from service.told import longest_run as how_far
from service.topic import Topic

AREA = "the American measure of a wire's area"
IN_HAND = 1.02  # of the current: below it the cable carries just what runs
HOW_FAR = "We can't say yet: {} how far the battery may stand."
CONVERTED = ("cable.gauge", "cable.area", "battery.ca", "battery.cca", "battery.reserve", "load.power")
FITTED = ("gauge", "area", "conductors_per_pole")

TOPIC = Topic(
    "cable-size",
    "Cable size",
    amps="load.current",
    cautions=("cable-assumed", "parallel-cables", "fuse-at-battery", "manual-first"),
    levers=THICKER,
    likely={
        "cable.insulation": likely.INSULATION,
    },
    unsure={
        "load.current": "We can't say yet: the amps that run in the cable decide its size.",
        "cable.length": "We can't say yet: the length of the cable decides, beside the amps.",
    },
    idle={"rating-convert": CONVERTED},  # "AWG and mm2" of the cable that is asked for
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Propose a size, or judge the one named."""
    if whatever := of_any_load(case):
        return whatever
    helps = doubled_volts.put_in(case)
    try:
        amps = circuit.current(case)
    except Missing:
        return without_amps(case)
    circuit.must_know(case)
    if longest := longest_run.judged(case, amps):
        return TOPIC.says("information", *longest)
    if "cable.length" not in case and how_far.from_the_load(case.text) and not circuit.has_cable(case):
        return TOPIC.needs("cable.gauge", headline=HOW_FAR.format("the size of the cable decides"))
    if "cable.length" not in case:
        return without_length(case, amps)
    if circuit.has_cable(case) and (count := parallel_cables.runs(case)) > 1 and not circuit.second_cable(case):
        return together(TOPIC, case, amps, count)
    choice, fit = chosen(case, amps), to_fit(case, amps)
    facts = (*figures(case, amps, fit), *bundled(case, amps, fit))
    if not circuit.has_cable(case):
        found = proposed(case, amps, choice, fit, facts, helps)
        size = found.headline.removeprefix("Use ")
        instead = must_have.battery_there(case.text) and size != found.headline
        return replace(found, headline=f"No, not with {size}") if instead else found
    other = circuit.second_cable(case)
    judgement = two_cables(TOPIC, case, other, amps, facts) if other else judged(TOPIC, case, amps, fit, facts)
    judgement = replace(judgement, headline=beside_battery.told(case, judgement.headline))
    if case.says("detail:carries") and judgement.verdict != "no" and not other:
        lost = circuit.loss(case, amps)
        told = f"{say.amps(amps)} over that run lose {say.volts(lost.volts, 2)} ({share(lost)})"
        return replace(judgement, headline=f"{may_carry(case)}; {told}.")
    return judgement


def without_amps(case: Case) -> Answer:
    """What can be said before the amps are told."""
    carries = case.says("detail:carries") or ampacity_asked.of_a_size(case.text, set(case.stated))
    if (carries or of_the_cable_before(case)) and circuit.has_cable(case):
        circuit.must_know(case)
        return TOPIC.says("information", f"{may_carry(case)}; read the print on it.")
    if household_wire.asked(case.text):
        case.step("Conductors on a boat are insulated, stranded copper", "stranded-copper")
        return TOPIC.says("no", household_wire.SOLID, asks=(TOPIC.ask("load.current"),))
    if welding_cable.asked(case.text):
        case.step(welding_cable.WHY, "boat-cable")
        return TOPIC.says("marginal", welding_cable.BETTER_NOT, asks=(TOPIC.ask("load.current"),))
    if parallel_cables.runs(case) > 1 or parallel_cables.PER_POLE.search(case.text):
        return several_per_pole(TOPIC, case)
    if how_far.from_the_load(case.text):
        return TOPIC.needs(
            "load.current", "cable.gauge", headline=HOW_FAR.format("the amps and the size of the cable decide")
        )
    return TOPIC.needs(
        "load.current",
        *(() if "cable.length" in case else ("cable.length",)),
        headline=circuit.no_battery_there(case) if must_have.battery_there(case.text) else "",
    )


def of_the_cable_before(case: Case) -> bool:
    """Whether it tells more of a cable alone that was spoken of before: "in the engine space"."""
    only = "cable-size" in case.before and set(case.stated) <= ampacity_asked.OF_A_CABLE
    new = (case.stated.get(fact) for fact in ("cable.insulation", "cable.in_engine_space"))
    return only and any(item is not None and item.origin == "message" for item in new)


def of_any_load(case: Case) -> Answer | None:
    """What is answered whatever runs in it: a hull for a cable, cables of unlike length."""
    if case.says("detail:hull_negative"):
        case.step("Both conductors are insulated copper; current in a hull corrodes it", "stranded-copper")
        return TOPIC.says("no", "No: neither hull nor engine may carry it; lay a negative cable of the same size.")
    if equal_cables.of_the_minus(case.text) and "load.current" not in case and not circuit.has_cable(case):
        case.step("The volts are lost there and back, in both", K.cite)
        return TOPIC.says("information", equal_cables.MINUS_TOO)
    if equal_cables.asked(case.text) and not circuit.has_cable(case):
        case.step(equal_cables.WHY, "bank-practice")
        return TOPIC.says("information", equal_cables.ALL_ALIKE)
    return None


def may_carry(case: Case) -> str:
    """What the cable named may carry, by its print where that is not known."""
    ours, warm = circuit.name(case), circuit.warm_rating(case)
    told = f"{ours} may carry {say.at_most(float(case['cable.ampacity']))}"
    if warm is None:
        return told
    case.source(TABLE_5)
    return f"{told} with 105{say.NB}°C insulation, {say.amps(warm)} with 75{say.NB}°C"


def without_length(case: Case, amps: float) -> Answer:
    """All that the amps alone can say."""
    carries = cable.smallest(circuit.sizes(case)[0], current=amps)
    known = [Figure("gauge_for_ampacity", "thinnest that may carry it", carries.name, "AWG")] if carries else []
    case.source(TABLE_5)
    if circuit.has_cable(case) and float(case["cable.ampacity"]) < amps:
        case.step(f"{say.amps(amps)} run in it, more than it may carry", TABLE_5)
        head = (
            f"No: {circuit.name(case)} may carry {say.at_most(case['cable.ampacity'])}, and {say.amps(amps)} run in it."
        )
        return TOPIC.says("no", head, *known)
    return TOPIC.needs("cable.length", figures=known)


def figures(case: Case, amps: float, choice: Choice) -> Iterator[Figure]:
    """The contract's figures, those that have a single cable."""
    american = us_first(case)
    least, both = "thinnest that will do", []
    if choice.gauge:
        both.append(Figure("gauge", least if american else "in American sizes", choice.gauge.name, "AWG"))
    if choice.area:
        both.append(Figure("area", "in metric sizes" if american else least, choice.area.name, "mm2"))
    yield from both if american else both[::-1]  # theirs first: it tells in which sizes the others are shown
    if choice.count > 1:
        yield Figure("conductors_per_pole", "cables for each pole", float(choice.count), "")
    at = {name: fitting(case, share, amps, 0.0) for name, share in (("3", 3.0), ("10", 10.0))}
    metric = "" if not american else ", metric"
    for name, one in at.items():
        if one.gauge:
            yield Figure(f"gauge_at_{name}_percent", f"for {name} % loss", one.gauge.name, "AWG")
    if carries := cable.smallest(circuit.sizes(case)[0], current=amps):
        yield Figure("gauge_for_ampacity", "thinnest that may carry it", carries.name, "AWG")
    for name, one in at.items():
        if one.area:
            yield Figure(f"area_at_{name}_percent", f"for {name} % loss{metric}", one.area.name, "mm2")


def bundled(case: Case, amps: float, choice: Choice) -> Iterator[Figure]:
    """What the cable may carry among others in a bundle or conduit, where one is named; no part of the size above."""
    if not case.says("detail:bundled") or choice.count > 1:
        return
    size = choice.area if circuit.metric(case) or not us_first(case) else choice.gauge
    ours = float(case["cable.ampacity"]) if circuit.has_cable(case) else size.ampacity if size else 0.0
    name = circuit.name(case) if circuit.has_cable(case) else circuit.called(size) if size else ""
    if not ours:
        return
    three, four = (reference.row("bundles", **{"from": number})["share"] for number in (3, 4))
    low, high = ours * float(four.value), ours * float(three.value)
    carries = say.between(low, high, "A", 0)
    enough = "still enough" if low >= amps else f"and {say.amps(amps)} run in it: lay it apart, or take a thicker one"
    case.because(f"Among 3 to 6 loaded conductors in a bundle {name} may carry {carries}, {enough}", four.cite)
    yield Figure("ampacity_in_bundle", "may carry in a bundle of 3 to 6", low, "A", low, high)


def proposed(
    case: Case, amps: float, choice: Choice, fit: Choice, facts: tuple[Figure, ...], helps: str = ""
) -> Answer:
    """The size to fit: `choice` by the formula, `fit` where the catalogue asks for a thicker one. `helps` says what
    twice the volts do, where that was asked."""
    run = say.length(float(case["cable.length"]), circuit.in_feet(case))
    if choice.count == 0:
        head = f"No cable of a standard size is enough for {say.amps(amps)} over {run}: move the battery nearer."
        return TOPIC.says("information", head, *facts, route="technician")
    names = fit.named(us_first(case))
    if choice.count > 1 and (better := in_better_cable(case, amps)):
        hot = f"One cable with {say.temperature(float(case['cable.insulation'])).partition(' (')[0]} insulation"
        head = (
            f"{hot} carries too little for {say.amps(amps)}: it takes {choice.count} of {names} for each pole, or one "
        )
        head += f"{better} of 105{say.NB}°C."
        return TOPIC.says("information", head, *facts, route="technician")
    if choice.count > 1:
        head = (
            f"One cable is not enough for {say.amps(amps)} over {run}: it takes {choice.count} of {names} for each "
            "pole, laid out by an electrician."
        )
        return TOPIC.says("information", head, *facts, route="technician")
    size = choice.gauge if us_first(case) else choice.area
    assert size is not None
    lost = worked(case, amps, size)
    if asked := by_the_catalogue(case):
        asked.told(case)
    thicker = fit.gauge != choice.gauge if us_first(case) else fit.area != choice.area
    if asked and thicker:
        head = (
            f"Use {names}: our catalogue asks for it for the {asked.model} over {run}, though the formula alone "
            f"gives {circuit.called(size)}."
        )
    elif helps:
        head = f"{helps}, for which {names} is enough over {run}."
    else:
        why = proposal.outdone(case, size)
        use = f"Use {names} now, as {why}" if why else f"Use {names}"
        head = (
            f"{use}: over {run} it loses {say.volts(lost.volts, 2)} ({share(lost)}), inside the "
            f"{circuit.limit(case, lost.allowed, 'that suits')}."
        )
    return TOPIC.says("information", head, *facts, plot=circuit.bars(case, amps, size), compare=tuple(both_runs(case)))


def in_better_cable(case: Case, amps: float) -> str:
    """The one cable of 105 °C insulation that does the work of several of theirs; "" where it takes several too."""
    told = case.said("cable.insulation")
    if told is None or float(told) >= INSULATION:
        return ""
    choice = to_fit(case.supposing({"cable.insulation": INSULATION}), amps)
    size = choice.gauge if us_first(case) else choice.area
    if choice.count != 1 or size is None:
        return ""
    largest = circuit.sizes(case)[0 if us_first(case) else 1][-1]
    hot = " in the engine space" if case.said("cable.in_engine_space") else ""
    case.because(
        f"{circuit.called(largest)} with that insulation may carry {say.at_most(largest.ampacity)}{hot}", TABLE_5
    )
    return circuit.called(size)


def both_runs(case: Case) -> Iterator[Option]:
    """The sizes of two runs or two loads side by side, where two were named."""
    if not {"cable.length", "load.current"} & set(case.second):
        return
    other = case.others()
    for one in (case, other):
        amps, run = circuit.current(one), say.length(float(one["cable.length"]), circuit.in_feet(one))
        choice = chosen(one, amps)
        fitted = tuple(item for item in figures(one, amps, choice) if item.name in FITTED)
        yield Option(f"{say.amps(amps)} over {run}", "information", fitted)
    case.follow_other(other)


def beside(size: Size, area: float) -> str:
    """What the size to fit has beside the area needed, in its own measure."""
    if isinstance(size.name, str):
        return f"; {circuit.called(size)} has {say.number(size.area)}"
    needs = say.quantity(area / float(PER_MM2.value), "mm2", 1)
    return f", which is {needs}; {circuit.called(size)} is at least that"


def worked(case: Case, amps: float, size: Size) -> circuit.Loss:
    """What the size to fit loses, with the steps that led to it."""
    volts, length, allowed = circuit.volts(case), float(case["cable.length"]), circuit.allowed(case)
    area, both = needed(case, allowed, amps), say.number(2 * length / cable.FOOT, 1)
    case.step(
        f"10.75 x {say.amps(amps)} x {both} ft there and back / {say.volts(volts * allowed / 100, 2)} lost "
        f"= {say.number(area)} circular mils ({AREA}){beside(size, area)}",
        K.cite,
        circuit.limit_cite(allowed),
        "sae-areas" if isinstance(size.name, str) else "iec-60228",
    )
    case.step(carried(case, amps, size, area), TABLE_5)
    drop = cable.drop(amps, length, size.area, k=K.value)
    lost = circuit.Loss(drop, drop / volts * 100, allowed)
    case.step(f"{circuit.called(size)} loses {say.volts(drop, 2)}, {share(lost)} of {say.quantity(volts, 'V')}", K.cite)
    return lost


def carried(case: Case, amps: float, size: Size, area: float) -> str:
    """What the size to fit may carry, and whether that decides and not the loss, or leaves nothing in hand."""
    told = f"{circuit.called(size)} may carry {say.at_most(size.ampacity)}"
    by_loss = cable.smallest(circuit.sizes(case)[0 if isinstance(size.name, str) else 1], area)
    if by_loss and by_loss.area < size.area:
        return f"{told}; the current decides, as {circuit.called(by_loss)} would do for the loss alone"
    return told if size.ampacity > amps * IN_HAND else f"{told}: the next size up leaves something in hand"
