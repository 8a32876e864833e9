"""What the terminals and rules of the quantities grammar mean: each becomes one part or a few."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from lark import Token, Transformer

from grammar.reading import Part
from grammar.text import numbers, units
from grammar.text.amounts import (
    COUNT,
    PLAIN,
    Amount,
    amount,
    gauge_name,
    joined,
    labelled,
    measured,
    place,
    reading,
    span_of,
)
from grammar.text.units import Unit

STUD = Unit("", "STUD", "stud_size", "", 1.0, 0.0, False)
NICKNAME = Unit("", "NICKNAME", "", "", 1.0, 0.0, False)
OUGHTS = {"single": "1/0", "double": "2/0", "triple": "3/0", "quad": "4/0", "quadruple": "4/0"} | {
    **{"one": "1/0", "two": "2/0", "three": "3/0", "four": "4/0"},  # "two slash zero"
    **{str(number): f"{number}/0" for number in range(1, 5)},
}
SHARES = {
    "three": 0.75,
    "two": 2 / 3,
    "quarter": 0.25,
    "third": 1 / 3,
    "half": 0.5,
    "couple": 2.0,
    "fifth": 0.2,
    "tenth": 0.1,
    "twentieth": 0.05,
    "sixth": 1 / 6,
    "eighth": 0.125,
    "fiftieth": 0.02,
    "hundredth": 0.01,
}
MARINE = re.compile(r"(?<=[0-9]{2})M$")  # "31M" is a 31
TIMES_SIGN = re.compile(r"^x ?| ?(?:x|\*|nos?\.?|off)$")
CODE = re.compile(r"[\w./-]*[0-9][\w./ -]*$")
MOST_PAGES = 20  # "battery 2", "page 14"; but "battery 100" is a size


def word(token: Token) -> Part:
    """A word without the space behind it."""
    start, _ = place(token)
    return Part("word", "", (start, start + len(token.rstrip())))


def mark(token: Token) -> Part:
    """A mark, or a run of the same one."""
    return Part("mark", "", place(token))


def noise(token: Token) -> Part:
    """Money, a date, a code: numbers that are no quantities."""
    return Part("noise", "", place(token))


def series(token: Token) -> Part:
    """ "2s2p": how cells are joined."""
    return Part("series", "", place(token))


def numbered(token: Token) -> list[Part]:
    """ "order no 100482": the word and its number."""
    start, end = place(token)
    found = CODE.search(token)
    at = start + (found.start() if found else 0)
    if at == start:
        return [noise(token)]
    return [Part("word", "", (start, at)), Part("noise", "", (at, end))]


def times(token: Token) -> Part:
    """ "2 x", "x2", "two off"."""
    return measured(numbers.value(TIMES_SIGN.sub("", token)), COUNT, place(token), "times")


def pair(token: Token) -> Part:
    """ "a pair of"."""
    return measured(2.0, COUNT, place(token))


def nickname(token: Token) -> Part:
    """ "31s", "12s": batteries by their case or volts, or just seconds; the words around tell."""
    return measured(float(token.rstrip("s'")), NICKNAME, place(token))


def split(token: Token) -> Part:
    """ "12v6" is 12.6 V, "5m50" 5.5 m."""
    if "m" in token:
        return measured(float(token.replace("m", ".")), units.units()["meter"], place(token))
    return measured(float(token.replace("v", ".")), units.units()["volt"], place(token))


def feet(token: Token) -> Part:
    """Feet and inches as feet."""
    whole, inches = re.findall(r"[0-9]+(?:\.[0-9]+)?", token)
    half = 0.5 if "½" in token else 0.0
    return measured(float(whole) + (float(inches) + half) / 12, units.units()["foot"], place(token))


def hours(token: Token) -> Part:
    """ "1h30", "2 min 30 s" as hours or minutes."""
    large, small = re.findall("[0-9]+", token)
    unit = units.units()["hour" if "h" in token else "minute"]
    return measured(float(large) + float(small) / 60, unit, place(token))


def halves(token: Token) -> Part:
    """ "month and a half", its article left out."""
    return measured(1.5, units.named(token.partition(" ")[0]), place(token))


def gauge(token: Token) -> Part:
    """ "2/0", "0/2", "#2", "double ought", "two slash zero", "number six"."""
    ought = OUGHTS.get(token.partition(" ")[0])
    if token.startswith("0/"):
        ought = f"{token[2]}/0"
    size = (
        ought
        or (re.findall(r"[1-4]/0|[0-9]+", token) or [f"{numbers.value(token.removesuffix(' awg').split()[-1]):g}"])[0]
    )
    return measured(gauge_name(size), units.units()["awg"], place(token))


def stud(token: Token) -> Part:
    """ "M8", "M-8", "3/8-16"."""
    size = token.upper().replace("M-", "M").replace("X", "x")
    return measured(re.sub(r"[\s\"']", "", size), STUD, place(token))


def case(token: Token) -> Part:
    """ "group 31", "8D"."""
    size = re.search(r"(?:GC|U|LN?|H)?[0-9]+[A-RT-Z]*", re.sub("SERIES|SIZE", "", token.upper()).replace("EIGHT ", "8"))
    assert size
    return measured(MARINE.sub("", size.group()), units.units()["group"], place(token))


NOISE: dict[str, Callable[[Token], Part | list[Part]]] = dict.fromkeys(
    ("LINK", "MONEY", "DATE", "CLOCK", "PHONE", "ORDINAL", "CODED", "STANDARD"), noise
)
ALONE: dict[str, Callable[[Token], Part | list[Part]]] = NOISE | {
    "WORD": word,
    "EVERY": word,
    "MARK": mark,
    "NUMBERED": numbered,
    "SERIES": series,
    "TIMES": times,
    "PAIR": pair,
    "SPLIT": split,
    "FEET": feet,
    "HOURS": hours,
    "HALVES": halves,
    "STUD": stud,
    "CASE": case,
    "GAUGE": gauge,
    "NICKNAME": nickname,
}


class Cutter(Transformer[Token, Any]):
    """Turns the rules into parts while the text is parsed. The texts of the parts are put in afterwards."""

    def start(self, pieces: list[Any]) -> list[Part]:
        """All parts in a row."""
        found: list[Part] = []
        for piece in pieces:
            parts = ALONE[piece.type](piece) if isinstance(piece, Token) else piece
            if isinstance(parts, Part):
                found.append(parts)
            else:
                found.extend(parts)
        return found

    def amount(self, tokens: list[Token]) -> Amount:
        """A number, its unit, "per day"."""
        return amount(*tokens)

    def reading(self, tokens: list[Token]) -> Amount:
        """A number behind a label."""
        return reading(*tokens)

    def labelled(self, pieces: list[Any]) -> list[Part]:
        """A label and its numbers."""
        return list(labelled(*pieces))

    def amounts(self, pieces: list[Any]) -> list[Part]:
        """Amounts with joiners between, perhaps behind "between" or "battery"."""
        if isinstance(pieces[0], Amount):
            return list(joined(pieces))
        before, *rest = pieces
        if before.type == "REFERENCE" and rest[0].unit is PLAIN and float(rest[0].value) <= MOST_PAGES:
            found = [word(before)]
            for one in rest:
                found += [word(one)] if isinstance(one, Token) else [*_counted_off(one), *one.rest]
            return found
        return [word(before), *joined(rest, between=before.type == "BETWEEN")]

    def share(self, tokens: list[Token]) -> list[Part]:
        """ "half an hour", "a week", "an hour and a half", "an hour or two"; words where no unit follows."""
        first, *others = tokens
        if not others or others[0].startswith("below"):
            return [word(token) for token in tokens]
        unit, start, end = units.named(others[0]), place(first)[0], place(others[-1])[1]
        if others[-1].type == "PER":
            return [*self.share(tokens[:-1]), word(others[-1])]
        value = _share(first)
        if len(others) > 1 and others[1].startswith("or"):
            return [span_of(*(Amount(first, unit, start, end, (), float(one)) for one in (1, 2)))]
        return [measured(value + (_share(others[1]) if len(others) > 1 else 0.0), unit, (start, end))]


def _counted_off(one: Amount) -> list[Part]:
    """The number of a battery or page as noise; "battery one and 12.75" goes on with a reading."""
    span, value = (one.start, one.end), one.value
    if one.unit is PLAIN and not isinstance(value, str) and value == int(value) and value <= MOST_PAGES:
        return [Part("noise", "", span)]
    return [measured(value, one.unit, span)]


def _share(text: str) -> float:
    return next((value for said, value in SHARES.items() if said in text), 1.0)
