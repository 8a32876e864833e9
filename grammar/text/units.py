"""The trade's units: their spellings, their factors, and one small pint registry for everything unusual."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

from grammar.files import TABLES, toml

if TYPE_CHECKING:
    import pint

JOINTS = {ord(sign): None for sign in " -.\t\n\r\f\v"}
LONG = re.compile(".*[a-zè]{2}[a-rt-z]")
OF = re.compile("^(?:of an?|-?full|whole|solid|straight|-?odd)[ -]")  # "half of an amp"
KEYS = {"unit", "dim", "to", "factor", "offset", "kind", "says", "joined", "signs", "label", "thousands"}


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit as it is said. `name` is pint's, "" for none; value * factor + offset is the value in `to`."""

    name: str
    dim: str
    kind: str
    to: str
    factor: float
    offset: float
    thousands: bool


@cache
def units() -> dict[str, Unit]:
    """Every unit by the name of its table in units.toml. Raises ValueError for an unknown key."""
    found = {}
    for title, row in toml(TABLES / "units.toml").items():
        if strange := set(row) - KEYS:
            raise ValueError(f"units.toml, {title}: unknown key {sorted(strange)}, known are {sorted(KEYS)}")
        name = row.get("unit", title)
        found[title] = Unit(
            name,
            row["dim"],
            row.get("kind", ""),
            row.get("to", name),
            row.get("factor", 1.0),
            row.get("offset", 0.0),
            row.get("thousands", False),
        )
    return found


def _bare(text: str) -> str:
    return OF.sub("", text.lower()).translate(JOINTS)


@cache
def spellings(part: str = "says") -> dict[str, Unit]:
    """The unit of each spelling ("says") or label ("label"), without its spaces and points, and without any s."""
    rows = toml(TABLES / "units.toml")
    keys = ("says", "joined") if part == "says" else (part,)
    said = [(_bare(form), units()[title]) for title, row in rows.items() for key in keys for form in row.get(key, ())]
    return {form.replace("s", ""): unit for form, unit in said if len(form) > 2} | dict(said)


WITH = (  # "9.6 w the thruster on" is with, and so is "12.4 w engine off"; "9 w the panel", "40 w light on" are watts
    r"(?!(?<= w) (?:the|my|our|both|all(?: the)?) (?:bow |stern |big |main )?"
    r"(?:thrusters?|engines?|motor|windlass|winch|lights?|fridge|pumps?|joystick|lever|button|load|switch)\b)"
    r"(?!(?:(?<=\.[0-9] w)|(?<=\.[0-9][0-9] w))"
    r" (?:everything|nothing|engine|thruster|windlass|lights?|fridge|load|charger) "
    r"(?:on|off|out|running|going|pushed|pressed)\b)"
)


def named(text: str, part: str = "says") -> Unit:
    """The unit that a spelling found by `pattern` or `labels` stands for."""
    bare, known = _bare(text), spellings(part)
    return known[bare] if bare in known else known[bare.replace("s", "")]


def _escaped(spelling: str) -> str:
    """A spelling as a pattern: words of three letters and more may have a plural s, anything may join its words."""
    words = [re.escape(word) + ("s?" if LONG.fullmatch(word) else "") for word in spelling.split(" ")]
    plural = r"(?!(?<=s)\. )[ .-]{0,2}"  # "60 amps. Hours?" are amps, "100 amp. hrs" are not
    between = r"(?!\. )[ .-]{0,2}" if spelling.startswith("a ") else plural  # and so are "30 A. Hours"
    return between.join(words)


def _longest_first(spelt: list[str]) -> str:
    return "|".join(_escaped(spelling) for spelling in sorted(set(spelt), key=lambda word: (-len(word), word)))


def pattern() -> str:
    """The pattern of a unit, longest spelling first; one that is also a word needs a second sign."""
    rows = toml(TABLES / "units.toml").values()
    says = _longest_first([spelling for row in rows for spelling in row["says"]])
    second = [_second(spelling, row.get("signs", [])) for row in rows for spelling in row.get("joined", ())]
    # "8.8 w/ 240 A" is with, "30 amp dc-dc" a converter, "100 C20" no temperature, "one wish" no watt,
    # "50 mm 24 V" no mm2
    other = rf"(?!(?<=c)[0-9])(?!(?<=2)[0-9])(?!(?<= w)/){WITH}(?!(?<=dc)[ -](?:to[ -])?dc\b)(?!(?<= m)[0-9])(?!\.g\.m)"
    whole = r"(?:full|whole|solid|straight) (?=(?:hours?|hrs?|days?|weeks?|nights?|months?)\b)"
    word = r"(?!(?!ish\b)[^\W\d_])(?!(?<=[ -][a-z])ish\b)"
    return rf"(?:-?odd[ -]|-|of an? |{whole})?(?:{says}|A|{'|'.join(second)}){word}{other}"


def _second(spelling: str, signs: list[str]) -> str:
    """A spelling that is also a word: joined to the number, or before a sign that it is a unit."""
    words = "|".join(sign for sign in signs if sign != ".")
    mark = r"|(?=\s*(?:$|[^\w\s'\"-]))" if "." in signs else ""
    before = rf"|(?= ?(?:{words})\b)" if words else ""
    return rf"{spelling}(?:(?<=[0-9]{spelling})|(?<=[0-9]-{spelling}){before}{mark})"


@cache
def labels() -> str:
    """The pattern of a word that tells the unit of the number after it."""
    rows = toml(TABLES / "units.toml").values()
    return rf"(?:{_longest_first([spelling for row in rows for spelling in row.get('label', ())])})"


@cache
def _factors() -> dict[str, Unit]:
    return {unit.name: unit for unit in units().values()}


def convert(value: float, unit: str, to: str) -> float:
    """The value in another unit, both by pint's names. Raises pint's DimensionalityError where there is no way.

    >>> round(convert(20, "foot", "meter"), 3), round(convert(50, "degree_Fahrenheit", "degree_Celsius"), 1)
    (6.096, 10.0)
    """
    if unit == to:
        return value
    have, want = _factors().get(unit), _factors().get(to)
    if have and want and have.to == want.to:
        return (value * have.factor + have.offset - want.offset) / want.factor
    return float(registry().Quantity(value, unit).to(to).magnitude)


@cache
def registry() -> pint.UnitRegistry[float]:
    """The one registry, built from units.txt alone; pint is imported only when asked for, as that takes a while."""
    import pint

    return pint.UnitRegistry(str(TABLES / "units.txt"), autoconvert_offset_to_baseunit=True)
