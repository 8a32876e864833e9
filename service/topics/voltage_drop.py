"""How much a cable loses, in volts and in percent, and whether that suits its load."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import likely, say
from service.case import Case, Missing
from service.judgements import circuit, doubled_volts, parallel_cables, proposed_cable
from service.judgements.fitting import NEARER, THICKER, asked_thicker, several_needed
from service.reply import Answer, Figure, Option
from service.rules.cable import CRITICAL_LIMIT, MOTOR_LIMIT, TABLE_5, K
from service.told import lost_volts
from service.topic import Topic

TOPIC = Topic(
    "voltage-drop",
    "Loss in the cable",
    amps="load.current",
    cautions=("cable-assumed", "parallel-cables", "fuse-at-battery", "manual-first"),
    levers=(*THICKER, NEARER),
    likely={"cable.insulation": likely.INSULATION},
    unsure={"load.current": "We can't say yet: the loss grows with the amps, so tell us what the load draws."},
)
AT_MOTOR, LOST = "role:at_load", "word:loss"  # asked of the volts there, of those that are lost on the way
WHAT_IS_LOST = regex(  # "what's the loss", of which none is put up for approval
    r"\b(?:what(?:['’]?s| is| are| will be)?|how much)\b[^.?!;]{0,16}\b(?:loss\w*|lost|lose|drop\w*)\b", re.IGNORECASE
)
ALL_RIGHT = regex(
    r"\b(?:ok(?:ay)?|fine|enough|too|all ?right|acceptable|good|suffic\w*|can|allowed|limit\w*)\b",
    re.IGNORECASE,
)
OPENERS = {"yes": "Yes: ", "marginal": "Only just: ", "no": "No: "}
MEASURED = ("reading.load_voltage", "reading.load_voltage_at_load")


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """Volts and percent lost at running current."""
    if case.says("detail:equal_ends"):
        return equal_ends(case)
    lost = lost_volts.told(case.text)
    if lost and (limit := case.stated.get("cable.drop")) and limit.text in lost[1]:  # no limit that was set
        case.stated = {fact: known for fact, known in case.stated.items() if fact != "cable.drop"}
    quoted = circuit.both_quoted(case.text)
    if quoted:
        case.stated = {fact: known for fact, known in case.stated.items() if fact != "cable.drop"}
    case, helps = proposed_cable.put_in(case), doubled_volts.put_in(case)
    if lacking := missing(case):
        if all(fact in case.stated for fact in MEASURED):
            return measured(case)
        if lost:  # as it was measured: no amps and no size are needed
            return against_the_limit(case, lost[0], True)
        if (quoted or case.says("detail:allowed_loss", "detail:which_limit")) and len(lacking) == 3:
            return limits(case)
        return TOPIC.needs(lacking[0], *lacking[1:])
    circuit.must_know(case)
    amps = circuit.current(case)
    if (count := parallel_cables.runs(case)) > 1:
        verdict, head, facts = parallel_cables.judged(case, amps, count)
        asks = (TOPIC.ask("cable.insulation"),) if verdict == "needs-facts" else ()
        return TOPIC.says(verdict, head, *facts, asks=asks, route="technician")
    other = circuit.second_cable(case)
    return two_cables(case, other, amps) if other else one_cable(case, amps, helps)


def missing(case: Case) -> list[str]:
    """What is not known yet, what matters most first."""
    lacking = []
    try:
        circuit.current(case)
    except Missing as lack:
        lacking.append(lack.fact)
    if not circuit.has_cable(case):
        lacking.append("cable.gauge")
    return lacking if "cable.length" in case else [*lacking, "cable.length"]


def figures(lost: circuit.Loss) -> tuple[Figure, Figure]:
    """The loss in volts and in percent."""
    return (
        Figure("drop", "lost in the cable", lost.volts, "V"),
        Figure("drop_percent", "share of the system's volts", lost.percent, "%"),
    )


def judge(case: Case, amps: float) -> tuple[str, str, circuit.Loss]:
    """The verdict on one cable, its reason in words, and the loss; insulation that is not said may decide."""
    lost, carries = circuit.loss(case, amps), float(case["cable.ampacity"])
    both = say.number(2 * float(case["cable.length"]) / 0.3048, 1)
    case.step(
        f"10.75 x {say.amps(amps)} x {both} ft there and back / {say.number(float(case['cable.cmil']))} circular mils "
        "(the American measure of a wire's area) "
        f"= {say.volts(lost.volts, 2)}",
        K.cite,
    )
    taken = " (assumed)" if takes_a_motor(case) else ""
    limit = f"{circuit.limit(case, lost.allowed)}{taken}"
    case.step(f"The limit is {limit}", circuit.limit_cite(lost.allowed))
    share = f"{say.share(lost.percent)} of {say.quantity(circuit.volts(case), 'V')}"
    ours = f"{circuit.name(case)}, {circuit.PROPOSED}," if circuit.is_proposed(case) else circuit.name(case)
    told = f"{ours} loses {say.volts(lost.volts, 2)}, {share}"
    if not lost.within:
        case.because(circuit.what_is_missing(case), circuit.limit_cite(lost.allowed))
        return "no", f"{told}, over the limit of {limit}", lost
    if carries < amps:
        case.step(f"{circuit.name(case)} may carry {say.at_most(carries)}, less than {say.amps(amps)}", TABLE_5)
        return "no", f"{told}, but it may carry only {say.at_most(carries)} of the {say.amps(amps)}", lost
    warm, within = circuit.warm_rating(case), f"{told}, within the limit of {limit}"
    if warm is not None and warm < amps:
        case.step(f"At 75{say.NB}°C insulation it may carry {say.at_most(warm)}", TABLE_5)
        cooler = f"but {say.amps(warm)} is all it may carry with 75{say.NB}°C insulation"
        return "needs-facts", f"{within}, {cooler}", lost
    if asked := asked_thicker(case):
        return "marginal", f"{within}, but our catalogue asks for {asked.names} for the {asked.model}", lost
    return "yes", within, lost


def takes_a_motor(case: Case) -> bool:
    """Whether the limit is a motor's only because nothing was said of the load."""
    named = any(fact in case.stated for fact in ("load.kind", "load.model", "cable.drop"))
    return not named and circuit.allowed(case) == float(MOTOR_LIMIT.value)


def one_cable(case: Case, amps: float, helps: str = "") -> Answer:
    """The loss of the cable named. `helps` says what twice the volts do, where that was asked."""
    verdict, why, lost = judge(case, amps)
    system = circuit.sizes(case)[1 if circuit.metric(case) else 0]
    size = next((item for item in system if abs(item.area - float(case["cable.cmil"])) < 1), None)
    approval = case.says("request:may_i", "detail:asks_good", "detail:asks_bad", "request:enough")
    approval = approval and not (WHAT_IS_LOST.search(case.text) and not ALL_RIGHT.search(case.text))
    if verdict == "needs-facts":
        return unsettled(why, lost, approval)
    if helps and verdict != "no":
        return TOPIC.says(verdict, f"{helps}, and {why}.", *figures(lost), plot=circuit.bars(case, amps, size))
    if case.says(AT_MOTOR) and not case.says(LOST):
        left, whole = say.volts(circuit.volts(case) - lost.volts), say.quantity(circuit.volts(case), "V")
        why = f"about {left} of {whole} reach the motor, less what the battery sags: {why}"
        why = why if approval else say.capital(why)
    start = OPENERS.get(verdict, "") if approval else ""
    counts = circuit.which_counts(case)
    why = (
        f"{circuit.name(case)} loses {say.volts(lost.volts, 2)} ({say.share(lost.percent)}); {counts}"
        if counts
        else why
    )
    if verdict == "no" and not counts and (several := several_needed(case, amps)):
        case.because("Equal cables side by side, each with its own fuse, are laid out by an electrician", K.cite)
        why = f"{why}; {several}"
    return TOPIC.says(verdict, f"{start}{why}.", *figures(lost), plot=circuit.bars(case, amps, size))


def unsettled(why: str, lost: circuit.Loss, approval: bool) -> Answer:
    """The loss, where the insulation decides whether the cable may carry it: none is approved before."""
    if approval:
        return TOPIC.needs("cable.insulation", headline=f"We can't say yet: {why}.", figures=figures(lost))
    return TOPIC.says("information", f"{why}.", *figures(lost), asks=(TOPIC.ask("cable.insulation"),))


def two_cables(case: Case, other: Case, amps: float) -> Answer:
    """The losses of two cables side by side; the first one's figures stand first."""
    verdict, why, lost = judge(case, amps)
    second, _, less = judge(other, amps)
    case.follow_other(other)
    head = f"{why}; {circuit.name(other)} loses {say.volts(less.volts, 2)} ({say.share(less.percent)})."
    if "needs-facts" in (verdict, second):
        return unsettled(head.removesuffix("."), lost, approval=False)
    options = (Option(circuit.name(case), verdict, figures(lost)), Option(circuit.name(other), second, figures(less)))
    return TOPIC.says(verdict, head, *figures(lost), compare=options)


def measured(case: Case) -> Answer:
    """The loss as two readings show it, one at each end while the load runs."""
    near, far = (float(case[fact]) for fact in MEASURED)
    case.step(
        f"{say.volts(near)} at the battery less {say.volts(far)} at the load = {say.volts(near - far, 2)}",
        "ohms-law",
    )
    return against_the_limit(case, near - far, case.says("detail:lost_much", "detail:asks_good", "detail:asks_bad"))


def against_the_limit(case: Case, volts_lost: float, asked: bool) -> Answer:
    """Volts lost, in percent of the system's, against the limit of its kind of load."""
    volts = float(case["bank.voltage"])
    lost = circuit.Loss(volts_lost, volts_lost / volts * 100, circuit.allowed(case))
    share = f"{say.share(lost.percent)} of {say.volts(volts, 0)}"
    told = f"{say.volts(lost.volts, 2)} is lost between battery and load, {share}"
    limit = f"the limit of {circuit.limit(case, lost.allowed)}"
    case.step(
        f"{say.volts(lost.volts, 2)} of the {say.volts(volts, 0)} of the system is {say.share(lost.percent)}", K.cite
    )
    case.step(f"The limit is {limit}", circuit.limit_cite(lost.allowed))
    if lost.within:
        return TOPIC.says("yes", f"{'Yes: ' if asked else ''}{told}, within {limit}.", *figures(lost))
    start = "No: " if asked else ""
    return TOPIC.says("no", f"{start}{told}, over {limit}, so look at cable and joints.", *figures(lost))


def limits(case: Case) -> Answer:
    """What may be lost, where only that is asked."""
    volts = float(case["bank.voltage"])
    share = circuit.allowed(case)
    case.step("10 % for thrusters, windlasses and other motors at running current", MOTOR_LIMIT.cite)
    case.step("3 % for panel feeds, electronics, chargers and navigation lights", CRITICAL_LIMIT.cite)
    if counts := circuit.which_counts(case):
        head = f"{say.capital(counts)}: {say.quantity(share, '%')} of {say.quantity(volts, 'V')} is "
        return TOPIC.says("information", f"{head}{say.volts(volts * share / 100, 2)}.")
    head = (
        f"Up to {say.quantity(share, '%')} suits {circuit.suits(case)}, {say.volts(volts * share / 100, 2)} of "
        f"{say.quantity(volts, 'V')}; 3 % is for electronics and feeds, 10 % for motors, so both are right."
    )
    return TOPIC.says("information", head)


def equal_ends(case: Case) -> Answer:
    """Equal volts at both ends with nothing running prove nothing."""
    case.step("Volts lost = current x resistance: no current, no loss", K.cite)
    head = (
        "Not quite: with nothing running no cable loses volts, so equal readings prove nothing; read both ends "
        "while the load runs."
    )
    return TOPIC.says("information", head)
