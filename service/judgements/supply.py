"""What every question of thruster supply shares: the load and the bank in words, their volts, the two currents."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import reference, say
from service.case import Case, Known, Value
from service.reply import Figure
from service.rules.load import MOTORS
from service.told import motor_volts, shared_engine

SHARED = regex(
    r"\b(?:both|together|shared?|sharing|same (?:battery|bank|time)|(?:one|a single) (?:battery|bank))\b", re.IGNORECASE
)
OWN_ASKED = regex(  # "does it need its own battery, or can I use the engine's": none is told of
    r"\b(?:needs?|wants?|have|gets?|requires?|should|must|buy)\b[^.?!;]{0,20}"
    r"\b(?:its own|an? (?:own|separate|second|dedicated)|another) batt\w*\b[^.!;]{0,30}\bor\b",
    re.IGNORECASE,
)
NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight")
ONE = {"have": "has"}
MOTOR_LEAST, MOTOR_SURELY = 20.0, 100.0  # A: no motor of a boat takes less, no other load takes more (common practice)


def load_name(case: Case) -> str:
    """The load in words: "the Pike", "your windlass", "your thruster"."""
    model = case.house.model(case.get("load.model", "")) if case.house else None
    if model:
        return f"the {model.name}"
    kind = str(case.get("load.kind") or ("thruster" if is_motor(case) else "load"))
    return "your load" if kind in ("electronics", "motor") else f"your {kind}"


def two_loads(case: Case) -> str:
    """The headline that asks back where two models are to run from one battery, "" where they are not."""
    first, second = case.stated.get("load.model"), case.second.get("load.model")
    if first is None or second is None or not (SHARED.search(case.text) or first.value == second.value):
        return ""
    case.used.setdefault((second.fact, 2), second)
    return (
        f"We can't say yet: if {both_named(case)} ever run at the same time their amps add up, "
        "so please tell us whether they do, or the amps of both together."
    )


def both_named(case: Case) -> str:
    """Two models in words: "both Minnows", "the Minnow and the Pike"; "" where none are named."""
    first, second = case.stated.get("load.model"), case.second.get("load.model")
    if first is None or second is None:
        return ""
    return f"both {first.value}s" if first.value == second.value else f"the {first.value} and the {second.value}"


def least_capacity(case: Case) -> float:
    """The amp-hours that a rule of the house's asks for with this model, 0 where none does."""
    known = case.house and "load.model" in case
    least = float(case.house.least(case["load.model"], "battery.capacity")) if known else 0.0
    if least:
        case.step(f"For {load_name(case)} we ask for {say.amp_hours(least)} or more", "house")
    return least


def shares_the_engines(case: Case) -> bool:
    """Whether the load is to run off the engine's own start battery."""
    return is_the_engines(case) or (is_their_starter(case) and not case.says("detail:own_battery"))


def is_the_engines(case: Case) -> bool:
    """Whether the engine itself is named with the battery."""
    told = case.says(shared_engine.CUE) or shared_engine.told(case.text)
    return told and not (case.says("detail:own_battery") and not OWN_ASKED.search(case.text))


def is_their_starter(case: Case) -> bool:
    """The boat's own start battery, with no other one named: "my starter battery"; "a starting battery" is a kind."""
    return case.says("whose:start_battery") and not case.says("whose:another")


def is_motor(case: Case) -> bool:
    """Whether the load is a motor that takes a jump of current: said, or large, or nothing else said."""
    kind = case.said("load.kind")
    if kind is not None:
        return str(kind).lower() in MOTORS
    if case.get("load.model") or case.said("load.peak"):
        return True
    amps = float(case.get("load.current", MOTOR_LEAST))
    return amps >= MOTOR_SURELY or (amps >= MOTOR_LEAST and case.said("load.time") is None)


def usual(case: Case, low: str, high: str, unit: str) -> str:
    """What a lead battery of the case size named usually has, "650 to 950 CCA", or nothing."""
    size = str(case.get("battery.group", "")).upper()
    try:
        row = reference.row("typical_cases", group=size)
    except reference.UnknownValue:
        return ""
    if low not in row:
        return ""
    case.step(
        f"Group {size}: usually {say.between(row[low].value, row[high].value, unit, 0)}, never a rating", "typical-case"
    )
    return f"a group {size} battery usually has {say.between(row[low].value, row[high].value, unit, 0)}"


def too_small_for_ours(case: Case) -> str:
    """That a lithium battery's stated limit is under what even the smallest of the house's draws; "" else."""
    limit, thruster = case.get("bank.max_current"), case.said("load.kind") == "thruster"
    if limit is None or not thruster or not case.house or not case.house.models:
        return ""
    least = min(case.house.models.values(), key=lambda model: float(model.running))
    if float(limit) >= float(least.running):
        return ""
    case.step(f"The {least.name}, our smallest, draws {say.amps(least.running)} running", "house")
    return (
        f"Too small for any of ours: it allows {say.amps(float(limit))}, and even the {least.name} draws "
        f"{say.amps(least.running)}; please tell us which thruster you have."
    )


def no_current(case: Case, rest: str) -> str:
    """The headline where nothing tells the amps."""
    if small := too_small_for_ours(case):
        return small
    if case.says("detail:thrust"):
        return "We can't say yet: thrust gives no amps, so please tell us the running amps on the motor's plate."
    return f"We can't say yet: the running amps of the load {rest}, so please tell us those or the model."


def taken(case: Case, fact: str, value: Value, why: str) -> Value:
    """The stated value, else `value`, listed as an assumption without a step of its own."""
    if fact in case.stated:
        return case[fact]  # type: ignore[no-any-return]
    case.used.setdefault((fact, 1), Known(fact, value, "assumed", say.symbol(fact), why=why))
    return value


def counted(count: float) -> str:
    """A small number in words."""
    return NUMBERS[int(count)] if count < len(NUMBERS) else say.number(count)


def bank_name(case: Case) -> str:
    """The batteries in words: "your 800 CCA AGM battery", "your two 100 Ah lithium batteries in parallel"."""
    words = " ".join(part for part in (_rating(case), kind_of(case).strip()) if part)
    series, parallel = int(case.get("bank.in_series", 1)), int(case.get("bank.in_parallel", 1))
    if series * parallel == 1:
        return f"your {words} battery".replace("  ", " ")
    joined = "in series and in parallel" if series > 1 < parallel else "in series" if series > 1 else "in parallel"
    return " ".join(f"your {counted(series * parallel)} {words} batteries {joined}".split(" "))


def kind_of(case: Case) -> str:
    """The kind of the battery before its noun: "AGM ", "lithium "; "" where it is not said."""
    kind = say.CHEMISTRY.get(str(case.said("battery.chemistry") or ""), "")
    if not kind and case.get("battery.family") == "lithium":
        kind = "lithium"
    return f"{kind} " if kind else ""


def does(case: Case, verb: str) -> str:
    """The bank with its verb: "your 800 CCA battery drops", "your two 750 CCA batteries in parallel drop"."""
    name = bank_name(case)
    return f"{name} {verb}" if " batteries " in name else f"{name} {ONE.get(verb, verb + 's')}"


def _rating(case: Case) -> str:
    if case.get("battery.family") == "lead" and "battery.cca" in case:
        amps = float(case["battery.cca"])
        return f"{say.amps(amps)} EN" if case.says("detail:en_rating") else say.cca(amps)
    return say.amp_hours(float(case["battery.capacity"])) if "battery.capacity" in case else ""


def load_figures(running: float, inrush: float) -> tuple[Figure, Figure]:
    """The two currents, as every answer of supply shows them."""
    return (
        Figure("running_current", "running", running, "A"),
        Figure("inrush_current", "first instant", inrush, "A"),
    )


def mismatch(case: Case) -> tuple[float, float] | None:
    """The volts of the bank and of the load where they differ, else None."""
    if unlike := motor_volts.apart(case.text):
        return unlike
    wanted = case.get("load.voltage") or case.said("bank.voltage")
    built = case.get("bank.built_voltage")
    if built is None and case.get("load.voltage"):
        built = case.said("bank.voltage")
    return (float(built), float(wanted)) if built and wanted and built != wanted else None


def packs_apart(case: Case) -> tuple[float, float] | None:
    """The volts of a ready-made pack and of the load, where no number of such packs has those volts; else None."""
    one, other = case.said("battery.nominal") or case.said("bank.voltage"), case.second.get("bank.voltage")
    wanted = case.get("load.voltage") or (other.value if other else None)
    if not one or not wanted or float(wanted) % float(one) == 0:
        return None
    if other:
        case.used.setdefault((other.fact, 2), other)
    return float(one), float(wanted)


def count_is_open(case: Case) -> bool:
    """Whether one battery of less than the system's volts was named and nothing tells how many there are."""
    wanted, one = case.get("load.voltage") or case.said("bank.voltage"), case.said("battery.nominal")
    joined = case.said("battery.count") or case.said("bank.layout")
    return bool(wanted and one and not joined and float(one) < float(wanted) / 1.5)
