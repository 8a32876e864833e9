"""What the terminals of the quantities grammar mean: tokens in, parts out."""
from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from lark import Token, Transformer

from grammar import numbers, units
from grammar.reading import Part, Quantity
from grammar.units import Unit

PLAIN = Unit("", "NUM", "", "", 1.0, 0.0, False)
COUNT = Unit("", "COUNT", "count", "", 1.0, 0.0, False)
NICKNAME = Unit("", "NICKNAME", "", "", 1.0, 0.0, False)
RATE = Unit("", "CRATE", "", "", 1.0, 0.0, False)
LENGTHS = frozenset({"LENGTH", "INCH", "MM"})
NOMINAL = frozenset({6.0, 12.0, 24.0, 32.0, 36.0, 48.0})
OUGHTS = {"single": "1/0", "double": "2/0", "triple": "3/0", "quad": "4/0", "quadruple": "4/0"}
LIKELY = {  # a label is one only for such values
    "CCA": (40, 5000), "CA": (40, 6000), "RC": (10, 1000), "GAUGE": (0, 40), "GROUP": (20, 100), "GRAVITY": (0.9, 1.4),
}
PAIR = re.compile(r"(?:ten|eleven|twelve|thirteen|fourteen) [a-z]+ty(?:[ -][a-z]+)?")
EUROPEAN = re.compile(r"[0-9]{1,3}\.[0-9]{3}")
GROUPED = re.compile(r"[0-9]{2},[0-9]{3}")
VERB = re.compile(r"\b(?:is|was|are|reads?|says?|only|at|reading)\b")
CODE = re.compile(r"[\w./-]*[0-9][\w./ -]*$")


@dataclass(slots=True)
class Amount:
    """A number, its unit if there is one, and where both stand. `rest` are parts that follow ("per day")."""

    number: Token
    unit: Unit
    start: int
    end: int
    rest: tuple[Part, ...] = ()
    value: float | str = 0.0


def part(kind: str, token: Token) -> Part:
    """A part without a quantity."""
    return Part(kind, str(token), (token.start_pos or 0, token.end_pos or 0))


def measured(value: float | str, unit: Unit, start: int, end: int) -> Part:
    """A part with one quantity."""
    quantity = Quantity(value, unit.name, unit.kind, "", (start, end))
    return Part("quantity", "", (start, end), unit.dim, (quantity,))


class Cutter(Transformer[Token, Any]):
    """Turns each rule of the grammar into its parts. Texts of the parts are put in afterwards."""

    def start(self, pieces: list[Any]) -> list[Part]:
        found: list[Part] = []
        for piece in pieces:
            found.extend(piece) if isinstance(piece, list) else found.append(piece)
        return found

    def word(self, tokens: list[Token]) -> Part:
        token = tokens[0]
        start = token.start_pos or 0
        return Part("word", "", (start, start + len(token.rstrip())))

    def mark(self, tokens: list[Token]) -> Part:
        return part("mark", tokens[0])

    def noise(self, tokens: list[Token]) -> Part:
        return part("noise", tokens[0])

    def series(self, tokens: list[Token]) -> Part:
        return part("series", tokens[0])

    def numbered(self, tokens: list[Token]) -> list[Part]:
        token = tokens[0]
        found = CODE.search(token)
        at = (token.start_pos or 0) + (found.start() if found else 0)
        return [Part("word", "", (token.start_pos or 0, at)), Part("noise", "", (at, token.end_pos or 0))]

    def times(self, tokens: list[Token]) -> Part:
        token = tokens[0]
        value = numbers.value(token.strip("x*of "))
        return _part_of(token, value, COUNT, kind="times")

    def nickname(self, tokens: list[Token]) -> Part:
        return _part_of(tokens[0], float(tokens[0].rstrip("s'")), NICKNAME)

    def split(self, tokens: list[Token]) -> Part:
        return _part_of(tokens[0], float(tokens[0].replace("v", ".")), units.units()["volt"])

    def feet(self, tokens: list[Token]) -> Part:
        feet, inches = re.findall(r"[0-9]+(?:\.[0-9]+)?", tokens[0])
        half = 0.5 if "½" in tokens[0] else 0.0
        return _part_of(tokens[0], float(feet) + (float(inches) + half) / 12, units.units()["foot"])

    def hours(self, tokens: list[Token]) -> Part:
        large, small = re.findall("[0-9]+", tokens[0])
        unit = "hour" if "h" in tokens[0] else "minute"
        return _part_of(tokens[0], float(large) + float(small) / 60, units.units()[unit])

    def gauge(self, tokens: list[Token]) -> Part:
        text = str(tokens[0])
        ought = OUGHTS.get(text.partition(" ")[0])
        size = ought or re.findall(r"[1-4]/0|[0-9]+", text)[0]
        return _part_of(tokens[0], gauge_name(size), units.units()["awg"])

    def stud(self, tokens: list[Token]) -> Part:
        size = re.sub(r"[\s\"']", "", tokens[0].upper().replace("X", "x"))
        return _part_of(tokens[0], size, Unit("", "STUD", "stud_size", "", 1.0, 0.0, False))

    def case(self, tokens: list[Token]) -> Part:
        size = re.search(r"(?:GC|U|L)?[0-9]+[A-Z]*", re.sub(r"SERIES|SIZE", "", tokens[0].upper()))
        assert size
        return _part_of(tokens[0], size.group(), units.units()["group"])

    def share(self, tokens: list[Token]) -> list[Part]:
        first = tokens[0]
        start = first.start_pos or 0
        known = units.named(tokens[1]) if len(tokens) > 1 else None
        if known is None or tokens[1].startswith("below"):
            return [Part("word", "", (start, first.end_pos or 0)), *(part("word", token) for token in tokens[1:])]
        value = 1.0 if first in ("a", "an") else _share(first)
        if len(tokens) > 2:
            value += _share(tokens[2])
        return [measured(value, known, start, tokens[-1].end_pos or 0)]

    def amount(self, tokens: list[Token]) -> Amount:
        number, *others = tokens
        unit, end, rest = PLAIN, number.end_pos or 0, []
        for token in others:
            if token.type == "PER":
                rest.append(part("word", token))
            else:
                unit, end = units.named(token), token.end_pos or 0
                unit = _meant(number, unit, token)
                if unit is PLAIN:
                    end = number.end_pos or 0
                    rest.append(part("word", token))
        return Amount(number, unit, number.start_pos or 0, end, tuple(rest), _value(number, unit, others))

    def reading(self, tokens: list[Token]) -> Amount:
        number = tokens[0]
        return Amount(number, PLAIN, number.start_pos or 0, tokens[-1].end_pos or 0)

    def labelled(self, pieces: list[Any]) -> list[Part]:
        label, *rest = pieces
        word = re.match(units.labels(), label)
        assert word
        unit = units.named(word.group(), "label")
        amounts = rest[::2]
        for amount in amounts:
            amount.value = _value(amount.number, unit, ())
            amount.unit = unit
        low, high = LIKELY[unit.dim]
        if unit.dim == "GAUGE" and VERB.search(label):
            high = -1.0  # "the gauge says 12" is a meter
        if not all(low <= float(one.value) <= high for one in amounts):
            for amount in amounts:
                amount.unit, amount.value = PLAIN, numbers.value(amount.number)
                amount.end = amount.number.end_pos
            return [part("word", label), *joined(rest)]
        amounts[0].start = label.start_pos
        return list(joined(rest))

    def amounts(self, pieces: list[Any]) -> list[Part]:
        if isinstance(pieces[0], Amount):
            return list(joined(pieces))
        prefix, *rest = pieces
        before = part("word", prefix)
        if prefix.type == "BETWEEN":
            return [before, *joined(rest, between=True)]
        first = rest[0]
        if first.unit is PLAIN and isinstance(first.value, float) and first.value <= 20:
            spans = [one if isinstance(one, Token) else (one.start, one.end) for one in rest]
            return [before, *(part("word", at) if isinstance(at, Token) else Part("noise", "", at) for at in spans)]
        return [before, *joined(rest)]


def _part_of(token: Token, value: float | str, unit: Unit, kind: str = "quantity") -> Part:
    span = (token.start_pos or 0, token.end_pos or 0)
    return Part(kind, "", span, unit.dim, (Quantity(value, unit.name, unit.kind, "", span),))


def _share(text: str) -> float:
    for word, value in (("three", 0.75), ("two thirds", 2 / 3), ("quarter", 0.25), ("third", 1 / 3), ("half", 0.5)):
        if word in text:
            return value
    return 2.0  # a couple


def gauge_name(size: str) -> str:
    """A gauge as the tables name it: "00" and "2 ought" are 2/0, "0" is 1/0."""
    if set(size) == {"0"}:
        return f"{len(size)}/0"
    return size.lstrip("0")


def _meant(number: Token, unit: Unit, said: Token) -> Unit:
    """The unit after a look at its number: "0.2C" is a charging rate, "20 below" needs a whole number."""
    if unit.name == "degree_Celsius":
        if said == "c" and re.fullmatch(r"0?[.,][0-9]+", number):
            return RATE
        if said.startswith("below") and not re.fullmatch("[a-z -]+|[0-9]{1,2}", number):
            return PLAIN
    return unit


def _value(number: Token, unit: Unit, others: Sequence[Token]) -> float | str:
    value = numbers.value(number)
    if not math.isfinite(value):
        return 0.0
    if unit.dim == "GAUGE":
        ought = unit is units.units()["ought"]
        return f"{value:.0f}/0" if ought else gauge_name(f"{value:g}")
    if unit.dim == "GROUP":
        return f"{value:g}"
    if unit.dim == "GRAVITY":
        return value / 1000 if value > 100 else value
    if PAIR.fullmatch(number) and unit.dim in ("NUM", "VOLT"):
        return value / 100  # "twelve sixty five" on a meter
    if unit.thousands and EUROPEAN.fullmatch(number):
        return value * 1000
    if unit.dim == "VOLT" and GROUPED.fullmatch(number):
        return value / 1000
    if any("below" in token or "frost" in token for token in others):
        return -abs(value)
    return value


def joined(pieces: Sequence[Any], between: bool = False) -> Iterator[Part]:
    """The parts of amounts with joiners between them: ranges become one part, all else stays apart."""
    amounts: list[Amount] = list(pieces[::2])
    joiners: list[Token] = list(pieces[1::2])
    _share_units(amounts, joiners)
    at = 0
    while at < len(amounts):
        if at < len(joiners) and _is_range(amounts[at], joiners[at], amounts[at + 1], between):
            yield from _range(amounts[at], amounts[at + 1])
            at += 2
        else:
            yield from _alone(amounts[at])
            at += 1
        if at <= len(joiners) and at > 0 and at < len(amounts):
            yield part("word" if joiners[at - 1].isalpha() else "mark", joiners[at - 1])


def _share_units(amounts: list[Amount], joiners: list[Token]) -> None:
    """Gives a unit said once to the numbers joined to it: "12 or 24 V", "330 x 172 x 215 mm", "5 or 600 A"."""
    for at in range(len(joiners) - 1, -1, -1):
        one, other, how = amounts[at], amounts[at + 1], joiners[at].type
        if one.unit is PLAIN and other.unit is not PLAIN and (how != "BY" or other.unit.dim in LENGTHS):
            one.unit = other.unit
            one.value = _value(one.number, one.unit, ())
        elif other.unit is PLAIN and one.unit is not PLAIN and (how in ("TO", "OR") or one.unit.dim in LENGTHS):
            other.unit = one.unit
            other.value = _value(other.number, other.unit, ())
        elif other.unit is PLAIN and how == "BY" and one.unit is not PLAIN:
            other.unit = COUNT
        if how == "OR" and isinstance(one.value, float) and isinstance(other.value, float):
            if 0 < one.value < 10 and other.value % 100 == 0 and one.value * 100 < other.value < 1000:
                one.value *= 100  # "5 or 600 amps"


def _is_range(low: Amount, joiner: Token, high: Amount, between: bool) -> bool:
    if joiner.type not in ("TO", "OR") and not (between and joiner.type == "AND"):
        return False
    if low.unit.dim != high.unit.dim or not isinstance(low.value, float) or not isinstance(high.value, float):
        return False
    if low.unit.name != high.unit.name:
        return False
    return low.value < high.value and not (low.value in NOMINAL and high.value in NOMINAL and low.unit.dim in ("VOLT", "NUM"))


def _range(low: Amount, high: Amount) -> Iterator[Part]:
    span = (low.start, high.end)
    ends = tuple(
        Quantity(one.value, one.unit.name, one.unit.kind, "", span, bound) for one, bound in ((low, "low"), (high, "high"))
    )
    yield Part("quantity", "", span, low.unit.dim, ends)
    yield from high.rest


def _alone(amount: Amount) -> Iterator[Part]:
    yield measured(amount.value, amount.unit, amount.start, amount.end)
    yield from amount.rest
