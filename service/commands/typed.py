"""A value as somebody types it beside a fact's name ("12,4 V", "23 F", "wet", "2/0 AWG"), as a fact for the desk."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from grammar import read, read_quantities
from grammar.facts import FactSpec, facts
from grammar.text.canonical import in_unit
from grammar.text.patterns import regex
from service import say
from service.case import Known
from service.question import BadInput, fact_of, unit_of

NUMBER = regex(r"[-+−]?\d+(?:[.,]\d+)?|[-+−]?[.,]\d+")
FLAGS = {"yes": True, "y": True, "true": True, "no": False, "n": False, "false": False}


def typed(name: str, text: str, unit: str = "") -> Known:
    """The fact of a typed value; `unit`: what a bare number is in ("F", "ft"), the fact's own where none is said.

    Raises BadInput with what to write instead.
    """
    spec, text = _spec(name), text.strip().replace(say.NB, " ")
    if spec.kind == "number":
        return _number(spec, text, unit)
    value: Any = text
    if spec.kind == "flag":
        value = FLAGS.get(text.lower())
        if value is None:
            raise BadInput(f"{spec.name}: write yes or no, not {text[:40]!r}.")
    elif spec.kind == "choice":
        value = text.lower() if text.lower() in spec.values else _read(spec.name, text)
        if value is None:
            raise BadInput(f"{spec.name}: write one of {', '.join(spec.values)}, not {text[:40]!r}.")
    elif spec.name == "cable.gauge":
        value = next((item.value for item in read_quantities(f"{text} AWG") if item.kind == "wire_gauge"), text)
    return fact_of({"fact": spec.name, "value": value})


def named(text: str) -> str:
    """The fact of a name: as it stands ("battery.cca"), by its label ("cca"), or by its last part where only one has
    that."""
    wanted = text.strip().lower()
    if wanted in facts():
        return wanted
    labelled = [name for name, spec in facts().items() if wanted == spec.label.lower()]
    found = labelled or [name for name in facts() if wanted == name.partition(".")[2]]
    if len(found) == 1:
        return found[0]
    raise BadInput(
        f"{text!r} may be {say.listed(found, 'or')}: write one of them."
        if found
        else f"{text[:60]!r} is not a fact: write one such as battery.cca, battery.capacity or reading.voltage."
    )


def _spec(name: str) -> FactSpec:
    return facts()[named(name)]


def _read(name: str, text: str) -> Any:
    """The value that trade words state: "wet" is flooded."""
    return next((item.value for item in read(text).stated if item.fact == name), None)


def _number(spec: FactSpec, text: str, unit: str) -> Known:
    if NUMBER.fullmatch(text):
        taken = list(_bare(text, unit_of(unit)))
    elif any(sign.isdigit() for sign in text):  # "twelve-ish" is no reading
        taken = [(float(item.value), item.unit) for item in read_quantities(text) if isinstance(item.value, float)][:1]
    else:
        taken = []
    held = say.symbol(spec.name) or "plain numbers"
    fault = BadInput(f"{spec.name} is held in {held}: {text[:40]!r} is no such number.")
    for value, found in taken:
        if in_unit(value, found, spec.unit) is None:
            continue
        try:
            return fact_of({"fact": spec.name, "value": value, "unit": found or None})
        except BadInput as error:
            fault = error
    raise fault


def _bare(text: str, unit: str) -> Iterator[tuple[float, str]]:
    """What a bare number may be: a comma before three digits is tried as a decimal one, then as thousands."""
    number = text.replace("−", "-")
    yield float(number.replace(",", ".")), unit
    if re.fullmatch(r"[-+]?\d{1,3},\d{3}", number):
        yield float(number.replace(",", "")), unit
