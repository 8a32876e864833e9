"""Amp-hours told by a bare figure in its place: "till a 70's half empty", "a skein of 100 and one of 85"."""

from __future__ import annotations

import re

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

CAPACITY = Claim("battery.capacity", "near")
SMALLEST, LARGEST = 30.0, 400.0  # amp-hours that go without a unit
AMPS_FOR = re.compile(
    r"\b(?:amps?|amperes?|charger|charging)\b(?:,? like)?,?(?: (?:do|does|would|should|will|is|are|right"
    r"|best|i|we|ye|you|need"
    r"|put|pit|want|ought|to|be))* for (?:an? |the |my |her |our |his )?$",
    re.IGNORECASE,
)
TILL = re.compile(r"\b(?:till?|until|before|when|afore|ere|by the time) (?:an? |the |my |our )?$", re.IGNORECASE)
HALF_GONE = re.compile(
    r"^ ?(?:'?s| is| be| would be| gets| goes)? ?(?:hauf|haf|'alf|half|hälf|halb)[- ]?(?:way )?(?:empty"
    r"|flat|gone|toom|done|deid|dead|down"
    r"|spent|drained|used)\b",
    re.IGNORECASE,
)
ASIDE = re.compile(r"\b(?:battery|batt|accumulator|accu|agm|gel|wet|lithium|lfp), $", re.IGNORECASE)
ONE_OF = re.compile(
    r"\b(?:an?|my|one) (?!fuse|breaker|charger|load|panel|cable|run|length|thruster)\w+ of $", re.IGNORECASE
)
AND_ONE = re.compile(r"^ and (?:one|another|a second|the other|its mate) of \d{2,3}\b", re.IGNORECASE)
THE_OTHER = re.compile(r"\b\w+ of \d{2,3} and (?:one|another|a second|the other|its mate) of $", re.IGNORECASE)
AHEAD = 48  # characters
OTHER_THINGS = frozenset({"fuse", "charger", "alternator", "dcdc"})


def by_number(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of bare figures that are a battery's amp-hours."""
    told = [at for at, claim in claims.items() if claim.fact == CAPACITY.fact]
    free = (item for item in scene.quantities("NUM") if claims.get(item.at) is None or claims[item.at].how == "weighed")
    if told:
        return {item.at: CAPACITY for item in free if len(told) == 1 and _is_other(scene, item)}
    return {item.at: CAPACITY for item in free if _goes_by(scene, item)}


def _is_other(scene: Scene, item: Item) -> bool:
    """Whether it is the second of two that are joined: "one of 100 and another of 85"."""
    value, start = item.quantity.value, scene.span(item.start, item.end)[0]
    sized = not isinstance(value, str) and SMALLEST <= value <= LARGEST and _ends(scene, item)
    return sized and "bank.layout" in scene.facts and THE_OTHER.search(scene.ahead(start)) is not None


def _goes_by(scene: Scene, item: Item) -> bool:
    value = item.quantity.value
    if isinstance(value, str) or not SMALLEST <= value <= LARGEST:
        return False
    start, end = scene.span(item.start, item.end)
    before, after = scene.ahead(start), scene.text[end : end + AHEAD]
    if TILL.search(before) and HALF_GONE.match(after):
        return True
    if not _ends(scene, item):
        return bool(AND_ONE.match(after)) and ONE_OF.search(before) is not None and "bank.layout" in scene.facts
    if AMPS_FOR.search(before):
        return "load" not in scene.heads and bool({"battery", "battery.chemistry"} & (scene.facts | scene.heads))
    if ASIDE.search(before):
        return value % 5 == 0 and not scene.heads & OTHER_THINGS
    return _is_other(scene, item)


def _ends(scene: Scene, item: Item) -> bool:
    after = scene.after(item)
    return after is None or after.kind == "mark"
