"""A reading so soon after a charge that some of the charger still shows: one that is low even then."""

from __future__ import annotations

from service import say
from service.case import Case
from service.judgements.doubt import shown
from service.rules import readings
from service.rules.readings import Charge
from service.sentences import wording
from service.told import what_became

FULL = 100.0  # percent


def low(case: Case, found: Charge) -> bool:
    """Whether a lead battery is far from full though it has just come off its charger."""
    if case.says("request:how_full") and not case.says("detail:asks_good"):  # then the charge itself is told
        return False
    soon = (fresh(case) and what_became.charged_for_long(case.text)) or what_became.soon_after_charging(case.text)
    return soon and found.kind != "lfp" and not found.flat and found.value < wording.NEARLY


def fresh(case: Case) -> bool:
    """Whether it comes off its charger, and no rest after that is told."""
    off, rested = what_became.fresh_off_the_charger(case.text), case.stated.get("reading.rest_time")
    if off is None or rested is None or rested.span is None:
        return off is not None
    return off[0] <= rested.span[0] < off[1]  # "after a night on the charger" is no rest


def headline(case: Case, volts: float, found: Charge, verdict: str) -> str:
    """That it was not filled, or does not take a charge."""
    full = readings.volts_for(FULL, found.kind) * volts / found.each
    case.step("It reads high on charge and in the first hours after it", "quick-rest")
    what = "battery" if abs(volts - found.each) < readings.NEAR else "bank"
    battery = f"{wording.a_kind(case, capital=False)} {what} charged full"
    opening = wording.opening(case, verdict)
    return (
        f"{opening}: {shown(volts)} is low so soon after charging, when {battery} still shows over "
        f"{say.volts(full, 2)}; charge it longer, and read it after a night."
    )
