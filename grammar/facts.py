"""The facts of the contract as frozen specs, from facts.toml."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from grammar.files import TABLES, toml

KEYS = {"unit", "values", "kind", "safe", "range", "label", "ask", "where", "unknown", "instead"}
KEYS |= {"told", "where_told", "unknown_told"}


@dataclass(frozen=True, slots=True)
class FactSpec:
    """One fact: its unit (pint's name) or values, plausible range, and how it is asked for."""

    name: str
    kind: str  # number, choice, text or flag
    unit: str
    values: tuple[str, ...]
    safe: str  # which end of a range counts: high, low or ""
    low: float | None
    high: float | None
    label: str
    ask: str
    where: str
    unknown: str = ""  # how to find out, or the best answer without it, for one who does not know
    instead: tuple[str, ...] = ()  # facts that would serve in its place
    told: str = ""  # a cue that tells a part of it, after which `where` and `unknown` would ask for that part again
    where_told: str = ""
    unknown_told: str = ""


@cache
def facts() -> dict[str, FactSpec]:
    """Every fact by name. Raises ValueError for a spec with an unknown key."""
    specs = {}
    for name, spec in toml(TABLES / "facts.toml").items():
        if strange := set(spec) - KEYS:
            raise ValueError(f"facts.toml, {name}: unknown key {sorted(strange)}, known are {sorted(KEYS)}")
        low, high = spec.get("range", (None, None))
        kind = spec.get("kind") or ("choice" if "values" in spec else "number")
        values = tuple(spec.get("values", ()))
        unit, safe = spec.get("unit", ""), spec.get("safe", "")
        specs[name] = FactSpec(
            name,
            kind,
            unit,
            values,
            safe,
            low,
            high,
            spec["label"],
            spec["ask"],
            spec["where"],
            spec.get("unknown", ""),
            tuple(spec.get("instead", ())),
            *(spec.get(key, "") for key in ("told", "where_told", "unknown_told")),
        )
    return specs
