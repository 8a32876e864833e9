"""Batteries joined: how, and what they make together, alike or not."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import reference, say
from service.calculators import bank, convert
from service.case import WEIGHED, Case, Known, Value
from service.reply import Figure
from service.rules.bank import system

COUNT = "battery.count"
ALONE = (1.0, 1.0)  # batteries of each of two sorts
CAPACITY = "battery.capacity"
WHICH_WAY = regex(r"\bseries or (?:in )?parallel\b|\bparallel or (?:in )?series\b", re.IGNORECASE)
THE_OTHER = regex(r"\bthe other(?: one| battery)?\b(?! (?:two|three|four|ones|batteries))", re.IGNORECASE)
HOW = regex(r"\bhow\b[^.?!;]{0,24}\b(?:wire|join|connect|hook|link|arrange)\w*\b|\bwiring\b", re.IGNORECASE)
PARTS = regex(r"\w+\W+\w")  # the second count with the word that parts it from the first: "or two"
GIVES_AS_ONE = frozenset({"run-time", "standing-drain", "solar"})
CHARGES = frozenset({"charger-size", "charge-time"})  # of each battery by itself, unless they are joined


def pair(case: Case, fact: str) -> tuple[Value, ...]:
    """Both batteries' values, where two were named."""
    return (case[fact], case.second[fact].value) if fact in case.second and fact in case else ()


def more_than_one(case: Case) -> Case:
    """The same case, in place, without a count of one that is one of those joined: "one is older than the other"."""
    told = case.stated.get(COUNT)
    if told is None or told.value != 1 or COUNT in case.second or "bank.layout" not in case.stated:
        return case
    case.stated = {fact: known for fact, known in case.stated.items() if fact != COUNT}
    if THE_OTHER.search(case.text):
        case.stated[COUNT] = Known(COUNT, 2.0, "derived", "")
    return case


def alternatives(case: Case) -> bool:
    """Whether each side of a choice has its own count, so that nothing is joined: "one 200 Ah or two 100 Ah"."""
    other = case.second.get(COUNT)
    return other is not None and PARTS.match(other.text) is not None


def layout(case: Case) -> str | None:
    """How they are joined: as said, else as the volts ask for it."""
    said = case.get("bank.layout")
    if said or "bank.voltage" not in case.stated:
        return str(said) if said else as_the_load_asks(case)
    in_series, in_parallel = case["bank.in_series"], case["bank.in_parallel"]
    if in_series > 1:
        return "series-parallel" if in_parallel > 1 else "series"
    return "parallel" if in_parallel > 1 else None


def as_the_load_asks(case: Case) -> str | None:
    """In series, where the batteries together have the volts that a model of the house's takes; in parallel, where
    each has them and it is asked which way; else not known."""
    volts, each, count = case.get("load.voltage"), case.said("battery.nominal"), case.said("battery.count")
    if "load.model" not in case.stated or not volts or not each or not count or count < 2:
        return None
    if float(volts) == float(each) and WHICH_WAY.search(case.text):
        case.because(
            f"The {case['load.model']} takes {say.quantity(float(volts), 'V')}, so they go in parallel", "od1002"
        )
        return "parallel"
    row = float(volts) / float(each)
    if HOW.search(case.text) and row > 1 and count > row and float(count) % row == 0:
        case.because(f"The {case['load.model']} takes {say.quantity(float(volts), 'V')}", "od1002")
        return "series-parallel"
    if float(volts) != float(each) * float(count):
        return None
    case.because(f"The {case['load.model']} takes {say.quantity(float(volts), 'V')}, so they go in series", "od1002")
    return "series"


def figures(case: Case, how: str) -> tuple[Figure, ...]:
    """The contract's figures of the bank, joined like that."""
    one = case if layout(case) == how else case.supposing({"bank.layout": how}, ["bank.voltage"])
    if COUNT in case.second:
        one.get("bank.voltage")  # with what is assumed of it
        one = one.supposing({COUNT: sum(of_each(case))})
    found = [Figure("bank_voltage", "together", float(one["bank.voltage"]), "V")]
    if capacity := total(one, "capacity", how, of_each(case)):
        found.append(Figure("bank_capacity", "capacity", capacity, "Ah"))
    if cca := total(one, "cca", how, of_each(case)):
        found.append(Figure("bank_cca", "starting power", cca, "A"))
    if capacity:
        found.append(Figure("bank_energy", "energy", energy(one, capacity), "Wh"))
        case.source("energy-volts")
    case.source("od1002")
    return tuple(found)


def of_each(case: Case) -> tuple[float, float]:
    """How many batteries there are of each of two sorts: "two 60 Ah and a 100 Ah"."""
    both = pair(case, COUNT)
    return (float(both[0]), float(both[1])) if both else ALONE


def total(case: Case, name: str, how: str, many: tuple[float, float] = ALONE) -> float:
    """Amp-hours or cranking amps of the bank, 0 where they are not known; of two unlike batteries both count."""
    both = pair(case, f"battery.{name}")
    if both:
        first, second = many if how == "parallel" else ALONE
        return bank.together(float(both[0]) * first, float(both[1]) * second, adds=how == "parallel")
    if name == "cca" and COUNT in case.second and pair(case, CAPACITY):  # that of the other sort is not known
        return 0.0
    return float(case.get(f"bank.{name}", 0.0))


def energy(case: Case, capacity: float) -> float:
    """Watt-hours: 12 V a lead battery (also where the kind is not said), 12.8 V a lithium one."""
    kind = "volts-lithium" if case.get("battery.family") == "lithium" else "volts-lead"
    each = reference.value("ratings", kind)
    volts = float(case["bank.voltage"]) / 12 * float(each.value)
    held = convert.energy(capacity, volts)
    case.step(f"{say.amp_hours(capacity)} x {say.quantity(volts, 'V')} = {say.number(held)}{say.NB}Wh", each.cite)
    return held


def one_bank(topic: str, case: Case) -> Case:
    """The case with the amp-hours that two unlike batteries have together, where they give as one: in parallel."""
    other = case.second.get(CAPACITY)
    kind = case.second.get("battery.chemistry")
    alike = kind is None or kind.value == case.said("battery.chemistry")
    parallel = case.said("bank.layout") == "parallel" and CAPACITY in case.stated
    apart = case.says(*WEIGHED) or alternatives(case)
    if topic not in GIVES_AS_ONE or other is None or not parallel or not alike or apart:
        return case
    whole, (first, second) = case.fresh(), of_each(case)
    one, two = float(case[CAPACITY]) * first, float(other.value) * second
    whole.used.update({(CAPACITY, 1): case.stated[CAPACITY], (CAPACITY, 2): other})
    kept = {fact: known for fact, known in case.stated.items() if fact not in (COUNT, "bank.layout")}
    whole.stated = {**kept, CAPACITY: Known(CAPACITY, one + two, "derived", "Ah")}
    whole.second = {fact: known for fact, known in case.second.items() if fact not in (CAPACITY, COUNT)}
    together = f"{say.amp_hours(one)} and {say.amp_hours(two)} add up to {say.amp_hours(one + two)}"
    whole.step(f"In parallel {together}", "od1002")
    return whole


def rated_alone(topic: str, case: Case) -> Case:
    """The case of the one battery whose CCA is told, where one of another duty stands in parallel with it."""
    one, other = "battery.cca" in case.stated, "battery.cca" in case.second
    unlike = {"battery.duty"} <= set(case.second) and case.said("bank.layout") == "parallel"
    if topic != "run-check" or not one or other or not unlike or COUNT in case.stated:
        return case
    alone = case.fresh()
    alone.stated = {fact: known for fact, known in case.stated.items() if fact != "bank.layout"}
    alone.second = {}
    alone.because("The CCA of the other battery is not known, so it is not counted", "od1002")
    return alone


def each_alone(topic: str, case: Case) -> Case:
    """The case without its count of two, where these are the two that are told of apart, each on its own output."""
    apart = topic in CHARGES and case.said("battery.count") == 2 and "bank.layout" not in case.stated
    if not apart or "battery.capacity" not in case.second:
        return case
    alone = case.fresh()
    alone.stated = {fact: known for fact, known in case.stated.items() if fact != "battery.count"}
    return alone


def as_joined(case: Case) -> Case:
    """The case without the volts of one battery as those of a series bank: "two 12 V in series, 12 V for a lamp".

    The layout that is told stands; a load of other volts than the bank is then seen, and not judged as it is not wired.
    """
    told, count = case.stated.get("bank.voltage"), case.stated.get(COUNT)
    layout = case.stated.get("bank.layout")
    if told is None or count is None or float(count.value) < 2 or "charger.input_voltage" in case.stated:
        return case  # of a converter they are the other side
    if layout is None and "battery.nominal" in case.stated:  # "12 V boat, Sturgeon of 24 V: can I use two 12 V ones?"
        row = case.fresh()
        row.stated = {fact: known for fact, known in case.stated.items() if fact != "bank.voltage"}
        return row if as_the_load_asks(row.fresh()) else case
    if layout is None or layout.value != "series":
        return case
    one = case.stated.get("battery.nominal")
    wanted = case.fresh().get("load.voltage")
    made = system(float(one.value) if one else 12.0) * float(count.value)
    if float(told.value) == made or not (one or wanted == made):
        return case
    joined = case.fresh()
    joined.stated = {fact: known for fact, known in case.stated.items() if fact != "bank.voltage"}
    return joined
