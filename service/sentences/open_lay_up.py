"""A lay-up whose length is not told: what it needs in any case, and what is asked."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import say
from service.calculators import freezing
from service.case import Case
from service.judgements import frost, laid_up
from service.judgements.laid_up import LaidUp, plot
from service.reply import Answer, Figure, strictest
from service.rules import readings
from service.rules.readings import NEAR, cite, limit
from service.sentences import on_the_charger, wording
from service.sentences.laid_up import as_asked
from service.told import charger_left_on, pump_left_on, taken_home
from service.topic import Topic

FROST = 0.0  # °C

CHARGE_IT = regex(  # "should I charge it before I lay up?"
    r"\b(?:should|must|shall|do|need|ought) (?:i|we) (?:have to |need to |to |better )?(?:first )?(?:re)?charge\b",
    re.IGNORECASE,
)


def without_time(topic: Topic, case: Case, found: LaidUp, figures: list[Figure]) -> Answer:
    """How often, where no time is said; a charge that is too low to store at is named."""
    lithium = laid_up.is_lithium(case)
    low = readings.judged(found.charge, "lfp" if lithium else "flooded")
    if case.origin("battery.charge") != "assumed" and (low == "no" or (low == "marginal" and not lithium)):
        return too_low(topic, case, found, figures, low)
    days, check = float(figures[0].value), say.quantity(float(figures[1].value), "d", 0)
    kind = wording.kind(case)
    if lithium:
        case.step("Lithium is stored about half full", cite("lithium-store"))
        head = f"Leave it about half full and disconnected, and look every {check}; it loses little by itself."
    elif on_the_charger.is_weighed(case):
        within = say.quantity(int(days + NEAR), "d", 0)
        head = (
            f"Better off the charger: charge {kind} batteries full, disconnect them and charge again within {within}."
        )
    elif (case.says("thing:charger") or case.said("charger.kind") == "smart") and not charger_left_on.taken_off(
        case.text
    ):
        case.step("A charger with a float stage may stay on; else it is charged at each look", cite("check-most"))
        head = (
            f"A smart charger may stay on; without one, charge {kind} batteries full, disconnect them and look "
            f"every {check}."
        )
    else:
        least = "after half a year or more"
        if days < limit("shown-most"):
            least = f"in about {say.quantity(int(days + NEAR), 'd', 0)}"
        down = f"{wording.a_kind(case, capital=False)} battery is down to 75 % {least}"
        cables = "leave on only what must stay on" if pump_left_on.is_told(case.text) else "take the cables off"
        head = f"Charge it full, {cables} and look every {check}: {down}."
    if home(case):
        full = "leave it about half full" if lithium else "charge it full"
        head = f"No, it may stay where it is: {full}, take the cables off and look every {check}."
    if case.says("detail:when_to_charge"):
        head = laid_up.by_when(figures)
    if case.says("detail:no_power"):
        last = f"after {say.quantity(int(days + NEAR), 'd', 0)} at most it wants a charge"
        head = laid_up.without_power(case, "information", last, None, float(figures[1].value)) or head
    head = as_asked(case, found, "information", None, check) or head
    return topic.says("information", head, *figures, plot=plot(case, found, None))


def too_low(topic: Topic, case: Case, found: LaidUp, figures: list[Figure], low: str) -> Answer:
    """A charge that is too low to be laid up at."""
    opening = {"no": "No, not yet", "marginal": "Only just"}[low]
    if low == "no" and case.says("detail:asks_bad"):
        opening = "Yes, too low"
    if CHARGE_IT.search(case.text):
        opening = "Yes"
    verdict = strictest(low, in_frost(case, found.charge))
    look = say.quantity(limit("check-most"), "d", 0)
    at = wording.percent(found.charge)
    head = f"{opening}: at {at} charge it full first, then disconnect it and look every {look}."
    urgent = laid_up.urgency(case, found.charge)
    return topic.says(verdict, head, *figures, urgency=urgent, plot=plot(case, found, None))


def in_frost(case: Case, charge: float) -> str:
    """Whether a lead battery with so much charge stands the temperature that is named."""
    celsius = case.said("ambient.temperature")
    if celsius is None or float(celsius) >= FROST or laid_up.is_lithium(case):
        return "yes"
    point = frost.point_at_charge(charge)
    verdict = freezing.judged(float(celsius), point, limit("freezing-margin"))
    case.step(f"At {wording.percent(charge)} of charge it freezes at {say.temperature(point)}", frost.CHARGE_TABLE)
    return verdict


def home(case: Case) -> bool:
    """Whether they ask if the battery must be taken home."""
    told = case.says("detail:come_home") and case.says("request:may_i", "put:need", "put:leave")
    return told or taken_home.comes(case.text)
