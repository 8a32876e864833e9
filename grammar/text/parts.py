"""Cuts a text into parts: quantities with their units, counts, numbers that are no quantities, words and marks."""

from __future__ import annotations

import contextlib
import re
from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from typing import Any

from lark import Lark

from grammar.files import TABLES, cache_dir
from grammar.reading import Part, Quantity
from grammar.text import bare, numbers, units
from grammar.text.bare import speaks_of_hydrometer
from grammar.text.cutter import Cutter
from grammar.text.neighbours import kinds, with_kind
from grammar.text.scanner import SharingLexer

PLAIN = str.maketrans("μ−–‐‑‒—’‘´`′ʼ“”″„×✕✖\t\r\u00a0\u202f\u2009\u2007", "µ------''''''\"\"\"\"xxx      ")

Mend = tuple[int, int, str]  # from, to, what is meant

CAPITAL = re.compile(r"(?<=[0-9] )A\b(?!\.)(?! ?\(?(?i:en|sae|cca|mca|ca)\b)")  # "340 A" is amperes, "340 a" an article


def parts(text: str, mends: Sequence[Mend] = ()) -> tuple[Part, ...]:
    """The parts of any text, in order and without gaps but for spaces. Raises nothing.

    `mends` are words with slips, in order: where each stands and what is meant. The parts stand where they were typed.
    """
    plain, places = _with(lowered(text), mends)
    found: list[Part] = _parser().parse(plain)  # type: ignore[assignment]
    if '"' in plain or "'" in plain:
        found = bare.unquoted(plain, found)
    hydrometer = speaks_of_hydrometer(plain)
    settled = [_settled(plain, found, at, hydrometer) for at in range(len(found))]
    if mends:
        settled = [replace(part, span=(places[part.span[0]], places[part.span[1]])) for part in settled]
    return tuple([_whole(text, part) for part in settled])


def _with(plain: str, mends: Sequence[Mend]) -> tuple[str, list[int]]:
    """The text with words mended, and where each of its characters, and its end, stood before."""
    pieces, places, at = [], [], 0
    for start, end, word in mends:
        after = word + " " if plain[end : end + 1].isalpha() else word  # two words without a space between
        pieces += [plain[at:start], after]
        places += [*range(at, start), *(min(start + offset, end) for offset in range(len(after)))]
        at = end
    if not mends:
        return plain, places
    places += range(at, len(plain) + 1)
    return "".join([*pieces, plain[at:]]), places


def _settled(plain: str, found: list[Part], at: int, hydrometer: bool) -> Part:
    """The part, with what only the words around it tell."""
    part = found[at]
    if part.dim == "NUM":
        return bare.settled(plain, found, at, hydrometer)
    if part.dim == "NICKNAME":
        return bare.nickname(plain, found, at)
    return with_kind(plain, part) if part.dim in kinds() else part


def _whole(text: str, part: Part) -> Part:
    """The part with its text put in."""
    said = text[part.span[0] : part.span[1]]
    quantities = tuple([Quantity(one.value, one.unit, one.kind, said, part.span, one.bound) for one in part.quantities])
    return Part(part.kind, said, part.span, part.dim, quantities)


def lowered(text: str) -> str:
    """The text in small letters with plain dashes, quotes and spaces, each character in its place."""
    small = text.lower()
    if len(small) != len(text):
        small = "".join(low if len(low := sign.lower()) == 1 else sign for sign in text)
    if not (small.isascii() and small.isprintable()):
        small = small.translate(PLAIN)
    if " A" in text and not text.isupper():
        for capital in CAPITAL.finditer(text):
            small = f"{small[: capital.start()]}A{small[capital.end() :]}"
    return small


def grammar() -> str:
    """The quantities grammar with its pieces and the spellings of numbers and units put in."""
    text = (TABLES / "quantities.lark").read_text(encoding="utf-8")
    pieces = dict(re.findall(r"^// <(\w+)> = (.*)$", text, re.MULTILINE))
    made = {"number": numbers.pattern(), "start": numbers.start(), "unit": units.pattern(), "label": units.labels()}
    pieces |= {name: pattern.replace("/", r"\/") for name, pattern in made.items()}
    rules = re.sub(r"^//.*$", "", text, flags=re.MULTILINE)
    return re.sub(r"<(\w+)>", lambda piece: pieces[piece[1]], rules)


@cache
def _parser() -> Lark:
    """The parser; its tables are kept in the user's cache, as building them takes a while."""
    options: dict[str, Any] = {"parser": "lalr", "transformer": Cutter(), "maybe_placeholders": False}
    options["_plugins"] = {"ContextualLexer": SharingLexer}
    with contextlib.suppress(OSError):
        cache_dir().mkdir(parents=True, exist_ok=True)
        return Lark(grammar(), cache=str(cache_dir() / "quantities.lark.cache"), **options)
    return Lark(grammar(), **options)
