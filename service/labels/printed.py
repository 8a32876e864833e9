"""The print of a battery's label read as such: which amps are a limit, which volts the battery's, what no rating.

A label has no verbs: what a number means stands beside it, and the same side of every number on one label.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.reading import Message, Quantity, Stated
from grammar.text.patterns import regex

KEPT = ("battery.chemistry", "battery.duty", "battery.capacity", "battery.energy", "battery.cca", "battery.ca",
        "battery.reserve", "battery.group", "battery.weight")  # fmt: skip
CHARGE = regex(r"(?<!dis)\b(?:charg\w*|absor\w*|float|bulk|cut.?off|recharge\w*)\b", re.IGNORECASE)
PEAK = regex(r"\b(?:peak|pulse|pulsed|surge|burst|instant\w*|short.?term)\b", re.IGNORECASE)
HELD = regex(r"\b(?:cont|continuous|constant|bms|pcb|discharge|max|maximum|rated|current)\b", re.IGNORECASE)
RATE = regex(r"\s*[/@(\s]*(?:C\s?\d|\d+\s*H)", re.IGNORECASE)
TWENTY = regex(r"\s*[/@(\s]*(?:C\s?20|20\s*H)", re.IGNORECASE)
LIMITS = ("battery.max_current", "battery.peak_current")
LOADS = ("thing:thruster", "thing:load", "role:load.current", "role:load.peak", "about:load")
OF_NO_LABEL = ("load.model", "bank.layout")
CELLS = {12.8: 12.0, 25.6: 24.0, 38.4: 36.0, 51.2: 48.0}  # what lithium labels print for a system of so many volts
PRINTED = ("ampere", "ampere_hour", "watt_hour", "kilogram", "pound", "millimeter", "inch")
KINDS = ("", "cold_cranking_current", "cranking_current", "reserve_minutes", "group_size", "system_voltage")
NOMINAL = (6.0, 12.0, 24.0, 36.0, 48.0)


def reread(message: Message) -> Message:
    """The message with its amps and volts taken as a label's; as it is where something in it stands on no label."""
    if any(message.says(cue) for cue in LOADS) or any(item.fact in OF_NO_LABEL for item in message.stated):
        return message
    second = {item.fact for item in message.stated if item.of > 1}
    if not printable(message) or not second <= {"battery.capacity", *LIMITS} or _two_batteries(message):
        return message
    kept = [item for item in message.stated if item.fact in KEPT and item.of == 1 and item.fact != "battery.capacity"]
    stated = [*kept, *_capacity(message), *_volts(message), *_amps(message)]
    return replace(message, stated=tuple(sorted(stated, key=lambda item: item.span)))


def _two_batteries(message: Message) -> bool:
    """Whether two capacities are told, neither of which names its rate."""
    found = [item for item in message.stated if item.fact == "battery.capacity"]
    return len(found) > 1 and not any(RATE.match(message.text, item.span[1]) for item in found)


def printable(message: Message) -> bool:
    """Whether every number of a message may stand on a label."""
    return all(_printable(message, item) for item in message.quantities)


def _printable(message: Message, item: Quantity) -> bool:
    """Whether a number may stand on a label: a rating, a size, or the time that goes with a rating."""
    if item.bound:
        return False
    if item.kind or item.unit in PRINTED:
        return item.kind in KINDS
    if item.unit == "volt":
        return CELLS.get(_number(item), _number(item)) in NOMINAL or bool(CHARGE.search(_before(message, item)))
    before = max((other for other in message.quantities if other.span[1] <= item.span[0]), key=_end, default=None)
    goes_with = {"hour": "ampere_hour", "second": "ampere"}.get(item.unit)
    return before is not None and before.unit == goes_with


def _end(item: Quantity) -> int:
    return item.span[1]


def _capacity(message: Message) -> Iterator[Stated]:
    """The amp-hours at the 20-hour rate where several are printed, else the first."""
    found = [item for item in message.stated if item.fact == "battery.capacity"]
    rated = [item for item in found if TWENTY.match(message.text, item.span[1])]
    yield from (replace(item, of=1) for item in (rated or found)[:1])


def _volts(message: Message) -> Iterator[Stated]:
    """The battery's own volts: not those it is charged with."""
    for item in message.quantities:
        volts = CELLS.get(_number(item), _number(item))
        if item.unit == "volt" and volts in NOMINAL and not CHARGE.search(_before(message, item)):
            yield Stated("battery.nominal", volts, "volt", item.text, item.span, how="label")
            return


def _amps(message: Message) -> Iterator[Stated]:
    """The amps that the battery allows all the time and for a few seconds."""
    amps = [item for item in message.quantities if item.unit == "ampere" and not item.kind and not item.bound]
    if not amps or not _lithium(message):
        return
    named = HELD.search(message.text) or PEAK.search(message.text)
    if not named and not any(item.unit == "watt_hour" or _number(item) in CELLS for item in message.quantities):
        return  # "12 V 100 Ah lithium 100 A" may well tell of a load
    leads = bool(HELD.search(_before(message, amps[0])) or PEAK.search(_before(message, amps[0])))
    found: dict[str, Quantity] = {}
    for item in amps:
        beside = _before(message, item) if leads else _after(message, item)
        if CHARGE.search(beside) and "discharge" not in beside.lower():
            continue
        fact = "battery.peak_current" if PEAK.search(beside) else "battery.max_current"
        if fact in found and not HELD.search(beside):  # a second number without a word
            fact = "battery.peak_current"
        found.setdefault(fact, item)
    for fact, item in found.items():
        yield Stated(fact, _number(item), "ampere", item.text, item.span, how="label")


def _lithium(message: Message) -> bool:
    return any(item.fact == "battery.chemistry" and item.value == "lfp" for item in message.stated)


def _number(item: Quantity) -> float:
    return item.value if isinstance(item.value, float) else 0.0


def _before(message: Message, item: Quantity) -> str:
    """The words between a number and the one before it."""
    start = max((other.span[1] for other in message.quantities if other.span[1] <= item.span[0]), default=0)
    return message.text[start : item.span[0]]


def _after(message: Message, item: Quantity) -> str:
    """The words between a number and the one after it."""
    end = min((other.span[0] for other in message.quantities if other.span[0] >= item.span[1]), default=None)
    return message.text[item.span[1] : end]
