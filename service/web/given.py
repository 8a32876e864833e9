"""Facts that a form sets: a corrected tag, a reply to what was asked back, a change to try."""

from __future__ import annotations

from typing import Any

from flask import request

from grammar.facts import FactSpec, facts
from service.question import BadInput
from service.render.fields import field, number


def given() -> list[dict[str, Any]]:
    """Facts from the form's fields: `fact:battery.cca` = "650", with `unit:...` where another unit was chosen."""
    found = []
    for name, value in request.form.items():
        fact = name.removeprefix("fact:")
        if not name.startswith("fact:") or not value.strip():
            continue
        spec = facts().get(fact)
        if spec is None:
            raise BadInput(f"{fact[:60]!r} is not a fact.")
        found.append({"fact": fact, "value": _value(spec, value.strip())} | _unit(spec))
    return found


def _unit(spec: FactSpec) -> dict[str, str]:
    unit = request.form.get(f"unit:{spec.name}", "")
    shown = dict(field(spec.name, ())["units"]).get(unit)
    return {"unit": unit, "shown": shown} if shown and unit != spec.unit else {}


def _value(spec: FactSpec, value: str) -> Any:
    if spec.kind == "flag":
        return value == "yes"
    if spec.kind != "number":
        return value[:60]
    try:
        return number(value)
    except ValueError as error:
        raise BadInput(f"{spec.label}: write a number, such as 650, not {value[:40]!r}.") from error
