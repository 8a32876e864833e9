"""Runs the group grammar over a row of items: which head a quantity stands beside, and whether a word ties it there."""
from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from grammar.scene import Item, Sides

LINKS = frozenset(
    "is are was were draws draw takes take uses use pulls pull gives give has says say reads rated puts delivers needs its "
    "took averages eats wants runs outputs does output pushes = :".split()
)
FILLERS = frozenset(
    "a an the with my it be i have had got in to that this his her our your about around roughly approx some each only "
    "one ones just really out up me now new existing w nominal big little small single same own good spare of at by only "
    "old standard max maximum or so worth called kind type sort ( ) ~ ≈ -".split()
)


DESCRIBE = frozenset({"battery.chemistry", "battery.duty", "battery.nominal", "bank.layout"})  # values said of a battery


@dataclass(frozen=True, slots=True)
class Head:
    """A head by its place, and what follows it: a run of its own, the next head, or nothing."""

    place: int
    tail: Run | Head | None


@dataclass(frozen=True, slots=True)
class Run:
    """A run of quantities and values by their places, and the head after it."""

    mods: tuple[int, ...]
    right: Head | None
    tied: bool = False


class _Build:
    """The parser's callbacks: they build chains of heads and runs, and keep nothing."""

    def start(self, children: list[Any]) -> list[Run | Head]:
        return [child for child in children if child is not None]

    def mods(self, children: list[Any]) -> tuple[int, ...]:
        return tuple(token.start_pos for token in children)

    def headed(self, children: list[Any]) -> Head:
        return Head(children[0].start_pos, children[1])

    def loose(self, children: list[Any]) -> Run:
        return Run(children[0], children[1])

    held = loose

    def linked(self, children: list[Any]) -> Run:
        return Run(children[0], children[1], tied=True)

    def piece(self, children: list[Any]) -> Any:
        return children[0] if children else None

    closer = tail = after = piece


@cache
def parser(strict: bool = False) -> Any:
    """The parser of questions.lark; a test builds it strict, where a conflict is an error."""
    from lark import Lark
    from lark.lexer import Lexer

    class Row(Lexer):
        """The items are the tokens already."""

        def __init__(self, conf: Any) -> None:
            pass

        def lex(self, data: Any) -> Iterator[Any]:
            return iter(data)

    grammar = Path(__file__).with_name("questions.lark").read_text(encoding="utf-8")
    return Lark(grammar, parser="lalr", lexer=Row, transformer=_Build(), strict=strict)


def groups(items: list[Item]) -> dict[int, Sides]:
    """The sides of every quantity and value, by its place in the row. Any row parses."""
    from lark import Token

    row = [Token(kind, "", item.at) for item in items if (kind := _kind(item))]
    row.append(Token("_BREAK", "", len(items)))
    sides: dict[int, Sides] = {}
    for piece in parser().parse(row):
        left: Head | None = None
        node: Head | Run | None = piece
        while node is not None:
            if isinstance(node, Head):
                left, node = node, node.tail
                continue
            for place in node.mods:
                sides[place] = Sides(_item(items, left), _item(items, node.right), node.tied)
            left, node = None, node.right
    return sides


def _item(items: list[Item], head: Head | None) -> Item | None:
    return None if head is None else items[head.place]


def _kind(item: Item) -> str:
    if item.dim or item.kind in ("times", "series"):
        return "MOD"
    if item.head:
        return "HEAD"
    if item.kind == "value":
        return "MOD" if item.fact in DESCRIBE else "_BREAK"
    if item.name in LINKS:
        return "_LINK"
    return "" if item.name in FILLERS else "_BREAK"
