"""How long a charger takes to fill a battery."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.text.patterns import regex
from service import likely, reference, say
from service.calculators import charging as sums
from service.case import Case
from service.judgements import charging, put_back, stays_on, too_many_volts
from service.kinds import CHARGED
from service.reply import Answer, Figure, Option
from service.rules import readings
from service.told import deadline, in_its_place
from service.topic import Topic

FULL = 100.0
AMPLE = 0.9  # of the hours that there are: more than that is only just enough
TARGET = regex(  # "from 20 to 90 %", "before it reaches 80 %"
    r"\b(up )?(?:to|till|until|before)(?: (?:it|she|they)(?:['’]s| is| are)?(?: at| hits?| reach(?:es)?| gets? to)?)?"
    r" (?:about )?(\d{2}) ?(?:%|per ?cent)",
    re.IGNORECASE,
)
AFTERWARDS = regex(
    r"\b(?:afterwards?|after (?:that|this|it)|back (?:up|to full|again)|get (?:it|them|that) back"
    r"|(?:fill|charge|top|bring) (?:it|them|her) (?:up )?(?:again|back)|refill\w*|recharge)\b",
    re.IGNORECASE,
)

TOPIC = Topic(
    "charge-time",
    "How long to charge",
    amps="charger.current",
    cautions=(
        "lithium-kind",
        "lithium-cold",
        "alternator-lithium",
        "isolated-outputs",
        "explosive-gas",
        "equalise",
        "manual-first",
        "mains",
    ),
    levers=(charging.WARMER,),
    likely={
        "battery.chemistry": likely.KIND,
        "charger.kind": likely.FROM_THE_ENGINE,
    },
    of_two="worst",
    idle={"charger-size": ("battery.chemistry",)},  # where kinds are weighed by their times
    unsure={
        "battery.capacity": "We can't say yet: the time follows from the amp-hours of the battery.",
        "charger.current": "We can't say yet: the time follows from the amps of the charger.",
    },
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Amp-hours to return over the amps that the battery takes, and the absorption of lead."""
    in_its_place.without_the_old(case)
    chemistry = charging.known_kind(case)
    stopped = charging.barred(TOPIC, case, chemistry) or too_many_volts.judged(TOPIC, case)
    if stopped:
        return stopped
    if balance := put_back.while_motoring(TOPIC, case, source(case.fresh())):
        return balance
    how_long = case.says("request:how_long") and not stays_on.later(case)
    if not how_long and (kept_on := stays_on.judged(TOPIC, case)):
        return kept_on
    lacking = [
        fact
        for fact, there in (
            ("battery.capacity", "charge.capacity" in case),
            ("charger.current", source(case) is not None),
            ("battery.chemistry", chemistry is not None),
        )
        if not there
    ]
    if lacking and lacking != ["battery.chemistry"]:
        return TOPIC.needs(*lacking)
    if chemistry is None:
        return of_any_kind(case)
    hours, words = worked_out(case, chemistry)
    if hours and (held_back := in_the_cold(case, chemistry, hours)):
        return held_back
    if not hours:
        return TOPIC.says("information", "No time at all: the battery is full already.", figure(hours))
    if told := against(hours, case.text, words.partition(":")[0]):
        return TOPIC.says("information", told, figure(hours))
    return TOPIC.says("information", f"About {say.duration(hours * 60)} in all{words}.", figure(hours))


def against(hours: float, text: str, ends: str) -> str:
    """The time against the hours that there are, "" where none are told or a night may be long enough."""
    there = deadline.hours(text)
    if there is None:
        return ""
    takes = f"about {say.duration(hours * 60)} in all{ends}"
    if deadline.is_a_night(text):
        return f"Yes: {takes}." if hours <= there else ""
    late = hours > there * (1 + charging.NEAR)
    opening = "No" if late else "Yes" if hours <= there * AMPLE else "Only just"
    return f"{opening}: {takes}, and you have {say.duration(there * 60)}."


def figure(hours: float) -> Figure:
    """The time as a figure."""
    return Figure("charge_time", "to full", hours, "h")


def source(case: Case) -> float | None:
    """Amps of what charges: the charger, else the alternator as it gives them for hours."""
    if "charger.current" in case:
        return float(case["charger.current"])
    rated = case.get("alternator.current")
    if rated is None:
        return None
    share = reference.value("charging", "alternator-lead")
    case.step(f"A warm alternator of {say.amps(rated)} gives about {say.amps(rated * share.value)}", share.cite)
    return float(rated) * float(share.value)


def after_a_run(case: Case) -> bool:
    """Whether it is asked of what a run took: "how long does it run, and to get it back up afterwards?"."""
    runs = "run-time" in (*case.beside, *case.before)
    told = case.stated.get("battery.charge")
    now = told is not None and told.origin == "message"
    return runs and not now and AFTERWARDS.search(case.text) is not None


def charge_now(case: Case, chemistry: str) -> float:
    """The charge to start from: known, as it was put, else where a battery is used down to."""
    family = "lithium" if chemistry == "lfp" else "lead"
    used = reference.row("usable", family=family)["share"]
    left = 100.0 - float(used.value)
    why = f"a {family} battery is used down to there as a rule"
    target = TARGET.search(case.text)
    if target and target[1] and case.said("battery.charge") == float(target[2]):  # only where it is to end is told
        case.step(f"From {say.quantity(left, '%')}: {why}", used.cite)
        return left
    if after_a_run(case):
        case.step(f"From {say.quantity(left, '%')}, after the run: {why}", used.cite)
        return left
    if "battery.charge" in case:
        return float(case["battery.charge"])
    volts = case.said("reading.voltage")
    flat = readings.limit("lithium-flat" if chemistry == "lfp" else "lead-flat")
    if volts is not None and readings.DEAD < volts < flat:
        return float(case.assume("battery.charge", 0.0, "so few volts mean flat", unit="%"))
    if case.says("detail:from_flat"):
        return float(case.assume("battery.charge", 0.0, "flat, as you wrote", unit="%"))
    if case.says("detail:from_half"):
        return float(case.assume("battery.charge", 50.0, "half, as you wrote", unit="%"))
    return float(case.assume("battery.charge", left, why, used.cite, unit="%"))


def aim(case: Case, charge: float) -> float:
    """The charge to end at, in percent: full, unless a lower one is told."""
    told = TARGET.search(case.text)
    until = float(told[2]) if told else FULL
    return until if charge < until < FULL else FULL


def worked_out(case: Case, chemistry: str) -> tuple[float, str]:
    """Hours to full, and how they come about."""
    amp_hours, amps = charging.capacity(case), source(case)
    assert amps is not None, "worked_out without a charger"
    gone = put_back.out(case, chemistry)
    charge = max(0.0, FULL * (1 - gone.amp_hours / amp_hours)) if gone else charge_now(case, chemistry)
    row = reference.row("charge_factor", chemistry=chemistry)
    until = aim(case, charge)
    back = sums.to_return(amp_hours, charge + FULL - until, row["factor"].value)
    case.step(
        f"{say.number(until - charge)} % of {say.amp_hours(amp_hours)}, times {row['factor'].value:g} for the losses, "
        f"is {say.amp_hours(back)} to put back",
        row["factor"].cite,
    )
    suits = charging.span(case, chemistry, amp_hours)
    taken = min(amps, suits.high)
    if amps < suits.low * charging.single("slow") * (1 - charging.NEAR):
        suited = say.between(suits.low, suits.high, "A")
        case.because(
            f"{say.amps(amps)} is less than the {suited} that suits it, so it fills slowly", "charging-by-kind"
        )
    if taken < amps:
        case.step(f"Of {say.amps(amps)} the battery should take {say.amps(taken)} at most", "charging-by-kind")
    rest = row["absorption"].value if until == FULL else 0.0
    hours = sums.time(back, taken, rest)
    added = f", and {say.number(rest)} h of absorption" if rest else ""
    case.step(f"{say.amp_hours(back)} / {say.amps(taken)}{added}: {say.quantity(hours, 'h')}", "absorption-time")
    last = f", and {say.number(rest)} hours of absorption (the high-voltage part of a charge)" if rest else ""
    given = say.quantity(back, "Ah", 0 if back >= 10 else 1)
    if gone:
        run = f"for the {say.daily(gone.amp_hours)} of {gone.run}"
        return hours, f" {run}: {say.duration((hours - rest) * 60)} at {say.amps(taken)}{last}"
    goal = "full" if until == FULL else say.quantity(until, "%")
    by_volts = case.origin("battery.charge") == "derived"  # as the answer on the reading rounds it
    begin = say.charge(charge) if by_volts else f"{say.number(charge)} %"
    return hours, f" from {begin} to {goal}: {given} at {say.amps(taken)}{last}"


def in_the_cold(case: Case, chemistry: str, hours: float) -> Answer | None:
    """A charger that gives more than lithium takes at this temperature; None where it does not."""
    cold, amps = charging.cold_share(case, chemistry), source(case)
    if cold is None or amps is None:
        return None
    most = sums.current(charging.capacity(case), cold.value)
    if amps <= most * (1 + charging.NEAR):
        return None
    warm = max(charging.warmer(case))
    then, _ = worked_out(case.supposing({"ambient.temperature": warm}), chemistry)
    at = say.temperature(float(case["ambient.temperature"])).partition(" (")[0]
    slow = f"lithium takes {say.amps(most)} at most, which is {say.duration(hours * 60)}"
    head = f"Not at {say.amps(amps)}: at {at} {slow}; above 10{say.NB}°C it takes {say.duration(then * 60)}."
    return TOPIC.says("no", head, figure(hours))


def fastest_first(sides: list[Option]) -> Answer:
    """Kinds that are weighed by how fast they charge."""
    first, *others = sorted(sides, key=lambda side: float(side.figures[0].value))
    hours = {side.label: say.quantity(float(side.figures[0].value), "h", 1) for side in sides}
    rest = ", ".join(f"{side.label} {hours[side.label]}" for side in others)
    head = f"Fastest is {first.label}, {hours[first.label]} to full; {rest}."
    return TOPIC.says("information", head, compare=(first, *others))


def of_any_kind(case: Case) -> Answer:
    """The kind is not known: the time of each kind, none of them the answer."""
    kinds = CHARGED[:3] if charging.alternator_alone(case) or charging.too_cold(case, "lfp") else CHARGED
    sides: list[Option] = []
    named = [chemistry for chemistry in kinds if case.says(f"detail:kind_{chemistry}")]
    weighed = case.says("detail:fastest")
    for chemistry in named if weighed and len(named) > 1 else kinds:
        hours, _ = worked_out(case.supposing({"battery.chemistry": chemistry}), chemistry)
        sides.append(Option(say.CHEMISTRY[chemistry], "information", (figure(hours),)))
        case.source(reference.row("charge_factor", chemistry=chemistry)["factor"].cite, "absorption-time")
    if weighed:
        return fastest_first(sides)
    times = [float(side.figures[0].value) for side in sides]
    lead = say.between(min(times[:3]), max(times[:3]), "", 1)
    lithium = f"{say.number(times[3], 1)} hours if it is lithium" if times[3:] else "not like this if it is lithium"
    head = f"About {lead} hours if it is lead, {lithium}: the kind decides."
    return replace(TOPIC.needs("battery.chemistry", headline=head), compare=tuple(sides))
