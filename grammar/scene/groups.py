"""Runs the group grammar over a row of items: which head a quantity stands beside, and whether a word ties it there."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Any

from grammar.files import TABLES
from grammar.lexicon.vocabulary import small_words
from grammar.scene.items import Item
from grammar.scene.scene import Sides
from grammar.text.lalr import parser

if TYPE_CHECKING:
    from lark import Lark

LINKS = small_words("link") | {"=", ":"}
FILLERS = small_words("filler") | {"(", ")", "~", "≈", "-"}


HEAD, MOD, LINK, BREAK = "h", "m", "l", "."
DESCRIBE = frozenset(
    {"battery.chemistry", "battery.duty", "battery.nominal", "bank.layout"}
)  # values said of a battery


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


class Build:
    """The parser's callbacks, one a rule: they build chains of heads and runs, and keep nothing."""

    def start(self, children: list[Any]) -> list[Run | Head]:
        """The chains of the whole row."""
        return [child for child in children if child is not None]

    def mods(self, children: list[Any]) -> tuple[int, ...]:
        """The places of a run."""
        return tuple(token.start_pos for token in children)

    def headed(self, children: list[Any]) -> Head:
        """A head and what follows it."""
        return Head(children[0].start_pos, children[1])

    def loose(self, children: list[Any]) -> Run:
        """A run with no head before it, or with one beside it."""
        return Run(children[0], children[1])

    held = loose

    def linked(self, children: list[Any]) -> Run:
        """A run that a word ties to the head before."""
        return Run(children[0], children[1], tied=True)

    def piece(self, children: list[Any]) -> Any:
        """What stands there, or nothing."""
        return children[0] if children else None

    closer = tail = after = piece


def rules() -> str:
    """The text of the group grammar."""
    return (TABLES / "groups.lark").read_text(encoding="utf-8")


@cache
def _parser() -> Lark:
    return parser("groups", rules(), Build())


def groups(items: list[Item]) -> dict[int, Sides]:
    """The sides of every quantity and value, by its place in the row. Any row parses."""
    pieces = [(kind, item.at) for item in items if (kind := _kind(item))]
    places = [at for _, at in pieces]
    row = "".join(kind for kind, _ in pieces) + BREAK
    chains: list[Head | Run] = _parser().parse(row)  # type: ignore[assignment]
    sides: dict[int, Sides] = {}
    for piece in chains:
        left: Head | None = None
        node: Head | Run | None = piece
        while node is not None:
            if isinstance(node, Head):
                left, node = node, node.tail
                continue
            for place in node.mods:
                sides[places[place]] = Sides(_item(items, places, left), _item(items, places, node.right), node.tied)
            left, node = None, node.right
    return sides


def _item(items: list[Item], places: list[int], head: Head | None) -> Item | None:
    return None if head is None else items[places[head.place]]


def _kind(item: Item) -> str:
    if item.dim or item.kind in ("times", "series"):
        return MOD
    if item.head:
        return HEAD
    if item.kind == "value":
        return MOD if item.fact in DESCRIBE else BREAK
    if item.name in LINKS:
        return LINK
    return "" if item.name in FILLERS else BREAK
