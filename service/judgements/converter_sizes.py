"""How large a DC-to-DC charger may be, by its alternator and by its battery, and whether lithium must have one."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case
from service.judgements import charging, converter
from service.kinds import LEAD
from service.reply import Answer, Figure
from service.told import must_have
from service.topic import Topic

ENOUGH = regex(r"\b(?:enough|suffic\w*|plenty|large enough|do the job)\b", re.IGNORECASE)
ITS_SIZE = regex(r"\b(?:sizes?|amps?|amperes|amperage|big|large|strong|rating)\b", re.IGNORECASE)
NOT_ITS_SIZE = regex(
    r"\b(?:input|cables?|wires?|fuses?|breakers?|draws?|drawn|pulls?|takes?)\b"
    r"|\b(?:size|big|large|many amps|what|which)(?: (?:an?|of|must|should|my|the))* alternator\b",
    re.IGNORECASE,
)
ITS_PULL = regex(r"\b(?:draws?|drawn|pulls?|takes?|burdens?|isolated|side)\b", re.IGNORECASE)  # is what is asked then


def suited(case: Case) -> charging.Span | None:
    """The charging current that suits the battery; None where its kind or its amp-hours are not known, or two are."""
    chemistry = charging.known_kind(case)
    if chemistry not in (*LEAD, "lfp") or "charge.capacity" not in case or "battery.capacity" in case.second:
        return None
    return charging.span(case, chemistry, charging.capacity(case))


def largest(topic: Topic, case: Case, rated: float) -> Answer:
    """The largest converter for an alternator and for its battery; for a kind not known the smaller one."""
    share = min(converter.shares(case), key=lambda item: float(item.value))
    taken = rated * float(share.value)
    out = converter.most_out(case, rated, float(share.value))
    case.step(f"For hours an alternator of {say.amps(rated)} gives {say.amps(taken)}", share.cite, "converter-power")
    suits, most = suited(case), ""
    if suits and suits.high < out:
        taken, out = taken * suits.high / out, suits.high
        most = f", the most for {say.amp_hours(suits.capacity)} of {say.CHEMISTRY[suits.kind]}"
    figures: tuple[Figure, ...] = (
        Figure("input_current", "it pulls", taken, "A"),
        Figure("output_current", "it puts out", out, "A"),
    )
    _, target = converter.volts(case)
    gives = f"{say.amps(out)} at {say.quantity(target, 'V')}"
    figures += converter.real_output(case, rated, taken)
    head = f"Up to {gives}{most}: that pulls {say.amps(taken)} of the {say.amps(rated)} alternator."
    if must_have.converter(case.text) and charging.known_kind(case) == "lfp":
        case.because("Lithium takes all that an alternator gives until it is hot", "lithium-alternator")
        held = f"it keeps lithium to {say.amps(taken)}"
        head = f"Yes, one of up to {say.amps(out)}{most}: {held} of the {say.amps(rated)} alternator."
    return topic.says("information", head, *figures)


def for_the_battery(topic: Topic, case: Case) -> Answer | None:
    """The converter that suits the amp-hours it charges, where its size is asked; whether lithium must have one."""
    suits = suited(case) if case.says("request:what_size") else None
    if suits is None:
        if not (must_have.converter(case.text) and charging.known_kind(case) == "lfp"):
            return None
        case.because("Lithium takes all that an alternator gives until it is hot", "lithium-alternator")
        head = "Yes: lithium takes all that an alternator gives, and a DC-to-DC charger keeps that to its own amps."
        return topic.says("information", head, asks=(topic.ask("alternator.current"),))
    fits = f"{say.between(suits.low, suits.high, 'A')} suits {say.amp_hours(suits.capacity)} of "
    shore = "; a shore charger as well, unless the engine runs long enough to fill it"
    also = shore if must_have.second_charger(case.text) else ", as far as the alternator can give it"
    found = Figure("output_current", "it puts out", suits.high, "A", suits.low, suits.high)
    head = f"{fits}{say.CHEMISTRY[suits.kind]}{also}."
    return topic.says("information", head, found, asks=(topic.ask("alternator.current"),))


def open_size(topic: Topic, case: Case) -> Answer | None:
    """How large it must be, where nothing tells that yet: by the amp-hours it fills and what the alternator gives."""
    asked = case.says("request:what_size") and not case.says("role:load.current", "role:drain.current")
    if not (asked and ITS_SIZE.search(case.text)) or NOT_ITS_SIZE.search(case.text) or "charge.capacity" in case:
        return None
    kind, lacking = charging.known_kind(case), ["battery.capacity", "alternator.current"]
    if kind not in (*LEAD, "lfp"):
        lacking.insert(1, "battery.chemistry")
        head = "We can't say yet: the battery's amp-hours and kind decide, and what the alternator can give."
        return topic.needs(*lacking, headline=head)
    row = reference.row("charge_current", chemistry=kind)
    case.source(row["low"].cite)
    suits = say.between(row["low"].value * 100, row["high"].value * 100, "A")
    head = f"{suits} for each {say.amp_hours(100)} of {say.CHEMISTRY[kind]}, as far as the alternator can give it."
    return topic.needs(*lacking, headline=head)


def too_much(topic: Topic, case: Case, *figures: Figure) -> Answer | None:
    """That its amps are more than its battery takes, however well the alternator feeds it; else None."""
    suits, amps = suited(case.fresh()), float(case["charger.current"])
    verdict = suits.verdict(amps) if suits and suits.over(amps) else "yes"
    if suits is None or verdict == "yes":
        return None
    suited(case)  # with its steps
    opening = "Only just" if verdict == "marginal" else "No"
    held = f"{say.amp_hours(suits.capacity)} of {say.CHEMISTRY[suits.kind]}"
    pulls = f"it pulls about {converter.whole(float(figures[0].value))}"
    fits = say.between(suits.low, suits.high, "A")
    head = f"{opening}: {say.amps(amps)} is more than {held} takes; {fits} suits it, and {pulls}."
    return topic.says(verdict, head, *figures)


def enough(topic: Topic, case: Case, *figures: Figure) -> Answer | None:
    """Whether its amps suit its battery, where it is asked if they are enough and no load hangs on it; else None."""
    asked = ENOUGH.search(case.text) is not None and ITS_PULL.search(case.text) is None
    if not asked or {"load.current", "load.power"} & set(case.stated):
        return None
    suits, amps = suited(case), float(case["charger.current"])
    pulls = f"it pulls about {converter.whole(float(figures[0].value))}"
    if suits is None:
        head = f"We can't say yet: {pulls}, and the battery's Ah and kind decide if {say.amps(amps)} is enough."
        lacking = [fact for fact in ("battery.capacity", "battery.chemistry") if fact not in case.stated]
        return topic.needs(*lacking, headline=head, figures=figures) if lacking else None
    verdict, held = suits.verdict(amps), f"{say.amp_hours(suits.capacity)} of {say.CHEMISTRY[suits.kind]}"
    fits = say.between(suits.low, suits.high, "A")
    if verdict == "yes":
        return topic.says("yes", f"Yes: {say.amps(amps)} suits {held}, which takes {fits}; {pulls}.", *figures)
    opening = "Only just" if verdict == "marginal" else "No"
    why = f"{say.amps(amps)} is more than {held} takes" if suits.over(amps) else f"{say.amps(amps)} fills {held} slowly"
    return topic.says(verdict, f"{opening}: {why}; {fits} suits it.", *figures)
