"""Amps told by what happens meanwhile: "sagged to 10.1 at 175", "forty minutes of 25 A", "half empty at 7 A"."""

from __future__ import annotations

import re

from grammar.scene.claims import NOTHING, UNSURE, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex
from grammar.told.words import ahead_of, stops

LOAD, READ, LIMIT = (Claim(fact, "role") for fact in ("load.current", "reading.current", "battery.max_current"))
PEAK = Claim("load.peak", "role")
KICKS = frozenset({"inrush", "startup", "surge", "kick", "starting"})
LEAST, MOST = 40.0, 1500.0  # amps of a motor or a tester
GOES_ON = frozenset({"and", "while", "when", "with", "for", "through", "so", "is", "on", "in"})
EMPTIED = regex(
    r"\b(?:empty|emptied|flat|dead|gone|drained|run down|half down)\b[^.?!;,\d]{0,24}\b(?:at|with|on|from)"
    r"(?: only| just| about| some)? $",
    re.IGNORECASE,
)
TESTED = regex(r"\b(?:load[- ]?)?(?:tested|loaded)(?: it| them| her)?(?: at| to| with)(?: about)? $", re.IGNORECASE)
EACH_SAYS = regex(
    r"\beach (?:one |battery |of them )?(?:says?|allows?|gives?|states?|is rated(?: at)?|is good for|may give)"
    r"(?: only| just| up to)? $",
    re.IGNORECASE,
)
AT_MOST = regex(r"^ ?(?:a\b|amps?\b)? ?(?:max\b|maximum\b|at most\b|tops\b|cont\b|continuous\b)", re.IGNORECASE)
CHARGES = regex(r"\bcharg|\bfull\b|\bfill|\btop\w* (?:it |her )?up|\binto\b|\bputs? back\b|\bsolar", re.IGNORECASE)
SOURCES = frozenset({"charger", "dcdc", "alternator", "panel"})
RUN = frozenset({"minute", "hour"})
TRIES = frozenset({"pulls", "pushes", "hauls", "lifts", "goes", "presses", "tries", "attempts", "starts"})
AFTER = 24  # characters


def while_told(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of amps by what is told beside them."""
    found = {}
    for item in scene.quantities("AMP", "NUM"):
        value = item.quantity.value
        claim = _told(scene, claims, item, value) if not isinstance(value, str) else None
        if claim is not None:
            found[item.at] = claim
    return found


def _told(scene: Scene, claims: dict[int, Claim], item: Item, value: float) -> Claim | None:
    claim, before = claims.get(item.at), ahead_of(scene, item)
    loose = claim is None or claim.how in UNSURE
    if EACH_SAYS.search(before) and scene.lithium_known and AT_MOST.match(_after(scene, item)):
        return LIMIT
    if claim is None and LEAST <= value <= MOST and item.dim == "NUM":
        if scene.word(item.start - 1) in KICKS and any(one.fact == LOAD.fact for one in claims.values()):
            return PEAK
        if _listed(scene, claims, item):
            return LOAD
    if claim is not None and claim.fact == LOAD.fact and item.dim == "NUM" and scene.word(item.end) in TRIES:
        return NOTHING  # "it takes twenty pulls a day"
    if loose and LEAST <= value <= MOST and _as_read(scene, claims, item, before):
        return READ
    if claim != Claim("charger.current", "default") or SOURCES & scene.heads or CHARGES.search(scene.text):
        return None
    return LOAD if EMPTIED.search(before) or _for_so_long(scene, item) else None


def _listed(scene: Scene, claims: dict[int, Claim], item: Item) -> bool:
    """Whether it is the second of loads told in a row: "windlass 80, prop 145"."""
    row = scene.items[max(0, item.at - 4) : item.at]
    if len(row) < 4 or not stops(scene, item, GOES_ON):
        return False
    thing, amps, mark, name = row
    drawn = thing.head == "load" and claims.get(amps.at, NOTHING).fact == LOAD.fact
    return drawn and mark.name in (",", "and", "&") and name.kind == "word" and not name.head


def _as_read(scene: Scene, claims: dict[int, Claim], item: Item, before: str) -> bool:
    """Whether they flowed as volts were read: "9.8 at 240", "tested at 375"."""
    if item.dim == "NUM" and not stops(scene, item, GOES_ON):
        return False
    if scene.loaded and TESTED.search(before):
        return True
    volts = scene.items[item.at - 2] if item.at > 1 else None
    read = volts is not None and claims.get(volts.at, NOTHING).fact == "reading.load_voltage"
    return read and scene.word(item.start - 1) in ("at", "@") and item.dim == "NUM"


def _for_so_long(scene: Scene, item: Item) -> bool:
    """Whether a time is told that they run for: "fifty minutes of 25 A", "20 A for an hour"."""
    near = [scene.items[at] for at in (item.at - 2, item.at + 2) if 0 <= at < len(scene.items)]
    joined = scene.word(item.start - 1) == "of" or scene.word(item.end) == "for"
    return joined and any(other.dim == "TIME" and other.quantity.unit in RUN for other in near)


def _after(scene: Scene, item: Item) -> str:
    end = scene.span(item.start, item.end)[1]
    return scene.text[end : end + AFTER]
