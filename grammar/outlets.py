"""The outputs of a charger as people see them: pairs of leads and sets of clips, each pair one output."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene import Scene

FACT = "charger.outputs"
NUMBERS = {"two": 2.0, "2": 2.0, "twin": 2.0, "three": 3.0, "3": 3.0, "four": 4.0, "4": 4.0}  # all others are one
ENDS = r"(?:leads?|cables?|clips?|wires?|clamps?|crocs?|tails?)"
PAIRS = re.compile(
    rf"\b(?P<many>one|a|1|single|two|2|three|3|four|4) (?:single )?"
    rf"(?:(?:pair|set|lot)s? of (?:\w+ )?{ENDS}|{ENDS} pairs?\b|pairs? (?:of )?{ENDS})\b",
    re.IGNORECASE,
)
BOTH_POLES = re.compile(  # one lead for each pole, and no more
    rf"\b(?:one|a|1|single) (?:red|plus|positive)(?: {ENDS})? and (?:one|a|1|single) (?:black|minus|negative)\b"
    rf"|\btwo {ENDS},? (?:red and black|plus and minus|positive and negative)\b",
    re.IGNORECASE,
)
ONE_OUT = re.compile(
    rf"\b(?:one|a single|single|only one) {ENDS} (?:coming |comes? |going |goes? )?out\b", re.IGNORECASE
)


def outlets(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """How many batteries a charger can be clipped to: "it has only one pair of cables"."""
    if "charger" not in scene.heads or any(item.fact == FACT for item in stated):
        return
    if found := PAIRS.search(scene.text):
        yield _told(found, NUMBERS.get(found["many"].lower(), 1.0))
    elif found := BOTH_POLES.search(scene.text) or ONE_OUT.search(scene.text):
        yield _told(found, 1.0)


def _told(found: re.Match[str], many: float) -> Stated:
    return Stated(FACT, many, "", found[0], found.span(), how="grammar")
