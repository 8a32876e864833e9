"""Amps in the name of a battery that are its amp-hours: "a 110 amp leisure battery", "two 90 amp AGMs"."""

from __future__ import annotations

import re

from grammar.scene.claims import Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

SMALLEST, LARGEST = 20.0, 300.0  # below it is a charger's or a drain's, above it a cranking current
SPELT = regex(r"amp(?:ere)?s?$", re.IGNORECASE)
LIMITED = regex(r"\bbms\b|\blimit|\bcontinuous|\bcont\b|\bpeak\b", re.IGNORECASE)
KIND = (
    r"(?:wet|flooded|agm|gel|lead(?:[ -]acid)?|sealed|lithium|lifepo4|lfp|leisure|deep[ -]cycle|marine|house|domestic)"
)
OTHER_THING = (  # what the battery in its name makes another thing of: "a 30 amp battery charger"
    r"(?:charger|cable|lead|fuse|isolator|switch|booster|battery|separator|maintainer|monitor|box|limit|bms)"
)
NAMED = regex(  # its kind or its use, and then the battery, or these alone
    rf"[ -]?(?:(?:12|24)[ -]?v(?:olts?)? )?(?:(?:{KIND}|bow|thruster|new|old) ){{0,3}}"
    rf"(?:batter(?:y|ies)|batts?|leisures?|agms?|gels?|lithiums?)\b(?!(?:[ -]to[ -]|[ -]){OTHER_THING})",
    re.IGNORECASE,
)
HOURS = Claim("battery.capacity", "near")


def hours_of(scene: Scene, item: Item, value: float) -> Claim | None:
    """The capacity that amps before a battery's name stand for; lithium's only where no limit of it is spoken of."""
    if not SMALLEST <= value <= LARGEST or not SPELT.search(item.quantity.text.strip()):
        return None
    named = NAMED.match(scene.text, item.quantity.span[1])
    return HOURS if named and not LIMITED.search(scene.text) else None


def counted(scene: Scene, item: Item) -> bool:
    """Whether a number counts batteries that are named by their amps: "two 90 amp AGMs", "2 x 100 amp batteries"."""
    after = next((other for other in scene.items[item.at + 1 : item.at + 3] if other.name != "x"), None)
    amps = after is not None and after.dim == "AMP" and not isinstance(after.quantity.value, str)
    return bool(amps) and after is not None and hours_of(scene, after, float(after.quantity.value)) is not None
