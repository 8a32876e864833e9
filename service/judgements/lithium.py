"""What a lithium bank may give: the limits on its label, else by its capacity, in parallel and in the cold."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from grammar.text.patterns import regex
from service import chart, reference, say
from service.calculators import lithium
from service.case import Case
from service.judgements import supply

PEAK_WITHIN = 18  # characters from a limit to its seconds
WITHIN = "The BMS (the safety switch inside a lithium battery) lets this current pass"


@dataclass(frozen=True, slots=True)
class Limits:
    """What a lithium bank may give: all the time and for some seconds, and how much of it is stated."""

    continuous: float
    stated: bool
    peak: float | None
    parallel: int
    count_on: float
    capacity: float | None

    def sure(self, limit: float) -> float:
        """The part of a limit that is relied on."""
        return lithium.in_reserve(limit, self.parallel, self.count_on)


def value(name: str) -> float:
    """A value of the table of lithium limits."""
    return float(reference.value("lithium", name).value)


def limits(case: Case) -> Limits | None:
    """The limits of the bank, by its label, else by its capacity; None where neither is known."""
    parallel = int(case["bank.in_parallel"])
    count_on = value("parallel")
    capacity, stated = case.get("bank.capacity"), case.get("bank.max_current")
    if stated is None and capacity is None:
        return None
    continuous = float(stated if stated is not None else value("per-hour") * float(capacity))
    if stated is None:
        _assume_limit(case, continuous, parallel)
    share = cold_share(case)
    if share < 1:
        case.step(
            f"Under 0 °C the continuous limit halves: {say.amps(continuous * share)}"
            if share
            else "Under -20 °C a lithium battery must not be used",
            reference.value("lithium", "cold").cite,
        )
    if stated is not None and case.says("request:what_get") and case.get("bank.in_series", 1) > 1:
        case.because("In series limits do not add up: the bank allows what one battery does", "lithium-limits")
    if parallel > 1:
        whole, sure = say.amps(continuous * share), say.amps(continuous * share * count_on)
        number = supply.counted(parallel).capitalize()
        case.step(f"{number} in parallel share unequally: {sure} of {whole} is relied on", "lithium-parallel")
    peak = case.get("bank.peak_current")
    return Limits(continuous * share, stated is not None, peak, parallel, count_on, capacity)


def _assume_limit(case: Case, continuous: float, parallel: int) -> None:
    supply.taken(case, "battery.max_current", continuous / parallel, "1 A for each Ah, as no limit is said")
    case.step(
        f"With no limit stated, 1 A for each Ah is usual: {say.amps(continuous)}",
        reference.value("lithium", "per-hour").cite,
    )


def cold_share(case: Case) -> float:
    """What is left of the continuous limit at the stated temperature."""
    celsius = case.said("ambient.temperature")
    if celsius is None:
        return 1.0
    freezing, lowest, share = (value(name) for name in ("freezing", "coldest", "cold"))
    return lithium.cold_share(float(celsius), freezing, lowest, share)


def judged(running: float, inrush: float, found: Limits) -> str:
    """yes, marginal, no, or what must be asked: "peak" or "limits"."""
    if found.stated:
        return lithium.stated_limits(running, inrush, found.continuous, found.peak, found.parallel, found.count_on)
    if found.peak is not None and inrush > found.peak:
        return "no"
    return lithium.by_capacity(
        running,
        inrush,
        found.continuous / value("per-hour"),
        found.parallel,
        per_hour=value("per-hour"),
        too_much=value("too-much"),
        plenty=value("plenty"),
        count_on=found.count_on,
    )


def above(case: Case) -> str:
    """What happens above the limit."""
    motor = case.get("load.kind") in (None, "thruster")
    stops = (
        "the thruster would stop in the middle of a turn" if motor else f"{supply.load_name(case)} would stop at once"
    )
    return f"Above its limit the BMS (the safety switch inside a lithium battery) switches off, so {stops}"


def taken(running: float, inrush: float) -> str:
    """Both currents, or the one where there is no jump."""
    return f"{say.amps(running)} and {say.amps(inrush)} at first" if inrush > running else say.amps(running)


def words(case: Case, verdict: str, running: float, inrush: float, found: Limits) -> str:
    """The headline of a lithium verdict."""
    name, bank = supply.load_name(case), supply.bank_name(case)
    gives = supply.does(case, "allow") if found.stated else f"{supply.does(case, 'give')} about"
    if verdict == "no" and not found.continuous:
        return f"No: under -20{say.NB}°C a lithium battery must not be used, so {name} has to wait for warmer weather."
    if verdict == "no" and found.stated and found.peak and running > found.continuous:
        return over_both(case, running, inrush, found)
    cold = in_the_cold(case)
    if verdict == "no" and (running > found.continuous or found.peak is None):
        short = f", {say.amps(found.peak)} for a few seconds" if found.peak and running > found.peak else ""
        return f"No: {gives} {say.amps(found.continuous)}{cold}{short}, and {name} draws {say.amps(running)}."
    if verdict == "no":
        allowed = say.amps(found.peak or 0)
        return f"No: {bank} may give {allowed} for a few seconds, and {name} takes {say.amps(inrush)} at first."
    if verdict == "marginal" and not found.stated:
        whole = value("plenty") * found.continuous
        return (
            f"Only just: without a stated limit count on {say.amps(found.sure(whole))} of {say.amps(whole)} in the "
            f"first instant, and {name} takes {say.amps(inrush)}."
        )
    if verdict == "marginal":
        tight = running > found.sure(found.continuous)
        whole = found.continuous if tight else max(found.continuous, found.peak or 0)
        sure = say.amps(found.sure(whole))
        most = say.amps(running if tight else inrush)
        return (
            f"Only just: your batteries allow {say.amps(whole)} together, of which {sure} can be relied on, and "
            f"{name} takes {most}."
        )
    peak = f" and {say.amps(found.peak)} for a few seconds" if found.peak and inrush > found.continuous else ""
    return f"Yes: {gives} {say.amps(found.continuous)}{cold}{peak}, and {name} takes {taken(running, inrush)}."


def in_the_cold(case: Case) -> str:
    """Where the cold takes half of a limit, the temperature at which it does; else nothing."""
    return "" if cold_share(case) == 1 else f" at {say.number(float(case['ambient.temperature']))}{say.NB}°C"


SECONDS = regex(
    r"\b(?P<seconds>\d{1,2}|two|three|five|ten|fifteen|twenty|thirty) ?(?:s|secs?|seconds?)\b", re.IGNORECASE
)  # of a peak; where none are told "a few seconds"


def over_both(case: Case, running: float, inrush: float, found: Limits) -> str:
    """The headline where the current runs above the continuous limit, with what the limit for seconds makes of it."""
    name, gives, peak = supply.load_name(case), supply.does(case, "allow"), found.peak or 0.0
    lasts = peak_lasts(case)
    if peak < running:
        return f"No: {gives} {say.amps(peak)} at most, even for {lasts}, and {name} draws {say.amps(running)}."
    then = f"only {say.amps(found.continuous)}{in_the_cold(case)} after {lasts}"
    if peak < inrush:
        return f"No: {gives} {say.amps(peak)} and {then}, and {name} takes {taken(running, inrush)}."
    return f"No: {gives} {say.amps(peak)} at first but {then}, and {name} draws {say.amps(running)}."


def peak_lasts(case: Case) -> str:
    """How long the limit for seconds lasts, as it is told beside it; else in words."""
    told = case.stated.get("battery.peak_current")
    after = case.text[told.span[1] : told.span[1] + PEAK_WITHIN] if told is not None and told.span else ""
    found = SECONDS.search(after)
    if found is None:
        return "a few seconds"
    typed = found["seconds"].lower()
    return say.quantity(float(typed), "s") if typed.isdigit() else f"{typed} seconds"


def still_open(case: Case, found: Limits, running: float, inrush: float) -> str:
    """The headline where the label decides."""
    name = supply.load_name(case)
    if found.stated:
        return (
            f"We can't say yet: {name} takes {say.amps(inrush)} in the first instant, over the "
            f"{say.amps(found.continuous)} allowed all the time, so the peak limit decides."
        )
    if case.says("note:no_idea"):
        count_on = say.amps(found.sure(value("plenty") * found.continuous))
        return (
            f"Without the label count on {count_on} in the first instant, and {name} takes {say.amps(inrush)}: ask "
            "the battery's maker for the limits."
        )
    first = f", at first {say.amps(inrush)}" if inrush > running else ""
    usual = f"{say.amps(found.continuous)}{in_the_cold(case)}"
    return (
        f"We can't say yet: {supply.does(case, 'give')} about {usual}, and {name} draws "
        f"{say.amps(running)}{first}: the label decides."
    )


def plot(running: float, inrush: float, found: Limits) -> dict[str, Any]:
    """Running current and first instant against the limits."""
    limits = [("all the time", found.continuous), *([("for a few seconds", found.peak)] if found.peak else [])]
    return chart.chart(
        "bars",
        "What the load takes against what the battery allows",
        ("", ""),
        ("current", "A"),
        [("running", [(1, running)]), ("first instant", [(2, inrush)])],
        limits,
    )
