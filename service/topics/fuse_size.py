"""Which fuse, and where: enough for the motor, not too much for the cable."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from service import say
from service.calculators import fuse
from service.case import Case, Value
from service.judgements import circuit, converter_fuses, proposed_cable
from service.judgements.fitting import THICKER
from service.judgements.fusing import (
    CABLE_MARGIN,
    PLACE,
    PLACED,
    RATINGS,
    Band,
    next_cable,
    ratings,
    requirements,
    running,
    too_thin,
)
from service.judgements.interrupting import with_breaking
from service.reply import Answer, Asked, Change, Figure, Option, strictness
from service.rules.cable import TABLE_5
from service.sentences import fuses_abreast
from service.sentences.fuses import (
    HABITS,
    blew,
    cable_beside,
    far,
    fitted,
    in_their_word,
    judge,
    neither_suits,
    no_fuse_suits,
    over_what_suits,
    place,
    print_decides,
    the_most,
    their_word,
    too_thin_if_older,
)
from service.told import fuse_distance
from service.topic import Lever, Topic

BESIDE = {  # of the other one of two fuses, by its verdict
    "yes": "; {other}: yes",
    "marginal": "; {other}: only just",
    "no": "; {other} is too {size}",
    "information": "",
    "needs-facts": "",
}
NEAR = PLACE.value / 1000  # metres of cable from the battery to its fuse


def nearest(case: Case) -> Iterator[Value]:
    """Standard ratings, the nearest to theirs first."""
    theirs = case.said("fuse.rating")
    if theirs:
        yield from sorted(RATINGS, key=lambda rating: (abs(rating - theirs), rating))


TOPIC = Topic(
    "fuse-size",
    "Fuse or breaker",
    amps="load.current",
    cautions=("fuse-at-battery", "fuse-breaks-fault", "cable-assumed", "ignition-protected", "manual-first"),
    levers=(
        Lever("fuse.rating", nearest, lambda case, value: f"a {say.amps(float(value))} {their_word(case)}"),
        *(Lever(*row) for row in THICKER),
    ),
    unsure={
        "load.current": "We can't say yet: the fuse follows from the amps of the motor and the size of the cable.",
        "cable.gauge": "We can't say yet: the size of the cable decides how large the fuse may be.",
    },
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The rating for what is known, and the verdict on a fuse they have; a breaker where they speak of one."""
    return in_their_word(case, protecting(case))


def protecting(case: Case) -> Answer:
    """The answer, in which every fuse or breaker is a fuse."""
    if "fuse.rating" in case.stated:
        case = proposed_cable.put_in(case)
    band, away = ratings(case), fuse_distance.metres(case.text)
    if band.load or band.most:
        requirements(case)
    if found := left_or_misplaced(case, band, away):
        return found
    if "fuse.rating" not in case.stated and (each := fuses_abreast.judged(case)):
        verdict, head, facts = each
        return TOPIC.says(verdict, head, *facts, route="technician")
    if running(case) and band.load is None:
        head = "No standard fuse is large enough for these amps: one of our technicians will look at the circuit."
        return TOPIC.says("needs-facts", head, *figures(band), route="technician")
    if band.load is None and band.most is None:
        found = near_enough(case, away) if away is not None else nothing_known(case)
        return with_breaking(case, band, found, rated=False)
    found = stated_fuse(case, band) if "fuse.rating" in case.stated else rating(case, band)
    return with_breaking(case, band, found, rated=True)


def left_or_misplaced(case: Case, band: Band, away: float | None) -> Answer | None:
    """The answer on a fuse that is missing, bridged, open or in the wrong place; None where it is none of these."""
    if case.says("detail:bridged"):
        case.source("fuse-practice")
        return bridged(band)
    if case.says("detail:one_end") and case.says("thing:dcdc", "thing:charger", "thing:panel"):
        return one_end(case, band)
    if case.says("detail:fuse_left_out") and "fuse.rating" not in case.stated:
        return left_out(case, band)
    if case.says("detail:no_fuse") and "fuse.rating" not in case.stated:
        case.source(PLACE.cite)
        return unfused(band)
    if away is not None and away > NEAR:
        return too_far(case, band, away)
    if case.says("detail:fuse_far") and not case.says("detail:fuse_place", "detail:fuse_near"):
        return too_far(case, band)
    if case.says("detail:open_holder") and case.says("detail:petrol_near"):
        return unguarded(case, band)
    return None


def figures(band: Band) -> tuple[Figure, ...]:
    """The fuse for the load and the most that the cable allows, as far as they are known."""
    found = []
    if band.fit:
        found.append(Figure("fuse_rating", "fuse for this load", band.fit, "A"))
    if band.most:
        found.append(Figure("fuse_rating_high", "the most the cable allows", band.most, "A"))
    if band.breaks and found:
        found.append(Figure("interrupting_rating", "short circuit it must break", band.breaks, "A"))
    return tuple(found)


def ask_cable() -> tuple[Asked, ...]:
    """The question for the size of the cable."""
    return (TOPIC.ask("cable.gauge", [(size, size) for size in ("1/0", "2/0", "4/0")]),)


def ask_insulation(case: Case) -> tuple[Asked, ...]:
    """The question for the print on the cable, where it decides whether the cable carries the load."""
    if not too_thin_if_older(case):
        return ()
    case.step(f"At 75{say.NB}°C insulation it may carry {say.amps(circuit.warm_rating(case) or 0)}", TABLE_5)
    good = "105 °C" if "fuse.rating" in case.stated else "105 °C: as above"
    return (TOPIC.ask("cable.insulation", ((good, 105.0), ("75 °C or less", 75.0))),)


def nothing_known(case: Case) -> Answer:
    """Neither amps nor cable: what can be said all the same."""
    if "fuse.rating" not in case.stated:
        found = next((words for cue, words in HABITS.items() if case.says(f"detail:{cue}")), None)
        if found:
            verdict, head, why, cite = found
            case.step(why, cite)
            return TOPIC.says(verdict, head)
    if case.says("detail:bigger_fuse"):
        head = "No larger fuse until the cause is known: the amps of the motor and the size of the cable decide."
        return TOPIC.needs("load.current", "cable.gauge", headline=head)
    return TOPIC.needs("load.current", *(() if circuit.has_cable(case) else ("cable.gauge",)))


def left_out(case: Case, band: Band) -> Answer:
    """Whether a fuse may be left out, however short the load runs: never."""
    case.because("A fuse guards the cable against a short circuit, which needs no running motor", "fuse-practice")
    fits = band.fit and not too_thin(case, band)
    which = f"this one takes {say.amps(band.fit or 0)}" if fits else "every feed needs one, a thruster's too"
    head = f"No, the fuse stays in: {which}, {PLACED}."
    return TOPIC.says("no", head, *figures(band), asks=ask_insulation(case))


def unfused(band: Band) -> Answer:
    """A circuit without a fuse is not used until it has one."""
    which = f"a {say.amps(band.fit)} fuse" if band.fit else "the right fuse"
    head = f"No: leave this circuit switched off until {which} is in, {PLACED}."
    if band.fit is None:
        return TOPIC.says("no", head, *figures(band), urgency="today", asks=(TOPIC.ask("load.current"),))
    change = Change("fuse.rating", band.fit, "A", f"a {say.amps(band.fit)} fuse near the battery")
    return TOPIC.says("no", head, *figures(band), urgency="today", would_change=(change,))


def bridged(band: Band) -> Answer:
    """Foil or wire in place of a fuse."""
    which = f"a {say.amps(band.fit)} fuse" if band.fit else "a fuse of the same rating"
    head = f"No: only {which} goes in its place, and the circuit stays switched off until then."
    return TOPIC.says("no", head, *figures(band), urgency="today")


def unguarded(case: Case, band: Band) -> Answer:
    """An open fuse where petrol can gather."""
    case.because("A fuse that blows in the open can light petrol vapour", "cfr-183-410")
    fitting = f", with a {say.amps(band.fit)} fuse" if band.fit and not too_thin(case, band) else ""
    head = f"No: an open fuse holder must not stand where petrol can gather; fit an ignition protected one{fitting}."
    return TOPIC.says("no", head, *figures(band), asks=ask_insulation(case))


def too_far(case: Case, band: Band, away: float | None = None) -> Answer:
    """A fuse at the wrong end of the cable, with the rating that belongs there where it is known."""
    case.because("A short in the cable before the fuse has nothing to stop it", PLACE.cite)
    fitting = band.fit and not too_thin(case, band) and "fuse.rating" not in case.stated
    which = f"a {say.amps(band.fit)} fuse" if fitting and band.fit else "the fuse"
    head = f"No: {which} belongs {PLACED}, because the cable before the fuse has no protection."
    if away is not None:
        head = f"No: {which} belongs {PLACED}, and {far(away)} away leaves that much cable without protection."
        if "fuse.rating" in case.stated and band.load and band.most:  # size and cable are judged apart from the place
            case.because(f"Its size by itself: {decided(case, band, float(case['fuse.rating']))[1]}", PLACE.cite)
            cable_beside(case, away)
    return TOPIC.says("no", head, *figures(band), asks=ask_insulation(case))


def near_enough(case: Case, away: float) -> Answer:
    """A fuse whose place alone is known, and right."""
    case.because("Measured along the cable", PLACE.cite)
    head = f"Yes: {far(away)} from the battery is near enough for a fuse, which belongs {PLACED}."
    return TOPIC.says("yes", head)


def one_end(case: Case, band: Band) -> Answer:
    """One fuse where both ends of the cable can feed it."""
    case.step("Both ends of this cable are sources, and each can feed a short circuit", PLACE.cite)
    head = f"No: both ends can feed this cable, so fit a second fuse at the other end, {PLACED} there."
    return TOPIC.says("no", head, *figures(band))


def rating(case: Case, band: Band) -> Answer:
    """The fuse to fit, where none is named."""
    if band.fit is None:
        return most_only(case, band)
    if band.most is None:
        return without_cable(case, band)
    if too_thin(case, band):
        return TOPIC.says("no", no_fuse_suits(case, band), *figures(band))
    cable, asks, thicker = circuit.name(case), ask_insulation(case), next_cable(case, band)
    if case.says("detail:most"):
        return TOPIC.says(
            "needs-facts" if asks else "information", the_most(case, band, cable), *figures(band), asks=asks
        )
    if asks:  # the print on the cable decides whether any fuse suits
        return TOPIC.says("needs-facts", print_decides(case, band, cable, thicker), *figures(band), asks=asks)
    return TOPIC.says("information", fitted(case, band, cable, thicker), *figures(band), route=hands(band, thicker))


def hands(band: Band, thicker: str) -> str | None:
    """Who looks at a fuse that no single cable suits: several cables for each pole are laid out by a technician."""
    return "technician" if over_what_suits(band) and not thicker else None


def most_only(case: Case, band: Band) -> Answer:
    """The cable is known, the load is not."""
    assert band.most
    head = f"{say.amps(band.most)} is the most for {circuit.name(case)}"
    if case.says("detail:most"):
        enough = f"{say.amps(band.cable or band.most)} is enough for all it may carry"
        return TOPIC.says("information", f"{head}; {enough}.", *figures(band))
    head = f"{head}; the amps of the load decide which fuse."
    return TOPIC.needs("load.current", headline=head, figures=figures(band))


def without_cable(case: Case, band: Band) -> Answer:
    """The load is known, the cable is not: the cable that we would propose, else the cable is asked for."""
    assert band.fit
    asked = proposed_cable.stands(case) or (case.says("thing:cable") and not case.says("note:no_idea"))
    if asked and (found := with_the_proposed(case, band)):
        return found
    if both := converter_fuses.fuses(case):
        return TOPIC.says("information", both[0], *both[1], asks=ask_cable())
    head = f"Fit a {say.amps(band.fit)} fuse{place(case)}, if the cable allows it."
    if band.house and band.house != band.fit:
        head = (
            f"Fit the {say.amps(band.house)} fuse that our catalogue names{place(case)}, if the cable allows it; "
            f"{say.amps(band.fit)} is the least."
        )
    return TOPIC.says("information", head, *figures(band), asks=ask_cable())


def with_the_proposed(case: Case, band: Band) -> Answer | None:
    """The fuse for the cable that we would propose, None where one cable is not enough."""
    size = proposed_cable.size(case)
    if size is None or not band.load:
        return None
    first, most = fuse.at_least(size.ampacity, RATINGS), fuse.at_most(CABLE_MARGIN.value * size.ampacity, RATINGS)
    case.step(f"{circuit.called(size)} as proposed may carry {say.amps(size.ampacity)}", TABLE_5, CABLE_MARGIN.cite)
    if not most or band.load > most:
        return None
    proposed_cable.assumed(case, size)
    allowed = replace(band, cable=first, most=most, house=None)  # the rating of the load, as no cable is theirs
    named = f", where our catalogue names {say.amps(band.house)}" if band.house and band.house != band.load else ""
    thicker = next_cable(case, allowed, size)
    head = fitted(case, allowed, circuit.called(size), thicker, named)
    if named and band.house and band.house <= most:
        bounds = f"{say.amps(band.load)} is the least, and {say.amps(most)} the most for {circuit.called(size)}"
        head = f"Fit the {say.amps(band.house)} fuse that our catalogue names; {bounds}."
    if why := proposed_cable.outdone(case, size):
        fitting = f"fit a {say.amps(band.load)} fuse{named}; {say.amps(most)} is the most"
        head = f"Use {circuit.called(size)} now, as {why}, and {fitting}."
    return TOPIC.says("information", head, *figures(allowed), route=hands(allowed, thicker))


def stated_fuse(case: Case, band: Band) -> Answer:
    """The verdict on the fuse they have, or on two that they weigh."""
    rated = float(case["fuse.rating"])
    if case.says("detail:stays_whole"):  # "a larger one is better, then it does not blow"
        case.because("A fuse protects the cable: one that is too large to blow protects nothing", "fuse-practice")
    verdict, why = judge(case, band, rated)
    if "fuse.rating" in case.second:
        other = case.others()
        if blew(case):
            return after_a_blown_one(case, band, rated, float(other["fuse.rating"]))
        second = float(other["fuse.rating"])
        pair = ((rated, verdict, why), (second, *judge(case, band, second)))
        case.follow_other(other)
        return two_fuses(case, band, pair)
    verdict, why, asks = decided(case, band, rated)
    if blew(case) and band.most and rated > band.most and band.fit and not too_thin(case, band):
        why = f"{why.removesuffix('.')}; fit {say.amps(band.fit)} and have the cause looked for."
    if blew(case) and verdict != "yes":
        case.step("A fuse that blows calls for a look at motor and cable, never for a larger fuse", "fuse-practice")
    return TOPIC.says(verdict, why, *figures(band), asks=asks)


def decided(case: Case, band: Band, rated: float) -> tuple[str, str, tuple[Asked, ...]]:
    """The verdict on one fuse, the sentence for it, and what is asked back."""
    verdict, why = judge(case, band, rated)
    if verdict == "needs-facts":
        return verdict, why, (TOPIC.ask("load.current"),)
    if verdict == "information":
        return verdict, why, ask_cable()
    asks = ask_insulation(case) if verdict != "no" else ()
    if asks:
        return "needs-facts", print_decides(case, band, circuit.name(case), next_cable(case, band), rated), asks
    return verdict, why, ()


def after_a_blown_one(case: Case, band: Band, *rated: float) -> Answer:
    """Two fuses of which the smaller blew: the larger one, fitted or thought of in its place, is what is judged."""
    gone, there = min(rated), max(rated)
    verdict, why, asks = decided(case, band, there)
    case.used.setdefault(("fuse.rating", 2), case.second["fuse.rating"])
    cause = "it calls for a look at motor and cable, never for a larger fuse alone"
    if band.load and gone < band.load:
        cause = f"it is under the {say.amps(band.load)} of this load, or there is a fault: an electrician looks first"
    case.because(f"That the {say.amps(gone)} fuse blew: {cause}", "fuse-practice")
    over = bool(band.most and there > band.most)
    if over and band.fit and not too_thin(case, band):
        why = f"{why.removesuffix('.')}; fit {say.amps(band.fit)}."
    return TOPIC.says(verdict, why, *figures(band), urgency="today" if over else None, asks=asks)


def two_fuses(case: Case, band: Band, pair: tuple[tuple[float, str, str], ...]) -> Answer:
    """Two fuses weighed: of the better ones the catalogue's, else the smaller."""
    options = tuple(Option(say.amps(rated), verdict) for rated, verdict, _ in pair)
    (rated, verdict, why), other = sorted(
        pair, key=lambda item: (strictness(item[1]), item[0] != band.house, item[0])
    )  # the catalogue's own before the smaller one
    if verdict == "yes":
        why = f"Take the {say.amps(rated)} fuse: it suits {say.amps(circuit.current(case))} on {circuit.name(case)}"
        size = "small" if other[0] < rated else "large"
        why = f"{why}{BESIDE[other[1]].format(other=say.amps(other[0]), size=size)}."
    elif verdict == "marginal":
        why = neither_suits(case, band, rated, other) or why
    elif verdict == "information" and band.fit:
        why = f"The load asks for {say.amps(band.fit)}; the size of the cable decides if it may be larger."
    asks = {"information": ask_cable(), "needs-facts": (TOPIC.ask("load.current"),)}.get(verdict, ())
    return TOPIC.says(verdict, why, *figures(band), compare=options, asks=asks)
