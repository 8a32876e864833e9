"""Which times are the reserve of a battery: minutes that its label tells, or that are to be amp-hours."""

from __future__ import annotations

import re

from grammar.scene.claims import Claim, close
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of

LONGEST_RESERVE = 36000.0
RESERVE = 1500.0  # seconds: no reserve is shorter
MARKED = regex(
    r"\b(?:marked|labelled|labeled|stamped|printed|rated|badged"
    r"|(?:label|sticker|case|lid|top|side|plate) (?:says|reads|has|gives|shows|tells(?: me)?))"
    r"(?: with| as| at| for| only| just| simply| it)* $",
    re.IGNORECASE,
)


def of_reserve(scene: Scene, item: Item, value: float) -> Claim | None:
    """A battery's reserve: "reserve of 140 min", "a 2 hour reserve"."""
    unit = item.quantity.unit
    if unit == "hour" and value <= LONGEST_RESERVE and close(scene, item, "battery.reserve", reach=0.3, after=True):
        return Claim("battery.reserve", "role")
    if unit == "minute" and (_in_amp_hours(scene, item) or _on_its_label(scene, item, value)):
        return Claim("battery.reserve", "role")
    if unit == "minute" and close(scene, item, "battery.reserve", reach=3.5):
        return Claim("battery.reserve", "role")
    if unit == "minute" and value >= RESERVE and scene.about("role:battery.reserve") and "load" not in scene.heads:
        return Claim("battery.reserve", "near")
    return None


def _in_amp_hours(scene: Scene, item: Item) -> bool:
    """Whether minutes are asked for as amp-hours: "and 150 minutes in Ah?"."""
    words = [scene.word(at) for at in range(item.end, item.end + 3)]
    return words[0] in ("in", "to", "as", "into") and (
        words[1] == "ah" or words[1:] in (["amp", "hours"], ["amp", "hour"])
    )


def _on_its_label(scene: Scene, item: Item, value: float) -> bool:
    """Whether a battery is marked with minutes and nothing draws: "marked 120 minutes. How many Ah is that?"."""
    if (
        value < RESERVE
        or scene.quantities("AMP", "WATT", "AH")
        or "load" in scene.heads
        or "battery" not in scene.facts | scene.heads
    ):
        return False
    return MARKED.search(ahead_of(scene, item)) is not None
