"""Published values as data: a table a file, every value with its source. A value that is not there is an error.

A table file holds `key` (the columns that name a row), `units` (of the value columns), `cite` and `locator` (for
all rows, unless a row has its own) and `[[row]]`. Single values are a table whose key is "name".
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

from grammar.files import toml

HERE = Path(__file__).parent
RESERVED = {"cite", "locator", "note"}
KINDS = {"standard", "handbook", "paper", "common-practice", "house"}


class UnknownValue(LookupError):
    """No row of the table has these keys."""


@dataclass(frozen=True, slots=True)
class Cited:
    """A published value, its unit and its source ("id@locator")."""

    value: Any
    unit: str
    cite: str


Row = Mapping[str, Cited]


@cache
def sources() -> dict[str, dict[str, str]]:
    """Every source by id, from the files in literature/: title, publisher, edition, locator, kind, checked."""
    found: dict[str, dict[str, str]] = {}
    for path in sorted((HERE / "literature").glob("*.toml")):
        for name, source in toml(path).items():
            if name in found:
                raise ValueError(f"{path.name}, {name}: stands in another file of sources too")
            if lacking := {"title", "publisher", "edition", "locator", "kind", "checked"} - set(source):
                raise ValueError(f"{path.name}, {name}: {sorted(lacking)} missing")
            if source["kind"] not in KINDS:
                raise ValueError(f"{path.name}, {name}: kind {source['kind']!r} is not one of {sorted(KINDS)}")
            found[name] = source
    return found


def from_memory(source: str) -> str:
    """ "from memory" for a source that nobody saw, "partly from memory" where part of it was found, else ""."""
    checked = sources()[source]["checked"]
    if "from memory" not in checked:
        return ""
    whole = checked.startswith("from memory") and "found" not in checked
    return "from memory" if whole else "partly from memory"


@cache
def rows(table: str) -> tuple[Row, ...]:
    """All rows of a table, in file order. Raises ValueError for a row without key, unit or source."""
    content = toml(HERE / f"{table}.toml")
    keys = content["key"] if isinstance(content["key"], list) else [content["key"]]
    units = content.get("units", {})
    found: list[Row] = []
    for number, row in enumerate(content["row"], 1):
        cite = row.get("cite", content.get("cite", ""))
        locator = row.get("locator", content.get("locator", ""))
        if cite not in sources():
            raise ValueError(f"{table}.toml, row {number}: source {cite!r} is not in literature/")
        if lacking := [key for key in keys if key not in row]:
            raise ValueError(f"{table}.toml, row {number}: key {lacking} missing")
        source = f"{cite}@{locator}" if locator else cite
        cells = {name: value for name, value in row.items() if name not in RESERVED}
        found.append(
            {
                name: Cited(value, row.get("unit", "") if name == "value" else units.get(name, ""), source)
                for name, value in cells.items()
            }
        )
    named = [tuple(row[key].value for key in keys) for row in found]
    if len(set(named)) != len(named):
        raise ValueError(f"{table}.toml: two rows have the same key")
    return tuple(found)


@lru_cache(maxsize=4096)
def row(table: str, **keys: Any) -> Row:
    """The one row with these keys. Raises UnknownValue, never the nearest or the last."""
    for found in rows(table):
        if all(name in found and found[name].value == value for name, value in keys.items()):
            return found
    raise UnknownValue(f"{table} has no row with {keys}")


def value(table: str, name: str) -> Cited:
    """A single value by its name."""
    return row(table, name=name)["value"]
