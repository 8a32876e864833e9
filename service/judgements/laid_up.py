"""A battery that stands: its charge now, what it loses by itself and to what is left on."""

from __future__ import annotations

from collections.abc import Sequence

from service import reference, say
from service.calculators import drain, storage
from service.case import Case
from service.reply import Figure, Urgency
from service.rules.readings import NEAR, cite, limit

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
    home = "" if case.says(HEAVY) else ", or take it home"
    if verdict == "yes" or away is None:
        look = look if away is None or away > check + NEAR else "that is enough"
        todo = " and ".join([*([] if full else [charge]), *([] if case.says(OFF) else ["take the cables off"])])
        opening = "Yes: " if away is not None and case.says(*ASKS) else ""
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
