"""What a text was found to say: quantities, facts, cues and clauses, all with their place in the text."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass, field
from typing import NamedTuple

Span = tuple[int, int]
Value = float | str | bool


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with its unit as it was typed.

    `unit` is a name that pint knows ("volt"), "" for a plain number. `kind` tells apart what the unit
    cannot: cold_cranking_current, cranking_current, reserve_minutes, wire_gauge, group_size, stud_size,
    specific_gravity, state_of_charge, count, system_voltage, drop, boat_length; else "". Gauge, case and
    stud are text. A range is two quantities of one span, `bound` "low" and "high".
    """

    value: float | str
    unit: str
    kind: str
    text: str
    span: Span
    bound: str = ""


@dataclass(frozen=True, slots=True)
class Part:
    """A piece of the text as the quantities grammar cut it, in order and without gaps but for spaces.

    `kind` is quantity, times ("2x", "4 x"), series ("2s2p"), noise (money, dates, part numbers), word or mark.
    `dim` is what the phrase grammar sees of a quantity: VOLT AMP AH WH WATT CCA CA RC TIME LENGTH INCH MM AREA
    GAUGE GROUP GRAVITY PERCENT TEMP WEIGHT OHM VOLUME AIRFLOW THRUST STUD CRATE COUNT, NUM for a plain number.
    A range has two quantities.
    """

    kind: str
    text: str
    span: Span
    dim: str = ""
    quantities: tuple[Quantity, ...] = ()


@dataclass(frozen=True, slots=True)
class Stated:
    """A fact of the contract that the text states, in the fact's canonical unit.

    `of` is 2 for the second of two batteries, loads or cables. `how` says what settled it: token, grammar,
    role, range, near, default or asked. A range stands once: `value` is the safe end, with `low` and `high`.
    """

    fact: str
    value: Value
    unit: str
    text: str
    span: Span
    of: int = 1
    how: str = "grammar"
    low: float | None = None
    high: float | None = None


class Cue(NamedTuple):
    """A phrase of the lexicon. `name` is "class:concept": request:enough, thing:battery, word:sag, note:no_idea."""

    name: str
    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class Clause:
    """A stretch of the text that asks (`asks`) or tells."""

    span: Span
    asks: bool


@dataclass(frozen=True, slots=True)
class Danger:
    """A sign of danger. `family` is an id of the hazard table; `status`: present, past, denied, general, planned."""

    family: str
    status: str
    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class Message:
    """Everything that was read in one text. Any text gives a Message; nothing here knows a rule or a topic."""

    text: str
    quantities: tuple[Quantity, ...] = ()
    stated: tuple[Stated, ...] = ()
    cues: tuple[Cue, ...] = ()
    clauses: tuple[Clause, ...] = ()
    dangers: tuple[Danger, ...] = ()
    words: tuple[str, ...] = field(default=())  # lower case, typing slips mended, in order
    denied: tuple[Stated, ...] = ()  # values that the text says do not hold: "not lithium"
    implausible: tuple[Stated, ...] = ()  # values outside their fact's range, which are not stated: 5000 CCA
    by_name: dict[str, list[Cue]] = field(init=False, repr=False, compare=False)  # the cues

    def __post_init__(self) -> None:
        """Sort the cues by their names: a long text is asked for them thousands of times."""
        by_name: dict[str, list[Cue]] = {}
        for cue in self.cues:
            by_name.setdefault(cue.name, []).append(cue)
        object.__setattr__(self, "by_name", by_name)

    def says(self, name: str, within: Span | None = None) -> bool:
        """Whether a cue of this name stands in the text (or in the stretch `within`)."""
        if within is None:
            return name in self.by_name
        return bool(self.cues_in(within, name))

    def cues_in(self, within: Span, *names: str) -> list[Cue]:
        """The cues of these names that begin in a stretch."""
        found: list[Cue] = []
        for name in names:
            if cues := self.by_name.get(name):
                first = bisect_left(cues, within[0], key=_start)
                found += cues[first : bisect_left(cues, within[1], lo=first, key=_start)]
        return found


def _start(cue: Cue) -> int:
    return cue.span[0]
