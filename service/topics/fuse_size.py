"""Which fuse, and where: enough for the motor, not too much for the cable."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.text.patterns import regex
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
    figures,
    great,
    many_cables,
    next_cable,
    ratings,
    requirements,
    running,
    too_thin,
)
from service.judgements.interrupting import with_breaking
from service.reply import Answer
from service.rules.cable import TABLE_5
from service.sentences import fuses_abreast
from service.sentences.fuse_at_hand import LARGER, after_a_blown_one, cause_first, gone_at_once, no_larger, two_fuses
from service.sentences.fuse_faults import ask_cable, ask_insulation, decided, left_or_misplaced, near_enough
from service.sentences.fuse_of_panel import of_the_panel, panel_first
from service.sentences.fuses import (
    HABITS,
    ITS_SIZE,
    SIZE_TOO,
    blew,
    fitted,
    habit_alone,
    in_their_word,
    judge,
    no_fuse_suits,
    over_what_suits,
    place,
    print_decides,
    shortened,
    the_most,
    their_word,
    what_if,
)
from service.told import fuse_distance, fuse_heat, longest_run, switch_asked
from service.topic import Lever, Topic


def nearest(case: Case) -> Iterator[Value]:
    """Standard ratings, the nearest to theirs first."""
    theirs = case.said("fuse.rating")
    if theirs:
        yield from sorted(RATINGS, key=lambda rating: (abs(rating - theirs), rating))


ENDS = regex(r"\b(?:both|each|either) ends?\b", re.IGNORECASE)
MUST_BE = regex(  # whether there is one at all, or close by
    r"\b(?:must|should|does|has|need|needs)\b(?: there)?(?: (?:really|also|have to|need to|to))*"
    r" be an? (?:\w+ )?(?:fuse|breaker)\b"
    r"|\b(?:do|does) (?:i|we|it|the \w+(?: \w+)?) (?:really |also )?need an? (?:fuse|breaker)\b"
    r"|\bis an? (?:fuse|breaker) (?:needed|necessary|required)\b",
    re.IGNORECASE,
)
MARKED = "; its mark tells of heat, so it stays off until the holder is new and the joints are checked."
FEEDS = ("thing:charger", "thing:dcdc", "thing:panel", "thing:alternator")  # what feeds a cable from its other end
TOPIC = Topic(
    "fuse-size",
    "Fuse or breaker",
    amps="load.current",
    cautions=("fuse-at-battery", "fuse-breaks-fault", "cable-assumed", "ignition-protected", "manual-first"),
    levers=(
        Lever("fuse.rating", nearest, lambda case, value: f"a {say.amps(float(value))} {their_word(case)}"),
        *THICKER,
    ),
    unsure={
        "load.current": "We can't say yet: the fuse follows from the amps of the motor and the size of the cable.",
        "cable.gauge": "We can't say yet: the size of the cable decides how large the fuse may be.",
    },
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The rating for what is known, and the verdict on a fuse they have; a breaker where they speak of one."""
    if habit := habit_alone(case):
        return TOPIC.says(*habit)
    if of_the_panel(case):
        return in_their_word(case, panel_first(TOPIC.needs("load.current", "cable.gauge")))
    return in_their_word(case, left_off(case, at_both_ends(case, protecting(case))))


def left_off(case: Case, found: Answer) -> Answer:
    """The answer with what a mark of heat on the fuse asks for: a new holder, and no use until joints are checked."""
    if not fuse_heat.marked(case.text) or found.verdict == "needs-facts":
        return found
    case.source("joints-and-heat")
    return replace(found, headline=f"{found.headline.removesuffix('.')}{MARKED}", urgency="today", route="technician")


def at_both_ends(case: Case, found: Answer) -> Answer:
    """The answer opened with whether both ends want a fuse, where that is asked of a fuse that is to be fitted."""
    first, mark, rest = found.headline.partition(" fuse")
    if not ENDS.search(case.text) or not mark or not first.startswith(("Fit a", "Fit the")):
        return found
    fed = case.says(*FEEDS) or "charger.current" in case.stated
    case.source(PLACE.cite)
    if fed:
        return replace(found, headline=f"Yes, one at each end, as both can feed the cable: f{first[1:]}{mark}{rest}")
    head = f"One, at the battery, as a motor feeds nothing back: f{first[1:]}{mark}{rest}"
    return replace(found, headline=head)


def protecting(case: Case) -> Answer:
    """The answer, in which every fuse or breaker is a fuse."""
    case = proposed_cable.put_in(case) if "fuse.rating" in case.stated else proposed_cable.instead(case)
    if switch := battery_switch(case):
        return switch
    band, away = ratings(case), fuse_distance.metres(case.text)
    if band.load or band.most:
        requirements(case)
    if found := left_or_misplaced(TOPIC, case, band, away):
        return found
    if two := fuses_abreast.for_two_loads(case):
        return TOPIC.says("no", two[0], compare=two[1], asks=ask_cable(TOPIC, case))
    if "fuse.rating" not in case.stated and (each := fuses_abreast.judged(case)):
        verdict, head, facts = each
        asks = ask_insulation(TOPIC, case) if verdict == "needs-facts" else ()
        return TOPIC.says(verdict, head, *facts, asks=asks, route="technician")
    if running(case) and band.load is None:
        head = "No standard fuse is large enough for these amps: one of our technicians will look at the circuit."
        return TOPIC.says("needs-facts", head, *figures(band), route="technician")
    if band.load is None and band.most is None:
        found = near_enough(TOPIC, case, away) if away is not None else nothing_known(case)
        return with_breaking(case, band, found, rated=False)
    if "fuse.rating" in case.stated and (fault := gone_at_once(TOPIC, case, band) or no_larger(TOPIC, case, band)):
        return fault
    found = stated_fuse(case, band) if "fuse.rating" in case.stated else cause_first(case, rating(case, band))
    return with_breaking(case, band, found, rated=True)


def battery_switch(case: Case) -> Answer | None:
    """What a switch in the same cable must carry, where that is asked and its load is known."""
    needed = switch_asked.needed(case.text)
    if not (needed or switch_asked.asked(case.text)) or case.says("detail:fuse_word") or not running(case):
        return None
    amps, peak = say.amps(circuit.current(case)), case.get("load.peak")
    first = f" and {say.amps(float(peak))} in the first instant" if peak else ""
    if needed:
        case.because(
            "A thruster may start by itself, and must be cut off before hands go near it", "switch-before-work"
        )
        head = f"Yes: one that carries {amps} all the time{first}, to cut the circuit off by hand; a fuse is no switch."
        return TOPIC.says("information", head)
    return TOPIC.says("information", f"Take a DC battery switch that carries {amps} all the time{first}.")


def nothing_known(case: Case) -> Answer:
    """Neither amps nor cable: what can be said all the same."""
    needed = TOPIC.needs("load.current", *(() if circuit.has_cable(case) else ("cable.gauge",)))
    if "fuse.rating" not in case.stated:
        found = next((words for cue, words in HABITS.items() if case.says(f"detail:{cue}")), None)
        if found:
            verdict, head, why, cite = found
            case.step(why, cite)
            if verdict == "information" and SIZE_TOO.search(case.text):
                return replace(needed, headline=f"{shortened(head)}; {ITS_SIZE}.")
            return TOPIC.says(verdict, head)
        if told := what_if(case):
            return TOPIC.says("information", told)
    if case.says("detail:bigger_fuse") or (blew(case) and LARGER.search(case.text)):
        head = "No larger fuse until the cause is known: the amps of the motor and the size of the cable decide."
        return TOPIC.needs("load.current", "cable.gauge", headline=head)
    if MUST_BE.search(case.text) and "fuse.rating" not in case.stated and "solar.power" not in case.stated:
        case.source(PLACE.cite)
        return replace(needed, headline=f"Yes, {PLACED}; {ITS_SIZE}.")
    if "solar.power" in case.stated and not case.says("thing:thruster"):
        return panel_first(needed)
    return needed


def rating(case: Case, band: Band) -> Answer:
    """The fuse to fit, where none is named."""
    if band.fit is None:
        return most_only(case, band)
    if band.most is None:
        return without_cable(case, band)
    if too_thin(case, band):
        return TOPIC.says("no", no_fuse_suits(case, band), *figures(band))
    cable, asks, thicker = circuit.name(case), ask_insulation(TOPIC, case), next_cable(case, band)
    if case.says("detail:most") and not longest_run.asked(case.text, set(case.stated)):
        return TOPIC.says(
            "needs-facts" if asks else "information", the_most(case, band, cable), *figures(band), asks=asks
        )
    great(case, band.fit)
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
        return TOPIC.says("information", both[0], *both[1], asks=ask_cable(TOPIC, case))
    great(case, band.fit)
    head = f"Fit a {say.amps(band.fit)} fuse{place(case)}, if the cable allows it."
    if many_cables(case):
        amps = say.amps(circuit.current(case))
        head = f"{say.amps(band.fit)} in all: no single cable carries {amps}, so it takes several for each pole, "
        head += "each with a fuse of its own."
        return TOPIC.says("information", head, *figures(band), asks=ask_cable(TOPIC, case), route="technician")
    if band.house and band.house != band.fit:
        head = (
            f"Fit the {say.amps(band.house)} fuse that our catalogue names{place(case)}, if the cable allows it; "
            f"{say.amps(band.fit)} is the least."
        )
    return TOPIC.says("information", head, *figures(band), asks=ask_cable(TOPIC, case))


def with_the_proposed(case: Case, band: Band) -> Answer | None:
    """The fuse for the cable that we would propose, None where one cable is not enough."""
    size = proposed_cable.size(case)
    if size is None or not band.load:
        return None
    first, most = fuse.at_least(size.ampacity, RATINGS), fuse.at_most(CABLE_MARGIN.value * size.ampacity, RATINGS)
    case.step(f"{circuit.called(size)} as proposed may carry {say.at_most(size.ampacity)}", TABLE_5, CABLE_MARGIN.cite)
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
            return after_a_blown_one(TOPIC, case, band, rated, float(other["fuse.rating"]))
        second = float(other["fuse.rating"])
        pair = ((rated, verdict, why), (second, *judge(case, band, second)))
        case.follow_other(other)
        return two_fuses(TOPIC, case, band, pair)
    verdict, why, asks = decided(TOPIC, case, band, rated)
    if blew(case) and band.most and rated > band.most and band.fit and not too_thin(case, band):
        why = f"{why.removesuffix('.')}; fit {say.amps(band.fit)} and have the cause looked for."
    if blew(case) and verdict == "yes" and band.most:
        why = f"{why.removesuffix('.')}; that it blows tells of a fault, so have motor and cable looked at."
    if blew(case):
        case.step("A fuse that blows calls for a look at motor and cable, never for a larger fuse", "fuse-practice")
    return TOPIC.says(verdict, why, *figures(band), asks=asks)
