"""Volts under load by how they are told: "with button: 10.3", "gave it at 8.8", "the needle bows to 10.4 each time"."""

from __future__ import annotations

import re

from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

ASLEEP = frozenset(
    {"asleep", "sleeping", "resting", "rested", "idle", "idling", "quiet", "still", "beforehand", "before", "off"}
    | {"dozing", "snoozing", "unloaded", "untouched", "standing", "alone"}
)
NEEDLE_TO = regex(
    r"\b(?:needle|pointer|dial|volts|voltage|voltmeter|meter|gauge)\b"
    r"(?![^.?!;\d]{0,200}\b(?:up|rises?|climbs?|jumps?) )[^.?!;\d]{0,28}\bto(?: about| around| just)? ?$",
    re.IGNORECASE,
)
EACH_TIME = regex(
    r"^[^.?!;]{0,24}\b(?:each|every) (?:time|go|push|press|shove|burst)\b"
    r"|^[^.?!;]{0,24}\b(?:when|whenever|while|whilst)\b",
    re.IGNORECASE,
)
GAVE = regex(  # "was asked for 200 A and gave it at 8.8", "delivered them at 9.1"
    r"\b(?:gave|gives|delivered|delivers|supplied|supplies|managed|manages|produced|mustered|coughed) ?"
    r"(?:it|them|that|those|this|up|out|all|\d+ ?(?:a|amps?)| )*(?:,? ?but)?(?: only)? at(?: only| just| about)? ?$",
    re.IGNORECASE,
)
AT_POSTS = frozenset({"posts", "post", "battery", "batt", "bat", "bank", "poles", "terminals", "batteries"})
AT = frozenset({"at", "@", "on", "the", "v", "volts"})
AT_MOTOR = frozenset({"motor", "thruster", "windlass", "winch", "capstan", "lugs", "studs"})
FRONT = frozenset({("up", "front"), ("up", "forward"), ("at", "the"), ("in", "the")})
FORE = frozenset({"front", "forward", "fore", "nose", "bows"})
AHEAD = 40  # characters


def told_asleep(scene: Scene, item: Item) -> bool:
    """Whether the word beside a reading says that nothing ran: "12.4 asleep", "resting 12.3"."""
    after = scene.after(item)
    if after is not None and after.fact == "reading.state":
        return after.name == "rest"
    return scene.word(item.end) in ASLEEP or scene.word(item.start - 1) in ASLEEP - {"off", "still", "alone", "before"}


def by_their_places(scene: Scene, high: Item, low: Item) -> bool:
    """Whether two readings stand right by the battery's name and the motor's: "posts 11.3 thruster 10.0"."""
    before = scene.word(high.start - 1), scene.word(low.start - 1)
    after = _place_after(scene, high), _place_after(scene, low)
    return any(here in AT_POSTS and there in AT_MOTOR for here, there in (before, after))


def _place_after(scene: Scene, item: Item) -> str:
    """The word behind a reading that may name its place: "11.9 batt", "9.9 at the motor"."""
    words = (scene.word(item.end + ahead) for ahead in range(3))
    return next((word for word in words if word not in AT), "")


def up_front(scene: Scene, item: Item) -> bool:
    """Whether a reading is told to be at the other end of the boat: "9.1 up front", "9.4 in the nose"."""
    after = [scene.word(item.end + ahead) for ahead in range(3)]
    return (after[0], after[1]) in FRONT and bool(FORE & set(after[1:]))


def told_loaded(scene: Scene, item: Item) -> bool:
    """Whether the words around a reading alone say that a load pulled it down."""
    start, end = scene.span(item.start, item.end)
    before = scene.ahead(start)
    if {"charger", "alternator"} & scene.heads:
        return False
    if GAVE.search(before):
        return bool(scene.quantities("AMP"))
    return NEEDLE_TO.search(before) is not None and EACH_TIME.search(scene.text[end : end + AHEAD]) is not None
