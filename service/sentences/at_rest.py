"""How a reading at rest is put into words and drawn."""

from __future__ import annotations

import re
from typing import Any

from grammar.text.patterns import regex
from service import chart, say
from service.case import Case
from service.judgements.doubt import shown
from service.judgements.standing_loss import PARTED, Fall
from service.reply import Answer
from service.rules import readings
from service.rules.readings import Charge, cite, limit
from service.sentences import wording
from service.sentences.rest_beside_load import with_load
from service.told import culprit, what_became

MONITOR_OFF = 15.0  # points of charge
NO_REST = "Too early to say: with something on"
STOOD = (  # of a lead battery that was left and found deeply flat
    "Most likely your battery stood discharged: {} is deeply flat, which harms it; charge it slowly, watched, rest it "
    "a day, and a load test decides."
)
EITHER = (  # the one test that parts a worn battery from a drain
    "Either: charge it full, a cable off overnight, then read: if it holds, something draws, if it falls, it is worn; "
    "{} means {}."
)
WARMTH = 10.0  # °C from the table's own temperature under which nothing is said of it


WHICH_IS_BAD = regex(
    r"\bwhich (?:one |battery |of (?:them|the two|these) )?(?:is|has|must|should|needs?|do i|can i)\b[^.?!;]{0,16}"
    r"\b(?:bad|faulty|broken|dead|failing|failed|finished|weak|gone|go|going|out|replac\w*|fault|culprit)\b"
    r"|\b(?:can|may|should|could) (?:both|they|the two|the pair)(?: of them)? (?:stay|remain|be kept)\b"
    r"|\b(?:keep|leave) (?:both|the two|the pair)\b",
    re.IGNORECASE,
)


CHARGED_ENOUGH = regex(  # "is it charged enough for a day out?": whether, not how full
    r"\b(?:charged|charge|full)(?: up)? enough\b|\benough (?:charge|power|juice|left|(?:in|on) (?:it|them|there))\b",
    re.IGNORECASE,
)


def which_is_bad(text: str, sides: list[tuple[str, Answer]], parts: list[str]) -> str:
    """ "Which one is bad, or can both stay?": volts tell a charge, a load test after it decides; "" if not asked."""
    low = [name for name, found in sides if found.verdict in ("marginal", "no")]
    if not WHICH_IS_BAD.search(text) or any(found.verdict == "information" for _, found in sides):
        return ""
    if not low:
        return f"Neither by these readings, so both may stay: {parts[0]}, and {parts[1]}."
    which = f"the one at {low[0]} alone" if len(low) == 1 else "each alone"
    today = " today" if any(found.urgency == "today" for _, found in sides) else ""
    head = f"Not known yet, so keep both: charge {which}{today}, rest it, then a load test decides"
    return f"{head}; {parts[0]}, and {parts[1]}."


def charge_step(volts: float, found: Charge) -> str:
    """The step from volts to charge."""
    name = "lithium" if found.kind == "lfp" else say.CHEMISTRY[found.kind]
    each = shown(found.each) if abs(found.each - volts) < 1e-9 else f"{shown(found.each)} for each 12{say.NB}V"
    return f"{each} is {wording.about(wording.charge(found))} by the {name} table"


def note_monitor(case: Case, found: Charge) -> None:
    """A stated charge that does not fit: of a lead battery the resting volts count, not the monitor."""
    told = case.said("battery.charge")
    if case.said("storage.time") is not None:  # full when it was left: that was another day's charge
        return
    if told is not None and found.kind != "lfp" and abs(float(told) - found.value) > MONITOR_OFF:
        monitor = say.charge(float(told))
        case.step(f"{monitor} does not fit: resting volts count, and a monitor is set anew when full", *found.cites)


def note_rest(case: Case, found: Charge) -> None:
    """What a short rest, cold or warmth make of a lead battery's reading: told, never taken off."""
    if found.kind == "lfp":
        return
    rested, celsius = case.said("reading.rest_time"), case.said("ambient.temperature")
    name = "rested-flooded" if found.kind == "flooded" else "rested-sealed"
    if rested is not None and 0 < float(rested) < limit(name):
        case.step(
            f"After {say.duration(float(rested) * 60)} it may still read a little high: a reading counts after "
            f"{say.quantity(limit(name), 'h')} of rest",
            cite(name),
        )
    usual = limit("rest-warmth-at")
    if celsius is not None and abs(float(celsius) - usual) >= WARMTH:
        apart = abs(float(celsius) - usual) * limit("rest-warmth")
        case.step(
            f"At {say.temperature(float(celsius))} it rests about {say.volts(apart, 2)} "
            f"{'lower' if float(celsius) < usual else 'higher'} than at {say.temperature(usual)}: too little to count",
            cite("rest-warmth"),
        )


def headline(case: Case, volts: float, found: Charge, verdict: str, asked: bool) -> str:
    """The answer in one sentence."""
    when = "with something on" if with_load(case) else "at rest"
    reads = f"{shown(volts)} {when}{of_twelve(volts, found.each)}"
    if put := as_they_put_it(case, reads, found, verdict, asked):
        return put
    opening = wording.opening(case, verdict)
    if verdict == "information":
        return (
            f"Too early to say: {shown(volts)} on charge, or soon after, reads high, so read it again after some "
            "hours of rest."
        )
    battery = f"your {wording.kind(case)} battery"
    if found.flat:
        return deeply_flat(case, reads, battery, opening, found)
    spoilt = wording.fears_it_spoilt(case, verdict)
    if spoilt and verdict in ("no", "marginal"):
        when, only = ("today", "only ") if verdict == "no" and found.kind != "lfp" else ("soon", "")
        charge = f"{wording.full(found, only)}, so charge it {when}, then test it"
        return f"{wording.NO_PROOF}: {reads} means {battery} {charge}."
    if verdict in ("no", "marginal") and case.says("detail:saved"):
        return brought_back(reads, battery, found, verdict)
    if verdict == "no":
        when = "today" if found.kind != "lfp" else "soon"
        return f"{opening}: {reads} means {battery} {wording.full(found, 'only ')}, so charge it {when}."
    if verdict == "marginal":
        return f"{opening}: {reads} means {battery} {wording.full(found)}, so charge it soon."
    agm = "; an AGM would want a charge" if asked else ""
    opening = wording.NO_PROOF if spoilt else opening
    if opening in ("Yes", "No") and not asked and low_for_lithium(case, found):
        charge = f"the battery {wording.full(found)}"
        return f"{opening}: if it is lead, {reads} is a good reading, and {charge}; lithium would be nearly empty."
    return f"{opening}: {reads} is a good reading for {battery}, which {wording.full(found)}{agm}."


def as_they_put_it(case: Case, reads: str, found: Charge, verdict: str, asked: bool) -> str:
    """The answer to a question of its own about a reading; "" where it is asked whether it is good."""
    if verdict == "yes" and culprit.one_way(case.text):
        sides = "a battery feeds both directions alike, so look at the relay and control of the weak one"
        return f"Not the battery by this: {reads} is good, and {sides}."
    if found.flat or verdict == "information":
        return ""
    if what_became.dead_or_drained(case.text):
        return EITHER.format(reads, wording.full(found).removeprefix("is "))
    if verdict == "no" and found.kind != "lfp" and what_became.went_wrong(case.text):
        means = f"{reads} means {wording.full(found, 'only ').removeprefix('is ')}"
        then = "charge it today, rest it a day, and a load test decides"
        return f"Most likely your battery stood discharged: {means}; {then}."
    if case.says("detail:asks_full"):
        return whether_full(case, reads, found, verdict)
    whether = case.says("detail:asks_good") or CHARGED_ENOUGH.search(case.text)
    if case.says("request:how_full") and not whether:
        return with_damage(case, how_full(case, reads, found, verdict, asked))
    return ""


def low_for_lithium(case: Case, found: Charge) -> bool:
    """Whether the kind is not said, nor told by a rating of lead, and lithium would be nearly empty by these volts."""
    if any(case.said(fact) is not None for fact in ("battery.chemistry", "battery.cca", "battery.ca")):
        return False
    return readings.charge_of(found.each, "lfp").verdict == "no"


def deeply_flat(case: Case, reads: str, battery: str, opening: str, found: Charge) -> str:
    """The answer on a battery that was so flat that it may be damaged: "can it be saved", "is it ruined"."""
    lithium = found.kind == "lfp"
    if what_became.went_wrong(case.text) and not lithium:
        return STOOD.format(reads)
    if case.says("detail:saved"):
        how = "charge it slowly with somebody beside it, rest it a day, and a load test decides"
        how = "ask its maker before any charge" if lithium else how
        return f"Perhaps: {reads} is deeply flat for {battery}; {how}."
    if lithium:
        return f"{opening}: {reads} is deeply flat for {battery}, so ask its maker before you charge it."
    return f"{opening}: {reads} is deeply flat for {battery}; it may be damaged, and a test after charging tells."


def flat_if_of_twelve(case: Case, reads: str) -> str:
    """The answer on a reading that is deeply flat for 12 V, where 12 V is not said."""
    twelve = f"a 12{say.NB}V battery"
    if what_became.went_wrong(case.text):
        flat = f"{reads} is deeply flat for {twelve}, which harms it"
        return f"Most likely your battery stood discharged: {flat}; is it one?"
    if case.says("detail:saved"):
        then = "please say if so, then a slow charge, watched, and a load test tell"
        return f"Perhaps: {reads} is deeply flat if it is {twelve}; {then}."
    return f"We can't say yet: {reads} is deeply flat if it is {twelve}; please say if so."


def brought_back(reads: str, battery: str, found: Charge, verdict: str) -> str:
    """ "Can it be brought back?" of one that is low but not deeply flat: mostly, and what is lost only a test tells."""
    if verdict == "marginal" or found.kind == "lfp":
        return f"Yes, charge it soon: {reads} means {battery} {wording.full(found)}."
    low = wording.full(found, "only ")
    return f"Often yes: {reads} means {battery} {low}; a full charge today, then a load test tells."


def fell(case: Case, fall: Fall, verdict: str) -> str:
    """The answer on two readings of which the later is too low: what to do, and in what order."""
    first, last = (shown(volts) for volts in fall.volts)
    time = f" in {say.quantity(fall.days, 'd', 0)}" if fall.days else ""
    soon = "today" if verdict == "no" else "soon"
    bad = case.says("detail:asks_bad") and not case.says("detail:asks_good")
    start = wording.NO_PROOF if wording.fears_it_spoilt(case, verdict) else "Yes" if bad else "No"
    if PARTED.search(case.text):
        rest = f"charge it {soon}, rest it a day, and a load test tells if it is worn"
        return f"{start}: from {first} to {last}{time} with its cables off is no normal loss; {rest}."
    return (
        f"{start}: from {first} to {last}{time} with nothing on is no normal loss; main switch "
        f"off and charge it {soon}, then find what draws."
    )


def of_twelve(volts: float, each: float) -> str:
    """What a reading is for each 12 V battery, in brackets; nothing where it is the same."""
    if abs(each - volts) < 1e-9:
        return ""
    return f" ({shown(each)} each)" if volts > each else f" (like {shown(each)} of a 12{say.NB}V battery)"


def whether_full(case: Case, reads: str, found: Charge, verdict: str) -> str:
    """Yes or no, where they ask whether it is full."""
    start = wording.whether_full(found.value) if found.low is None else "No"
    when = "today" if verdict == "no" and found.kind != "lfp" else "soon"
    then = "" if verdict == "yes" else f", so charge it {when}"
    only = "only " if verdict == "no" else ""
    return f"{start}: {reads} means your {wording.kind(case)} battery {wording.full(found, only)}{then}."


DAMAGED = regex(
    r"\b(?:is|are|was|has|have) (?:it|they|that|this|the batter\w+)(?: been)? "
    r"(?:damaged|harmed|ruined|hurt|spoilt|killed)\b"
    r"|\bany (?:damage|harm)\b|\bdamaged\b[^.?!;]{0,8}\?",
    re.IGNORECASE,
)


def with_damage(case: Case, head: str) -> str:
    """The sentence with what tells of damage, where that is asked beside the charge."""
    if not DAMAGED.search(case.text) or "test" in head:
        return head
    return f"{head.removesuffix('.')}; a load test then tells of damage."


def how_full(case: Case, reads: str, found: Charge, verdict: str, asked: bool) -> str:
    """The charge first, where that is what they ask."""
    told = wording.full(found, "only " if verdict == "no" else "").removeprefix("is ")
    battery = f"your {wording.kind(case)} battery"
    if verdict == "yes":
        agm = "; an AGM would want a charge" if asked else ""
        return f"{told[0].upper()}{told[1:]}: {reads} is a good reading for {battery}{agm}."
    when = "today" if verdict == "no" and found.kind != "lfp" else "soon"
    return f"{told[0].upper()}{told[1:]}: that is what {reads} means for {battery}, so charge it {when}."


LIMITS = ("lead-good", "lead-half", "lithium-good", "lithium-low")


def summary(found: Answer) -> str:
    """One of two batteries in a few words."""
    if found.headline.startswith(NO_REST):
        return "no reading at rest"
    charge = next((item for item in found.figures if item.name == "state_of_charge"), None)
    if charge is None or found.verdict == "information":
        return "too high for a rested battery" if found.verdict == "information" else "not clear"
    value = float(charge.value)
    return "full" if value >= 97.5 else "empty" if value < 2.5 else _part(value)


def _part(charge: float) -> str:
    return f"{wording.about(wording.percent(charge, *map(limit, LIMITS)))} full"


def to_do(sides: list[tuple[str, Answer]], parts: list[str]) -> str:
    """What to do with two batteries, the deed first; "" where nothing is low or a reading does not count."""
    low = [name for name, found in sides if found.verdict in ("marginal", "no")]
    if not low or any(found.verdict == "information" for _, found in sides):
        return ""
    which = f"the one at {low[0]} alone, let it rest" if len(low) == 1 else "each alone, let both rest"
    today = " today" if any(found.urgency == "today" for _, found in sides) else ""
    then = "; if it falls behind once more, test it" if len(low) == 1 else ""
    return f"Charge {which} and read again{today}: {parts[0]}, and {parts[1]}{then}."


def plot(kind: str, found: Charge | None) -> dict[str, Any]:
    """The table as a line, the limits and where the reading stands."""
    names = ("lithium-good", "lithium-low") if kind == "lfp" else ("lead-good", "lead-half")
    return chart.chart(
        "line",
        "Volts at rest and charge",
        ("charge", "%"),
        ("volts at rest, for each 12 V", "V"),
        [(say.CHEMISTRY[kind], [(charge, volts) for volts, charge in sorted(readings.rest_rows(kind))])],
        [(say.charge(limit(name)), readings.volts_for(limit(name), kind)) for name in names],
        ("yours", found.value, found.each) if found else None,
    )
