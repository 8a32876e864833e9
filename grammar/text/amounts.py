"""What numbers and units beside each other mean: amounts, ranges, sizes, readings behind a label."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lark import Token

from grammar.reading import Part, Quantity
from grammar.text import numbers, units
from grammar.text.standard import NOMINAL
from grammar.text.units import Unit

PLAIN = Unit("", "NUM", "", "", 1.0, 0.0, False)
COUNT = Unit("", "COUNT", "count", "", 1.0, 0.0, False)
RATE = Unit("", "CRATE", "", "", 1.0, 0.0, False)
SYSTEMS = NOMINAL | {32.0}  # an old system of North America
LENGTHS = frozenset({"LENGTH", "INCH", "MM"})
LIKELY = {  # a label is one only for such values
    "CCA": (40, 5000),
    "CA": (40, 6000),
    "RC": (10, 1000),
    "GAUGE": (0, 40),
    "GROUP": (20, 100),
    "GRAVITY": (0.9, 1.4),
}
EUROPEAN = re.compile(r"[0-9]{1,3}\.[0-9]{3}")
GROUPED = re.compile(r"[0-9]{2},[0-9]{3}")
PAIR = re.compile(
    r"(?:ten|eleven|twelve|thirteen|fourteen)[ -][a-z]+ty(?:[ -][a-z]+)?"
    r"|(?:ten|eleven|twelve|thirteen|fourteen)[ -]oh[ -][a-z]+"
    r"|(?:eleven|twelve|thirteen)[ -](?:ten|eleven|[a-z]+teen)"
)
SPECIFIC = re.compile(r"1[.,][0-3][0-9]{2}")  # a gravity
READ_OFF = re.compile(r"1[0-5][.,][0-9]{1,2}")  # volts of a meter, beside hours of rest
THROUGH = frozenset({"thru", "through"})
COLD = re.compile(r"1[.,][0-3][0-9]{1,2}")  # what stands before a temperature and is none
MOST_VOLTS = 60
MOST_INCHES = 72
MOST_COUNTED = 4
VERB = re.compile(r"\b(?:is|was|are|reads?|says?|only|at|reading)\b")


@dataclass(slots=True)
class Amount:
    """A number, its unit if there is one, and where both stand. `rest` are parts that follow ("per day")."""

    number: Token
    unit: Unit
    start: int
    end: int
    rest: tuple[Part, ...] = ()
    value: float | str = 0.0
    measure: Token | None = None  # the unit that repeats what a label says


def place(token: Token) -> tuple[int, int]:
    """Where a token stands."""
    assert token.start_pos is not None
    assert token.end_pos is not None
    return token.start_pos, token.end_pos


def measured(value: float | str, unit: Unit, span: tuple[int, int], kind: str = "quantity") -> Part:
    """A part with one quantity. Its text is put in at the end."""
    return Part(kind, "", span, unit.dim, (Quantity(value, unit.name, unit.kind, "", span),))


def amount(number: Token, *others: Token) -> Amount:
    """A number with the unit after it, and "per day" where that follows."""
    unit, span, rest = PLAIN, place(number), []
    said = ""
    for token in others:
        if token.type == "PER":
            rest.append(_each(number, unit, token))
        elif (meant := _meant(number, token)) is PLAIN:
            rest.append(Part("word", "", place(token)))
        else:
            unit, said, span = meant, str(token), (span[0], place(token)[1])
    value = worth(number, unit)
    if ("below" in said or "frost" in said) and isinstance(value, float):
        value = -abs(value)
    return Amount(number, unit, *span, tuple(rest), value)


def reading(number: Token, measure: Token | None = None) -> Amount:
    """The number behind a label, with the unit that repeats what the label says."""
    rest = (Part("word", "", place(measure)),) if measure else ()
    return Amount(number, PLAIN, place(number)[0], place(measure or number)[1], rest, measure=measure)


def labelled(label: Token, *pieces: Amount | Token) -> Iterator[Part]:
    """The amounts behind a label: "CCA: 640". The label is only a word where the value is unlikely."""
    word = re.match(units.labels(), label)
    assert word
    unit = units.named(word.group(), "label")
    amounts = [piece for piece in pieces if isinstance(piece, Amount)]
    for one in amounts:
        one.value, one.unit = worth(one.number, unit), unit
    meter = unit.dim == "GAUGE" and VERB.search(label)  # "the gauge says 12"
    drawn = unit.dim == "RC" and any(one.measure and units.named(one.measure).dim == "AMP" for one in amounts)
    if meter or drawn or not all(_likely(one) for one in amounts):  # "RC: 25 A for 120 minutes"
        for one in amounts:
            _take_back(one)
        yield Part("word", "", place(label))
    else:
        amounts[0].start = place(label)[0]
        for one in amounts:
            one.rest = ()  # what is measured belongs to the quantity
    yield from joined(pieces)


def _take_back(one: Amount) -> None:
    """Makes an amount of its own of a number that is not the label's: "cable gauge 120 A"."""
    unit = units.named(one.measure) if one.measure else PLAIN
    if unit.dim in ("AMP", "TIME"):
        one.unit, one.rest = unit, ()
    else:
        one.unit, one.end = PLAIN, place(one.number)[1]
    one.value = worth(one.number, one.unit)


def joined(pieces: Sequence[Amount | Token], between: bool = False) -> Iterator[Part]:
    """The parts of amounts with joiners between them: a range becomes one part, all else stays apart."""
    amounts = [piece for piece in pieces if isinstance(piece, Amount)]
    joiners = [piece for piece in pieces if isinstance(piece, Token)]
    if joiners:
        _share_units(amounts, joiners)
    at = 0
    while at < len(amounts):
        one = amounts[at]
        if at < len(joiners) and _is_range(one, joiners[at], amounts[at + 1], between):
            at += 1
            yield span_of(one, amounts[at])
        else:
            yield measured(one.value, one.unit, (one.start, one.end))
        yield from amounts[at].rest
        if at < len(joiners):
            yield Part("word" if joiners[at].isalpha() else "mark", "", place(joiners[at]))
        at += 1


def span_of(low: Amount, high: Amount) -> Part:
    """The part of a range: two quantities of one span."""
    span = (low.start, high.end)
    first = Quantity(low.value, low.unit.name, low.unit.kind, "", span, "low")
    second = Quantity(high.value, high.unit.name, high.unit.kind, "", span, "high")
    return Part("quantity", "", span, low.unit.dim, (first, second))


def worth(number: Token, unit: Unit) -> float | str:
    """The value of a number of this unit; text for a gauge and a case."""
    value = numbers.value(number)
    if not math.isfinite(value):
        return 0.0
    if unit is PLAIN or unit.dim in ("VOLT", "GRAVITY"):
        return _read_off(number, value, unit.dim)
    if unit.dim == "GAUGE":
        return f"{abs(value):.0f}/0" if unit is units.units()["ought"] else gauge_name(f"{abs(value):g}")
    if unit.dim == "GROUP":
        return f"{value:g}"
    return value * 1000 if unit.thousands and EUROPEAN.fullmatch(number) else value


def _likely(one: Amount) -> bool:
    """Whether a value is one that its label may have."""
    low, high = LIKELY[one.unit.dim]
    return low <= (numbers.value(one.number) if isinstance(one.value, str) else one.value) <= high


def _read_off(number: Token, value: float, dim: str) -> float:
    """A value as read off a meter or hydrometer: "twelve sixty five" is 12.65, "12,650 V" too, and 1265 is 1.265."""
    if dim == "GRAVITY":
        return value / 1000 if value > 100 else value
    if number[0] in "etf" and PAIR.fullmatch(number):
        return value / 100
    return value / 1000 if dim == "VOLT" and GROUPED.fullmatch(number) else value


def gauge_name(size: str) -> str:
    """A gauge as the tables name it: "00" is 2/0, "0" is 1/0."""
    return f"{len(size)}/0" if set(size) == {"0"} else size.lstrip("0")


def _meant(number: Token, said: Token) -> Unit:
    """The unit after a look at its number: "0.2C" is a charging rate, "20 below" needs a whole number."""
    unit = units.named(said)
    if unit.name == "degree_Celsius":
        if said == "c" and re.fullmatch(r"0?[.,][0-9]+", number):
            return RATE
        if said.startswith("below") and not re.fullmatch("[a-z -]+|[0-9]{1,2}", number):
            return PLAIN
    if said == "in" and (numbers.value(number) > MOST_INCHES or SPECIFIC.fullmatch(number.strip())):
        return PLAIN  # "put a 300 in?", "1.250 in each cell"
    return unit


def _each(number: Token, unit: Unit, said: Token) -> Part:
    """ "4 hours a day" is a rate, but "13.1 an hour after" a time of its own."""
    article, _, every = said.partition(" ")
    read = unit is PLAIN and article == "a" and "." in number
    if every and (read or (article == "an" and (unit is PLAIN or unit.dim == "VOLT"))):  # "12.9 V an hour off charge"
        return measured(1.0, units.named(every), place(said))
    return Part("word", "", place(said))


def _share_units(amounts: list[Amount], joiners: list[Token]) -> None:
    """Gives a unit said once to the numbers joined to it: "12 or 24 V", "330 x 172 x 215 mm", "5 or 600 A"."""
    for at in range(len(joiners) - 1, -1, -1):
        one, other, how = amounts[at], amounts[at + 1], joiners[at].type
        plain = numbers.value(one.number) if one.unit is PLAIN else 0.0
        cold = plain < 0 and other.unit.dim in ("CCA", "CA", "AH")  # "-6 and 640 CCA"
        if cold or _ends_at_dash(one, joiners[at], other):
            continue
        if other.unit.dim == "VOLT" and not 0 <= plain < MOST_VOLTS:
            continue  # "110 and 12 volt", "minus 6 and 12.3 volts"
        if joiners[at].lower() in THROUGH and isinstance(other.value, float) and plain > other.value:
            continue  # "260 through 6 m": what flows
        if other.unit.dim == "TEMP" and COLD.fullmatch(one.number.strip()):
            continue  # "1.225 / 15 C"
        if other.unit.dim == "TIME" and READ_OFF.fullmatch(one.number.strip()):
            continue  # "12.28 / 12h rest"
        if one.unit is PLAIN and other.unit is not PLAIN and (how != "BY" or other.unit.dim in LENGTHS):
            one.unit, one.value = other.unit, worth(one.number, other.unit)
        elif other.unit is PLAIN and one.unit is not PLAIN:
            _pass_on(one, other, how, len(joiners))
        if how == "OR" or joiners[at] == "-":
            _complete(one, other)


def _ends_at_dash(one: Amount, joiner: Token, other: Amount) -> bool:
    """Whether a dash parts what was said: "the old one - 95 Ah"."""
    return joiner == "-" and one.number.strip() == "one" and other.number[0].isdigit()


def _pass_on(one: Amount, other: Amount, how: str, joiners: int) -> None:
    """The unit before goes for the number after: "12 V to 14", "12 inches by 7"; but "1.5 m x 2" counts."""
    if (
        how == "TO"
        and one.unit.dim == "AMP"
        and numbers.value(other.number) <= MOST_COUNTED < numbers.value(one.number)
    ):
        return  # "40 A to two banks"
    flat = one.unit.dim in ("INCH", "MM") or (one.unit.dim == "LENGTH" and joiners > 1)
    if how in ("TO", "OR") or (how == "BY" and flat):
        other.unit, other.value = one.unit, worth(other.number, one.unit)
    elif how == "BY":
        other.unit = COUNT


def _complete(low: Amount, high: Amount) -> None:
    """Makes hundreds of the first number in "5 or 600 amps" and "3-400 A"."""
    small, large = low.value, high.value
    if isinstance(small, float) and isinstance(large, float) and 0 < small < 10 and large % 100 == 0:
        low.value = small * 100 if small * 100 < large < 1000 else small


def _is_range(low: Amount, joiner: Token, high: Amount, between: bool) -> bool:
    if joiner.type not in ("TO", "OR") and not (between and joiner.type == "AND"):
        return False
    if (low.unit.dim, low.unit.name) != (high.unit.dim, high.unit.name):
        return False
    if not isinstance(low.value, float) or not isinstance(high.value, float):
        return False
    system = low.unit.dim in ("VOLT", "NUM") and {low.value, high.value} <= SYSTEMS  # "12 to 24 V" is no range
    return low.value < high.value and not system
