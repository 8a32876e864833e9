"""A battery that stands: its charge now, what it loses by itself and to what is left on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from service import chart, reference, say
from service.calculators import drain, storage
from service.case import Case
from service.reply import Figure, Urgency
from service.rules import readings
from service.rules.readings import NEAR, cite, limit
from service.told import laid_up_asked

FULL = 100.0
ASKS = ("request:may_i", "request:is_good", "request:enough", "detail:asks_good", "put:leave")
HEAVY, OFF = "detail:cannot_lift", "detail:disconnect"


def is_lithium(case: Case) -> bool:
    """Whether lithium's limits count."""
    return case.said("battery.chemistry") in ("lfp", "lithium-other")


def charge_now(case: Case, usual: float = FULL) -> float:
    """The charge as stated or read, else `usual`, noted as an assumption."""
    why = "charged full first" if usual == FULL else "about half full, as lithium is stored"
    return float(case.assume("battery.charge", usual, why))


def rate_of(case: Case) -> reference.Row:
    """What its kind loses by itself; old plates with antimony lose most."""
    kind = "lfp" if is_lithium(case) else str(case.said("battery.chemistry") or "lead")
    old = kind in ("flooded", "lead") and case.says("detail:antimony")
    return reference.row("self_discharge", chemistry="antimony" if old else kind)


def monthly(case: Case, say_it: bool = False) -> float:
    """Percent of its capacity that it loses in a month by itself, at its temperature (20 C if not said)."""
    row = rate_of(case)["rate"]
    usual = limit("rate-usual")
    celsius = float(case.get("ambient.temperature", usual))
    rate = storage.monthly_rate(float(row.value), celsius, usual, limit("rate-doubles"), limit("rate-coldest"))
    if say_it:
        share = say.quantity(float(row.value), "%")
        case.step(f"It loses {share} a month by itself at {say.temperature(usual)}", row.cite)
        if celsius != usual:
            loses = f"{say.significant(rate, 2)}{say.NB}%"
            case.step(
                f"At {say.temperature(celsius)} that is {loses}: each 10 °C colder halves it, down to 0 °C",
                cite("rate-doubles"),
            )
    return rate


def self_discharge(case: Case) -> Figure:
    """Percent lost in a month at its temperature, with the range of its kind."""
    row, rate = rate_of(case), monthly(case)
    scale = rate / float(row["rate"].value)
    low, high = (float(row[end].value) * scale for end in ("low", "high"))
    case.source("self-discharge-range")
    return Figure("self_discharge", "lost in a month by itself", rate, "%", low, high)


def daily_share(case: Case, say_it: bool = False) -> float:
    """Percent lost in a day by itself."""
    return monthly(case, say_it) / limit("month")


def drained_share(case: Case) -> float:
    """Percent of the bank that what is left on takes in a day; 0 where nothing is."""
    amps = case.said("drain.current")
    return 0.0 if not amps else drain.daily_loss(float(amps)) / float(case["bank.capacity"]) * 100


def urgency(case: Case, charge: float) -> Urgency:
    """today for a lead battery under half."""
    return "today" if not is_lithium(case) and charge < limit("lead-half") - NEAR else "routine"


def without_power(case: Case, verdict: str, told: str, away: float | None, check: float) -> str:
    """What is left to do where nothing can charge it: it goes full, or not at all; "" where all of it is told."""
    look = f"look every {say.quantity(check, 'd', 0)}"
    charge = "leave it about half full" if is_lithium(case) else "charge it full before you leave her"
    full = case.origin("battery.charge") != "assumed" and (is_lithium(case) or charge_now(case) >= FULL - NEAR)
    home = "" if case.says(HEAVY) or laid_up_asked.stays_aboard(case.text) else ", or take it home"
    if verdict == "yes" or away is None:
        look = look if away is None or away > check + NEAR else "that is enough"
        todo = " and ".join([*([] if full else [charge]), *([] if case.says(OFF) else ["take the cables off"])])
        opening = "Yes: " if case.says(*ASKS) else ""
        return f"{opening}{say.capital(todo) if not opening else todo}{home}; {look}: {told}." if todo else ""
    if charge_now(case) < FULL - NEAR and not is_lithium(case):
        return f"{say.capital(charge)}{home}: {told}."
    if not home:
        return f"Bring a charger there in between: {told}."
    return f"Take it home or bring a charger there in between: {told}."


def by_when(figures: Sequence[Figure]) -> str:
    """When it wants a charge, first."""
    told = {item.name: float(item.value) for item in figures}
    days, check, volts = (told.get(name, 0.0) for name in ("days_to_recharge", "check_interval", "recharge_voltage"))
    if days < 1:
        return "Now, before it is laid up: it is too low to stand."
    under = f", or as soon as it rests under {say.volts(volts, 2)}" if volts else ""
    look = f"; look every {say.quantity(check, 'd', 0)}" if check < days - NEAR else ""
    return f"After {say.quantity(int(days + NEAR), 'd', 0)} at most{under}{look}."


@dataclass(frozen=True, slots=True)
class LaidUp:
    """A battery at rest: its charge, percent lost in a day, and the days until it wants a charge or is at its least."""

    charge: float
    share: float
    recharge: float
    least: float  # days to half (lead) or 20 % (lithium)

    def after(self, days: float) -> float:
        """Charge that is left after so many days."""
        return storage.charge_after(self.charge, days, self.share)


def start(case: Case) -> float:
    """The charge taken where none is known: lead is laid up full, lithium half full."""
    return limit("lithium-store") if is_lithium(case) else FULL


def laid(case: Case, say_it: bool = False) -> LaidUp:
    """The battery of this case, at its temperature, with what is left on unless they ask of it disconnected."""
    charge = charge_now(case, start(case))
    share = daily_share(case, say_it)
    if left_on(case):
        share += drained_share(case)
    lithium = is_lithium(case)
    good, least = ("lithium-store-low",) * 2 if lithium else ("lead-good", "lead-half")
    days = [storage.days_between(charge, limit(name), share) for name in (good, least)]
    return LaidUp(charge, share, *days)


def left_on(case: Case) -> bool:
    """Whether a drain stays connected while it stands."""
    return bool(case.said("drain.current")) and not case.says("detail:disconnect")


def half_full(case: Case) -> bool:
    """Whether lithium is taken to be laid up about half full, as nothing was said."""
    return is_lithium(case) and case.origin("battery.charge") == "assumed"


def recharge_volts(case: Case) -> Iterator[Figure]:
    """The volts at rest at which a lead battery is charged again."""
    if is_lithium(case):
        return
    scale = (readings.said_system(case) or 12.0) / 12
    volts, latest = (
        scale * item
        for item in (
            readings.volts_for(limit("lead-good"), readings.table_of(case.said("battery.chemistry"))),
            limit("recharge-latest"),
        )
    )
    case.step(
        f"{say.charge(limit('lead-good'))} is {say.volts(volts, 2)} at rest; the trade's latest is about "
        f"{say.volts(latest)}",
        cite("lead-good"),
        cite("recharge-latest"),
    )
    yield Figure("recharge_voltage", "charge again at", volts, "V")


def plot(case: Case, found: LaidUp, away: float | None) -> dict[str, Any]:
    """Charge against days."""
    end = max(away or 0.0, min(found.least, 2 * limit("shown-most")), 1.0)
    names = ("lithium-store-low",) if is_lithium(case) else ("lead-good", "lead-half")
    return chart.chart(
        "line",
        "Charge while it stands",
        ("days", "d"),
        ("charge", "%"),
        [("charge left", [(0.0, found.charge), (end, found.after(end))])],
        [(say.charge(limit(name)), limit(name)) for name in names],
        None if away is None else ("then", away, found.after(away)),
    )
