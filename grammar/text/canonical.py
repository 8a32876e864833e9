"""A quantity in the unit of a fact."""

from __future__ import annotations

from functools import cache

from grammar.text.units import convert, units


@cache
def _kinds() -> dict[str, str]:
    """The unit that each unit is measured against: of one kind are those with the same."""
    return {unit.name: unit.to for unit in units().values()}


def in_unit(value: float, unit: str, to: str) -> float | None:
    """The value in another unit by pint's names, the number itself where either has none, None for another kind."""
    if not unit or not to or unit == to:
        return value
    kinds = _kinds()
    if unit not in kinds or to not in kinds or kinds[unit] != kinds[to]:
        return None
    return convert(value, unit, to)
