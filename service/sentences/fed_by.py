"""What feeds a charger between two batteries: the alternator, the house bank beside it."""

from __future__ import annotations

from dataclasses import replace

from service import reference, say
from service.case import Case
from service.judgements import charging, converter
from service.reply import Answer, Figure, strictest
from service.told import house_bank
from service.topic import Topic

LONGEST = 30  # words of a headline


def together(case: Case, joined: Answer, given: Answer) -> Answer:
    """The answer to both, isolated or not and the alternator: the stricter verdict, and what it takes of how much."""
    verdict = strictest(joined.verdict, given.verdict)
    head = joined.headline
    if joined.verdict != "no":
        begun = head.removeprefix("We can't say yet: ").rstrip(".")
        begun = f"{begun[0].upper()}{begun[1:]}"
        whole = f"{begun}; it takes {taken_of(case, given)}."
        head = whole if len(whole.split()) <= LONGEST else f"{begun}; it takes {taken_of(case, given).split(' (')[0]}."
    return replace(joined, verdict=verdict, headline=head, figures=given.figures, asks=(*joined.asks, *given.asks))


def taken_of(case: Case, given: Answer) -> str:
    """The amps it takes, and what of the alternator's rating it may take, where the kind does not decide that."""
    rated, each = float(case["alternator.current"]), [float(item.value) for item in converter.shares(case)]
    taken, most = converter.whole(float(given.figures[0].value)), rated * min(each)
    if given.verdict == "yes":
        return f"{taken} of the {say.amps(most)} available ({converter.at_worst(given.figures)})"
    if given.verdict == "marginal":
        return f"{taken} ({converter.at_worst(given.figures)}), over the {say.amps(rated * max(each))} available"
    return f"{taken} ({converter.at_worst(given.figures)})"


def fed(topic: Topic, case: Case, rated: float, figures: tuple[Figure, ...]) -> Answer:
    """What it pulls against what the alternator gives for hours."""
    taken = float(figures[0].value)
    limits = converter.shares(case)
    within = [taken <= rated * share.value * (1 + charging.NEAR) for share in limits]
    for share in limits:
        case.step(f"For hours an alternator of {say.amps(rated)} gives {say.amps(rated * share.value)}", share.cite)
    figures += converter.real_output(case, rated, taken)
    pull = f"pulls about {converter.whole(taken)}"
    if len(set(within)) > 1:
        lead, lithium = (say.amps(rated * share.value) for share in limits)
        head = f"We can't say yet: it {pull}, and the alternator gives {lead} for lead, but {lithium} for lithium."
        return topic.needs("battery.chemistry", headline=head, figures=figures)
    if within[0]:
        most = rated * min(float(share.value) for share in limits)
        if shared := beside_the_house(topic, case, rated, most, taken):
            return replace(shared, figures=figures)
        head = f"Yes: it {pull}, within the {say.amps(most)} that a {say.amps(rated)} alternator gives for hours"
        return topic.says("yes", f"{head}; cable and fuse are for {converter.at_worst(figures)}.", *figures)
    most = rated * max(float(share.value) for share in limits)
    rest = f"a {say.amps(rated)} alternator should not give more than {say.amps(most)} for hours"
    return topic.says("marginal", f"Only just: it {pull} ({converter.at_worst(figures)}), and {rest}.", *figures)


def beside_the_house(topic: Topic, case: Case, rated: float, most: float, taken: float) -> Answer | None:
    """What an alternator has left for a house bank that it charges too; None where that is enough for it."""
    held = house_bank.amp_hours(case.text)
    wanted = held * float(reference.row("charge_current", chemistry="lead")["low"].value) if held else 0.0
    left = most - taken
    if not held or left >= wanted:
        return None
    case.step(
        f"A house bank of {say.amp_hours(held)} takes {converter.whole(wanted)} or more while it is low",
        reference.row("charge_current", chemistry="lead")["low"].cite,
    )
    house = f"which leaves only {say.quantity(left, 'A', 0)} for the {say.amp_hours(held)} house bank"
    head = (
        f"Only just: it pulls about {converter.whole(taken)} of the {say.amps(most)} that a {say.amps(rated)} "
        f"alternator gives for hours, {house}."
    )
    return topic.says("marginal", head)
