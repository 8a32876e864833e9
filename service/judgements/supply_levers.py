"""What may turn a verdict on supply: values to try for each fact, least change first, and the replies that decide."""

from __future__ import annotations

import math
from collections.abc import Iterator

from service import reference, say
from service.calculators import sag
from service.case import Case, Value
from service.judgements import cranking, deciding, lithium, supply
from service.judgements.fitting import thicker_areas, thicker_gauges
from service.reply import Choice
from service.rules.bank import read_system
from service.rules.battery import lowest_at
from service.topic import Lever

MORE = 3  # further batteries that may be proposed
MOST_LITHIUM = float(reference.row("mixing", name="parallel")["value"].value)  # in parallel
CHARGED = (12.4, 12.5, 12.6)
HOW = {
    "series": "in series (plus to minus)",
    "parallel": "in parallel (plus to plus)",
}


def enough_cca(case: Case) -> Iterator[Value]:
    """CCA of one battery from what a clear yes needs, upwards."""
    if case.get("battery.family") in ("lead", "lithium") and "load.current" in case and not supply.mismatch(case):
        parallel = float(case["bank.in_parallel"]) if case.get("battery.family") == "lead" else 1
        quiet = case.fresh()  # its steps are no part of the answer
        need = math.ceil(cranking.required_cca(quiet, float(quiet["load.peak"])) / parallel - 1e-6)
        with_cable = math.ceil(cranking.cca_through_the_cable(quiet, float(quiet["load.peak"])) / parallel - 1e-6)
        sold = 50 * math.ceil(max(need, with_cable) / 50)
        yield from sorted({float(need), float(max(need, with_cable)), float(sold), float(sold + 100)})
    elif "load.current" not in case and deciding.demand_is_told(case):
        yield float(math.ceil(cranking.demanded(case) / float(case.get("bank.in_parallel", 1)) - 1e-6))


def as_lead(case: Case, value: Value) -> dict[str, Value]:
    """The rest of the change where a lead battery takes the place of a lithium one."""
    if case.get("battery.family") != "lithium":
        return {}
    series = float(case["bank.in_series"])
    return {"battery.chemistry": "agm"} | ({"battery.count": series} if "battery.count" in case.stated else {})


def in_words_of_cca(case: Case, value: Value) -> str:
    """What to look for."""
    kind = "a lead battery of " if case.get("battery.family") == "lithium" else ""
    each = " each" if float(case.get("bank.in_parallel", 1)) > 1 and not kind else ""
    return f"{kind}{say.cca(float(value))}{each}"


def more_batteries(case: Case) -> Iterator[Value]:
    """One or more further strings in parallel."""
    series, parallel = float(case.get("bank.in_series", 1)), float(case.get("bank.in_parallel", 1))
    if differ := supply.mismatch(case):
        if differ[0] < differ[1]:
            yield float(round(differ[1] / float(case["battery.volts"])))
        elif series * parallel > 1:
            yield series * parallel  # the same ones, joined otherwise
    elif "battery.cca" in case or "battery.max_current" in case.stated:
        most = MOST_LITHIUM if case.get("battery.family") == "lithium" else parallel + MORE
        yield from (series * (parallel + more) for more in range(1, MORE + 1) if parallel + more <= most)


def in_parallel(case: Case, value: Value) -> dict[str, Value]:
    """How those are joined."""
    return {"bank.layout": _joined(case, value)}


def _joined(case: Case, value: Value) -> str:
    series = case.get("bank.in_series", 1)
    if differ := supply.mismatch(case):
        return "series" if differ[0] < differ[1] else "parallel"
    return "parallel" if series == 1 else "series-parallel"


def in_words_of_count(case: Case, value: Value) -> str:
    """How many, and how joined."""
    how, series = _joined(case, value), float(case.get("bank.in_series", 1))
    if how == "series-parallel":
        strings = f"{supply.counted(float(value) / series)} strings of {supply.counted(series)} in series, side by side"
        return f"{supply.counted(float(value))} equal batteries, {strings}"
    many = f"{supply.counted(float(value))} equal batteries {HOW[how]}"
    if how == "parallel" and case.get("battery.family") == "lithium" and "battery.max_current" in case.stated:
        relied = float(case["battery.max_current"]) * float(value) * lithium.value("parallel")
        relied *= lithium.cold_share(case)
        return f"{many}, of which {say.amps(relied)} is relied on"
    return many


def limit_each(case: Case, current: float) -> float:
    """The continuous limit of one battery for that current, in parallel and in the cold."""
    parallel = int(case.get("bank.in_parallel", 1))
    share = lithium.cold_share(case) or 1.0
    return math.ceil(current / (share * parallel * (lithium.value("parallel") if parallel > 1 else 1)) - 1e-6)


def enough_limit(case: Case) -> Iterator[Value]:
    """A continuous limit that carries the running current."""
    if case.get("battery.family") == "lithium" and "load.current" in case:
        needed = limit_each(case, float(case["load.current"]))
        if float(case.said("battery.max_current") or 0.0) < needed:
            yield needed


def enough_peak(case: Case) -> Iterator[Value]:
    """A peak limit that carries the first instant."""
    if case.get("battery.family") == "lithium" and "load.current" in case:
        yield peak_each(case)


def peak_each(case: Case) -> float:
    """The peak limit of one battery for the first instant."""
    parallel = int(case.get("bank.in_parallel", 1))
    share = lithium.value("parallel") if parallel > 1 else 1
    return math.ceil(float(case["load.peak"]) / (parallel * share) - 1e-6)


def with_peak(case: Case, value: Value) -> dict[str, Value]:
    """The peak limit that goes with it."""
    alone = case.get("bank.in_parallel", 1) == 1  # then the first instant may stay within the continuous limit
    within = float(value) * (lithium.cold_share(case) or 1.0)
    enough = max(within if alone else 0.0, float(case.get("battery.peak_current", 0.0)))
    return {"battery.peak_current": peak_each(case)} if peak_each(case) > enough else {}


def warmer(case: Case) -> Iterator[Value]:
    """The temperature from which the cold takes nothing off a lithium battery's limits."""
    celsius, warm = case.said("ambient.temperature"), lithium.value("freezing")
    if case.get("battery.family") == "lithium" and celsius is not None and float(celsius) < warm:
        yield warm


def its_label(case: Case, value: Value) -> dict[str, Value]:
    """What its label must show as well, of limits that have not been told."""
    if "load.current" not in case:
        return {}
    warm, label = case.supposing({"ambient.temperature": value}), dict[str, Value]()
    if "battery.max_current" not in case.stated:
        label["battery.max_current"] = limit_each(warm, float(warm["load.current"]))
    told = case.said("battery.max_current") or label["battery.max_current"]
    if "battery.peak_current" not in case.stated:
        label |= with_peak(warm, told)
    return label


def in_words_of_warmth(case: Case, value: Value) -> str:
    """Warmth, and the label with it."""
    label = its_label(case, value)
    times = {"battery.max_current": "all the time", "battery.peak_current": "for a few seconds"}
    shown = [f"{say.amps(float(label[fact]))} {time}" for fact, time in times.items() if fact in label]
    told = f"a battery kept at {say.number(float(value))}{say.NB}°C or warmer"
    return f"{told}, whose label allows {say.listed(shown)}" if shown else told


def charged(case: Case) -> Iterator[Value]:
    """Volts at rest after charging."""
    if "reading.voltage" in case.stated and case.get("battery.family") == "lead":
        system = read_system(float(case["reading.voltage"])) or float(case["bank.voltage"])
        yield from (round(volts * system / 12, 2) for volts in CHARGED)


def fuller(case: Case) -> Iterator[Value]:
    """A fuller battery."""
    if "battery.charge" in case.stated and case.get("battery.family") == "lead":
        yield from (50.0, 75.0, 100.0)


def right_volts(case: Case) -> Iterator[Value]:
    """The load's volts, where the bank has others."""
    if (differ := supply.mismatch(case)) and differ[0] > differ[1]:
        yield differ[1]


def cca_replies(case: Case, inrush: float, need: float) -> tuple[Choice, ...]:
    """The CCA of one battery that make a yes, an only just and a no."""
    parallel = float(case.get("bank.in_parallel", 1))
    each = math.ceil(need / parallel - 1e-6)
    lowest = lowest_at(case.said("ambient.temperature"))
    full = cranking.limit("full")
    least = sag.required_cca(inrush, full, lowest.value, cranking.limit("battery-marginal") - 0.05) / parallel
    edge = max(math.ceil(least), math.ceil(cranking.demanded(case) / parallel))
    replies = [Choice(f"{each} or more", float(each), "A")]
    if edge < each:
        replies.append(Choice(f"{edge} to {each - 1}", float(edge), "A"))
    replies.append(Choice(f"under {min(edge, each)}", float(min(edge, each) - 1), "A"))
    return _some_amps(*replies)


def limit_replies(case: Case) -> dict[str, tuple[Choice, ...]]:
    """The two limits of a lithium battery that decide."""
    whole, part = peak_each(case), limit_each(case, float(case["load.current"]))
    enough, too_little = Choice(f"{say.number(whole)} or more", whole, "A"), f"under {say.number(whole)}"
    between = (Choice(f"{say.number(part)} to {say.number(whole - 1)}", part, "A"),) if part < whole else ()
    return {
        "battery.max_current": _some_amps(enough, *between, Choice(f"under {say.number(part)}", part - 1, "A")),
        "battery.peak_current": _some_amps(enough, Choice(too_little, whole - 1, "A")),
    }


def _some_amps(*replies: Choice) -> tuple[Choice, ...]:
    """The replies without one of no amps at all, which a tiny load makes."""
    return tuple(reply for reply in replies if isinstance(reply.value, (int, float)) and reply.value > 0)


LEVERS = (
    Lever("bank.voltage", right_volts, "a {value} bank", without=("battery.nominal", "bank.layout", "battery.count")),
    Lever("cable.gauge", thicker_gauges, "{value} cable"),
    Lever("cable.area", thicker_areas, "{value} cable"),
    Lever("reading.voltage", charged, "{value} or more at rest, after charging"),
    Lever("battery.charge", fuller, "a charge of {value} or more"),
    Lever("ambient.temperature", warmer, in_words_of_warmth, also=its_label),
    Lever("battery.peak_current", enough_peak, "a label that allows {value} for a few seconds"),
    Lever(
        "battery.max_current",
        enough_limit,
        "a label that allows {value} all the time, and the first instant too",
        also=with_peak,
    ),
    Lever(
        "battery.cca",
        enough_cca,
        in_words_of_cca,
        also=as_lead,
        without=("battery.ca", "battery.max_current", "battery.peak_current", "battery.capacity", "bank.layout"),
    ),
    Lever("battery.count", more_batteries, in_words_of_count, also=in_parallel),
)
