"""Whether a cable that is named will do, and of two cables the thinner one that does."""

from __future__ import annotations

from service import say
from service.case import Case
from service.judgements import circuit, parallel_cables
from service.judgements.fitting import Choice, asked_thicker, to_fit, us_first
from service.reply import Answer, Figure, Option, strictest
from service.rules.cable import TABLE_5, K
from service.topic import Topic

MOST_FUSED = 1.5  # of the ampacity: a fuse that lets more pass protects no cable
LONGEST_HEADLINE = 30  # words


def judged(topic: Topic, case: Case, amps: float, choice: Choice, facts: tuple[Figure, ...]) -> Answer:
    """Whether the cable they have will do; `choice` is what to fit where it will not."""
    verdict, why = judge(case, amps)
    ours, names = circuit.name(case), choice.named(us_first(case)) if choice.count else "a shorter run"
    if verdict == "needs-facts":
        head = f"We can't say yet: {ours} {why}, so the print on its insulation decides."
        return topic.needs("cable.insulation", headline=head, figures=facts)
    fit = f"fit {names}" if choice.count < 2 else f"it takes {choice.count} of {names} for each pole"
    if case.says("detail:cable_there") and amps > float(case["cable.ampacity"]) * MOST_FUSED:
        fit = f"leave it off, and {fit}"
    heads = {"no": f"No: {ours} {why}; {fit}.", "marginal": f"Only just: {ours} {why}.", "yes": f"Yes: {ours} {why}."}
    if choice.count != 1 and verdict == "no":
        return topic.says(verdict, heads[verdict], *facts, route="technician")
    size = choice.area if circuit.metric(case) else choice.gauge
    return topic.says(verdict, heads[verdict], *facts, plot=circuit.bars(case, amps, size))


def judge(case: Case, amps: float) -> tuple[str, str]:
    """The verdict on one cable and its reason in words."""
    lost, carries, warm = circuit.loss(case, amps), float(case["cable.ampacity"]), circuit.warm_rating(case)
    run = say.length(float(case["cable.length"]), circuit.in_feet(case))
    told = f"loses {say.volts(lost.volts, 2)} ({share(lost)}) over {run}"
    limit = circuit.limit(case, lost.allowed)
    case.step(f"{circuit.name(case)} {told}; the limit is {limit}", K.cite, circuit.limit_cite(lost.allowed))
    if carries < amps:
        case.because("A cable that carries more than it may gets hot, and its insulation can burn", TABLE_5)
        return "no", f"may carry {say.at_most(carries)}, and {say.amps(amps)} run in it"
    if not lost.within:
        case.because(circuit.what_is_missing(case), circuit.limit_cite(lost.allowed))
        return "no", f"{told}, over the limit of {limit}"
    if warm is not None and warm < amps:
        case.step(f"At 75 °C insulation it may carry {say.amps(warm)}", TABLE_5)
        return "needs-facts", f"may carry {say.amps(carries)} at 105 °C but only {say.amps(warm)} at 75 °C"
    if asked := asked_thicker(case):
        return "marginal", f"{told}, within the limit, but our catalogue asks for {asked.names} for the {asked.model}"
    return "yes", f"{told}, within the limit of {limit}, and may carry {say.amps(carries)}"


def two_cables(topic: Topic, case: Case, other: Case, amps: float, facts: tuple[Figure, ...]) -> Answer:
    """Two cables weighed: the thinner that will do is named, and why the other one will not."""
    if max(parallel_cables.twice(case), parallel_cables.twice(other)) > 1:
        return one_or_doubled(topic, case, other, amps, facts)
    options, heads = [], []
    for one in (case, other):
        verdict, why, print_ = offered(case, one, amps)
        lost = circuit.loss(one, amps)
        carries = Figure("ampacity", "may carry", float(one["cable.ampacity"]), "A")
        options.append(Option(circuit.name(one), verdict, (Figure("drop", "lost", lost.volts, "V"), carries)))
        heads.append((float(one["cable.cmil"]), verdict, circuit.name(one), why, print_))
    case.follow_other(other)
    good = sorted(item for item in heads if item[1] == "yes")
    if good:
        _, _, name, why, print_ = good[0]
        head = f"Take {name}{print_}: it {why}."
        short = next((f"; {item[2]} {item[3]}" for item in heads if item[1] == "no"), "")
        longer = f"{head.removesuffix('.')}{short.partition(', over the')[0].partition(', and ')[0]}."
        head = longer if short and len(longer.replace(say.NB, " ").split()) <= LONGEST_HEADLINE else head
        return topic.says("yes", head, *facts, compare=tuple(options))
    _, verdict, name, why, print_ = max(heads)
    if any(item[1] == "needs-facts" for item in heads):
        head = f"We can't say yet: {name} {why}."
        thin = next((item[2] for item in heads if item[1] == "no"), "")
        if thin and (least := circuit.least_insulation(case if circuit.name(case) == name else other, amps)):
            will_do = f"{name} will do {circuit.insulation_named(least)}"
            head = f"Not {thin}, which is too thin; {will_do}, so the print on it decides."
        return topic.needs("cable.insulation", headline=head, figures=facts)
    if verdict == "marginal":
        return topic.says(verdict, f"Only just: {name}{print_} {why}.", *facts, compare=tuple(options))
    choice = to_fit(case, amps)
    fit = f"; fit {choice.named(us_first(case))}" if choice.count == 1 else ""
    return topic.says(verdict, f"Neither will do: {name}{print_} {why}{fit}.", *facts, compare=tuple(options))


def one_or_doubled(topic: Topic, case: Case, other: Case, amps: float, facts: tuple[Figure, ...]) -> Answer:
    """One cable against two thinner ones side by side: the single one where it will do."""
    both = [parallel_cables.taken(one, amps, judge) for one in (case, other)]
    case.follow_other(other)
    options = tuple(Option(item.name, item.verdict, item.figures) for item in both)
    good = sorted((item for item in both if item.verdict == "yes"), key=lambda item: item.count)
    if good:
        route = "technician" if good[0].count > 1 else None
        head = f"Take {good[0].name}: {good[0].why}."
        return topic.says("yes", head, *facts, compare=options, route=route)
    if wants := next((item for item in both if item.verdict == "needs-facts"), None):
        head = f"We can't say yet: {wants.name} {wants.why}, so the print on it decides."
        return topic.needs("cable.insulation", headline=head, figures=facts)
    choice = to_fit(case, amps)
    fit = f"; fit {choice.named(us_first(case))}" if choice.count == 1 else ""
    verdict = strictest(*(item.verdict for item in both))
    head = f"Neither will do for {say.amps(amps)}: {both[0].name} {both[0].short}, {both[1].name} {both[1].short}{fit}."
    return topic.says(verdict, head, *facts, compare=options, route="technician")


def offered(case: Case, one: Case, amps: float) -> tuple[str, str, str]:
    """The verdict on one of two cables, why, and the print it must bear: that of an offer can still be chosen."""
    verdict, why = judge(one, amps)
    least = (
        circuit.least_insulation(one, amps)
        if verdict == "needs-facts" and not case.says("detail:cable_there")
        else None
    )
    if least is None:
        return verdict, why, ""
    return *judge(one.supposing({"cable.insulation": least}), amps), f" {circuit.insulation_named(least)}"


def share(lost: circuit.Loss) -> str:
    """A loss in percent, as it is shown."""
    return say.share(lost.percent)
