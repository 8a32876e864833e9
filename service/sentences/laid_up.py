"""How a laid-up battery is put into words where more is asked than how long it lasts."""

from __future__ import annotations

from service import say
from service.case import Case
from service.judgements import charging, laid_up
from service.judgements.laid_up import FULL, LaidUp
from service.rules import readings
from service.rules.readings import NEAR, limit
from service.sentences import wording
from service.told import laid_up_asked, pump_left_on

CHARGER = "charger-setting"  # the topic that judges a charger by itself
WINTER = 150.0  # days from November to March, which a battery that is asked about "in winter" has to last


def as_asked(case: Case, found: LaidUp, verdict: str, away: float | None, look: str) -> str | None:
    """The sentence for whether it comes off, what it will read, or whether it wants a charge in between; else None.

    `verdict` is that of the time it stands, `look` how often to look.
    """
    if laid_up_asked.comes_off(case.text) and not pump_left_on.is_told(case.text):
        return comes_off(case, found, verdict, away, look)
    if laid_up_asked.will_read(case.text) and away is not None and not laid_up.is_lithium(case):
        return will_read(case, found, verdict, away, look)
    if laid_up_asked.in_between(case.text) and not laid_up.left_on(case):
        return in_between(case, found, verdict, away, look)
    return None


def how_full(case: Case, found: LaidUp) -> str:
    """How full it is laid up."""
    if laid_up.half_full(case):
        return "about half full"
    return "charged full" if found.charge >= FULL - NEAR else f"from {say.charge(found.charge)}"


def within(found: LaidUp) -> str:
    """The days to its next charge."""
    return say.quantity(int(min(found.recharge, limit("shown-most")) + NEAR), "d", 0)


def comes_off(case: Case, found: LaidUp, verdict: str, away: float | None, look: str) -> str:
    """ "Do I disconnect it?": yes, and when it wants a charge; a charger that must not stay on is named first."""
    deed = "isolator off and cables off" if laid_up_asked.of_a_switch(case.text) else "disconnect it"
    start = say.capital(deed) if laid_up_asked.or_stays_on(case.text) else f"Yes, {deed}"
    if charging.unregulated(case) and CHARGER not in case.beside:
        return f"{start}, and leave no charger on that does not regulate itself: it goes on when the battery is full."
    start = f"{start}, {how_full(case, found)}"
    if verdict in ("marginal", "no") and away is not None:
        left = wording.percent(found.after(away))
        return f"{start}: after {say.quantity(away, 'd', 0)} it is down to {left}, so charge it within {within(found)}."
    if laid_up.is_lithium(case):
        return f"{start}, and look every {look}; charge it after {within(found)} at the latest."
    volts = next(iter(laid_up.recharge_volts(case))).value
    return f"{start}: look every {look}, and charge it at {say.volts(float(volts), 2)} or after {within(found)}."


def will_read(case: Case, found: LaidUp, verdict: str, away: float, look: str) -> str:
    """ "What will it read in spring?": the volts at rest of the charge that is left, and whether it may be left."""
    left = found.after(away)
    kind = readings.table_of(case.said("battery.chemistry"))
    volts = readings.volts_for(left, kind) * (readings.said_system(case) or 12.0) / 12
    case.step(f"{wording.percent(left)} is {say.volts(volts, 2)} at rest", *readings.charge_of(12.5, kind).cites)
    told = f"About {say.volts(volts, 2)} at rest after {say.quantity(away, 'd', 0)}, {wording.percent(left)} full"
    if verdict == "yes":
        return f"{told}: {how_full(case, found)} it may be left, if you look every {look}."
    return f"{told}: charge it within {within(found)}, so look every {look}."


def in_between(case: Case, found: LaidUp, verdict: str, away: float | None, look: str) -> str | None:
    """ "Must I charge it in the middle of winter?"; None where the time is not told and it may not last a winter."""
    lasts = f"{how_full(case, found)} and disconnected it needs none for {within(found)}"
    if verdict == "yes" and away is not None:
        return f"No, not in between: {lasts}, and you look every {look}."
    if away is not None:
        left = wording.percent(found.after(away))
        return f"Yes, within {within(found)}: after {say.quantity(away, 'd', 0)} it would be down to {left}."
    if found.recharge < WINTER:
        return None
    return f"No, not as a rule: {lasts}; look every {look}."
