"""Whether a voltage at rest is good, and how full the battery is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from service import say
from service.case import Case, Value
from service.judgements import doubt, harm, ice_first, laid_up, standing_loss
from service.judgements.doubt import shown
from service.reply import Answer, Figure, Option, strictest
from service.rules import readings
from service.rules.readings import Charge, cite, limit
from service.sentences import (
    after_charge,
    at_rest,
    by_charge_asked,
    gauge_and_posts,
    rest_beside_load,
    two_at_rest,
    wording,
)
from service.sentences.odd_readings import (
    KINDS,
    equalised,
    no_system,
    not_rested,
    of_each,
    over,
    too_high,
    under_float,
    while_charging,
)
from service.told import volts_of_charge
from service.topic import Lever, Topic

FULL = 100.0  # percent
RESTED = 1.0  # hours under which a good reading may still be the charger's


def good_volts(case: Case) -> Iterator[Value]:
    """The volts at rest from which the reading is good."""
    if case.said("reading.voltage") is None:
        return
    kind = readings.table_of(case.get("battery.chemistry"))
    volts = float(case["reading.voltage"])
    wanted = readings.volts_for(limit("lithium-good" if kind == "lfp" else "lead-good"), kind)
    yield round(wanted * (readings.spanned(case, volts) or 1.0), 4)


def good_and_full(case: Case, value: Value) -> str:
    """The least good reading beside that of a full one: a charge that ends at the least has not done its work."""
    kind = readings.table_of(case.get("battery.chemistry"))
    full = readings.volts_for(FULL, kind) * (readings.spanned(case, float(case["reading.voltage"])) or 1.0)
    return f"{shown(float(value))} or more at rest after charging ({_good(kind)}; full is {say.volts(full, 2)})"


def good_charge(case: Case) -> Iterator[Value]:
    """The charge from which it is good, where a charge is all that was told."""
    if case.said("reading.voltage") is None:
        kind = readings.table_of(case.get("battery.chemistry"))
        yield limit("lithium-good" if kind == "lfp" else "lead-good")


TOPIC = Topic(
    "rest-voltage",
    "Volts at rest",
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
        Lever("reading.voltage", good_volts, good_and_full),
        Lever("battery.charge", good_charge, "charged to {value} or more"),
    ),
    likely={
        "battery.chemistry": KINDS,
        "reading.voltage": (("12.7 V or more", 12.7), ("12.4 V", 12.4), ("12.2 V or less", 12.2)),
    },
    unsure={
        "reading.voltage": "We can't say yet: please tell us the volts on the battery posts after hours of rest.",
        "bank.voltage": "We can't say yet: please tell us whether the battery or bank is 12 V or 24 V.",
    },
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The verdict on one reading, or on two side by side."""
    if harm.overvoltage(case):
        return too_high(TOPIC, case)
    if found := doubt.of_rest(case):
        bare = TOPIC.needs(*found.asks, headline=found.say, figures=known_figures(case), likely=())
        return replace(bare, route=found.route)
    if case.said("reading.voltage") is None:
        return without_reading(case)
    if volts_of_charge.of_a_rested_one(case.text) and not case.says("detail:asks_good"):
        return table_itself(case, readings.table_of(case.said("battery.chemistry")))
    if case.said("battery.chemistry") == "lithium-other":
        head = "We can't say: this kind of lithium has other volts than iron phosphate, so a technician looks at it."
        return replace(TOPIC.needs("battery.chemistry", headline=head), route="technician")
    if read := gauge_and_posts.by_the_posts(case):
        found_one = one(case)
        return replace(found_one, headline=gauge_and_posts.headline(case, found_one, *read))
    two_at_rest.share_a_reading(case)
    compared = (
        case.says("detail:asks_full") and "battery.chemistry" in case.second
    )  # "full at 13.2, as lead is at 12.8?"
    if "reading.voltage" in case.second and not compared:
        return two(case)
    found_one = one(case)
    return replace(found_one, headline=by_charge_asked.with_the_other_kind(case, found_one.headline))


def known_figures(case: Case) -> tuple[Figure, ...]:
    """What a reading in doubt would mean by itself."""
    volts = case.said("reading.voltage")
    count = readings.spanned(case, float(volts)) if volts is not None and float(volts) >= 0 else None
    if not count or float(volts) / count > limit("believable-most"):
        return ()
    case.source("od1002")
    return (Figure("voltage_per_battery", "each battery", of_each(case, float(volts), count), "V"),)


def without_reading(case: Case) -> Answer:
    """A charge that is stated, or the table itself where that is asked for; else the reading is asked for."""
    kind = readings.table_of(case.said("battery.chemistry"))
    charge = case.said("battery.charge")
    if charge is not None and by_charge_asked.asks_volts(case):
        head, figures = by_charge_asked.of_charge(case, float(charge), kind)
        return TOPIC.says("information", head, *figures, plot=at_rest.plot(kind, None))
    if charge is not None:
        verdict = readings.judged(float(charge), kind)
        case.step(f"{_good(kind)} is the least that counts as good", cite("lead-good"))
        opening = wording.NO_PROOF if wording.fears_it_spoilt(case, verdict) else wording.opening(case, verdict)
        soon = "today" if verdict == "no" and kind != "lfp" else "soon"
        advice = "" if verdict == "yes" else f", so charge it {soon}"
        head = f"{opening}: your battery is {say.charge(float(charge))} full{advice}."
        return TOPIC.says(
            verdict,
            ice_first.held(case, float(charge), head),
            Figure("state_of_charge", "charge", float(charge), "%"),
            urgency=urgency(float(charge), kind),
        )
    if case.says("detail:reading_wanted") or by_charge_asked.asks_full_volts(case):
        return table_itself(case, kind)
    if case.said("charger.voltage") is not None:
        return while_charging(TOPIC, case, kind)
    return TOPIC.needs("reading.voltage")


def table_itself(case: Case, kind: str) -> Answer:
    """What a full and a half-full battery shows at rest."""
    count = (readings.said_system(case) or 12.0) / 12
    full = max(volts for volts, _ in readings.rest_rows(kind)) * count
    good, half = (
        readings.volts_for(limit(name), kind) * count
        for name in (("lithium-good", "lithium-low") if kind == "lfp" else ("lead-good", "lead-half"))
    )
    named = "A lithium" if kind == "lfp" else wording.a_kind(case)
    case.step(
        f"{say.volts(full, 2)} full, {say.volts(good, 2)} at {_good(kind)}, {say.volts(half, 2)} at "
        f"{say.charge(limit('lithium-low' if kind == 'lfp' else 'lead-half'))}",
        readings.charge_of(12.5, kind).cites[0],
    )
    bank = "" if count == 1 else f" {say.number(count * 12)} V"
    head = (
        f"{named}{bank} battery shows about {say.volts(full, 2)} at rest when full; under {say.volts(good, 2)} it "
        "wants a charge."
    )
    return TOPIC.says("information", head, plot=at_rest.plot(kind, None))


def one(case: Case) -> Answer:
    """The verdict on one reading."""
    volts = float(case["reading.voltage"])
    count = readings.spanned(case, volts)
    if count is None:
        return no_system(TOPIC, case, volts)
    said = case.said("battery.chemistry")
    found = readings.charge_of(volts / count, readings.table_of(said))
    if count != 1:
        case.step(f"{shown(volts)} is {shown(of_each(case, volts, count))} for each battery", "od1002")
    if low := under_float(TOPIC, case, volts, count):
        return low
    if found.over:
        return equalised(TOPIC, case, volts) if _equalising(case, found) else over(TOPIC, case, volts, found)
    if rest_beside_load.with_load(case) and found.verdict != "yes" and not found.flat and found.value > 0:
        return not_rested(TOPIC, case, volts, count)
    return by_charge(case, volts, count, found)


def _equalising(case: Case, found: Charge) -> bool:
    high = found.each >= limit("lead-overcharge") - readings.NEAR
    return high and found.kind == "flooded" and case.says("detail:equalising")


def by_charge(case: Case, volts: float, count: float, found: Charge) -> Answer:
    """A reading that tells the charge."""
    case.step(at_rest.charge_step(volts, found), *found.cites)
    verdict, asks = found.verdict, []
    if wording.kind_is_open(case):
        case.assume("battery.chemistry", "flooded", "the kind is not said", *found.cites)
        other = readings.charge_of(found.each, "agm")
        if other.verdict != verdict and not found.flat:
            case.step(f"If it is an AGM it {wording.full(other)}", *other.cites)
            asks.append(TOPIC.ask("battery.chemistry", KINDS))
    if case.says("detail:harm") and verdict == "yes":
        name = "lithium-overcharge" if found.kind == "lfp" else "lead-overcharge"
        case.step(f"Too high would be {say.volts(limit(name) * count)} and more, on charge", cite(name))
    at_rest.note_monitor(case, found)
    at_rest.note_rest(case, found)
    standing_loss.since_the_charger(case, laid_up.FULL if found.flat else found.value)
    figures = [Figure("state_of_charge", "charge", found.value, "%", found.low, found.high)]
    figures.append(Figure("voltage_per_battery", "each battery", of_each(case, volts, count), "V"))
    if figures[-1].value != volts:
        case.source("od1002")
    verdict = "no" if found.flat else _on_charge_or_load(case, verdict)
    if verdict == "information":
        asks.append(TOPIC.ask("reading.voltage"))
    elif case.says("detail:weak_motor", "detail:dead_motor"):
        case.because(
            "Two measurements while it runs tell battery, cable and motor apart: the volts on the battery posts, and "
            "those at the motor's own terminals",
            cite("cable-share"),
        )
        asks.append(TOPIC.ask("reading.load_voltage"))
    if found.kind != "lfp" and found.value < limit("lead-half") - readings.NEAR:
        case.because(
            "A lead battery that stands under half full loses strength for good, so days matter", cite("lead-half")
        )
    head = at_rest.headline(case, volts, found, verdict, asked=any(item.fact == "battery.chemistry" for item in asks))
    if after_charge.low(case, found):
        verdict = strictest("marginal", found.verdict)
        head, asks = after_charge.headline(case, volts, found, verdict), []
    if verdict in ("no", "marginal") and (fall := standing_loss.fallen(case)):
        standing_loss.causes(case)
        head, asks = at_rest.fell(case, fall, verdict), []
    head = ice_first.held(case, found.value, head)
    return TOPIC.says(
        verdict,
        head,
        *figures,
        asks=tuple(asks),
        plot=at_rest.plot(found.kind, found),
        urgency="today" if found.flat else urgency(found.value, found.kind),
    )


def _on_charge_or_load(case: Case, verdict: str) -> str:
    """A good reading on charge or soon after tells nothing; a poor one is poor all the same."""
    rested = case.said("reading.rest_time")
    soon = (rested is not None and float(rested) < RESTED) or after_charge.fresh(case)
    on_charge = case.said("charger.voltage") == case.said("reading.voltage") or case.said("reading.state") == "charging"
    if soon or on_charge:
        case.step("It reads high on charge and in the first hours after it", "quick-rest")
        return "information" if verdict == "yes" else verdict
    return verdict


def of_both(*verdicts: str) -> str:
    """The verdict on two batteries: a low one stands, else a reading that tells nothing leaves both open."""
    low = [verdict for verdict in verdicts if verdict in ("marginal", "no", "stop")]
    left = low or [verdict for verdict in verdicts if verdict != "yes"] or [*verdicts]
    return strictest(*left)


def two(case: Case) -> Answer:
    """Two batteries: the weaker one decides, both are shown."""
    other = case.others()
    answers = (one(case), one(other))
    case.follow_other(other)
    verdict = of_both(*(item.verdict for item in answers))
    worse = 0 if answers[0].verdict == verdict else 1
    names, head = two_at_rest.names(case, other), two_at_rest.headline(case, other, answers, verdict)
    rest_beside_load.joined_but_apart(case, float(case["reading.voltage"]), float(other["reading.voltage"]))
    options = tuple(Option(name, item.verdict, item.figures) for name, item in zip(names, answers, strict=True))
    head = ice_first.held(case, two_at_rest.lowest(answers), head)
    urgent = max((item.urgency for item in answers), key=("routine", "today", "stop-now").index)
    asks = tuple({item.fact: item for found in answers for item in found.asks}.values())
    return TOPIC.says(verdict, head, *answers[worse].figures, compare=options, urgency=urgent, asks=asks)


def urgency(charge: float, kind: str) -> str:
    """today for a lead battery under half: it is being harmed."""
    return "today" if kind != "lfp" and charge < limit("lead-half") - readings.NEAR else "routine"


def _good(kind: str) -> str:
    return say.charge(limit("lithium-good" if kind == "lfp" else "lead-good"))
