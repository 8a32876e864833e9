"""What a hydrometer reading means: brought to one temperature, the charge, and the spread between cells."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case, Value
from service.judgements import doubt, equalising_due, frost, ice_first, laid_up
from service.judgements.cells import cells, spread_of
from service.reply import Answer, Figure, Option, Urgency
from service.rules import readings
from service.rules.readings import NEAR, cite, limit
from service.sentences import wording
from service.sentences.cells_read import by_spread, uneven
from service.told import equal_cells, hydrometer_way
from service.topic import Lever, Topic

READ, SPREAD, KIND = "reading.gravity", "reading.gravity_spread", "battery.chemistry"
WARM = 80 / 1.8 - 32 / 1.8  # °C: 80 °F, at which a hydrometer reads true


def good_gravity(case: Case) -> Iterator[Value]:
    """The float's reading, at this temperature, from which the charge is good."""
    if case.said(READ) is not None:
        yield on_the_float(case, limit("lead-good"))


def on_the_float(case: Case, charge: float) -> float:
    """What the float reads, at this temperature, at a charge of the table."""
    wanted, read = float(reference.row("gravity", charge=charge)["gravity"].value), float(case[READ])
    return round(wanted + read - readings.corrected_gravity(read, read_at(case)), 4)


def good_and_full(case: Case, value: Value) -> str:
    """The least good reading beside that of a full one: a charge that ends at the least has not done its work."""
    good = say.charge(limit("lead-good"))
    return f"{value:.3f} or more on the float after charging ({good}; full is {on_the_float(case, laid_up.FULL):.3f})"


def even_cells(case: Case) -> Iterator[Value]:
    """A spread that is just within the limit."""
    yield round(limit("gravity-spread") - 0.001, 3)


TOPIC = Topic(
    "specific-gravity",
    "Hydrometer reading",
    cautions=(
        "deep-flat",
        "measure-each",
        "charge-not-strength",
        "cable-and-joints",
        "equalise",
        "acid",
        "short-circuit",
        "lift",
    ),
    levers=(
        Lever(
            READ,
            good_gravity,
            good_and_full,
            without=("battery.charge",),
        ),
        Lever(
            SPREAD,
            even_cells,
            lambda case, value: f"cells within {value:.3f} of each other after equalising",
            also=lambda case, value: {READ: max(cells(case))} if cells(case) else {},
        ),
    ),
    unsure={READ: "We can't say yet: please tell us the number at the acid's surface on the float, such as 1.265."},
)

MATTERS = regex(r"\b(?:matters?|mak(?:e|es) (?:a |any |much )?difference|affects?)\b", re.IGNORECASE)
EACH = regex(r"(?<![\d.,])1[.,]?[0-3]\d\d?(?![\d.,]*\d)")  # a gravity as it is written
WHAT_IS_FULL = regex(r"\b(?:what|which|how (?:high|much))\b(?! per)[^.?!;,]{0,35}\bfull\b(?! charg)", re.IGNORECASE)
OF_CELLS = regex(r"\b(?:six|6|five|5|all|other|one|single|bad)\b[^.?!;]{0,8}\bcells?\b", re.IGNORECASE)
LONGEST = 30  # words of a headline
PAIR = 2  # more than two readings are the cells of one battery


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The verdict on one reading, or on the highest and the lowest cell."""
    if case.said(KIND) not in readings.USES_ACID:
        return of_the_wet_one(case) or sealed(case)
    if found := doubt.opposed(case):
        return replace(TOPIC.needs(*found.asks, headline=found.say, figures=figures(case)), route=found.route)
    if (
        case.second.get(READ)
        and case.says("detail:two_read")
        and len(EACH.findall(case.text)) <= PAIR
        and not OF_CELLS.search(case.text)
    ):
        return two_batteries(case)
    if case.says("detail:for_full") and is_choice(case):
        return which_is_full(case)
    spread = spread_of(case)
    if case.said(READ) is None:
        return by_spread(TOPIC, case, spread) if spread is not None else without_reading(case)
    if not 1.0 <= float(case[READ]) <= limit("gravity-most") + NEAR:
        head = f"A battery's gravity cannot be {float(case[READ]):.3f}: please read the float again, such as 1.265."
        return TOPIC.needs(READ, headline=head)
    return full_told(case, judged(case, spread))


def full_told(case: Case, found: Answer) -> Answer:
    """The answer with what a full cell reads, where that is asked beside it, "1.210. What number is full?"; where it is
    asked whether to equalise, that."""
    if "maintenance" not in case.beside and (due := equalising_due.told(case, spread_of(case))):
        return replace(found, headline=due)
    if not WHAT_IS_FULL.search(case.text):
        return found
    full = reference.row("gravity", charge=100)["gravity"]
    case.step(f"A full cell reads {full.value:.3f} at 27 °C (80 °F)", full.cite)
    head = f"{found.headline.removesuffix('.')}; full is {full.value:.3f}."
    return replace(found, headline=head) if len(head.split()) <= LONGEST else found


def two_batteries(case: Case) -> Answer:
    """Each of two batteries by its own reading: the emptier one leads."""
    sides = (case.supposing({}, (SPREAD,)), case.supposing({READ: case.second[READ].value}, (SPREAD,)))
    for side in sides:
        side.second = {}
    found = [judged(side, None) for side in sides]
    order = sorted((0, 1), key=lambda number: float(found[number].figures[1].value))
    case.known(READ)
    case.used.setdefault((READ, 2), case.second[READ])
    for number in order:
        case.follow(sides[number])
    low, high = (found[number] for number in order)
    names = [f"the one at {float(side[READ]):.3f}" for side in sides]
    other = wording.about(wording.percent(float(high.figures[1].value)))
    told = f"{low.headline.removesuffix('.')}; the other one is {other} full."
    options = tuple(Option(name, item.verdict, item.figures) for name, item in zip(names, found, strict=True))
    return replace(low, headline=told.replace("your battery", names[order[0]]), compare=options)


def read_at(case: Case) -> float | None:
    """The temperature at which the acid was read; None where none is said but that of a coming frost."""
    told, read = case.stated.get(frost.TEMPERATURE), case.stated.get(READ)
    before = bool(told and read and told.origin == "thread" and read.origin == "message")  # the frost asked of last
    frosty = before or case.says("detail:forecast") or frost.TEMPERATURE in case.second
    return frost.acid_temperature(case) if frosty else case.said(frost.TEMPERATURE)


def is_choice(case: Case) -> bool:
    """Whether one value is put as a choice of two, "1.265 or 1.280"."""
    read = case.known(READ)
    return read is not None and read.low != read.high


def which_is_full(case: Case) -> Answer:
    """Which of two gravities counts as full: that of our table, unless the battery's maker gives another."""
    full = reference.row("gravity", charge=100)["gravity"]
    case.step(f"{full.value:.3f} is full by our table, read at 27 °C (80 °F)", full.cite)
    head = f"Take {full.value:.3f} for full at 27 °C (80 °F), unless the battery's maker gives another value."
    return TOPIC.says("information", head)


def figures(case: Case) -> tuple[Figure, ...]:
    """Corrected gravity and charge of the lowest cell, with the highest as the other end."""
    celsius = read_at(case)
    told = sorted(readings.corrected_gravity(read, celsius) for read in cells(case))
    if not told:
        return ()
    low, high = (None, None) if told[0] == told[-1] else (told[0], told[-1])
    charges = [readings.gravity_charge(value) for value in told]
    ends = (None, None) if low is None else (charges[0], charges[-1])
    case.source("gravity-correction", "bci-charge")
    return (
        Figure("corrected_gravity", "gravity at 27 °C", told[0], "", low, high),
        Figure("state_of_charge", "charge", charges[0], "%", *ends),
    )


def judged(case: Case, spread: float | None) -> Answer:
    """The charge, and the spread if it is known."""
    found = figures(case)
    corrected, charge = float(found[0].value), float(found[1].value)
    celsius = read_at(case)
    if celsius is None:
        case.step("Temperature not said: read as at 27 °C (80 °F)", cite("gravity-correction"))
    elif f"{corrected:.3f}" != f"{min(cells(case)):.3f}":  # at 80 °F it reads true
        case.step(
            f"{min(cells(case)):.3f} at {say.temperature(float(celsius))} is {corrected:.3f} at 27 °C (80 °F): "
            f"0.004 {'less for each 10 °F colder' if celsius < WARM else 'more for each 10 °F warmer'}",
            cite("gravity-correction"),
        )
    told = wording.about(wording.percent(charge))
    case.step(f"{corrected:.3f} is {told} of charge", "bci-charge@specific gravity column")
    verdict = readings.judged(charge, "flooded")
    urgent: Urgency = "today" if charge < limit("lead-half") - NEAR else "routine"
    opening = starts(case, verdict, charge, celsius is not None and f"{corrected:.3f}" != f"{min(cells(case)):.3f}")
    if wording.fears_it_spoilt(case, verdict):
        opening = wording.NO_PROOF
    if spread is not None and uneven(case, spread):
        return replace(by_spread(TOPIC, case, spread), figures=found, urgency=urgent)
    same = f"{corrected:.3f}" == f"{min(cells(case)):.3f}"
    read = f"a gravity of {corrected:.3f}" + ("" if celsius is None or same else " (corrected)")
    full = "full" if charge >= wording.FILLED else f"{told} full"
    advice = {"no": ", so charge it today", "marginal": ", so charge it soon"}.get(verdict, "")
    head = f"{opening}: {read} means your battery is {full}{advice}."
    if case.says("request:how_full") and not case.says("detail:asks_good", "detail:asks_full"):
        head = f"{say.capital(full)}: that is what {read} means{advice}."
    if equal_cells.kept(case.text):
        head = (
            f"Charge it: {read} means it is {full}, and cells that read alike are no reason to scrap it; test it full."
        )
    elif equal_cells.asked(case.text):
        head = f"{head.removesuffix('.')}; that all cells read alike is as it should be."
    if verdict != "yes" and case.says("detail:after_full"):
        case.because(
            "What still reads low after that has worn plates or weak acid, so plan a new one", cite("lead-good")
        )
        head = (
            f"Too low: {read} after a full charge means it no longer fills; charge longer or equalise it by its "
            "manual, then read again."
        )
    if spread is not None and spread >= limit("gravity-uneven") - NEAR:
        head = (
            f"{opening}: the lowest cell is {full}, but the cells differ by {spread:.3f}, so charge it right through "
            "and read again."
        )
    return TOPIC.says(verdict, ice_first.held(case, charge, head), *found, urgency=urgent)


def starts(case: Case, verdict: str, charge: float, differs: bool) -> str:
    """The first word: of the reading, of whether it is full, or of its temperature where that is asked of."""
    if case.says("detail:asks_full") and not case.says("detail:asks_good"):
        return wording.whether_full(charge)
    if read_at(case) is None or not MATTERS.search(case.text):
        return wording.opening(case, verdict)
    return "Yes, it does" if differs else "Hardly"


def of_the_wet_one(case: Case) -> Answer | None:
    """The answer for the battery with acid, where one without is told of first: "AGM 12.6 V, the wet one 1.250"."""
    wet = case.second.get(KIND)
    if wet is None or wet.value not in readings.USES_ACID or case.said(READ) is None:
        return None
    own = case.fresh()
    others = ("reading.voltage",) if "rest-voltage" in case.beside else ()  # those of the sealed one, judged there
    own.stated = {fact: item for fact, item in case.stated.items() if fact not in others} | {KIND: replace(wet, of=2)}
    own.second = {fact: item for fact, item in case.second.items() if fact != KIND}
    found = answer(own)
    case.used |= own.used
    case.follow(own)
    return replace(found, headline=found.headline.replace("your battery", f"your {wording.kind(own)} battery"))


def sealed(case: Case) -> Answer:
    """A hydrometer needs liquid acid."""
    kind = wording.a_kind(case, capital=False)
    case.step(
        f"No liquid acid can be drawn from {kind} battery: its volts at rest tell the charge",
        readings.charge_of(12.5, readings.table_of(case.said(KIND))).cites[0],
    )
    head = f"We can't say yet: {kind} battery has no acid for a hydrometer, so please tell us its volts at rest."
    return TOPIC.needs("reading.voltage", headline=head)


def how_to(case: Case) -> Answer:
    """How each cell is tested, and what its number means."""
    full, good = (reference.row("gravity", charge=share)["gravity"] for share in (100, 75))
    spread = limit("gravity-spread")
    case.step("Charged full and rested for some hours; not just after water went in, which floats on top", "watering")
    draws = "Goggles and gloves on; squeeze, draw until the float swims free, read at eye level, put the acid back"
    case.step(draws, "care-practice")
    case.step("Write down every cell, from the same end, with the temperature of the acid", "gravity-correction")
    case.step(f"{full.value:.3f} is full and {good.value:.3f} is 75 %, read at 27 °C (80 °F)", full.cite)
    case.step(f"Cells that differ by {spread:.3f} or more: that battery is finished", cite("gravity-spread"))
    head = (
        f"Charged and rested, draw acid until the float swims free, and read every cell: {full.value:.3f} is full, "
        f"{spread:.3f} between cells means finished."
    )
    return TOPIC.says("information", head)


def without_reading(case: Case) -> Answer:
    """How it is done, or what a full cell shows, where that is asked; else the reading is asked for."""
    if hydrometer_way.asked(case.text):
        return how_to(case)
    if not case.says("detail:reading_wanted"):
        return TOPIC.needs(READ)
    full, good, half = (reference.row("gravity", charge=share)["gravity"] for share in (100, 75, 50))
    case.step(
        f"{full.value:.3f} full, {good.value:.3f} at 75 %, {half.value:.3f} at half, read at 27 °C (80 °F)", full.cite
    )
    head = (
        f"A full wet-cell battery shows {full.value:.3f} in every cell at 27 °C (80 °F); {good.value:.3f} is 75 %, "
        f"{half.value:.3f} half."
    )
    return TOPIC.says("information", head)
