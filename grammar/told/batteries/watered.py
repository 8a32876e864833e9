"""A battery with acid in it, told by its water: "the kind you pour water in", "the water is under the plates"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

KIND = "battery.chemistry"
WATER = r"(?:distilled |deionised |demin(?:eralised)? |tap |fresh )?(?:water|acid|electrolyte)"
POURED = regex(
    rf"\b(?:u|you|i|we|one|he|she|they|people)(?: \w+)? (?:pour|tip|put|add|fill|top up|drip|dribble)s? {WATER}"
    r" (?:in|into|on|to)\b(?! (?:the |my |our )?(?:kettle|engine|bilge|tank|radiator|cooler|locker|boat)\b)",
    re.IGNORECASE,
)
LOW = regex(
    rf"\b(?:{WATER}|(?:acid |water )?(?:levels?|lvls?))"
    r"(?:'?s| is| are| was| were| stands| sits| has (?:sunk|dropped|gone|fallen))?"
    r"(?: (?:down|way|just|well|right|all|a bit|a finger|an inch))*"
    r" (?:below|beneath|under|off|short of|lower than|not over|no longer over) (?:the |its "
    r"|their )?(?:tops? of (?:the )?)?plates\b",
    re.IGNORECASE,
)
IN_CELLS = regex(
    rf"\b(?<!sea )(?<!salt ){WATER} (?:in|into) (?:the|its|their|my|all|each|every)(?: \w+)? cells?\b(?! phone)", re.I
)
PROUD = regex(  # "plates showing above the juice"
    r"(?<!number )\bplates\b[^.?!;,]{0,24}\b(?:above|out of|clear of|proud of) (?:the |its |their )?"
    r"(?:juice|acid|water|electrolyte|fluid|liquid|level)\b(?! line)",
    re.IGNORECASE,
)
OPEN = regex(  # "two open 110 Ah"
    r"\b(?:an|two|three|four|my|our|the|\d) open (?:\d{2,3} ?(?:ah|amp[- ]?hours?)|12 ?v(?:olt)? \d)", re.IGNORECASE
)
SIGNS = (POURED, LOW, IN_CELLS, PROUD, OPEN)


def watered(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """That the battery is flooded, where no kind is told here or was before."""
    if any(item.fact == KIND for item in (*stated, *scene.said)):
        return
    if found := next(filter(None, (one.search(scene.text) for one in SIGNS)), None):
        yield Stated(KIND, "flooded", "", found[0], found.span(), how="default")
