"""At what temperature the battery freezes, and whether it will."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.text.patterns import regex
from service import say
from service.calculators import freezing
from service.case import Case, Value
from service.judgements import frost, ice_first
from service.judgements.laid_up import urgency
from service.reply import Answer, Figure, Urgency
from service.rules.readings import cite, limit
from service.sentences.ice import (
    FREEZE,
    charge_not_said,
    charging_asked,
    claimed,
    coldest,
    is_it_safe,
    plot,
    unharmed,
)
from service.told import fallen_to, planned_charge, two_charges
from service.topic import Lever, Topic


def fuller(case: Case) -> Iterator[Value]:
    """More charge in steps of 5 %; none where the frost is there already."""
    if cold_now(case):
        return
    at = frost.charge_of(case)
    yield from (float(charge) for charge in range(5, 101, 5) if at is None or charge > at)


TOPIC = Topic(
    "freeze-point",
    "Freezing",
    cautions=("frost", "lithium-cold"),
    levers=(
        Lever(
            "battery.charge",
            fuller,
            "charged to {value} or more before the frost",
            without=("reading.voltage", "reading.gravity"),
        ),
    ),
    likely={"battery.charge": (("full", 100.0), ("half", 50.0), ("flat", 0.0))},
    unsure={
        "battery.charge": "We can't say yet: a full battery freezes near -59 °C and a flat one near -9 °C, so its "
        "charge decides."
    },
)
CLAIM = regex(r"\bfreezes\b[^.?!]{0,20}?(?:minus|-) ?\d", re.IGNORECASE)  # "a full one freezes at -60"
FULL, FLAT = regex(r"\b(?:full|fully|charged)\b", re.I), regex(r"\b(?:flat|empty|discharged|dead)\b", re.I)
MAY_CHARGE = regex(r"\b(?:can|may|could|ok(?:ay)?|safe|fine|alright) (?:i|we|it|they|to)\b[^.?!;]{0,20}\bcharg", re.I)
COLD_NOW = regex(
    r"\bnow\b|\b(?:it'?s|its|(?<!forecast )is|at) (?:minus|-)|\bthis morning\b|\blast night\b|\bcurrently\b",
    re.IGNORECASE,
)
STILL_TO_COME = regex(r"\b(?:will|tonight|tomorrow|forecast|coming|next|going to|expect\w*|winter)\b", re.I)
IF_IT_WERE = regex(r"\bif (?:it|they|mine|ours|the (?:battery|bank)) (?:was|were|sat|stood|is|are|sits|stands)\b", re.I)
BEFORE_IT = "charge it only before that frost"
HARDEST = -40.0  # °C: colder than any frost that a boat stands in


SHARE_SAID = {100.0: "a full one", 50.0: "a half-full one", 0.0: "a flat one"}
FREEZES = {"yes": "does not freeze", "marginal": "may freeze", "no": "can freeze"}
ABOVE_ZERO = regex(  # "4 degrees now", "plus 5 today", "3 above zero"
    r"(?<![-−–\d.,])(?<!minus )\b\d{1,2} ?(?:(?:degrees?|°|c|celsius)\W{0,2}(?:c |celsius )?)?"
    r"(?:now|today|again|above (?:zero|freezing))\b|(?:\bplus |\+)\d{1,2}\b"
    r"|\b(?:now|today)(?:'s|,| it is| it's| we have| is)? \d{1,2} ?(?:degrees|°|c\b)",
    re.IGNORECASE,
)
ITS_CHARGE = regex(  # the charge of one that is there, and no "would a flat one"
    r"\b(?:it|that|they|mine|ours|(?:the|my|our|his|her) (?:\w+ ){0,2}(?:batter(?:y|ies)|bank|accu|agm|gel|one|ones))"
    r"(?:'?s|'?re| is| are| sits?| reads?| shows?)\b(?! (?:full|charged)\b)",
    re.IGNORECASE,
)
HOW_COLD = regex(  # "how cold can it get before it freezes", "at what temperature does it freeze"
    r"\bhow cold\b[^.?!;]{0,40}\bfreez\w*|\b(?:what|which) (?:temperature|degrees)\b[^.?!;]{0,40}\bfreez\w*"
    r"|\bwhen (?:does|do|would|will)\b[^.?!;]{0,24}\bfreez\w*",
    re.IGNORECASE,
)
ANOTHER = regex(r"[.?!;]\s|\b(?:and|also) (?:how|what|which|is|are|does|do|can|will|would)\b", re.IGNORECASE)
GO_THERE = regex(r"\b(?:should|must|shall|do|need) (?:i|we) (?:have to |need to )?(?:go|come|drive|get)\b", re.I)


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The freezing temperature, and a verdict where a temperature is named."""
    if CLAIM.search(case.text) and FULL.search(case.text) and FLAT.search(case.text):
        return claimed(TOPIC, case)
    as_planned(case)
    case.stated = fallen_to.at_rest(case.text, case.stated)
    celsius = None if of_another_question(case) else coldest(case)
    if case.said("battery.chemistry") in ("lfp", "lithium-other"):
        return lithium(case, celsius)
    if (two := two_charges.told(case.text)) and not charging_asked(case.text):
        return of_two_charges(case, two, celsius)
    found = frost.point_of(case)
    if found is None:
        return charge_not_said(TOPIC, case, celsius)
    point, told = found
    figure = Figure("freezing_temperature", "freezes at", point, "C")
    charge = frost.charge_of(case)
    urgent = urgency(case, charge) if charge is not None and case.said("battery.charge") is None else "routine"
    if celsius is None and ice_first.has_it_frozen(case.text) and point > HARDEST:
        return whether_frozen(case, figure, told, urgent)
    if celsius is None:
        head = in_no_frost(case, told, say.temperature(point))
        return TOPIC.says("information", head, figure, urgency=urgent, plot=plot(charge, point, None))
    verdict = freezing.judged(celsius, point, limit("freezing-margin"))
    now, at = say.temperature(celsius), say.temperature(point)
    case.step(
        f"{now} against {at}, with {say.number(limit('freezing-margin'))} °C kept in hand", cite("freezing-margin")
    )
    if verdict != "yes":
        case.because(ice_first.WHY, "frozen-charge")
    if charge is not None and (verdict == "no" or (verdict == "marginal" and ITS_CHARGE.search(case.text))):
        urgent = urgency(case, charge)
    charged = charge is not None and charge >= limit("lead-good")
    both = verdict == "yes" and charged and freeze_asked(case.text)  # a yes would seem to answer that it freezes
    if charging_asked(case.text) and not both:
        may = may_be_charged(case, verdict == "yes", f"{told} and freezes near {at}", now)
        urgent = urgent if verdict == "yes" else "today"
        return replace(may, figures=(figure,), urgency=urgent, plot=plot(charge, point, celsius))
    may_i = both and MAY_CHARGE.search(case.text) is not None
    then = "look for ice before charging it" if cold_now(case) else BEFORE_IT
    then = "look for ice or a bulge, and have it tested before any charge" if thawed_since(case) else then
    opens, perhaps = ("No", "Not for sure") if is_it_safe(case) else ("Yes", "It may freeze")
    perhaps = "Yes" if GO_THERE.search(case.text) else perhaps
    head = {
        "yes": f"{unharmed(case, now)}: {told}, and it freezes near {at}{'; it may be charged' if may_i else ''}.",
        "marginal": f"{perhaps}: {told} and freezes near {at}, too close to {now}, so {unless_ice(case)}.",
        "no": f"{opens}, it can freeze at {now}: {told} and freezes near {at}, so {then}.",
    }[verdict]
    return TOPIC.says(verdict, head, figure, urgency=urgent, plot=plot(charge, point, celsius))


def unless_ice(case: Case) -> str:
    """What to do where it is nearly cold enough: a charge before a frost to come, none in it while there may be ice."""
    return "charge only if free of ice" if cold_now(case) else "charge it full before that frost"


def of_another_question(case: Case) -> bool:
    """Whether it is asked how cold it may get, and the degrees told stand in a question of something else."""
    told, asked = case.stated.get(frost.TEMPERATURE), HOW_COLD.search(case.text)
    if asked is None or told is None or told.origin != "message" or told.span is None:
        return False
    between = case.text[asked.end() : told.span[0]]
    return (
        frost.TEMPERATURE not in case.second
        and ANOTHER.search(between) is not None
        and bool(set(case.beside) - {TOPIC.name})
    )


def in_no_frost(case: Case, told: str, at: str) -> str:
    """Where it freezes, where no temperature is told; and that it may be charged once no ice was found."""
    if charging_asked(case.text):
        return f"Look for ice or a bulge first: with neither it may be charged, as {told} and freezes only near {at}."
    return f"It freezes at about {at}, because {told}."


def of_two_charges(case: Case, charges: tuple[float, float], celsius: float | None) -> Answer:
    """Whether each of two freezes, by their charges; the verdict is that of the emptier one."""
    points = [frost.point_at_charge(share) for share in charges]
    names = [SHARE_SAID.get(share, f"one at {say.charge(share)}") for share in charges]
    ends = [f"{name} freezes near {say.temperature(point)}" for name, point in zip(names, points, strict=True)]
    case.step("Freezing points by charge", frost.CHARGE_TABLE)
    figure = Figure("freezing_temperature", "freezes at, the emptier one", points[1], "C", min(points), max(points))
    for fact in ("battery.charge", "battery.chemistry"):
        case.known(fact)
    if celsius is None:
        return TOPIC.says("information", f"{say.capital(ends[0])}, {ends[1]}.", figure)
    verdicts = [freezing.judged(celsius, point, limit("freezing-margin")) for point in points]
    now = say.temperature(celsius)
    case.step(f"{now}, with {say.number(limit('freezing-margin'))} °C kept in hand", cite("freezing-margin"))
    if verdicts == ["yes", "yes"]:
        return TOPIC.says("yes", f"No, neither at {now}: {ends[0]}, {ends[1]}.", figure)
    case.because(ice_first.WHY, "frozen-charge")
    does = [f"{name} {FREEZES[found]}" for name, found in zip(names, verdicts, strict=True)]
    then = "look for ice before charging it" if cold_now(case) else BEFORE_IT
    at = say.temperature(points[1])
    return TOPIC.says(verdicts[1], f"At {now} {does[0]}, {does[1]}: it does so near {at}, so {then}.", figure)


def may_be_charged(case: Case, unfrozen: bool, told: str, now: str) -> Answer:
    """Whether it may be charged: not where it may be frozen already, before a frost that is only to come."""
    if unfrozen:
        return TOPIC.says("yes", f"Yes, charge it: at {now} it is not frozen, as {told}.")
    if STILL_TO_COME.search(case.text) and not COLD_NOW.search(case.text):
        return TOPIC.says("no", f"Yes, before the {now} to come: {told}, so charge it now, if it holds no ice.")
    head = f"No charger yet: at {now} it may be frozen: {told}; warm it first, look for ice."
    return TOPIC.says("no", head, route="technician")


def as_planned(case: Case) -> None:
    """Takes the charge that this question plans: "will it freeze if I charge it full first?"."""
    if planned_charge.to_full(case.text, FREEZE):
        case.stated = planned_charge.charged(case.stated)


def whether_frozen(case: Case, figure: Figure, told: str, urgent: Urgency) -> Answer:
    """ "Has it frozen?" where no temperature is told: from which cold on it has, and no charge before a look."""
    case.because(ice_first.WHY, "frozen-charge")
    head = f"It may have, if it was colder than {say.temperature(float(figure.value))}: {told}, so {ice_first.LOOK}."
    asks = (TOPIC.ask(frost.TEMPERATURE),)
    return TOPIC.says("needs-facts", head, figure, asks=asks, urgency=urgent)


def cold_now(case: Case) -> bool:
    """Whether the frost that is told is there already: nothing is charged before somebody has looked."""
    if COLD_NOW.search(case.text):
        return True
    there = frost.TEMPERATURE in case.asked or ice_first.has_it_frozen(case.text) or IF_IT_WERE.search(case.text)
    return bool(there) and not STILL_TO_COME.search(case.text)


def thawed_since(case: Case) -> bool:
    """Whether it is asked if it has frozen, and a degree above zero is told of today: the ice may be gone."""
    return ice_first.has_it_frozen(case.text) and ABOVE_ZERO.search(case.text) is not None


def freeze_asked(text: str) -> bool:
    """Whether a sentence of its own asks if it freezes."""
    return any(FREEZE.search(part) and part.rstrip().endswith("?") for part in re.split(r"(?<=[.!?;])\s", text))


def lithium(case: Case, celsius: float | None) -> Answer:
    """It does not freeze; charging in the cold is what harms it."""
    case.step("Lithium holds no water; charging at or below 0 °C plates metal on the cells", "lithium-no-freeze")
    if celsius is not None and celsius <= 0 and case.says("word:charge"):
        head = f"No: at {say.temperature(celsius)} lithium must not be charged, though it does not freeze like lead."
        return TOPIC.says("no", head)
    stays = "Yes, it may stay:" if is_it_safe(case) else "No,"
    head = f"{stays} lithium does not freeze like lead, but it must not be charged at or below 0 °C."
    return TOPIC.says("information" if celsius is None else "yes", head)
