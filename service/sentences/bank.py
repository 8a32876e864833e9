"""What batteries make together, in words: which post goes to which, what they give, what they show when full."""

from __future__ import annotations

from service import reference, say
from service.case import Case
from service.judgements import joining, supply
from service.judgements.charge_volts import stage
from service.judgements.unlike import LIMITS
from service.kinds import LEAD

TIMES = {2.0: "twice", 3.0: "three times", 4.0: "four times"}
SAID = {"series": "in series (plus to minus)", "parallel": "in parallel (plus to plus)"}


def outcome(case: Case, how: str) -> str:
    """What they make together, in words."""
    parts = [say.quantity(float(case["bank.voltage"]), "V")]
    held = joining.total(case, "capacity", how, joining.of_each(case)) if "bank.capacity" in case else 0.0
    parts += [say.amp_hours(held)] if held else []
    bare = len(parts) == 1
    cca = joining.total(
        case, "cca", how, joining.of_each(case)
    )  # of two unlike ones both count, of the capacity as well
    parts += [say.cca(cca)] if cca else []
    parts += [f"a limit of {say.amps(float(case['bank.max_current']))}"] if "bank.max_current" in case else []
    if bare and len(parts) == 1 and how == "series-parallel":
        parts += [f"{TIMES.get(float(case['bank.in_parallel']), 'several times')} the amp-hours of one"]
    count, each = case.said("battery.count"), case.said("battery.nominal")
    of_each = f"{say.quantity(float(each), 'V')} " if each and how == "series-parallel" else ""
    who = f"{supply.counted(count)} {of_each}batteries" if count and count > 1 else "batteries"
    if (case.says("detail:how_wired") or how == "series-parallel") and (
        way := cabled(float(case["bank.in_series"]), float(case["bank.in_parallel"]))
    ):
        case.because(way, LIMITS["sums"].cite)
    case.step("In series the volts add, in parallel the amp-hours and cranking amps", LIMITS["sums"].cite)
    way = f" {SAID[how]}" if how in SAID else in_strings(float(case["bank.in_series"]), float(case["bank.in_parallel"]))
    return f"{who}{way} give {say.listed(parts)}{when_full(case)}"


def in_strings(in_series: float, in_parallel: float) -> str:
    """How the batteries of a bank in series and parallel are joined, in words."""
    if in_series < 2 or in_parallel < 2:
        return " in series and parallel"
    row = "pairs" if in_series == 2 else f"strings of {supply.counted(in_series)}"
    return f", in {row} in series and the {row.partition(' ')[0]} in parallel,"


def cabled(in_series: float, in_parallel: float) -> str:
    """Which post goes to which, in words; "" for one battery."""
    row = "Plus of one battery to minus of the next" if in_series > 1 else ""
    if in_parallel <= 1:
        return f"{row}; the two posts left at the ends are the bank's" if row else ""
    made = f"{row} makes a string of {say.number(in_series)}; then" if row else "Join"
    each = "string" if row else "battery"
    return f"{made} plus to plus and minus to minus; take plus from the first {each} and minus from the last"


def when_full(case: Case) -> str:
    """What the bank shows when it is full, where that is asked: lead at rest, lithium on its charger."""
    kind = case.said("battery.chemistry")
    if not case.says("detail:volts_full") or kind not in (*LEAD, "lfp"):
        return ""
    volts = float(case["bank.voltage"])
    if kind == "lfp":
        full = stage("lfp", "absorption", volts)
        case.source(full.cite)
        return f"; full, on a charger: {full}"
    rest = reference.row("rest_voltage", chemistry="flooded" if kind == "lead" else kind, charge=100)["volts"]
    case.source(rest.cite)
    return f"; full, at rest: {say.volts(rest.value * volts / 12, 2)}"


def does_not_add_up(case: Case) -> str | None:
    """So many batteries cannot make the volts that are wanted, whatever way they are joined: three of 12 V for 24 V."""
    wanted, each, count = (case.said(fact) for fact in ("bank.voltage", "battery.nominal", "battery.count"))
    if not wanted or not each or not count or count < 2 or wanted <= each or wanted % each:
        return None
    row = wanted / each
    if count % row == 0:
        return None
    case.step("In series the volts add, in parallel they stay", LIMITS["sums"].cite)
    whole, goal = say.quantity(each * count, "V"), say.quantity(wanted, "V")
    many = supply.counted(count)
    return (
        f"No: {many} {say.quantity(each, 'V')} batteries cannot make {goal}; in series they give {whole}, and {goal} "
        f"takes {supply.counted(row)} or {supply.counted(2 * row)}."
    )
