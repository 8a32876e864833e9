"""What comes in: facts as the reader or a program states them, turned into what a case knows."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from grammar import read_quantities
from grammar.facts import FactSpec, facts
from grammar.reading import Message, Stated
from grammar.text.patterns import regex
from service import say
from service.case import Known, Value

UNIT = regex(r"[^\W\d]{1,40}( ?\*\* ?[23])?|%")
LONGEST_UNIT = 40
KEYS = {"fact", "value", "unit", "of"}  # of a fact that a program sets
HALVES = regex("[\ud800-\udfff]")  # of a character of two codes, or a byte that is no UTF-8


class BadInput(ValueError):
    """The input cannot be taken. The message says what to do."""


def known(item: Stated) -> Known:
    """A fact that the reader found, as a case knows it."""
    return Known(
        item.fact,
        item.value,
        "message",
        say.symbol(item.fact),
        item.text,
        item.span,
        item.low,
        item.high,
        of=item.of,
    )


def stated(item: Known) -> Stated:
    """A fact of the conversation, as the reader takes it."""
    return Stated(item.fact, item.value, item.unit, item.text, (0, 0), low=item.low, high=item.high)


def denied_in(message: Message) -> dict[str, tuple[Value, ...]]:
    """What a message says does not hold, by fact: "not lithium"."""
    names = dict.fromkeys(item.fact for item in message.denied)
    return {name: tuple(item.value for item in message.denied if item.fact == name) for name in names}


def mended(text: str) -> str:
    """A text that can be stored and printed: "�" stands for each half of a character."""
    return HALVES.sub("\ufffd", text)


def fact_of(item: Mapping[str, Any]) -> Known:
    """A fact that a program sets: {"fact", "value", "unit", "of"}. Raises BadInput where it is none of ours."""
    if not isinstance(item, Mapping) or not isinstance(item.get("fact"), str) or "value" not in item:
        raise BadInput('Each of facts must be an object with "fact" and "value", and "unit" where it has one.')
    spec = facts().get(item["fact"])
    if spec is None:
        raise BadInput(f"facts: {item['fact'][:60]!r} is not a fact; /api/spec lists them, such as battery.capacity.")
    if strange := sorted(map(str, set(item) - KEYS)):  # "units" passed over would leave feet standing as metres
        known = '"fact", "value", "unit" and "of"'
        raise BadInput(f"facts: {spec.name}: not known: {', '.join(strange)[:200]}. There are {known}.")
    value = _value(spec, item["value"], item.get("unit"))
    of = item.get("of", 1)
    if of not in (1, 2):
        raise BadInput(f'facts: {spec.name}: "of" must be 1 or 2.')
    return Known(spec.name, value, "message", say.symbol(spec.name), mended(str(item["value"])[:60]), of=of)


def _value(spec: FactSpec, value: Any, unit: Any) -> Value:
    if spec.kind == "flag":
        if not isinstance(value, bool):
            raise BadInput(f"facts: {spec.name} must be true or false.")
        return value
    if spec.kind == "choice":
        if value not in spec.values:
            raise BadInput(f"facts: {spec.name} must be one of {', '.join(spec.values)}.")
        return str(value)
    if spec.kind == "text":
        if not isinstance(value, (str, int)) or isinstance(value, bool) or not 0 < len(str(value)) <= 60:
            raise BadInput(f"facts: {spec.name} must be a short text.")
        return mended(str(value))
    return _number(spec, value, unit)


def _number(spec: FactSpec, value: Any, unit: Any) -> float:
    from grammar.text.units import convert

    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise BadInput(f"facts: {spec.name} must be a number.")
    symbol = say.symbol(spec.name)
    try:
        number = float(value)
        if unit not in (None, "", spec.unit, symbol):
            number = float(convert(number, _unit(unit), spec.unit))
    except (LookupError, ValueError, TypeError, AttributeError, ArithmeticError) as error:  # pint raises each of them
        held = f"in {say.SHOWN.get(symbol, symbol)}" if symbol else "as a plain number"
        wrong = unit[:40] if isinstance(unit, str) else "this unit"
        raise BadInput(f"facts: {spec.name} is held {held}; {wrong!r} does not fit.") from error
    if not math.isfinite(number):
        raise BadInput(f"facts: {spec.name} must be a number.")
    if spec.low is not None and spec.high is not None and not spec.low <= number <= spec.high:
        raise BadInput(f"facts: {spec.name} is {number:g}, outside {spec.low:g} to {spec.high:g}: check it.")
    return number


def unit_of(word: str) -> str:
    """The name of a unit as people write it ("°F", "yrs", "feet"); "" for words that are none."""
    text = f"1 {word.strip()}"
    found = next(iter(read_quantities(text)), None) if len(word) <= LONGEST_UNIT else None
    whole = found is not None and found.span == (0, len(text))  # "degree_Fahrenheit" is not a degree of some kind
    return found.unit if found and whole else ""


def _unit(unit: Any) -> str:
    """A unit as people write it, else by its bare name: pint would work out any formula, however large."""
    if not isinstance(unit, str):
        raise TypeError(unit)
    if found := unit_of(unit):
        return found
    if not UNIT.fullmatch(unit):
        raise ValueError(unit)
    return unit
