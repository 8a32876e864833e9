"""A charger between two batteries: what it pulls, whether the alternator can feed it, isolated or not."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.text.patterns import regex
from service import likely, reference, say
from service.calculators import dc_dc
from service.case import Case, Value
from service.judgements import charging, converter, converter_load, converter_sizes, isolated, put_back, relay_between
from service.reply import Answer, Figure, strictness
from service.sentences.fed_by import fed, together
from service.told import more_volts, must_have
from service.told.straight_in import straight_in
from service.topic import Lever, Topic


def smaller(case: Case) -> Iterator[Value]:
    """A converter that the alternator can feed."""
    case = case.fresh()
    rated = case.get("alternator.current")
    if rated and "charger.current" in case:
        yield from (converter.most_out(case, float(rated), share.value) for share in converter.shares(case))


def instead(case: Case) -> Iterator[Value]:
    """That it is so, where the converter does not part its sides: an isolated one, or one common negative."""
    if case.get("charger.isolated") is False:
        yield True


PULL = ("role:load.current", "role:drain.current", "request:what_get")
STRAIGHT = regex(r"\b(?:straight|direct(?:ly)?|by (?:a )?cable|without (?:a )?(?:converter|dc))\b", re.IGNORECASE)
ASKS_PULL = regex(
    r"\b(?:what|how (?:much|many))\b[^.?!;]{0,24}\b(?:draws?|pulls?|takes?|input|go(?:es)? in)\b"
    r"|\binput (?:amps|current)\b",
    re.IGNORECASE,
)
PULLED = regex(r"\bit (?:pulls|takes)\b", re.IGNORECASE)
WHETHER = ("request:versus", "request:which", "request:may_i", "about:compare")

TOPIC = Topic(
    "dc-dc",
    "Charging from the other battery",
    amps="charger.current",
    cautions=("one-negative", "no-tap", "alternator-lithium", "lithium-cold", "fuse-at-battery", "mains"),
    levers=(
        Lever("charger.current", smaller, "a converter of {value} output or less"),
        Lever("charger.isolated", instead, "an isolated converter"),
        Lever("converter.common_negative", instead, "one common negative for both sides"),
        charging.WARMER,
    ),
    likely={
        "converter.common_negative": (("one common negative", True), ("each side has its own", False)),
        "battery.chemistry": (("lead", "lead"), ("lithium", "lfp")),
        "charger.kind": likely.FROM_THE_ENGINE,
    },
    unsure={"charger.current": "We can't say yet: what it pulls follows from the amps it puts out."},
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """What is asked of it, and what it pulls where that is asked beside it: "one negative, ok? What does it draw?"."""
    found = judged(case)
    taken = next((item for item in found.figures if item.name == "input_current"), None)
    if taken is None or found.verdict == "no" or not ASKS_PULL.search(case.text) or PULLED.search(found.headline):
        return found
    pull = f"it pulls about {converter.whole(float(taken.value))} ({converter.at_worst(found.figures)})"
    return replace(found, headline=f"{found.headline.removesuffix('.')}; {pull}.")


def judged(case: Case) -> Answer:
    """Isolation first, because a wrong connection shorts a battery; then the currents and the alternator."""
    if first := before_all(case):
        return first
    chemistry = charging.known_kind(case)
    stopped = charging.barred(TOPIC, case, chemistry, alternator=straight(case))
    if stopped:
        return stopped
    if chemistry == "lfp" and straight(case) and case.says("detail:straight"):  # whatever other charger is told of
        return charging.not_straight(TOPIC, case)
    figures = currents(case) if "charger.current" in case else ()
    if found := weighed(case, figures):
        return found
    rated = case.get("alternator.current")
    if figures:
        return converter_sizes.enough(TOPIC, case, *figures) or TOPIC.says(
            "information", pulls(case, figures), *figures
        )
    if rated:
        return converter_sizes.largest(TOPIC, case, float(rated))
    if fitting := converter_sizes.for_the_battery(TOPIC, case):
        return fitting
    if case.says(*WHETHER) or must_have.second_charger(case.text):
        return in_general(case)
    if open_size := converter_sizes.open_size(TOPIC, case):
        return open_size
    return TOPIC.needs("charger.current", *lacking(case), headline=way_of(case))


def weighed(case: Case, figures: tuple[Figure, ...]) -> Answer | None:
    """Isolated or not, the alternator that feeds it and the battery that takes it: the strictest; None where none is
    told."""
    rated, joined = case.get("alternator.current"), isolated.judged(TOPIC, case, figures)
    given = fed(TOPIC, case, float(rated), figures) if figures and rated else None
    if joined:
        return together(case, joined, given) if given else joined
    over = converter_sizes.too_much(TOPIC, case, *(given.figures if given else figures)) if figures else None
    return over if over and (given is None or strictness(over.verdict) >= strictness(given.verdict)) else given


def before_all(case: Case) -> Answer | None:
    """What is answered whatever it pulls: other volts, a relay in its place, a motor that it is to run itself."""
    if "charger.current" not in case and (given := for_more_volts(case)):
        return given
    if asked := relay_between.judged(TOPIC, case) or relay_between.by_the_alternator(TOPIC, case):
        return asked
    alone = feeds_thruster(case) and straight_in(case.text)
    if "charger.current" not in case:
        return fed_straight(case) if alone else None
    balance = put_back.while_motoring(TOPIC, case, float(case["charger.current"]))
    found = balance or converter_load.judged(TOPIC, case)
    if found:
        return replace(found, figures=currents(case))
    return fed_straight(case) if alone else None


def for_more_volts(case: Case) -> Answer | None:
    """What changes where a thruster of 24 V takes the place of one of 12 V, or 24 V is to give one more power."""
    if more_volts.goes_up(case.text):
        case.because("A motor is built for 12 V or for 24 V: a 12 V one never goes on a 24 V bank", "electric-power")
        head = (
            "Only with a thruster made for 24 V, its own 24 V bank and a charger for that: a 12 V motor must not be "
            "put on 24 V."
        )
        return TOPIC.says("information", head)
    if not (more_volts.changes(case.text) and case.says("thing:charger")):
        return None
    case.step("Twice the volts: half the amps for the same power", "electric-power")
    cable = " The cable may stay where it carries the new amps: the same power takes half as many at 24 V."
    named = cable if case.says("thing:cable") else ""
    return TOPIC.says("information", f"The charger must change, as one of 12 V cannot fill 24 V.{named}")


def way_of(case: Case) -> str:
    """The headline where its amps are not told: how it is done, unless its pull is what is asked."""
    if feeds_thruster(case):
        return stepped_up(case)
    source, target = converter.volts(case)
    if source == target or case.says(*PULL):
        return ""
    between = f"{say.quantity(source, 'V')} to {say.quantity(target, 'V')}"
    return f"With a DC-to-DC charger, {between}, between the two; what it pulls follows from the amps it puts out."


def feeds_thruster(case: Case) -> bool:
    """Whether a 24 V thruster is to run where the boat has 12 V, and no converter's pull is asked for."""
    return case.said("load.kind") == "thruster" and converter.volts(case) == (12, 24) and not case.says(*PULL)


def stepped_up(case: Case) -> str:
    """The headline of how a 24 V thruster is supplied on a 12 V boat."""
    taken = dc_dc.input_current(24, 100, 12, float(reference.value("dc_dc", "efficiency").value))
    case.step(
        f"Straight through a converter, each 100 A of the thruster would take {say.amps(taken)} from 12 V",
        "converter-power",
    )
    return (
        "Give the thruster a 24 V bank of its own, and fill that with a 12-to-24 V charger; what the charger pulls "
        "follows from the amps it puts out."
    )


def fed_straight(case: Case) -> Answer:
    """That no converter feeds a thruster, however many amps it gives: it fills the bank that does."""
    taken = dc_dc.input_current(24, 100, 12, float(reference.value("dc_dc", "efficiency").value))
    case.because("A converter gives tens of amps, a thruster takes hundreds", "converter-power")
    head = (
        f"No: each 100 A of a 24 V thruster would take {say.amps(taken)} from 12 V, so give it a 24 V bank of its own; "
        "a 12-to-24 V charger fills that."
    )
    return TOPIC.says("no", head)


def lacking(case: Case) -> tuple[str, ...]:
    """What else is missing: an alternator has a part only where a battery is charged, not a radio fed."""
    return ("alternator.current",) if case.says("thing:alternator", "about:charging", "thing:charger") else ()


def straight(case: Case) -> bool:
    """Whether an alternator may be meant to charge with no converter between."""
    kind = case.get("charger.kind")
    return kind == "alternator" or not case.says("thing:dcdc") or (kind != "dc-dc" and case.says("detail:straight"))


def currents(case: Case) -> tuple[Figure, Figure]:
    """What goes in, nominal and at worst, and what comes out."""
    amps = float(case["charger.current"])
    source, target = converter.volts(case)
    share, lowest, charge = (reference.value("dc_dc", name) for name in ("efficiency", "lowest-in", "charging-out"))
    nominal = dc_dc.input_current(target, amps, source, share.value)
    least_in, most_out_volts = source / 12 * lowest.value, target / 12 * charge.value
    worst = dc_dc.input_current(most_out_volts, amps, least_in, share.value)
    case.step(
        f"{say.quantity(target, 'V')} x {say.amps(amps)} / ({say.quantity(source, 'V')} x {share.value:g}) is "
        f"{say.amps(nominal)}",
        share.cite,
    )
    case.step(
        f"At worst {say.volts(most_out_volts)} out from {say.volts(least_in)} in: {say.amps(worst)} for cable and fuse",
        lowest.cite,
    )
    return (
        Figure("input_current", "it pulls", nominal, "A", high=worst, low=nominal),
        Figure("output_current", "it puts out", amps, "A"),
    )


def pulls(case: Case, figures: tuple[Figure, ...]) -> str:
    """The headline of what it pulls."""
    source, _ = converter.volts(case)
    taken, worst = converter.whole(float(figures[0].value)), converter.whole(float(figures[0].high or 0.0))
    side = f"the {say.quantity(source, 'V')} side"
    return f"It pulls about {taken} from {side}, and up to {worst} at worst, which its cable and fuse must carry."


def in_general(case: Case) -> Answer:
    """Whether a converter is a way at all: what each 10 A of it take."""
    efficiency = float(reference.value("dc_dc", "efficiency").value)
    if must_have.second_charger(case.text):
        case.step("A DC-to-DC charger takes its power from the battery that the engine charges", "converter-power")
        head = (
            "No, while the engine runs long enough: a DC-to-DC charger fills that battery then, and in harbour or over "
            "winter a charger on shore power does."
        )
        return TOPIC.says("information", head)
    if not {"charger.input_voltage", "charger.voltage", "bank.voltage"} & set(case.stated):
        same, double = (say.amps(dc_dc.input_current(out, 10, 12, efficiency)) for out in (12, 24))
        case.step(f"10 A / 0.9 is {same}, and twice that for twice the volts", "converter-power")
        head = f"A DC-to-DC charger can do it: each 10 A out takes {same} in, or {double} where it doubles the volts."
        return TOPIC.says("information", head, asks=(TOPIC.ask("bank.voltage"), TOPIC.ask("charger.current")))
    source, target = converter.volts(case)
    taken = dc_dc.input_current(target, 10, source, efficiency)
    into, out_of = say.quantity(target, "V"), say.quantity(source, "V")
    case.step(f"{into} x 10 A / ({out_of} x 0.9) is {say.amps(taken)}", "converter-power")
    each = f"each 10 A into {into} takes {say.amps(taken)} from {out_of}"
    head = f"A DC-to-DC charger can do it from the battery on the alternator: {each}."
    if source < target and STRAIGHT.search(case.text):
        case.because(f"A {into} battery takes more volts to charge than a {out_of} one has", "converter-power")
        head = f"No, not straight from {out_of} to {into}: put a DC-to-DC charger between the two; {each}."
        return TOPIC.says("no", head, asks=(TOPIC.ask("charger.current"), TOPIC.ask("alternator.current")))
    return TOPIC.says("information", head, asks=(TOPIC.ask("charger.current"), TOPIC.ask("alternator.current")))
