"""Studs and lugs by fractions of an inch in words: "quarter-inch holes", "half inch studs", "3/8 for the big post"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene

FACT = "terminal.size"
SIZES = {"quarter": "1/4", "half": "1/2", "three eighths": "3/8", "five sixteenths": "5/16"}
FIGURE = r"1/4|5/16|3/8|1/2"
WORD = r"(?:a )?quarter|half|three[- ]eighths?|five[- ]sixteenths?"
INCHES = rf"(?:(?P<word>{WORD})(?: of an|[ -])[ -]?inch|(?P<figure>{FIGURE})(?: ?-?inch| ?in\b| ?\")?)"
THING = r"(?:studs?|posts?|bolts?|holes?|lugs?|eyes?|eyelets?|rings?|terminals?|threads?)"
SIZED = re.compile(
    rf"(?<![\w/]){INCHES}"
    rf"(?: of)?(?: for (?:the|my|a|that|each)| (?:brass|copper|steel|big|small|wide|threaded|ring|battery))*"
    rf"[ -](?:\w+ )?{THING}\b",
    re.IGNORECASE,
)
BEHIND = re.compile(
    rf"\b{THING} (?:is|are|of|measures?|at|looks?|being)(?: about| roughly| a| like)*"
    rf" {INCHES}(?!\w| (?:full|of the way))",
    re.IGNORECASE,
)


def inch_sizes(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """The size of a stud or lug, where none is told otherwise."""
    if any(item.fact == FACT for item in stated):
        return
    for pattern in (SIZED, BEHIND):
        if found := pattern.search(scene.text):
            name = "word" if found["word"] else "figure"
            word = re.sub(r"[- ]+", " ", found[name].lower()).removeprefix("a ")
            plural = word if word in SIZES else f"{word}s"
            yield Stated(FACT, SIZES.get(plural, word), "", found[name], found.span(name), how="grammar")
            return
