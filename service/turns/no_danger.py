"""Words of a danger that the facts of the conversation tell to be none: a cold battery that is mild again, volts of a
larger bank under load, wet cells that bubble a little on charge."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from grammar.reading import Danger, Message, Span
from service.case import Case, Known
from service.house import House
from service.question import known
from service.told import light_gassing, taken_back, warmed_up

GASSING, HEAT, OVERCHARGED = "hissing-venting", "hot-to-touch", "overcharging-voltage"
UNDER_LOAD = ("reading.load_voltage", "reading.load_voltage_at_load")
LARGER = 24.0  # V of a bank
VOLTS = ("bank.voltage", "bank.built_voltage", "load.voltage")  # told, of its batteries, of the model that it feeds
KIND, WARMTH = "battery.chemistry", "ambient.temperature"
COLD, MILD = 10.0, 25.0  # °C: of a cold battery, and what the weather or a cabin brings it to


def without_look_alikes(message: Message, before: Mapping[str, Known], house: House) -> Message:
    """The message with the signs of danger that stand beside what is known; `before`: the facts of its thread."""
    if not message.dangers:
        return message
    told = {item.fact: known(item) for item in message.stated if item.of == 1}
    case = Case({**before, **told}, house)
    return replace(message, dangers=tuple(_kept(message, case, told)))


def is_light_gassing(message: Message, before: Mapping[str, Known]) -> bool:
    """Whether wet cells bubble a little while they charge, by the words and by the kind that is known."""
    kinds = {item.value for item in message.stated if item.fact == KIND} or {
        before[KIND].value if KIND in before else ""
    }
    return kinds == {"flooded"} and light_gassing.told(message.text)


def _kept(message: Message, case: Case, told: Mapping[str, Known]) -> Iterator[Danger]:
    general = taken_back.is_general(message.text)
    mild = warmed_up.told(message.text) and _is_mild(case, WARMTH in told)
    for item in message.dangers:
        heat = mild and item.family == HEAT
        light = item.family == GASSING and is_light_gassing(message, case.stated)
        if not (heat or light) and not (item.family == OVERCHARGED and _is_under_load(item, case, message)):
            yield replace(item, status="general") if general and item.status == "present" else item


def _is_mild(case: Case, now: bool) -> bool:
    """Whether a temperature that is told now is mild, or the one before was cold: then warming up is no heat."""
    celsius = case.said(WARMTH)
    return celsius is not None and float(celsius) <= (MILD if now else COLD)


def _is_under_load(danger: Danger, case: Case, message: Message) -> bool:
    """Whether volts that are too many for one battery are those of a larger bank while its load runs."""
    read = [item for item in message.stated if item.fact in UNDER_LOAD and _within(danger.span, item.span)]
    if not any(isinstance(item.value, float) and item.value <= LARGER for item in read):
        return False
    volts = (case.fresh().get(fact) for fact in VOLTS)
    return max((float(item) for item in volts if item is not None), default=0.0) >= LARGER


def _within(part: Span | None, whole: Span | None) -> bool:
    return part is not None and whole is not None and whole[0] <= part[0] and part[1] <= whole[1]
