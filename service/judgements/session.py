"""A docking session of bursts with rests: how much it takes, what the battery shows at its end, what an engine finds.

None of this decides a verdict. The worst case is a steady run at the same current (Peukert); the best that the rests
give back all that heavy current holds back, so that amp-hours alone count. The truth lies between.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from service import reference, say
from service.calculators import peukert, sag, session
from service.case import Case
from service.judgements import cranking, supply
from service.reply import Figure
from service.rules import readings
from service.rules.battery import capacity_share, lowest_at
from service.told import amp_hours_taken

FULL = 100.0
CYCLES_FROM = 300.0  # seconds on: longer than any burst of a thruster


@dataclass(frozen=True, slots=True)
class Session:
    """Seconds on at a time, seconds between (None where not said), and how many bursts."""

    burst: float
    rest: float | None
    count: float

    @property
    def on(self) -> float:
        """Seconds on in all."""
        return self.burst * self.count


def of(case: Case) -> Session | None:
    """The session that is told of: bursts of a length, and their number or the seconds in all; else None."""
    burst, count, whole = (case.said(fact) for fact in ("load.burst", "load.bursts", "load.time"))
    if burst is None or not float(burst) > 0 or not (count or whole):
        return None
    number = float(count) if count else math.ceil(float(whole) / float(burst))
    rest = case.said("load.rest")
    return Session(float(burst), None if rest is None else float(rest), number)


def used_up(case: Case) -> tuple[str, Figure] | None:
    """What a run takes, where that is asked, in words and as a figure; None where it is not, or no time is told."""
    told = of(case)
    seconds = told.on if told else case.said("load.time")
    if not amp_hours_taken.asked(case.text) or not seconds or "load.current" not in case:
        return None
    amps = float(case["load.current"])
    held = amps * float(seconds) / 3600
    lasts = say.duration(float(seconds) / 60)
    case.step(f"{say.amps(amps)} x {lasts} is {say.quantity(held, 'Ah', 1)}", "drain-arithmetic")
    words = f"About {say.quantity(held, 'Ah')}: {say.amps(amps)} for {lasts}"
    return words, Figure("taken", "taken", held, "Ah")


def trips(case: Case, minutes: float) -> tuple[Figure, ...]:
    """How many such sessions fit into the time to the usable limit, where that is asked: "how many trips to half"."""
    told = of(case)
    if told is None or case.said("load.bursts") is None or not case.says("detail:so_many_trips"):
        return ()
    count = math.floor(minutes * 60 / told.on + 1e-9)
    whole = f"{say.so_many(count)} whole trips"
    case.step(f"{say.duration(minutes)} / {say.duration(told.on / 60)} = {whole}", "drain-arithmetic")
    return (Figure("trip_count", "trips", float(count), ""),)


def trips_in_words(case: Case, minutes: float) -> str:
    """The same in words; "" where it is not asked, or where the model may not run for as long as one of them takes."""
    told, limit = of(case), case.get("load.run_limit")
    found = trips(case.fresh(), minutes)
    if told is None or not found or (limit is not None and told.on > float(limit)):
        return ""
    count, bursts = say.so_many(float(found[0].value)), f"{say.number(told.count)} bursts of"
    noun = "day" if case.says("detail:over_the_day") else "trip"
    many = f"{noun}s" if found[0].value != 1 else noun
    return f"{count} {many} of {bursts} {say.duration(told.burst / 60)}"


def share_on(case: Case) -> float:
    """The part of the time that a load is on which comes and goes by itself, as a fridge does; 1 for any other."""
    burst, rest = case.said("load.burst"), case.said("load.rest")
    if burst is None or rest is None or float(burst) < CYCLES_FROM:
        return 1.0
    return session.duty_cycle(float(burst), float(rest)) / 100


def hours_to_empty(case: Case, capacity: float, amps: float, name: str = "k") -> float:
    """Hours from full to empty at a steady current, by the exponent of that column."""
    return peukert.run_time(capacity, amps, float(exponents(case)[name].value))


def exponents(case: Case) -> reference.Row:
    """Peukert's exponent for the kind of battery, with its range."""
    kind = str(case.get("battery.chemistry") or ("lfp" if case.get("battery.family") == "lithium" else "lead"))
    return reference.row("peukert", chemistry=kind)


def figures(case: Case, amps: float) -> tuple[Figure, ...]:
    """What a session takes, as further figures; none where no session is told of or no amp-hours are known."""
    told = of(case)
    if told is None or amps <= 0 or "bank.capacity" not in case:
        return ()
    family = "lithium" if case.get("battery.family") == "lithium" else "lead"
    capacity = float(case["bank.capacity"])
    if left := capacity_share(family, case.said("ambient.temperature")):
        capacity *= float(left.value) / 100
    found = [*taken(case, told, amps, family), depth(case, told, amps, capacity)]
    charge = float(case.get("battery.charge", FULL))
    after = charge - float(found[-1].value)
    found.append(Figure("state_of_charge_left", "charge left after it", max(0.0, after), "%"))
    if after <= 0:
        case.step("The bursts ask for more than the battery holds", exponents(case)["k"].cite)
    elif family == "lead":
        found += at_the_end(case, told, amps, (charge, after), hours_to_empty(case, capacity, amps))
    return tuple(found)


def taken(case: Case, told: Session, amps: float, family: str) -> Iterator[Figure]:
    """Duty cycle, amp-hours and watt-hours."""
    drawn = session.drawn(amps, told.on)
    each = float(reference.value("ratings", f"volts-{family}").value)
    energy = drawn * each * float(case["bank.voltage"]) / 12
    if told.rest is not None:
        duty = session.duty_cycle(told.burst, told.rest)
        case.step(
            f"On for {say.quantity(told.burst, 's')} in every {say.quantity(told.burst + told.rest, 's')}: "
            f"{say.quantity(duty, '%', 0)} of the time",
            "drain-arithmetic",
        )
        yield Figure("duty_cycle", "motor on, of the time", duty, "%")
    case.step(
        f"{say.number(told.count)} x {say.quantity(told.burst, 's')} at {say.amps(amps)} are "
        f"{say.quantity(drawn, 'Ah')}, about {say.quantity(energy, 'Wh', 0)}",
        "drain-arithmetic",
        "energy-volts",
    )
    yield Figure("session_charge", "taken by the bursts", drawn, "Ah")
    yield Figure("session_energy", "energy", energy, "Wh")


def depth(case: Case, told: Session, amps: float, capacity: float) -> Figure:
    """The part of the battery that the bursts use: between amp-hours alone and the worst of Peukert."""
    used = session.depth(told.on, hours_to_empty(case, capacity, amps))
    least = session.drawn(amps, told.on) / capacity * 100
    most = session.depth(told.on, hours_to_empty(case, capacity, amps, "k_high"))
    case.step(
        f"That uses about {say.quantity(used, '%', 0)} of the battery ({say.between(least, most, '%', 0)}): heavy "
        "current takes more out, rests give part of it back",
        exponents(case)["k"].cite,
        "peukert-limits",
    )
    return Figure("depth_of_discharge", "of the battery used", used, "%", min(least, used), max(most, used))


def at_the_end(
    case: Case, told: Session, amps: float, charge: tuple[float, float], to_empty: float
) -> Iterator[Figure]:
    """Volts at rest after the session, running in its last burst, and how many bursts an engine start allows."""
    kind, scale = readings.table_of(case.get("battery.chemistry")), float(case["bank.voltage"]) / 12
    before, after = (readings.volts_for(min(FULL, share), kind) for share in charge)
    start = float(case["battery.start_voltage"])
    rest = start - (before - after)
    case.step(
        f"After it the battery rests at about {say.volts(rest * scale)}, some hours later",
        *readings.charge_of(rest, kind).cites,
    )
    yield Figure("rest_voltage_after", "at rest after it", rest * scale, "V")
    if "battery.cca" in case:
        ohms = sag.resistance(
            float(case["battery.cca"]), cranking.limit("full"), lowest_at(case.said("ambient.temperature")).value
        )
        volts = sag.terminal_voltage(rest, amps, ohms, int(case["bank.in_parallel"])) * scale
        if volts > 0:
            case.step(
                f"Running in the last burst it holds {say.volts(volts)} or more, by the load-test limit",
                "load-test-resistance",
            )
            yield Figure("end_voltage", "running in the last burst, at least", volts, "V")
    if supply.shares_the_engines(case):
        yield from for_the_engine(case, told, kind, (start, before, charge[0]), to_empty)


def for_the_engine(
    case: Case, told: Session, kind: str, now: tuple[float, float, float], to_empty: float
) -> Iterator[Figure]:
    """How many bursts leave the volts at rest that an engine start asks for."""
    start, before, charge = now
    least = cranking.limit("start-charged")
    floor = readings.charge_of(before - (start - least), kind).value
    count = session.bursts_for(max(0.0, charge - floor), told.burst, to_empty)
    case.because(
        f"To start the engine it should rest at {say.volts(least)} or more: about {say.so_many(count)} such bursts "
        "leave that",
        "start-charge",
        "start-battery",
    )
    yield Figure("bursts_before_start_limit", f"bursts that leave {say.volts(least)} for the engine", float(count))
