"""Amps that the place tells: "250 on the fuse, and 150 on the motor", "a 200 A slow breaker", "80 written on it"."""

from __future__ import annotations

import re

from grammar.scene.claims import UNSURE, Claim, asked
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.currents.fuses import FUSES, SMALL_FUSES

LOAD, FUSE = Claim("load.current", "grammar"), Claim("fuse.rating", "grammar")
ON = frozenset({"on", "for"})
WHOSE = frozenset({"the", "my", "our", "his", "her", "its", "their", "that", "this"})
SORTS = frozenset(  # between the amps and the fuse
    {"slow", "quick", "fast", "thermal", "manual", "resettable", "inline", "marine", "ceramic", "glass", "mega", "midi"}
    | {
        *("big", "small", "little", "old", "new", "ordinary", "single", "double", "automatic", "worth", "of"),
        *("push", "reset"),
    }
    | {"brass", "shiny", "cheap", "rusty", "main", "spare", "bolt", "down", "blade", "cartridge", "delay", "time"}
)
GUARDS = regex(  # "2/0, and may a 250 A sit in front of it"
    r"^ ?(?:a\b|amps?\b)?(?: (?:sit|stand|go|be|is|goes|sits|stands|fine|ok|okay|right))*"
    r" (?:in front of|ahead of|upstream of|protect(?:s|ing)?|guard(?:s|ing)?)"
    r" (?:it|that|them|this|the (?:cable|copper|wire|run|lead))\b",
    re.IGNORECASE,
)
LEAST, MOST = 5.0, 600.0  # amps of a fuse
AFTER = 60  # characters
FAR = 3  # words from the amps to their fuse
SMALLEST_LOAD = 40.0
PUT_UP = frozenset({"is", "would", "should", "will", "was", "isnt", "and"})
FITTING = frozenset({"the", "a", "an", "right", "my", "proper", "correct", "ideal"})
WRITTEN = frozenset({"written", "stamped", "printed", "marked", "embossed", "engraved", "painted"})
OPEN = frozenset({"load.current", "fuse.rating", "charger.current", "battery.capacity", "battery.ca", "battery.cca"})


def placed(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of loose amps that stand on a fuse or on a motor."""
    if not scene.quantities("AMP", "NUM"):
        return {}
    if not ("fuse" in scene.heads or scene.blown):
        return _in_front(scene, claims)
    found = {}
    for item in scene.quantities("AMP", "NUM"):
        claim = claims.get(item.at)
        loose = claim is None or (claim.how in UNSURE and claim.fact in OPEN)
        value = item.quantity.value
        if loose and not isinstance(value, str) and (mended := _on_what(scene, item, value)):
            found[item.at] = mended
    return found


def _in_front(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claim of amps of a usual fuse that sit in front of a cable, where the load's are told beside them."""
    running = [at for at, claim in claims.items() if claim.fact == LOAD.fact]
    if len(running) < 1 or not scene.quantities("AREA", "GAUGE"):
        return {}
    for item in scene.quantities("AMP", "NUM"):
        loose = claims.get(item.at, LOAD).fact in OPEN and scene.word(item.start - 1) in ("a", "an", "the")
        end = scene.span(item.start, item.end)[1]
        if loose and item.quantity.value in FUSES and GUARDS.match(scene.text[end : end + AFTER]):
            return {item.at: FUSE} if set(running) - {item.at} else {}
    return {}


def _on_what(scene: Scene, item: Item, value: float) -> Claim | None:
    """What the place beside amps makes them."""
    if _of_a_fuse(scene, item, value):
        return FUSE
    if _is_the_fuse(scene, item, value):
        return FUSE
    if scene.word(item.end) in WRITTEN and value in FUSES and scene.blown and scene.word(item.end + 1) == "on":
        return FUSE
    if scene.word(item.end) not in ON or scene.word(item.end + 1) not in WHOSE or item.end + 2 >= len(scene.at_word):
        return None
    thing = scene.at_word[item.end + 2]
    if thing.head == "fuse" and value in FUSES and scene.word(item.end) == "on":
        return FUSE
    named = thing.head == "load" and value >= SMALLEST_LOAD
    return LOAD if named and scene.word(item.end) == "on" and _beside_a_fuse(scene, item) else None


def _of_a_fuse(scene: Scene, item: Item, value: float) -> bool:
    """Whether a fuse follows, over words that tell its sort: "a 200 A slow breaker", "10 amps' worth of fuse"."""
    if item.dim != "AMP" or not LEAST <= value <= MOST:
        return False
    near = (head for head in scene.head_items if item.end < head.start <= item.end + FAR and head.head == "fuse")
    head = next(near, None)
    return (
        head is not None
        and not asked(scene, head)
        and all(scene.word(at) in SORTS for at in range(item.end, head.start))
    )


def _is_the_fuse(scene: Scene, item: Item, value: float) -> bool:
    """Whether it is put up as the fuse: "is 15 the fuse", "would a 200 be the right breaker"."""
    at = item.start - 1 - (scene.word(item.start - 1) in ("a", "an"))
    if value not in FUSES | SMALL_FUSES or scene.word(at) not in PUT_UP:
        return False
    at = item.end + (scene.word(item.end) in ("be", "amps", "amp", "a"))
    while scene.word(at) in FITTING and at < item.end + FAR:
        at += 1
    return at > item.end and at < len(scene.at_word) and scene.at_word[at].head == "fuse"


def _beside_a_fuse(scene: Scene, item: Item) -> bool:
    """Whether another figure of the message is told to be on the fuse."""
    figures = (other for other in scene.quantities("AMP", "NUM") if other is not item)
    ends = {other.end for other in figures}
    fuses = (head for head in scene.head_items if head.head == "fuse")
    return any({head.start - back for back in (1, 2)} & ends or scene.word(head.end) in ("is", "of") for head in fuses)
