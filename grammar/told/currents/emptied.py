"""Amps that seemed a charger's only for want of another reading, where the message asks how long a battery lasts."""

from __future__ import annotations

import re
from functools import lru_cache

from grammar.scene.claims import LASTING, NOTHING, UNSURE, Claim, asked
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

CHARGERS = frozenset({"charger", "dcdc", "alternator", "panel"})
CHARGED = regex(
    r"\b(?:re)?(?<!per )(?<!one )(?<!single )charg\w*"
    r"|\b(?:re)?fill\w*|\bfull\b(?! (?:chat|tilt|bore|throttle|power|speed))"
    r"|\btop\w* (?:it )?up"
    r"|\b(?:shore|quay|mains|genset|generator|brim\w*|absorb|accepts?|restore|replenish|soak|float|plug(?:s|ged)?)\b"
    r"|\bback (?:up|to|in|into)\b|\bput\w* (?:it )?back|\bfrom (?:dead )?(?:flat|empty|half)\b",
    re.IGNORECASE,
)
SO_MANY = r"(?:\d+|a|one|two|three|four|five|six|seven|eight|nine|ten|twelve|twenty|thirty|forty|fifty)"
LASTS = regex(
    r"\bhow long (?:may|can|could|might|have|has|will|would|do|does|did) (?:we|they|i|she|he|you|it|the|my|our|that)\b"
    r"(?! (?:\w+ )?(?:take|takes|need|needs|be|want|wants|require|cost|have to|gotta|must|leave|keep|wait)\b)"
    r"|\b(?:give|gives|gave|get|gets|lasts?|manage|manages|survives?)\b[^.?!;]{0,14}\b"
    + SO_MANY
    + r"[\w-]* (?:hours|hrs)\b"
    r"|\b(?:time|hours?|minutes) (?:(?:down )?(?:till|until|to)|before)(?: (?:it|they|she) (?:is|are))?"
    r" (?:the |a )?half(?:way)?\b(?! (?:full|of|an?))"
    r"|\bhow (?:much time|many hours) (?:holds?|lasts?|resists?|stands?|endures?|bears?|survives?)\b"
    r"|\bwhen (?:is|are|will) (?:it|they|she|he|that)(?: be)? (?:at|down to|on) (?:the )?half\b(?! full)"
    r"|\b(?:time|hours?|minutes) (?:is |are )?left\b"
    r"|\bwhat (?:have|do|would|will|shall) (?:i|we|they) (?:got|get|have)\b[^.?!;]{0,24}"
    r"\b(?:evening|night|time|hours|day|morning)\b"
    r"|\bout of (?:an?|my|the|our|one|this|that|his|her) ?[\d.]+ ?(?:ah|amp)"
    r"|\b(?:lasts?|endures?|survives?|holds? out)\b[^.?!;,]{0,10}\b(?:when|how long|what time)\b"
    r"|\b(?:till|until) (?:what (?:hour|time)|when)\b"
    r"|\bbefore (?:sunrise|dawn|dark|daybreak|midnight|breakfast|morning)\b"
    r"|\b(?:kills?|flattens?|empties|drains?|finish(?:es)?|ruins?) (?:an?|the|my|our) \d"
    r"|\b(?:per|on (?:one|a single)) charge\b|\bleft (?:in|of)\b"
    r"|\b(?:squeeze|wring|milk|coax|suck)\w*\b[^.?!;,]{0,14}\b(?:out of|from|off)\b"
    r"|\bsees? (?:me|us|them|him|her|out)\b|\bthrough (?:the|a|an?other|one|my|" + SO_MANY[3:-1] + r") ?"
    r"(?:night|evening|hours|day|weekend|watch)\b",
    re.IGNORECASE,
)
HALF_USED = regex(  # "8 A, how long until half the charge is used": what is in it, no charging
    r"\b(?:until|till?|before|by the time) (?:the )?half (?:of )?(?:(?:its|the|their|his|her|that) )?charge"
    r"(?: is| are| has been| gets|'s)? (?:all )?(?:gone|used|spent|taken|drawn|drained|eaten|lost|consumed)\b",
    re.IGNORECASE,
)
PROPELS = frozenset({"canoe", "kayak", "thrust", "throttle", "trolling", "paddle", "propeller", "prop", "tender's"})
HOURS = regex(r"\bhours?\b|\bhrs\b|\bhow (?:long|far)\b", re.IGNORECASE)
WITHOUT = regex(r"\bchargers?\b", re.IGNORECASE)
DRAWN = frozenset({"draw", "drain", "load", "pull", "appetite", "consumption", "usage", "demand", "thirst"})
THINGS = frozenset(
    {"coolbox", "coolboxes", "icebox", "cooler", "freezer", "fridge", "amplifier", "amp", "pump", "lamp"}
)
STAYS = frozenset({"storage.time", NOTHING.fact})
MOST_DAYS = 14.0  # that a boat lies at anchor


def emptied(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps that empty a battery, where no charger and no charging is told of."""
    found = [at for at, claim in claims.items() if claim.fact == "charger.current"]
    drawn = {at: Claim("load.current", "near") for at in found if _is_drawn(scene, scene.items[at], claims[at])}
    return drawn | _for_days(scene, claims | drawn)


def _for_days(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """Days for which something runs without a pause are no lay-up: "5 days at anchor, 2.5 A round the clock"."""
    if not any(claim.fact == "load.current" and _never_stops(scene, scene.items[at]) for at, claim in claims.items()):
        return {}
    days = (item for item in scene.quantities("TIME") if item.quantity.unit == "day")
    return {
        item.at: Claim("load.time", "near")
        for item in days
        if claims.get(item.at, NOTHING).fact in STAYS and 1 < float(item.quantity.value) <= MOST_DAYS
    }


def _charger_is_asked(scene: Scene, claim: Claim) -> bool:
    """Whether the one charger named is only asked for, beside how long something lasts: "how long before it's dark, and
    what charger keeps the groove"."""
    chargers = [head for head in scene.head_items if head.head in CHARGERS]
    if not chargers or claim.how not in UNSURE or not all(asked(scene, head) for head in chargers):
        return False
    return scene.about("request:how_long") and CHARGED.search(WITHOUT.sub(" ", scene.text)) is None


def _never_stops(scene: Scene, item: Item) -> bool:
    after = " ".join(scene.word(item.end + ahead) for ahead in range(3))
    return "into" not in scene.vocabulary and any(after.startswith(words) for words in LASTING)


def _is_drawn(scene: Scene, item: Item, claim: Claim) -> bool:
    """Whether amps are drawn: "at five amps what have I got by way of evening", "on a 35 amp draw"."""
    if item.dim not in ("AMP", "NUM"):
        return False
    if scene.word(item.end) in THINGS or scene.word(item.start - 1) in THINGS - {"amp"}:
        return True
    if _charger_is_asked(scene, claim):
        return True
    if CHARGERS & scene.heads:
        return False
    if scene.word(item.end) in DRAWN or (_never_stops(scene, item) and not CHARGED.search(scene.text)):
        return True
    return claim.how in UNSURE and _asks_of_emptying(scene.text, bool(PROPELS & scene.vocabulary))


@lru_cache(maxsize=4)  # each of many amps may ask it
def _asks_of_emptying(text: str, propels: bool) -> bool:
    """Whether it asks how long something lasts, and speaks of no charging."""
    if CHARGED.search(HALF_USED.sub(" ", text)):
        return False
    found = HALF_USED.search(text) or (propels and HOURS.search(text)) or LASTS.search(text)
    return bool(found)
