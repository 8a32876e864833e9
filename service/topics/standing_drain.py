"""How fast a current that is always on empties the battery."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from grammar.text.patterns import regex
from service import chart, likely, say
from service.calculators import drain, storage
from service.case import Case, Value
from service.judgements import drain_explained, laid_up, session, standing_loss, stop_reading
from service.reply import Answer, Figure
from service.rules.readings import NEAR, limit
from service.sentences import wording
from service.told import pump_left_on
from service.topic import Lever, Topic


def smaller(case: Case) -> Iterator[Value]:
    """The drain that leaves half a battery at the end, own loss counted."""
    days, capacity = case.said("storage.time"), case.get("bank.capacity")
    if not days or not capacity:
        return
    own = laid_up.daily_share(case) * float(days)
    spare = drain.current_for(laid_up.charge_now(case) - own, limit("lead-half"), float(capacity), float(days))
    step = 10 ** (len(f"{int(spare * 1e6)}") - 8) if spare > 0 else 0.0
    if step:
        yield int(spare / step) * step


def shorter(case: Case) -> Iterator[Value]:
    """Whole days after which half is left, own loss counted."""
    if case.said("storage.time") is not None and "bank.capacity" in case:
        share = laid_up.daily_share(case) + laid_up.drained_share(case)
        yield float(int(storage.days_between(laid_up.charge_now(case), limit("lead-half"), share)))


def or_off(case: Case) -> str:
    """The other way to a smaller drain, where nothing that must stay on hangs on the battery."""
    return "" if pump_left_on.is_told(case.text) else ", or the battery disconnected"


EMPTY = regex(  # what is asked is the end, of which half comes first
    r"\b(?:when|how long|how many (?:days|weeks|months|hours)|how soon)\b[^.?!;]{0,60}(?<!half )(?<!half-)"
    r"\b(?:empty|flat|dead|nothing left|drained)\b",
    re.IGNORECASE,
)
AWAY = regex(
    r"\b(?:away|leav\w*|left|gone|going|go|holidays?|trip|fly\w*|flight|land|until|till|absen\w*|abroad|back|return\w*|lay|laid"
    r"|stand\w*|sits?|sitting|alone|unattended|without me|vacation|off for|winter|home)\b",
    re.IGNORECASE,
)
UNITS = regex(r"\bhow many (?P<unit>hour|week|month)s\b", re.IGNORECASE)
IN_DAYS = {"hour": 1 / 24, "week": 7.0, "month": 30.4}
A_LOT = regex(  # "35 mA, is that a lot?", "is 50 mA too much?"
    r"\b(?:is|are|isn['’]?t) (?:it|that|this|they|those|\d+ ?m?a(?:mps?)?|\d+ milliamps?)\b[^.?!;]{0,12}"
    r"\b(?:a lot|lots|much|too much|high|too high|excessive|a big drain|normal|ok(?:ay)?|fine)\b",
    re.IGNORECASE,
)
HOW_LONG = regex(r"\bhow (?:long|many|soon)\b|\b(?:days|weeks|months|hours)\b|\bwhen\b", re.IGNORECASE)
TOPIC = Topic(
    "standing-drain",
    "Drain with everything off",
    amps="drain.current",
    cautions=("check-date", "deep-flat"),
    levers=(
        Lever(
            "drain.current",
            smaller,
            lambda case, value: f"a drain of {amount(float(value))} or less{or_off(case)}",
        ),
        Lever("storage.time", shorter, "a charge every {value}"),
    ),
    likely={
        "battery.capacity": likely.CAPACITY,
        "drain.current": (("20 mA", 0.02), ("100 mA", 0.1), ("1 A", 1.0)),
    },
    unsure={
        "drain.current": "We can't say yet: the current that flows with everything off decides, so please measure "
        "that.",
    },
)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Days to half and amp-hours a day; a verdict where a time is named; by two readings where no current is told."""
    if case.says(standing_loss.ASKED):
        standing_loss.causes(case)
    if case.said("drain.current") is None and (lost := standing_loss.by_two_readings(case)):
        return by_readings(case, lost)
    if case.said("drain.current") is None and (found := drain_explained.average(case)):
        standing_loss.causes(case)
        return TOPIC.says("information", found[1], Figure("drain_current", "drain, at least", found[0], "A"))
    if explained := drain_explained.told(case):
        return explained_or_not(case, explained)
    return by_current(case)


def by_current(case: Case) -> Answer:
    """Days to half of the current that is told, and the verdict where a time is named."""
    amps = float(case["drain.current"]) * session.share_on(case)
    loss = drain.daily_loss(amps)
    case.step(f"{amount(amps)} x 24 h = {say.daily(loss)} a day", "drain-arithmetic")
    found = (Figure("daily_loss", "lost in a day", loss, "Ah"), Figure("drain_current", "drain", amps, "A"))
    only_what = case.says(standing_loss.ASKED) and not HOW_LONG.search(case.text) and case.said("storage.time") is None
    if only_what and "bank.capacity" not in case:
        return TOPIC.says("information", standing_loss.SHORT, *found)
    if "bank.capacity" not in case:
        takes = f"{amount(amps)} takes {say.daily(loss)} a day"
        head = f"We can't say yet: {takes}; the capacity tells how long that lasts."
        return TOPIC.needs("battery.capacity", headline=head, figures=found)
    capacity, charge = float(case["bank.capacity"]), laid_up.charge_now(case)
    half = limit("lead-half")
    days = drain.days_between(charge, half, capacity, amps)
    begin = charge if charge > half else laid_up.FULL  # under half no time is left, and from full is what tells
    lasts = say.days(drain.days_between(begin, half, capacity, amps))
    case.step(
        f"From {say.charge(begin)} to {say.charge(half)} of {say.amp_hours(capacity)} is "
        f"{say.amp_hours((begin - half) / 100 * capacity)}, {lasts}",
        "drain-arithmetic",
    )
    figures = (Figure("days_to_half", "days to half", days, "d"), *found)
    chart = plot(capacity, charge, amps)
    if charge < half + NEAR:
        full = drain.days_between(laid_up.FULL, half, capacity, amps)
        where = "under" if charge <= half - NEAR else "at"
        head = (
            f"The battery is already {where} half: {amount(amps)} takes {say.daily(loss)} a day, and from full "
            f"to half it takes {say.days(full)}."
        )
        verdict = "information" if case.said("storage.time") is None else "no"
        return TOPIC.says(verdict, head, *figures, urgency=laid_up.urgency(case, charge), plot=chart)
    if case.said("storage.time") is None:
        until, takes = in_their_unit(case.text, days), f"{amount(amps)} takes {say.daily(loss)} a day"
        head = f"About {until} until half: {takes} from your {say.amp_hours(capacity)}."
        if only_what:
            half_in = f"{amount(amps)} takes your {say.amp_hours(capacity)} to half in about {say.days(days)}"
            head = f"Most likely {standing_loss.LIKELY}; {half_in}."
        if pump_left_on.is_told(case.text) and not only_what:
            head = f"{head.removesuffix('.')}; leave it on, and charge before then."
        if EMPTY.search(case.text) and not only_what:
            gone = in_their_unit(case.text, drain.days_between(charge, 0.0, capacity, amps))
            head = (
                f"About {until} until half, where to stop, and {gone} until empty: {takes} from your "
                f"{say.amp_hours(capacity)}."
            )
        if A_LOT.search(case.text) and not only_what and not HOW_LONG.search(case.text):
            head = a_lot_or_not(case, takes, days, until)
        head = stop_reading.headline(case, head, half)
        return TOPIC.says("information", head, *figures, *stop_reading.figures(case, half), plot=chart)
    return for_a_time(case, days, figures, chart)


def a_lot_or_not(case: Case, takes: str, days: float, until: str) -> str:
    """Whether a drain is a lot: by whether half is left when a battery that is laid up is looked at."""
    look = limit("check-most")
    case.source("check-interval")
    how = "Yes, for a boat left alone" if days < look - NEAR else "No, not much"
    return f"{how}: {takes}, so half is gone in about {until}; a look is usual every {say.quantity(look, 'd', 0)}."


def in_their_unit(text: str, days: float) -> str:
    """A time in the unit that was asked for, "how many weeks", rounded (months to a tenth); else in days.

    >>> in_their_unit("how many weeks until it is flat?", 76.4), in_their_unit("how many months is that?", 20.0)
    ('11\xa0weeks', '20\xa0days')
    """
    found = UNITS.search(text)
    if not found:
        return say.days(days)
    unit = found["unit"].lower()
    steps = 10 if unit == "month" else 1
    if days < IN_DAYS[unit]:
        return say.days(days)
    count = round(days / IN_DAYS[unit] * steps) / steps
    return f"{say.number(count)}{say.NB}{unit}{'' if count == 1 else 's'}"


def by_readings(case: Case, lost: standing_loss.Loss) -> Answer:
    """What two readings at rest tell of a drain, and how long until half at that pace."""
    standing_loss.note(case, lost, wording.a_kind(case, capital=False))
    fell = f"{say.volts(lost.volts[0], 2)} to {say.volts(lost.volts[1], 2)} in {say.quantity(lost.days, 'd', 0)}"
    half = limit("lead-half")
    days = max(0.0, lost.then - half) / lost.daily
    until = Figure("days_to_half", "days to half", days, "d")
    rest = f"half is left in about {say.days(days)}" if days >= 1 else "it is at half or under, so charge it"
    urgent = laid_up.urgency(case, lost.then)
    if not lost.drawn:
        head = f"Nothing need be drawing: {fell} is within what {a_battery(case)} loses by itself; {rest}."
        return TOPIC.says("information", head, until, urgency=urgent)
    standing_loss.causes(case)
    if "bank.capacity" not in case:
        head = f"Something draws: {fell} is more than {a_battery(case)} loses by itself; its Ah tell how much."
        return TOPIC.needs("battery.capacity", headline=head, figures=(until,))
    capacity = float(case["bank.capacity"])
    amps, loss = float(f"{lost.drawn / 100 * capacity / 24:.2g}"), lost.daily / 100 * capacity  # an estimate
    head = f"Something draws about {amount(amps)}: {fell} is {say.daily(loss)} a day; {rest}."
    shown = (until, Figure("daily_loss", "lost in a day", loss, "Ah"), Figure("drain_current", "drain", amps, "A"))
    return TOPIC.says("information", head, *shown, urgency=urgent)


def explained_or_not(case: Case, found: drain_explained.Explained) -> Answer:
    """Whether the drain told explains the volts that it was found at."""
    amps = float(case["drain.current"])
    half = drain.days_between(laid_up.FULL, limit("lead-half"), float(case["bank.capacity"]), amps)
    shown = (
        Figure("days_to_half", "days to half, from full", half, "d"),
        Figure("daily_loss", "lost in a day", drain.daily_loss(amps), "Ah"),
        Figure("drain_current", "drain", amps, "A"),
    )
    if not found.holds:
        standing_loss.causes(case)
    head = drain_explained.headline(found, amount(amps))
    return TOPIC.says("information", head, *shown, urgency=laid_up.urgency(case, found.read.value))


def a_battery(case: Case) -> str:
    """The battery by its kind: "an AGM battery"."""
    return f"{wording.a_kind(case, capital=False)} battery"


def for_a_time(case: Case, days: float, figures: tuple[Figure, ...], chart: dict[str, Any]) -> Answer:
    """yes where half is left after the time, marginal where only the drain alone leaves it, else no."""
    away = float(case["storage.time"])
    rate = laid_up.daily_share(case, say_it=True)
    share = rate + laid_up.drained_share(case)
    left = storage.charge_after(laid_up.charge_now(case), away, share)
    time = say.quantity(away, "d", 0)
    case.step(f"With its own loss, about {say.charge(left)} is left after {time}", "drain-arithmetic")
    took = f"{amount(float(case['drain.current']))} reaches half after {say.days(days)}"
    stands = f"and you are away for {time}" if AWAY.search(case.text) else f"and you name {time}"
    if left >= limit("lead-half") - NEAR and drain_explained.goes_flat(case.text):
        head = f"That drain does not explain it: {took}; the battery may be worn, or more draws at times: test it."
        return TOPIC.says("yes", head, *figures, plot=chart)
    if left >= limit("lead-half") - NEAR:
        return TOPIC.says("yes", f"Yes: {took}, {stands}.", *figures, plot=chart)
    if away <= days + NEAR:
        head = f"Only just: {took}, and the battery loses some by itself in your {time}."
        return TOPIC.says("marginal", head, *figures, plot=chart)
    if pump_left_on.is_told(case.text):
        head = f"No: {took}, {stands}; leave it on, with a charger, a panel or a charge in between."
        return TOPIC.says("no", head, *figures, plot=chart)
    head = f"No: {took}, {stands}, so disconnect it or charge in between."
    return TOPIC.says("no", head, *figures, plot=chart)


def amount(amps: float) -> str:
    """A small current as people write it: mA under half an amp."""
    return say.quantity(amps * 1000, "mA") if amps < 0.5 - NEAR else say.quantity(amps, "A")


def plot(capacity: float, charge: float, amps: float) -> dict[str, Any]:
    """Charge against days, down to empty."""
    half = limit("lead-half")
    empty, days = (drain.days_between(charge, until, capacity, amps) for until in (0, half))
    return chart.chart(
        "line",
        "Charge with this drain",
        ("days", "d"),
        ("charge", "%"),
        [("charge left", [(0.0, charge), (empty, 0.0)])],
        [("half", half)],
        ("half", days, min(charge, half)),
    )
