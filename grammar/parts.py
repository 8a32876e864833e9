"""Cuts a text into parts: quantities with their units, counts, numbers that are no quantities, words and marks."""
from __future__ import annotations

import contextlib
import re
from functools import cache
from pathlib import Path
from typing import Any

from lark import Lark

from grammar import numbers, units
from grammar.amounts import Cutter
from grammar.files import cache_dir
from grammar.neighbours import settle
from grammar.reading import Part

PLAIN = str.maketrans("−–‐‑‒—’‘´`′ʼ“”″„×✕✖\t\r\u00a0\u202f\u2009\u2007", "------''''''\"\"\"\"xxx      ")

CAPITAL = re.compile(r"(?<=[0-9] )A\b(?!\.)")  # "340 A" is amperes, "340 a" may be an article


def parts(text: str) -> tuple[Part, ...]:
    """The parts of any text, in order and without gaps but for spaces. Raises nothing."""
    plain = lowered(text)
    found: list[Part] = _parser().parse(plain)  # type: ignore[assignment]
    return settle(text, plain, found)


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
    text = Path(__file__).with_name("quantities.lark").read_text(encoding="utf-8")
    pieces = dict(re.findall(r"^// <(\w+)> = (.*)$", text, re.MULTILINE))
    made = {"number": numbers.pattern(), "start": numbers.start(), "unit": units.pattern(), "label": units.labels()}
    pieces |= {name: pattern.replace("/", r"\/") for name, pattern in made.items()}
    rules = re.sub(r"^//.*$", "", text, flags=re.MULTILINE)
    return re.sub(r"<(\w+)>", lambda piece: pieces[piece[1]], rules)


@cache
def _parser() -> Lark:
    """The parser; its tables are kept in the user's cache, as building them takes a while."""
    options: dict[str, Any] = {"parser": "lalr", "lexer": "contextual", "transformer": Cutter(), "maybe_placeholders": False}
    with contextlib.suppress(OSError):
        cache_dir().mkdir(parents=True, exist_ok=True)
        return Lark(grammar(), cache=str(cache_dir() / "quantities.lark.cache"), **options)
    return Lark(grammar(), **options)
