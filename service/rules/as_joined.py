"""A bank as its batteries are told to be joined, where volts beside them say something else."""

from __future__ import annotations

from service.case import Case
from service.rules.bank import system

LAYOUT, VOLTS, ONE, COUNT = "bank.layout", "bank.voltage", "battery.nominal", "battery.count"


def as_joined(case: Case) -> Case:
    """The case without the volts of one battery as those of a series bank: "two 12 V in series, 12 V for a lamp".

    The layout that is told stands; a load of other volts than the bank is then seen, and not judged as it is not wired.
    """
    told, count = case.stated.get(VOLTS), case.stated.get(COUNT)
    layout = case.stated.get(LAYOUT)
    if told is None or count is None or layout is None or layout.value != "series" or float(count.value) < 2:
        return case
    one = case.stated.get(ONE)
    wanted = case.fresh().get("load.voltage")
    made = system(float(one.value) if one else 12.0) * float(count.value)
    if float(told.value) == made or not (one or wanted == made):
        return case
    joined = case.fresh()
    joined.stated = {fact: known for fact, known in case.stated.items() if fact != VOLTS}
    return joined
