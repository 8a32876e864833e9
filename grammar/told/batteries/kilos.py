"""The weight of a battery told apart from its unit: "I weighed mine, 29 of them", of kilos."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.canonical import in_unit

KILOS = {frozenset({"kilos", "kilo", "kg", "kgs"}): "kilogram", frozenset({"pounds", "lbs"}): "pound"}
HEAVY = frozenset().union(*KILOS) | {"heavier", "lighter"}
MINE = re.compile(  # "how many kilos lighter am I, mine being 29"
    r"\b(?:mine|ours|his|hers|(?:the|my|our) (?:old|present|current|lead|wet|agm|gel|one|battery)(?: one| battery)?)"
    r"(?: being| is| weighs| weighing| was|'s| are)(?: about| some)? $",
    re.IGNORECASE,
)
AHEAD = 40  # characters
LIGHTEST, HEAVIEST = 8.0, 90.0  # kg of a battery


def kilos_of_them(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Lithium halves the kilos. I weighed mine, 29 of them, lead": a weight, no number of batteries."""
    unit = next((unit for words, unit in KILOS.items() if words & scene.vocabulary), "")
    if not unit or any(item.fact == "battery.weight" for item in stated):
        return
    for item in scene.quantities("NUM", "COUNT"):
        of_them = (scene.word(item.end), scene.word(item.end + 1)) == ("of", "them") or _is_mine(scene, item)
        value = item.quantity.value
        kilos = in_unit(float(value), unit, "kilogram") if of_them and not isinstance(value, str) else None
        if kilos is not None and LIGHTEST <= kilos <= HEAVIEST:
            span = scene.span(item.start, item.end)
            yield Stated("battery.weight", kilos, "kilogram", scene.text[slice(*span)], span, how="default")
            return


def _is_mine(scene: Scene, item: Item) -> bool:
    """Whether a bare number is what a battery weighs, after kilos were asked about."""
    after, start = scene.after(item), scene.tokens[item.start].start
    ends = after is None or after.kind == "mark"
    asked = any(token.word in HEAVY for token in scene.tokens[: item.start])
    bare = not isinstance(item.quantity.value, str) and item.quantity.value % 1 == 0
    return ends and asked and bare and MINE.search(scene.text[max(0, start - AHEAD) : start]) is not None
