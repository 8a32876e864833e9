"""The sizes of studs and lugs: of two the stud's comes first; "quarter-inch holes", "3/8 for the big post"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from grammar.reading import Span, Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.bare import as_inches
from grammar.text.patterns import regex

SIZE = "terminal.size"
LUGS = frozenset(["lug", "lugs", "ring", "rings", "eye", "eyes", "hole", "holes", "connector", "connectors"])
STUDS = frozenset(["stud", "studs", "post", "posts", "bolt", "bolts", "pole", "poles"])
WORD = regex(r"[a-z]+(?:\d+)?|\d+(?:/\d+)?|[,.;:?!]")
FAR = 150  # characters
FARTHEST, BREAK = 8, 3  # words: what is further away names nothing; a mark or another size counts for three
SIZES = {"quarter": "1/4", "half": "1/2", "three eighths": "3/8", "five sixteenths": "5/16"}
FIGURE = r"1/4|5/16|3/8|1/2"
INCH_WORD = r"(?:a )?quarter|half|three[- ]eighths?|five[- ]sixteenths?"
INCHES = rf"(?:(?P<word>{INCH_WORD})(?: of an|[ -])[ -]?inch|(?P<figure>{FIGURE})(?: ?-?inch| ?in\b| ?\")?)"
THING = r"(?:studs?|posts?|bolts?|holes?|lugs?|eyes?|eyelets?|rings?|terminals?|threads?)"
SIZED = regex(
    rf"(?<![\w/]){INCHES}"
    rf"(?: of)?(?: for (?:the|my|a|that|each)| (?:brass|copper|steel|big|small|wide|threaded|ring|battery))*"
    rf"[ -](?:\w+ )?{THING}\b",
    re.IGNORECASE,
)
BEHIND = regex(
    rf"\b{THING} (?:is|are|of|measures?|at|looks?|being)(?: about| roughly| a| like)*"
    rf" {INCHES}(?!\w| (?:full|of the way))",
    re.IGNORECASE,
)


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


def inch_sizes(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """The size of a stud or lug, where none is told otherwise."""
    if any(item.fact == SIZE for item in stated):
        return
    for pattern in (SIZED, BEHIND):
        if found := pattern.search(scene.text):
            name = "word" if found["word"] else "figure"
            word = re.sub(r"[- ]+", " ", found[name].lower()).removeprefix("a ")
            plural = word if word in SIZES else f"{word}s"
            yield Stated(SIZE, SIZES.get(plural, word), "", found[name], found.span(name), how="grammar")
            return
