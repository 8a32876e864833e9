"""Which amps are an alternator's and which those of the box it feeds: "30 A off an 80 A alt", "alternator (70 A)"."""

from __future__ import annotations

import re

from grammar.scene.claims import UNSURE, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.chargers.boxes import ENGINE_GIVES
from grammar.told.words import ahead_of, stops

ALTERNATOR, CHARGER = Claim("alternator.current", "near"), Claim("charger.current", "near")
MOST = 300.0
GIVES = regex(
    r"\balternator,?(?: (?:on|of) (?:the|my|our) (?:\w+ )?(?:engine|diesel|motor))?"
    r" (?:puts out|gives|makes|delivers|is good for|good for|yields|is rated(?: at)?|does|can give)"
    r"(?: about| only| some| around| up to)? $",
    re.IGNORECASE,
)
CALLED = regex(
    r"\balternator(?:'?s| is|,)?(?: only| just)? an? $"
    r"|\balternator,? (?:that|which|who|he|it)(?:'?s| is)(?: only| just)?(?: an?| of| at)? $",
    re.IGNORECASE,
)
OF_ENGINE = regex(r"\b(?:engine|diesel|motor that charges)['’]?s $", re.IGNORECASE)  # "with the engine's 60 A"
ENDS = frozenset({"and", "so", "how", "is", "for", "to", "into", "will", "does", "enough"})
BOXES = frozenset({"charger", "dcdc"})
MOST_BOX = 100.0  # amps of a box that an alternator feeds
LEAST = 40.0  # amps of an alternator told by themselves
ITEMS = frozenset({"box", "gadget", "charger", "item", "one", "job", "thing", "unit"})  # "a small fifty-five amp item"
ITS_ITEM = 8  # words from an alternator to that


def off_alternator(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of the amps of an alternator, and of those that something takes from it."""
    if called := [item for item in scene.quantities("NUM") if _is_called(scene, item, claims)]:
        return {called[0].at: ALTERNATOR}
    amps = scene.quantities("AMP")
    if given := [item for item in amps if _engine_gives(scene, item, claims)]:
        return {given[0].at: ALTERNATOR}
    if engines := [item for item in amps if OF_ENGINE.search(ahead_of(scene, item)) and stops(scene, item, ENDS)]:
        return {engines[0].at: ALTERNATOR}
    if "alternator" not in scene.heads or "load" in scene.heads or not 1 <= len(amps) <= 2:
        return {}
    own = [item for item in amps if _is_its(scene, item)]
    if len(amps) == 1:
        return _alone(scene, amps[0], claims)
    if len(own) != 1 or _is_sum(scene):
        return {}
    other = amps[0] if own[0] is amps[1] else amps[1]
    found = {own[0].at: ALTERNATOR}
    fact = claims.get(other.at, CHARGER).fact
    taken = fact in ("alternator.current", "load.current") and _value(other) <= min(MOST_BOX, _value(own[0]))
    return found | ({other.at: CHARGER} if taken else {})


def _is_called(scene: Scene, item: Item, claims: dict[int, Claim]) -> bool:
    """Whether an alternator goes by it, though a fuse is asked about: "the alternator's an 80. Which fuse"."""
    claim = claims.get(item.at)
    given = GIVES.search(ahead_of(scene, item)) is not None
    seemed = claim is None or claim.fact == "fuse.rating" or (given and claim.fact == "charger.current")
    sized = not isinstance(item.quantity.value, str) and LEAST <= item.quantity.value <= MOST
    called = given or CALLED.search(ahead_of(scene, item)) is not None
    return seemed and sized and called and stops(scene, item, ("and", "with", "one"))


def _engine_gives(scene: Scene, item: Item, claims: dict[int, Claim]) -> bool:
    """Whether an engine is said to make them, and a charger takes others: "outboard makes 40 A, a 20 A charger"."""
    if not ENGINE_GIVES.search(ahead_of(scene, item)) or _value(item) > MOST:
        return False
    return any(claim.fact == CHARGER.fact for at, claim in claims.items() if at != item.at)


def _alone(scene: Scene, item: Item, claims: dict[int, Claim]) -> dict[int, Claim]:
    """ "Can the alternator charge the lithium straight? 80 amps": no charger is named whose they could be."""
    claim = claims.get(item.at)
    loose = claim is not None and claim.fact in ("charger.current", "load.current") and claim.how in UNSURE
    others = BOXES & scene.heads or bool(scene.facts & {"load.kind", "load.model"})
    others = others or scene.word(item.end) in ITEMS or any(one == ALTERNATOR.fact for one, _ in claims.values())
    others = others or scene.about("request:how_long")  # "with its 55 amps, how long" are what the battery gets
    return {item.at: ALTERNATOR} if loose and not others and _value(item) >= LEAST else {}


def _is_its(scene: Scene, item: Item) -> bool:
    """Whether amps touch the alternator: "80 A alt", "alternator (70 A)", "the alternator, a small 55 amp item"."""
    if GIVES.search(ahead_of(scene, item)):  # "the alternator on the engine is rated 110 A"
        return True
    ends = {other.end for other in scene.quantities("AMP")}
    for head in scene.head_items:
        if head.head != "alternator":
            continue
        if head.end == item.start and head.start not in ends:  # "30 A in, alternator 110 A"
            return True
        if head.start == item.end or (item.start - head.end in (0, 1) and scene.word(head.end) in ("(", ":", "is")):
            return True
        if scene.word(item.end) in ITEMS and 0 < item.start - head.end <= ITS_ITEM:
            return not any(other.head for other in scene.items[head.at + 1 : item.at])
    return False


def _is_sum(scene: Scene) -> bool:
    """Whether two alternators are spoken of."""
    several = sum(head.head == "alternator" for head in scene.head_items) > 1
    return "alternators" in scene.vocabulary or ("both" in scene.vocabulary and several)


def _value(item: Item) -> float:
    return 0.0 if isinstance(item.quantity.value, str) else float(item.quantity.value)
