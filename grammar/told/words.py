"""What many ways of telling share: where a sentence ends, whether a figure ends what is said, the text before it."""

from __future__ import annotations

from collections.abc import Container

from grammar.reading import Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

SENTENCE = regex(r"[.?!;](?= |$)")
BREAK = regex(r"[?!;]|\.(?!\d)")


def stops(scene: Scene, item: Item, more: Container[str] = ()) -> bool:
    """Whether nothing goes on after a figure: its text ends there, or a mark stands, or one of these words."""
    after = scene.after(item)
    return after is None or after.kind == "mark" or after.name in more


def ahead_of(scene: Scene, item: Item) -> str:
    """The text that stands before a figure."""
    return scene.ahead(scene.span(item.start, item.end)[0])


def stated_at(scene: Scene, fact: str, value: float | str, start: int, end: int) -> Stated:
    """A fact that the words from one to another tell."""
    span = scene.span(start, end)
    unit = "ampere" if fact == "load.current" else ""
    return Stated(fact, value, unit, scene.text[slice(*span)], span, how="default")
