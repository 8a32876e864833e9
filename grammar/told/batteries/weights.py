"""Kilos told apart from their unit, or without it: "I weighed mine, 29 of them", "two AGMs at 33, as lithium?"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.canonical import in_unit
from grammar.text.patterns import regex
from grammar.told.words import ahead_of, stops

KILOS = {frozenset({"kilos", "kilo", "kg", "kgs"}): "kilogram", frozenset({"pounds", "lbs"}): "pound"}
WEIGHS = frozenset({"weighs", "weigh", "weighed", "weighing"})
KINDS = frozenset({"lead", "led", "agm", "gel", "wet", "battery", "flooded", "old"})
OF_EACH = frozenset({("of", "them"), ("the", "piece"), ("a", "piece"), ("per", "piece")})
APART = 5  # words from a figure to its unit
HEAVY = frozenset().union(*KILOS) | {"heavier", "lighter"}
MINE = regex(  # "how many kilos lighter am I, mine being 29"
    r"\b(?:mine|ours|his|hers"
    r"|(?:the|my|our) (?:old|present|current|lead|wet|agm|gel|one|battery|big|small)(?: one| battery)?)"
    r"(?: being| is| weighs| weighing| was|'s| are)(?: about| some)? $",
    re.IGNORECASE,
)
AHEAD = 40  # characters
LIGHTEST, HEAVIEST = 8.0, 90.0  # kg of a battery
WEIGHT = Claim("battery.weight", "near")
OWN = regex(
    r"\b(?:my|his|her) (?:own |body )?weight (?:is|was|being) (?:only |about |now )?$"
    r"|\bI (?:myself )?weigh (?:only |about |in at )?$|\bI(?:'m| am) (?:only |about |myself )?$",
    re.IGNORECASE,
)
OF_BATTERY = regex(
    r"\b(?:batter(?:y|ies)|accus?|agms?|gels?|wets?|leads?|flooded)(?: ones?)?(?: one)?"
    r" (?:is|was|are|were|at|of|weighs?|weighing|being)(?: only| about| some)? $",
    re.IGNORECASE,
)
BESIDE_A_THING = regex(  # "my dog weighs 11 kg, the battery 27"
    r"\bweighs? (?P<thing>\d{1,3}(?:\.\d)? ?(?:kg|kilos?|lbs?|pounds?)),? (?:and |but )?(?:the|my|our) battery"
    r"(?:'s| is| weighs)? (?P<own>\d{1,3})(?=\s*(?:$|[.,;?!)]))",
    re.IGNORECASE,
)
WEIGHED = regex(
    r"\bweigh\w*|\blighter\b|\bheavier\b|\bkilos?\b|\bkgs?\b|\bcome to (?:as|in) lithium"
    r"|\bpounds lighter",
    re.IGNORECASE,
)
GOES_ON = frozenset({"come", "comes", "as", "in", "and", "each", "apiece", "would", "become", "becomes", "now", "or"})


def kilos_of_them(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """ "Lithium halves the kilos. I weighed mine, 29 of them, lead": a weight, no number of batteries."""
    unit = next((unit for words, unit in KILOS.items() if words & scene.vocabulary), "")
    if not unit or any(item.fact == "battery.weight" for item in stated):
        return
    for item in scene.quantities("NUM", "COUNT"):
        them = (scene.word(item.end), scene.word(item.end + 1)) in OF_EACH or scene.word(item.end) == "apiece"
        of_them = them or _weighs(scene, item) or _is_mine(scene, item)
        value = item.quantity.value
        kilos = in_unit(float(value), unit, "kilogram") if of_them and not isinstance(value, str) else None
        if kilos is not None and LIGHTEST <= kilos <= HEAVIEST:
            span = scene.span(item.start, item.end)
            yield Stated("battery.weight", kilos, "kilogram", scene.text[slice(*span)], span, how="default")
            return


def _weighs(scene: Scene, item: Item) -> bool:
    """Whether a bare figure is what one weighs: "one weighs 58", "30 on the dot, kilos", "the lead one is 25"."""
    before = [scene.word(item.start - back) for back in (1, 2, 3, 4)]
    while before and before[0] in ("about", "around", "roughly", "only", "some", "exactly"):
        before = before[1:]
    if before[0] in WEIGHS:
        return True
    ahead = [scene.word(at) for at in range(item.end, item.end + APART)]
    named = any(unit in ahead for words in KILOS for unit in words)
    figures = any(other.dim for other in scene.items[item.at + 1 : item.at + 1 + APART])
    if named and "," in ahead and not figures:
        return True
    ends = stops(scene, item, ("and", "now"))
    is_one = before[0] in ("is", "s", "its") and ends
    kind = bool(KINDS & set(before[1:])) or before[1:2] == [")"]  # "the led one (LEAD) is 25"
    return is_one and kind


def _is_mine(scene: Scene, item: Item) -> bool:
    """Whether a bare number is what a battery weighs, after kilos were asked about."""
    after, start = scene.after(item), scene.tokens[item.start].start
    ends = after is None or after.kind == "mark"
    asked = any(token.word in HEAVY for token in scene.tokens[: item.start])
    bare = not isinstance(item.quantity.value, str) and item.quantity.value % 1 == 0
    return ends and asked and bare and MINE.search(scene.text[max(0, start - AHEAD) : start]) is not None


def in_kilos(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of bare figures that are a battery's kilos, and of a person's, which state nothing."""
    if WEIGHED.search(scene.text) is None:
        return {}
    people = {item.at: NOTHING for item in scene.quantities("WEIGHT") if OWN.search(ahead_of(scene, item))}
    if (beside := BESIDE_A_THING.search(scene.text)) is not None:
        return people | dict(_beside_a_thing(scene, beside))
    others = [at for at, claim in claims.items() if claim.fact == WEIGHT.fact and at not in people]
    if others or scene.quantities("AH"):
        return people
    bare = (item for item in scene.quantities("NUM") if _may_weigh(scene, claims, item))
    return people | {item.at: WEIGHT for item in bare if OF_BATTERY.search(ahead_of(scene, item))}


def _beside_a_thing(scene: Scene, found: re.Match[str]) -> Iterator[tuple[int, Claim]]:
    """The battery's kilos and those of what it is held against, which are no battery's."""
    for item in scene.quantities("NUM", "COUNT", "WEIGHT"):
        start = scene.span(item.start, item.end)[0]
        if start == found.start("thing"):
            yield item.at, NOTHING
        elif start == found.start("own") and LIGHTEST <= float(item.quantity.value) <= HEAVIEST:
            yield item.at, WEIGHT


def _may_weigh(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    value, claim, after = item.quantity.value, claims.get(item.at), scene.after(item)
    if isinstance(value, str) or not LIGHTEST <= value <= HEAVIEST or value in (12.0, 24.0):
        return False
    if claim is not None and claim.fact not in ("battery.capacity", "load.current", "battery.age"):
        return False
    return after is None or after.kind == "mark" or after.name in GOES_ON
