"""Batteries told twice over: a second row beside the first, and "if she doubles up"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene

COUNT, LAYOUT = "battery.count", "bank.layout"
TWO = r"(?:pair|two|2|couple)"
ROW = r"in (?:a row|series|a string)"
TWO_ROWS = re.compile(  # "a pair of 6 V in a row, another pair in a row next to it"
    rf"\b{TWO}\b[^.?!;]{{0,40}}?\b{ROW}\b[^.?!;]{{0,24}}?\b(?:another|(?:a |the )?(?:second|other)) {TWO}\b"
    rf"[^.?!;]{{0,24}}?\b{ROW}\b",
    re.IGNORECASE,
)
SIDE_BY_SIDE = re.compile(
    r"\b(?:next to|alongside|beside|side by side|parallel|across|plus(?:s?es)? (?:are )?(?:joined|tied|linked)"
    r"|plus (?:to|on|with) plus|positives? (?:are )?(?:joined|to positive))\b",
    re.IGNORECASE,
)
DOUBLES_UP = re.compile(r"\b(?:doubles?|doubled|doubling)(?: (?:it|them|that))? up\b", re.IGNORECASE)


def doubled(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """The number of batteries where a second row or as many again are told of."""
    count = next((item.value for item in stated if item.fact == COUNT), None)
    if (found := TWO_ROWS.search(scene.text)) and count in (2.0, None) and SIDE_BY_SIDE.search(scene.text):
        told = Stated(COUNT, 4.0, "", found[0], found.span(), how="grammar")
        yield from (told, replace(told, fact=LAYOUT, value="series-parallel"))
        return
    before = {item.fact: item.value for item in reversed(scene.said) if item.of == 1}
    if count is not None or "cable" in scene.heads or not any(fact.startswith("battery.") for fact in before):
        return
    if found := DOUBLES_UP.search(scene.text):
        many = before.get(COUNT, 1.0)
        yield Stated(COUNT, 2 * (many if isinstance(many, float) else 1.0), "", found[0], found.span(), how="grammar")
