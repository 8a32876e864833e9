"""What the columns of a table hold, by the names that people give them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from grammar.facts import facts
from grammar.files import toml
from grammar.text.patterns import regex

NAMES = Path(__file__).with_name("columns.toml")
AMBIGUOUS = {"amps", "current"}  # as columns.toml tells
UNIT = regex(r"[(\[]\s*([^)\]]*?)\s*[)\]]")
SIGNS = regex(r"[^a-z0-9]+")
TRAILING = {"v": "", "a": "", "ah": "", "f": "F", "c": "", "ft": "ft", "m": "", "lbs": "lb", "months": "months"}


class TableFault(ValueError):
    """The table cannot be read. The message says what to mend, with the line."""


@dataclass(frozen=True, slots=True)
class Columns:
    """What the columns of a table hold: the question's place, and the fact and unit of each of the others."""

    question: int | None
    facts: Mapping[int, tuple[str, str]]


def columns(header: Sequence[str]) -> Columns:
    """What the header's names stand for. Raises TableFault where none is known or two say the same."""
    found: dict[int, tuple[str, str]] = {}
    question = None
    for at, title in enumerate(header):
        name, unit = plain(title)
        if name in toml(NAMES)["question"]:
            question = at if question is None else question
        elif fact := fact_of_column(name):
            found[at] = fact, unit
    if "reading.load_voltage" not in {fact for fact, _ in found.values()}:
        found = {
            at: ("load.current" if plain(header[at])[0] in AMBIGUOUS else fact, unit)
            for at, (fact, unit) in found.items()
        }
    for at, (fact, _) in found.items():
        twice = [header[other] for other in found if found[other][0] == fact and other != at]
        if twice:
            raise TableFault(f"the columns {header[at]!r} and {twice[0]!r} both state {fact}: rename one of them")
    if question is None and not found:
        known = "question, rest volts, load volts, amps, CCA, age, chemistry, Ah, temperature"
        raise TableFault(f"no column is known ({', '.join(header)[:120]}): name one of them {known}")
    return Columns(question, found)


def plain(title: str) -> tuple[str, str]:
    """A column's name without signs and units, and the unit of its numbers: "Temp (°F)" is temp, in F."""
    inside = UNIT.search(title)
    unit = inside.group(1).strip("° ") if inside else ""
    words = SIGNS.sub(" ", UNIT.sub(" ", title).lower().replace("²", "2")).split()
    if len(words) > 1 and words[-1] in TRAILING and not inside:
        unit = TRAILING[words.pop()]
    return " ".join(words), unit


def fact_of_column(name: str) -> str | None:
    """The fact that a column of this name states; slips of a letter in long names are forgiven."""
    from rapidfuzz import fuzz, process

    known = {other: fact for fact, names in toml(NAMES)["fact"].items() for other in names}
    dotted = name.replace(" ", ".", 1).replace(" ", "_")  # battery.cca, reading.load_voltage
    if name in known or dotted in facts():
        return known.get(name) or dotted
    if len(name) < 6:
        return None
    near = process.extractOne(name, [other for other in known if len(other) > 5], scorer=fuzz.ratio, score_cutoff=90)
    return known[near[0]] if near else None
