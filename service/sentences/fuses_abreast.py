"""Several equal cables for each pole: each has a fuse of its own, as one for all would protect none of them."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.calculators import fuse
from service.calculators.cable import Size
from service.case import Case
from service.judgements import circuit, parallel_cables, proposed_cable
from service.judgements.fitting import BUNDLED, to_fit, us_first
from service.judgements.fusing import CABLE_MARGIN, LISTED, LOAD_MARGIN, RATINGS, running
from service.reply import Figure, Option
from service.rules.cable import TABLE_5

ONE_FOR = regex(
    r"\b(?:one|a single|1|(?:the )?same|shared?|a common) (?:fuse|breaker)\b[^.?!;]{0,30}\b(?:and|both|two)\b"
    r"|\bshare (?:a|one|the) (?:fuse|breaker)\b",
    re.IGNORECASE,
)
Cables = tuple[int, str, float]  # how many for each pole, their size by name, what one alone may carry in A


def cables(case: Case) -> Cables | None:
    """The equal cables that are told of, or that the desk proposes in this very answer; None where one is enough."""
    if circuit.has_cable(case):
        count = parallel_cables.runs(case)
        return (count, circuit.name(case), float(case["cable.ampacity"])) if count > 1 else None
    amps = running(case)
    if amps is None or "cable.length" not in case or not proposed_cable.stands(case):
        return None
    choice = to_fit(case.fresh(), amps)
    size = choice.gauge if us_first(case) else choice.area
    return (choice.count, circuit.called(size), size.ampacity) if choice.count > 1 and size else None


def for_two_loads(case: Case) -> tuple[str, tuple[Option, ...]] | None:
    """The sentence and the fuses where one is thought of for two loads, each on its own cable; None where it is not."""
    if "load.current" not in case.second or "fuse.rating" in case.stated or not ONE_FOR.search(case.text):
        return None
    other = case.others()
    both = [
        (float(one["load.current"]), fuse.at_least(LOAD_MARGIN.value * float(one["load.current"]), RATINGS))
        for one in (case, other)
    ]
    case.follow_other(other)
    case.step("1.25 times the running current of each", LOAD_MARGIN.cite, LISTED)
    case.because("One fuse for both lets the thinner cable carry far more than it may", "fuse-practice")
    told = [f"{say.amps(rated)} for {say.amps(amps)}" for amps, rated in both if rated]
    if len(told) < len(both):
        return None
    options = tuple(
        Option(say.amps(amps), "information", (Figure("fuse_rating", "fuse for this load", rated, "A"),))
        for amps, rated in both
        if rated
    )
    return f"No, one fuse for each cable: {say.listed(told)}, if the cables allow them.", options


def in_their_place(case: Case, amps: float) -> str:
    """What carries the load over its run where the cables told of are too thin, in words."""
    if "cable.length" not in case:
        return "fit thicker ones"
    choice = to_fit(case.fresh(), amps)
    size = choice.gauge if us_first(case) else choice.area
    if size is None:
        return "a technician will look at it"
    return f"{circuit.called(size)} alone carries it" if choice.count == 1 else _several(choice.count, size)


def _several(count: int, size: Size) -> str:
    return f"it takes {count} of {circuit.called(size)} for each pole"


def judged(case: Case) -> tuple[str, str, tuple[Figure, ...]] | None:
    """The verdict on a fuse for each cable, its sentence and figures; None where one cable is enough."""
    found, amps = cables(case), running(case)
    if found is None or amps is None:
        return None
    count, name, alone = found
    share, carries = amps / count, alone * float(BUNDLED.value)
    load = fuse.at_least(LOAD_MARGIN.value * share, RATINGS)
    most = fuse.at_most(CABLE_MARGIN.value * carries, RATINGS)
    if load is None or most is None:
        return None
    case.step(
        f"{say.amps(amps)} in {count} cables is {say.amps(share)} in each; 1.25 times that", LOAD_MARGIN.cite, LISTED
    )
    case.step(f"{say.amps(alone)} x 0.6 side by side = {say.amps(carries)} for each", BUNDLED.cite, TABLE_5)
    case.because("One fuse for all of them lets one cable carry far more than it may", "fuse-practice")
    figures = (
        Figure("fuse_rating", "fuse for each cable", load, "A"),
        Figure("fuse_rating_high", "the most that each cable allows", most, "A"),
    )
    if carries < share or load > most:
        told = f"each of the {count} cables of {name} may carry {say.amps(carries)} and has {say.amps(share)} to carry"
        return "no", f"No fuse suits: {told}; {in_their_place(case, amps)}.", figures
    warm = circuit.warm_rating(case) if circuit.has_cable(case) else None
    if warm is not None and warm * float(BUNDLED.value) < share:
        told = f"a {say.amps(load)} fuse in each of the {count} cables of {name} suits 105{say.NB}°C insulation"
        return "needs-facts", f"We can't say yet: {told}, but with 75{say.NB}°C they are too thin.", figures
    each = f"in each of the {count} cables of {name} on the plus pole"
    return "information", f"Fit a {say.amps(load)} fuse {each}, none for all; {say.amps(most)} is the most.", figures
