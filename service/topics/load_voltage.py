"""Whether a voltage under load is good: what the battery should hold, and where the volts are lost."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from service import say
from service.case import Case, Value
from service.judgements import circuit, doubt, load_reading
from service.judgements.doubt import shown
from service.judgements.load_reading import UnderLoad, read_under_load
from service.reply import Answer
from service.rules import readings
from service.rules.cable import K
from service.rules.readings import NEAR, cite, limit
from service.sentences import under_load, wording
from service.sentences.load_undecided import lead_taken, what_lacks
from service.sentences.sag import AT_LOAD, cable_step, figures, lost_on_the_way, of_the_cable, plot, steps
from service.told import culprit
from service.topic import Lever, Topic

READ = "reading.load_voltage"
MOSTLY = 0.75  # of the volts lost: a cable that takes less does not explain them
NOT_FULL = ", but it was not full: charge it and test again before you buy"


def holding(case: Case) -> Iterator[Value]:
    """The volts that the posts should hold."""
    if load_reading.readings_of(case)[0] is not None:
        yield read_under_load(case).lowest


def at_the_motor(case: Case) -> Iterator[Value]:
    """The volts at the motor with a good cable."""
    if case.said(READ) is not None and case.said(AT_LOAD) is not None:
        yield float(case[READ]) * (1 - limit("cable-share") / 100)


TOPIC = Topic(
    "load-voltage",
    "Volts under load",
    amps="load.current",
    cautions=(
        "hot-joint",
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
        Lever(READ, holding, lambda case, value: f"{say.volts(float(value))} or more on the posts under the same load"),
        Lever(
            AT_LOAD,
            at_the_motor,
            lambda case, value: f"{say.volts(float(value))} or more at the motor, with thicker cable or clean joints",
        ),
    ),
    likely={"battery.cca": (("650 CCA", 650.0), ("800 CCA", 800.0), ("1000 CCA", 1000.0))},
    unsure={READ: "We can't say yet: please tell us the lowest volts on the battery posts while the thruster runs."},
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The verdict on the reading at the posts, or on the cable where the motor's own volts are much lower."""
    if found := doubt.of_load(case):
        return replace(TOPIC.needs(*found.asks, headline=found.say, likely=()), route=found.route)
    under = read_under_load(case)
    if under.read is None:
        return without_reading(case, under)
    return under_load.by_resistance(case, under, read(case, under))


def read(case: Case, under: UnderLoad) -> Answer:
    """The verdict on a reading at the posts."""
    if under.holds and (lost := lost_on_the_way(case, under)):
        return cable_at_fault(case, under, *lost)
    asks = case.says("detail:lost_much") or under_load.cable_asked(case.text)
    if asks and (head := under_load.little_lost(case, under)):
        return TOPIC.says("yes", head, *figures(under), plot=plot(under))
    if under.basis == "lithium":
        return lithium(case, under)
    test = load_reading.is_test(case) or load_reading.tested(case)  # one at other amps than half the CCA as well
    if test and (void := load_reading.test_is_void(case)):
        return again(case, under, void)
    if under.holds and (lacking := what_lacks(case, under)):
        return undecided(case, under, lacking)
    return lead(case, under)


def without_reading(case: Case, under: UnderLoad) -> Answer:
    """No volts at the posts: the limit itself where that is asked for, else the reading is asked for."""
    dead = case.says("detail:dead_motor")
    looks = culprit.where_to_look(case.text)
    weak = dead or case.says("detail:weak_motor") or looks
    wanted = case.says("detail:reading_wanted", *(() if weak else ("request:what_size",)))
    if case.said(AT_LOAD) is None and wanted and not looks:
        lithium = limit("lithium-load-yes") * under.count
        other = "" if under.basis == "lithium" else f"; a lithium one should hold {say.volts(lithium)}"
        name = "lithium" if under.basis == "lithium" else "lead"
        bank = "" if under.count == 1 else f" {say.number(under.count * 12)} V"
        head = f"A good {name}{bank} battery holds {say.volts(under.lowest)} or more while the motor runs{other}."
        return TOPIC.says("information", head, *figures(under))
    if case.said(AT_LOAD) is not None:
        head = (
            f"We can't say yet: {shown(float(case[AT_LOAD]))} is at the motor; please tell us the volts on the "
            "battery posts while it runs."
        )
        return TOPIC.needs(READ, headline=head, figures=figures(under), likely=under_load.replies(under))
    if load_reading.is_test(case):
        found = TOPIC.needs(READ, figures=figures(under), likely=under_load.replies(under))
        return under_load.at_the_tester(case, found)
    if weak:
        case.step("Volts lost between the two places are lost in cable and joints", "ohms-law")
        head = (
            under_load.ONE_WAY
            if culprit.one_way(case.text)
            else under_load.TWO_PLACES_OF_DEAD
            if dead
            else under_load.TWO_PLACES
        )
        return TOPIC.needs(READ, AT_LOAD, headline=head, figures=figures(under), likely=under_load.replies(under))
    return TOPIC.needs(READ, figures=figures(under), likely=under_load.replies(under))


def cable_at_fault(case: Case, under: UnderLoad, far: float, lost: float, share: float) -> Answer:
    """Good volts on the posts, poor ones at the motor."""
    steps(case, under)
    drop = cable_step(case, under, far, lost, share)
    told = f"{say.volts(lost)} ({say.quantity(share, '%', 0)}) is lost between battery and motor"
    by_itself = of_the_cable(case)
    if by_itself is not None and by_itself < lost * MOSTLY:
        case.because(f"The cable by itself takes {say.volts(by_itself, 2)} at that current", K.cite)
        told = f"{told}, only {say.volts(by_itself)} of it in the cable itself"
        head = f"No: {told}, so a joint, fuse or switch is at fault."
        return TOPIC.says("no", head, *figures(under), drop, plot=plot(under))
    if amps := under_load.explained_at(case, lost):
        head = f"{told}: your {circuit.name(case)} takes as much at {say.amps(amps)}; at far fewer a joint is bad."
        return TOPIC.says("no", head, *figures(under), drop, asks=(TOPIC.ask("load.current"),), plot=plot(under))
    sure = under.basis != "alone" or bool(under.current)
    return TOPIC.says("no", under_load.cable_blamed(case, told, sure), *figures(under), drop, plot=plot(under))


def lithium(case: Case, under: UnderLoad) -> Answer:
    """12.0 V is good, 11.5 V just enough."""
    steps(case, under)
    read = float(under.read or 0)
    least = limit("lithium-load-marginal") * under.count
    verdict = "yes" if under.holds else "marginal" if read >= least - NEAR else "no"
    if verdict == "marginal":
        case.step(f"{say.volts(least)} is the least", cite("lithium-load-marginal"))
    told = {"yes": "is fine", "marginal": "is just enough", "no": "is too low"}[verdict]
    head = (
        f"{wording.opening(case, verdict)}: {shown(read)} under load {told} for a lithium battery, which should "
        f"hold {say.volts(under.lowest)}."
    )
    return TOPIC.says(verdict, head, *figures(under), plot=plot(under))


def again(case: Case, under: UnderLoad, void: tuple[str, ...]) -> Answer:
    """A load test that does not count: charge, warm, test once more."""
    steps(case, under)
    case.step(
        f"A load test counts from {say.volts(limit('test-charged'))} at rest and from "
        f"{say.temperature(limit('test-coldest'))} on",
        cite("test-charged"),
    )
    reasons = {"reading.voltage": "not charged", "ambient.temperature": "too cold"}
    warm = f"warm it to {say.temperature(limit('test-coldest'))}"
    remedies = {"reading.voltage": "charge it", "ambient.temperature": warm}
    why = say.listed([reasons[fact] for fact in void])
    do = say.listed([*(remedies[fact] for fact in void), "test again"])
    head = f"We can't say yet: a load test does not count when the battery is {why}, so {do}."
    found = TOPIC.needs(READ, headline=head, figures=figures(under), likely=())
    asked = replace(
        found.asks[0],
        say="the volts at the end of the new test, after 15 seconds at half its CCA",
        where="Read them on the two posts in the last second of the test.",
    )
    return replace(found, asks=(asked,))


def undecided(case: Case, under: UnderLoad, lacking: tuple[str, ...]) -> Answer:
    """Over 9.6 V with nothing to judge it by."""
    steps(case, under)
    lead_taken(case)
    words = {"reading.current": "the amps it drew", "battery.cca": "the CCA of the battery"}
    told = say.listed([words[fact] for fact in lacking])
    head = (
        f"We can't say yet: {shown(float(under.read or 0))} under load is no bad sign; {told} "
        f"{'decides' if lacking == ('battery.cca',) else 'decide'}."
    )
    if case.says("detail:asks_dead", "detail:asks_bad"):
        over = f"is over {say.volts(under.lowest)}; how strong it still is, "
        head = head.replace("We can't say yet: ", "No, not by this reading: ").replace("is no bad sign; ", over)
    likely = None
    if lacking == ("battery.cca",) and under.current:
        head, likely = under_load.by_its_cca(case, under) or head, under_load.cca_replies(case, under)
    if joint := which_part(case, under):
        return TOPIC.needs(READ, headline=joint, figures=figures(under), likely=())
    if any(case.says(f"unknown:{fact}") for fact in lacking):
        sign = f"{shown(float(under.read or 0))} under load is a good sign, no proof"
        head = (
            f"{sign}: a battery in order holds {say.volts(under.lowest)} or more; without "
            f"{told.removesuffix(' of the battery')} a load test decides."
        )
    return TOPIC.needs(*lacking, headline=head, figures=figures(under), likely=likely)


def which_part(case: Case, under: UnderLoad) -> str:
    """ "Battery or wire?" of one reading and a cable that is told: what the cable takes, and what decides."""
    needed = circuit.has_cable(case) and "cable.length" in case.stated and under.current and under.sag is not None
    if not needed or case.said(AT_LOAD) is not None or not culprit.either(case.text):
        return ""
    lost = circuit.loss(case, float(under.current or 0)).volts
    case.step(f"{circuit.name(case)} loses {say.volts(lost, 2)} at {say.amps(float(under.current or 0))}", K.cite)
    read, sag = shown(float(under.read or 0)), say.volts(float(under.sag or 0), 2)
    told = f"the cable takes {say.volts(lost, 2)} of the {sag}"
    return f"We can't say yet: {told}; {read} on the posts points to the battery, at the motor partly to the wire."


def lead(case: Case, under: UnderLoad) -> Answer:
    """The verdict on a lead battery."""
    steps(case, under)
    verdict = "yes" if under.holds else "no"
    asks, small = part_asked(case, under, verdict)
    if verdict == "yes" and under_load.at_the_motor_next(case):
        asked = TOPIC.ask(AT_LOAD)
        asks = (replace(asked, where=f"{asked.where} {under_load.either_way(under)}"),)
    if asks and verdict == "no" and culprit.on_the_dash(case.text):
        case.because("An instrument has a wire and joints of its own, which take volts too", "ohms-law")
        asks = (TOPIC.ask(READ, under_load.replies(under)),)
    if verdict == "no" and under.rest is not None and under.basis != "test" and well_rested(case, under):
        case.because(
            "A battery that rests well and falls so far has not been charged right through, or has a bad cell"
            f"{small}: charge it for a full day, let it rest, test again",
            "falls-under-load",
        )
    if verdict == "no" and under.basis == "test" and under.rest is None:
        charged, warm = say.volts(limit("test-charged")), say.temperature(limit("test-coldest"))
        counts = f"from {charged} at rest and from {warm} on"
        case.because(
            f"A load test counts {counts}: if yours was not so, charge, warm and test again", cite("test-charged")
        )
    lost = lost_on_the_way(case, under)
    drop = (cable_step(case, under, *lost),) if lost else ()
    head = under_load.headline(case, under, verdict, lost[1] if lost else None)
    if asks and culprit.how_to_tell(case.text):
        case.step(
            f"Low on the posts is under {say.volts(under.lowest)} for a lead battery", readings.cite("cable-share")
        )
        head = under_load.TWO_PLACES
    if verdict == "no" and under.basis != "test" and not under.small and load_reading.not_full(case):
        case.because("A battery that is not full falls further under load, even a good one", cite("test-charged"))
        head = f"{head.removesuffix('.').removesuffix(under_load.WEAK)}{NOT_FULL}."
        head = f"Not certain yet: {head.removeprefix('Yes: ')}" if head.startswith("Yes: ") else head
    dead = case.says("detail:asks_dead") and not case.says("detail:asks_good")  # "OK or shot?" takes no such word
    if verdict == "no" and under.basis == "current" and not under.small and dead:
        head = not_for_sure(head)
    return TOPIC.says(verdict, head, *figures(under), *drop, asks=asks, plot=plot(under))


def part_asked(case: Case, under: UnderLoad, verdict: str) -> tuple[tuple[Any, ...], str]:
    """What tells the part at fault, where that is open; and what a low reading on the posts may mean as well."""
    if verdict == "no" and under_load.place_is_open(case, under):
        under_load.at_the_motor_at_least(case, under)
        return (TOPIC.ask(AT_LOAD),), ""
    if under.basis != "alone":
        return (), ""
    lead_taken(case)
    if case.said(AT_LOAD) is not None:
        return (), ""
    if verdict == "no" and under_load.on_posts(case.text):  # read where it counts
        small = f", or is too small for {say.amps(under.current) if under.current else 'its load'} (its CCA tells)"
        return (TOPIC.ask("battery.cca", under_load.cca_replies(case, under)),), small
    return (TOPIC.ask(AT_LOAD),), ""


def not_for_sure(head: str) -> str:
    """The sentence on a battery that they fear is finished: one that may only want a full charge is not yet."""
    first, mark, rest = head.partition(": ")
    return f"Most likely{mark}{rest}" if first in ("Yes", "No", "No, not yet") else head


def well_rested(case: Case, under: UnderLoad) -> bool:
    """Whether the resting volts tell of a good charge."""
    kind = readings.table_of(case.said("battery.chemistry"))
    return readings.charge_of(float(under.rest or 0) / under.count, kind).verdict == "yes"
