"""Whose size is told, the stud's or the lug's: of two the stud's comes first, wherever it stands in the message."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from grammar.reading import Span, Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.bare import as_inches

SIZE = "terminal.size"
LUGS = frozenset(["lug", "lugs", "ring", "rings", "eye", "eyes", "hole", "holes", "connector", "connectors"])
STUDS = frozenset(["stud", "studs", "post", "posts", "bolt", "bolts", "pole", "poles"])
WORD = re.compile(r"[a-z]+(?:\d+)?|\d+(?:/\d+)?|[,.;:?!]")
FAR = 150  # characters
FARTHEST, BREAK = 8, 3  # words: what is further away names nothing; a mark or another size counts for three


def studs_first(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts, the size of the stud as the first and that of the lug as the second: "M8 lug on a 3/8 stud"."""
    sizes = [item for item in stated if item.fact == SIZE]
    if len(sizes) == 2 and leaning(scene.text, sizes[0].span) > leaning(scene.text, sizes[1].span):
        return [replace(item, of=3 - item.of) if item.fact == SIZE else item for item in stated]
    told = any(old.fact == SIZE and old.of == 1 for old in scene.said)
    if len(sizes) == 1 and told and leaning(scene.text, sizes[0].span) > 0:  # "my lugs are M10"
        return [replace(item, of=2) if item.fact == SIZE else item for item in stated]
    return stated


def another_stud(item: Item, said: Sequence[Stated]) -> str | None:
    """The size that a bare fraction tells after another one was told: "3/8?" after M8 posts; None for none."""
    if isinstance(item.quantity.value, str) or not any(old.fact == SIZE for old in said):
        return None
    return as_inches(item.quantity.text.strip().lower())


def leaning(text: str, span: Span) -> int:
    """How much nearer a size stands to a word for a lug than to one for a stud."""
    return far(text, span, STUDS) - far(text, span, LUGS)


def far(text: str, span: Span, names: frozenset[str]) -> int:
    """How many words lie between a size and the nearest of these names; a comma or another size parts them further."""
    ahead, behind = text[max(0, span[0] - FAR) : span[0]], text[span[1] : span[1] + FAR]
    before, after = WORD.findall(ahead.lower())[::-1], WORD.findall(behind.lower())
    return min(away(before, names), away(after, names))


def away(words: list[str], names: frozenset[str]) -> int:
    """The words to the first of these names, at most FARTHEST."""
    steps = 0
    for word in words:
        if word in names or steps >= FARTHEST:
            return min(steps, FARTHEST)
        steps += 1 if word.isalpha() else BREAK
    return FARTHEST
