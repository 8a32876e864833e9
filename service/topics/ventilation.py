"""Air for a battery space: how much, and how large the openings."""

from __future__ import annotations

import math
import re
from dataclasses import replace

from grammar.text.patterns import regex
from service import likely, reference, say
from service.calculators import ventilation
from service.case import Case
from service.judgements import charging
from service.kinds import LEAD
from service.reply import Answer, Figure, Option
from service.rules.bank import system
from service.told import openings
from service.topic import Topic

NEEDED = regex(  # "does a locker need vents?", "must the box have openings?"
    r"\b(?:do|does|must|should|will|would)\b[^.?!;]{0,40}\b(?:need|have|want|require|be)\b[^.?!;]{0,16}"
    r"\b(?:vent\w*|air(?:ed|ing)?|openings?|holes?)\b",
    re.IGNORECASE,
)
CELL = 2.0  # V
FAN = (
    "Where the openings cannot be made, a fan moves that much air, one that makes no spark in the gas",
    "iec-62485-2",
)
LOW_AND_HIGH = "Air in low and air out high, both to the open air, because hydrogen rises"
SIZES = ("request:what_size", "detail:how_much_air")

TOPIC = Topic(
    "ventilation",
    "Air for the batteries",
    amps="charger.current",
    cautions=("explosive-gas", "ignition-protected", "mains", "manual-first"),
    likely={"battery.chemistry": likely.KIND},
    unsure={
        "battery.capacity": "We can't say yet: the air follows from the amp-hours of the batteries.",
        "battery.chemistry": "We can't say yet: a wet-cell battery needs more air than a sealed one.",
    },
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Airflow and openings for lead; words without a figure for lithium."""
    chemistry = charging.known_kind(case)
    closed = case.says("detail:shut") or (case.says("detail:closed_space") and not case.says(*SIZES))
    if chemistry in ("lfp", "lithium-other"):
        return of_lithium(case, closed)
    if closed and chemistry is None:
        return without_size(case, None, closed)
    if where := where_they_go(case, chemistry, closed):
        return where
    if "battery.capacity" not in case and (chemistry or closed or not case.says(*SIZES)):
        return without_size(case, chemistry, closed)
    if "battery.capacity" not in case:
        return TOPIC.needs("battery.capacity", "battery.chemistry")
    if chemistry is None:
        return of_any_kind(case)
    return of_lead(case, chemistry, closed)


def of_lead(case: Case, chemistry: str, closed: bool) -> Answer:
    """The air and the openings for lead of a known kind and size, and whether the ones told of are enough."""
    figures = air(case, chemistry)
    case.step(LOW_AND_HIGH, "iec-62485-2@clause 7.3")
    if case.says("detail:closed_space"):
        case.because("A box that is sealed may not stay so, because the gas of lead must get out", "no-closed-box")
    flow, hole = (float(figure.value) for figure in figures)
    each = f"{opening(hole)} for each of two openings, low and high"
    if closed:
        case.step("No lead battery may stand in an airtight space", "no-closed-box")
        head = f"No, never a closed space or an airtight lid: it needs {say.quantity(flow, 'm3/h')} of air, {each}."
        return TOPIC.says("no", head, *figures)
    if there := openings.proposed(case.text):
        return TOPIC.says(*judged(case, there, hole), *figures)
    start = "Yes: the space" if case.says("request:may_i") or NEEDED.search(case.text) else "The space"
    need = f"needs about {say.quantity(flow, 'm3/h')} of air: {each}"
    if case.says("detail:fan"):
        case.because(*FAN)
        return TOPIC.says("information", f"The space {need}, and with both of them it wants no fan.", *figures)
    return TOPIC.says("information", f"{start} {need}.", *figures)


def where_they_go(case: Case, chemistry: str | None, closed: bool) -> Answer | None:
    """Low, high or both, and whether one will do, where that is asked and no size is told to be judged."""
    one = openings.is_one_enough(case.text)
    if closed or openings.proposed(case.text) or not (one or openings.asks_where(case.text)):
        return None
    if case.says(*SIZES) and not (one and "battery.capacity" in case):  # the size comes first, and tells low and high
        return None
    figures = air(case, str(chemistry)) if chemistry in LEAD and "battery.capacity" in case else ()
    each = f", each of {opening(float(figures[1].value))}" if figures else ""
    case.step(LOW_AND_HIGH, "iec-62485-2@clause 7.3")
    if one:
        head = f"No, it takes two{each}: one low for the air in and one high for the air out, both to the open air."
        return TOPIC.says("no", head, *figures)
    start = "Yes, one" if openings.as_is_right(case.text) else "Both: one"
    head = f"{start} low for the air in and one high for the air out{each}, both to the open air: hydrogen rises."
    return TOPIC.says("information", head, *figures)


def judged(case: Case, there: openings.Openings, need: float) -> tuple[str, str]:
    """Whether the openings told of are enough: the verdict and the sentence."""
    told = say.quantity(there.each, "cm2", 1 if there.each < 10 else 0)
    wanted = f"{opening(need)} for each of two, low and high"
    if there.across is not None:
        case.step(f"A round hole of {say.quantity(there.across, 'mm')} has {told}", "iec-62485-2")
        across = math.ceil(20 * math.sqrt(need / math.pi) - 1e-6)
        wanted += f" (a round hole of {say.quantity(across, 'mm')})"
    if there.each < need:
        each = "each has" if there.count > 1 else "it has"
        return "no", f"No: {each} {told}, and it takes {wanted}."
    if there.count < 2:
        return "no", f"No: one is not enough; {told} is large enough, and it takes two openings, one low and one high."
    return "yes", f"Yes, if one is low and one high: each has {told}, and {opening(need)} is needed."


def air(case: Case, chemistry: str) -> tuple[Figure, Figure]:
    """Airflow and opening for the bank, on boost charge unless float alone is said."""
    charge = "float" if case.says("detail:float_only") else "boost"
    gas = reference.row("ventilation", chemistry=chemistry, charge=charge)["gas"]
    cells, amp_hours = cells_of(case), float(case["battery.capacity"])
    flow = ventilation.airflow(cells, gas.value, amp_hours)
    hole = ventilation.opening_area(flow)
    if chemistry == "lead":
        case.step("A lead battery whose kind is not said is taken as wet-cell, which needs most air", gas.cite)
    case.step(
        f"0.05 x {say.number(cells)} cells x {gas.value:g} mA ({charge} charge) x {say.amp_hours(amp_hours)} / 1000 is "
        f"{say.quantity(flow, 'm3/h')}; 28 times that in cm²: {opening(hole)}",
        gas.cite,
    )
    space = case.said("space.volume")
    if space is not None and not ventilation.roomy(float(space), flow):
        case.step(f"{say.quantity(float(space), 'm3')} is small for so much gas, so the openings count", gas.cite)
    return (
        Figure("airflow", "air", flow, "m3/h"),
        Figure("opening_area", "each of two openings", hole, "cm2"),
    )


def opening(area: float) -> str:
    """An opening that is needed, rounded up to the cm²."""
    return say.quantity(math.ceil(area - 1e-6), "cm2", 0)


def cells_of(case: Case) -> float:
    """Cells in all: those of one battery times the batteries, joined in whatever way."""
    one = system(float(case.said("battery.nominal") or 12.0))
    if one > 12 or case.said("battery.count"):
        return one / CELL * float(case.said("battery.count") or 1.0)
    return float(case["bank.voltage"]) / CELL * float(case["bank.in_parallel"])


def of_lithium(case: Case, closed: bool = False) -> Answer:
    """No figure for lithium."""
    case.step("The formula is for hydrogen from lead; a failing lithium battery is another matter", "lithium-gas")
    if closed:
        head = "Better not: lithium gives off no hydrogen in use, but its space is kept open to the air, cool and dry."
        return TOPIC.says("information", head)
    head = (
        "Not for hydrogen: lithium gives off none in use; but keep its space cool, dry and open to the air, as its "
        "maker says."
    )
    if case.says(*SIZES):
        head = (
            "No figure of air for lithium batteries: they give off no hydrogen in use; but keep their space cool, dry "
            "and open to the air, as the maker says."
        )
    return TOPIC.says("information", head)


def without_size(case: Case, chemistry: str | None, closed: bool) -> Answer:
    """The capacity is not known: the rule, for each 100 Ah of 12 V; a figure only on asking."""
    name = chemistry if chemistry in LEAD else "flooded"
    gas = reference.row("ventilation", chemistry=name, charge="boost")["gas"]
    flow = ventilation.airflow(6, gas.value, 100)
    hole = opening(ventilation.opening_area(flow))
    rule = f"{say.quantity(flow, 'm3/h')} for each {say.quantity(100, 'Ah')} of 12 V, and two openings of {hole}"
    case.step(f"0.05 x 6 cells x {gas.value:g} mA x 100 Ah / 1000 is {say.quantity(flow, 'm3/h')}", gas.cite)
    battery = charging.called(str(name)) if chemistry else "a lead battery"
    if closed:
        case.step("No lead battery may stand in an airtight space", "no-closed-box")
        return TOPIC.says("no", f"No: {battery} must not stand in a closed space; it needs about {rule}.")
    if case.says("detail:fan"):
        case.because(*FAN)
        return TOPIC.says("information", f"No fan where two openings suffice: {battery} needs about {rule}.")
    if case.says("detail:where_openings"):
        head = "One opening low for the air in and one high for the air out, both to the open air: hydrogen rises."
        return TOPIC.says("information", head)
    if case.says(*SIZES):
        head = f"We can't say yet: {battery} needs about {rule}, so the amp-hours decide."
        return TOPIC.needs("battery.capacity", headline=head)
    start = f"Yes, {battery}" if NEEDED.search(case.text) else say.capital(battery)
    return TOPIC.says(
        "information",
        f"{start} needs air while it charges: about {rule}.",
        asks=(TOPIC.ask("battery.capacity"),),
    )


def of_any_kind(case: Case) -> Answer:
    """The kind is not known: the figures of a wet-cell and a sealed one side by side."""
    sides = tuple(Option(say.CHEMISTRY[kind], "information", air(case, kind)) for kind in ("flooded", "agm"))
    wet, sealed = (say.quantity(float(side.figures[0].value), "m3/h") for side in sides)
    head = f"We can't say yet: {wet} of air if it is wet-cell, {sealed} if it is AGM or gel, no figure for lithium."
    return replace(TOPIC.needs("battery.chemistry", headline=head), compare=sides)
