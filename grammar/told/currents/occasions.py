"""How many pushes there are where they are told for each of several occasions: "4 dockings a day, 6 pushes each"."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex

TIMES = {"twice": 2.0, "thrice": 3.0}
PLACES = r"(?:dockings?|landings?|berthings?|moorings?|trips?|outings?|locks?|stops?|crossings?)"
OCCASIONS = regex(
    rf"\b(?:(\d{{1,2}}|two|three|four|five|six|seven|eight|nine|ten|twelve) (?:(?:[a-z]+ )?{PLACES}\b"
    r"|times (?=(?:a|per|each|every|in a) (?:day|weekend|trip|outing)))"
    r"|(twice|thrice) (?=(?:a|per|each|every|in a) (?:day|weekend|trip|outing)))",
    re.IGNORECASE,
)
ALL_TOLD = regex(r"\b(?:in all|altogether|all told|in total|total)\b", re.IGNORECASE)
SO_MANY = regex(rf"\bhow many (?:more |such )*(?:{PLACES}|times)\b", re.IGNORECASE)


def on_each_occasion(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with the pushes of all occasions, where those of one are told: 4 dockings of 6 pushes are 24 pushes.

    Of how many dockings a battery is good for is asked with the pushes of one: the number of occasions is then no fact.
    """
    occasion = OCCASIONS.search(scene.text)
    pushes = [item for item in stated if item.fact == "load.bursts"]
    if occasion is None or not any(item.fact == "load.burst" for item in stated) or ALL_TOLD.search(scene.text):
        return stated
    start, end = occasion.span()
    each = [item for item in pushes if not start <= item.span[0] < end]
    if len(each) != 1 or not isinstance(each[0].value, float):
        return stated
    told = occasion[1] or occasion[2]
    times = 1.0 if SO_MANY.search(scene.text) else TIMES.get(told.lower()) or value(told.lower())
    summed = replace(each[0], value=each[0].value * times)
    return [summed if item is each[0] else item for item in stated if item not in pushes or item is each[0]]
