"""Facts as the page shows and corrects them: a tag with its text, a field with its units or its list of values."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from grammar.facts import facts
from grammar.text.patterns import regex
from service import reference, say
from service.render.units import american

# Units that a field takes beside its own: pint's name and how it is shown.
ALSO = {
    "meter": (("meter", "m"), ("foot", "ft")),
    "kilogram": (("kilogram", "kg"), ("pound", "lb")),
    "degree_Celsius": (("degree_Celsius", "°C"), ("degree_Fahrenheit", "°F")),
    "second": (("second", "seconds"), ("minute", "minutes"), ("hour", "hours")),
    "day": (("day", "days"), ("week", "weeks"), ("month", "months")),
    "watt": (("watt", "W"), ("kilowatt", "kW"), ("horsepower", "hp")),
}
SMALL = {"drain.current": (("ampere", "A"), ("milliampere", "mA"))}
PLAIN = {  # facts whose value speaks for itself
    "battery.chemistry",
    "battery.duty",
    "load.model",
    "load.kind",
    "bank.layout",
    "cable.gauge",
    "cable.insulation",
    "cable.drop",
    "cable.in_engine_space",
}
GIVEN = {  # facts that only rules give, in words
    "load.voltage": "made for",
    "load.cca": "CCA it asks for",
    "load.fuse": "fuse it asks for",
    "load.run_limit": "runs at most",
}
GROUPED = regex(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?")


def field(name: str, models: Sequence[str]) -> dict[str, Any]:
    """What a form needs to ask for a fact: label, kind, unit or units, values to choose from."""
    spec = facts().get(name)
    if spec is None:
        return {"fact": name, "label": _words(name), "kind": "", "unit": "", "units": (), "values": []}
    units = SMALL.get(name) or ALSO.get(spec.unit, ())
    unit = say.symbol(name)
    return {
        "fact": name,
        "label": spec.label,
        "kind": spec.kind,
        "unit": say.SHOWN.get(unit, unit),
        "units": units,
        "values": _values(name, spec.values, models),
    }


def tag(item: Mapping[str, Any], models: Sequence[str]) -> dict[str, Any]:
    """A fact of an answer as a tag: its text, and the field that corrects it."""
    value, own = item["value"], field(item["fact"], models)
    text = say.fact(item["fact"], value)
    if own["values"] and str(value).lower() not in [str(each).lower() for each, _ in own["values"]]:
        own["values"].insert(0, (value, text))
    return {
        **own,
        "text": text,
        "us": american(value, item["unit"]),
        "named": item["fact"] not in PLAIN,
        "value": say.significant(value, 6) if isinstance(value, float) else value,
        "of": item.get("of", 1),
        "guess": False,
        "why": "",
    }


def number(text: str) -> float:
    """A number as people type it. Raises ValueError.

    >>> [number(text) for text in ("12,4", "1,200", "1 200", "-20")]
    [12.4, 1200.0, 1200.0, -20.0]
    """
    bare = re.sub(r"\s", "", text).replace("−", "-")
    return float(bare.replace(",", "") if GROUPED.fullmatch(bare) else bare.replace(",", "."))


def _values(name: str, values: Sequence[str], models: Sequence[str]) -> list[tuple[Any, str]]:
    if name == "load.model":
        return [(model, model) for model in models]
    if name == "cable.gauge":
        gauges = [str(row["gauge"].value) for row in reference.rows("wire_areas") if row["pick"].value]
        return [(gauge, say.gauge(gauge)) for gauge in gauges]
    return [(value, say.fact(name, value)) for value in values]


def _words(name: str) -> str:
    """A fact that only rules give, in words: "load.voltage" is "load voltage"."""
    return GIVEN.get(name) or re.sub(r"[._]", " ", name)
