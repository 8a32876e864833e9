"""Whether a bare number is volts read off a meter."""

from __future__ import annotations

from grammar.attach.volts import falls_to, is_reading
from grammar.scene.items import Item
from grammar.scene.scene import Scene

SIDES = frozenset({"long", "wide", "deep", "high", "tall", "inches", "thick"})
SIZES = frozenset({"by", "x", "depth", "width", "height", "length", "deep", "wide", "high", "long"})
CROSSED = ("x", "by")
SHOWS = frozenset({"reads", "shows", "showing", "read"})
SHOWN = (8, 17)  # volts of a battery
AT_REST = (11.6, 13.3)
RESTED = ((12, 13), (24, 26))  # whole volts at rest
UNTIL = frozenset({"flat", "even", "until", "till", "before", "then", "resting", "idle", "beforehand"})
MOST_LOST = 0.5  # of the volts, in a fall that is told
LOADED = (6, 12)  # volts of a 12 V battery that a load pulls down
NOT_VOLTS = frozenset(
    {"amps", "a", "amp", "percent", "%", "degrees", "degs", "minutes", "hours", "months", "years", "cells"}
)
RECKONED = frozenset({"used", "uses", "factor", "constant", "k"})  # "he used 10.8 for copper"
METERS = frozenset({"volts", "volt", "v", "meter", "voltmeter", "multimeter"})


def is_read_off(scene: Scene, item: Item, value: float) -> bool:
    """Whether a number with decimals is of volts; "the tray is 15.5 long" is not."""
    if scene.word(item.start - 1) in RECKONED and not scene.vocabulary & METERS:
        return False
    return is_reading(scene, value) and scene.word(item.end) not in SIDES and not _is_side(scene, item)


def is_whole_reading(scene: Scene, item: Item, value: float) -> bool:
    """Whether a number without decimals is of volts: one that they fall to, or that is shown."""
    return (
        (4 <= value < 32 and _falls(scene, item))
        or _is_shown(scene, item, value)
        or _is_loaded(scene, item, value)
        or _falls_from(scene, item, value)
        or _is_at_the_load(scene, item, value)
    )


def _falls_from(scene: Scene, item: Item, value: float) -> bool:
    """Whether whole volts are those from which a press pulls them: "25 flat till my thumb goes down, then 19.5"."""
    if not any(low <= value <= high for low, high in RESTED) or scene.word(item.end) not in UNTIL or not scene.sags:
        return False
    return any(MOST_LOST * value <= other < value and other % 1 for other in scene.figures)


def _is_loaded(scene: Scene, item: Item, value: float) -> bool:
    """Whether it was read beside volts at rest as the load ran: "12.7 resting and 9 with the thruster on"."""
    runs = any(found.start == item.end for found in scene.sags)
    rested = scene.about("role:off") and any(AT_REST[0] <= other < AT_REST[1] for other in scene.figures)
    return LOADED[0] <= value <= LOADED[1] and runs and bool(rested)


def _is_at_the_load(scene: Scene, item: Item, value: float) -> bool:
    """Whether it stands right before the motor's place, where volts are told: "11 V running, 9 on the motor studs"."""
    if not LOADED[0] <= value <= LOADED[1] or not (scene.quantities("VOLT") or METERS & scene.vocabulary):
        return False
    at = item.end + (scene.word(item.end) in ("on", "at", "across", "over"))
    at += scene.word(at) in ("the", "its", "my")
    return any(found.concept == "at_load" and found.start in (item.end, at) for found in scene.roles)


def _is_shown(scene: Scene, item: Item, value: float) -> bool:
    """Whether a whole number is what a battery or a meter shows: "my bow battery reads 16 with everything off"."""
    named = scene.word(item.start - 1) in SHOWS and {"battery", "meter"} & scene.heads
    return SHOWN[0] <= value <= SHOWN[1] and bool(named) and scene.word(item.end) not in NOT_VOLTS


def _is_side(scene: Scene, item: Item) -> bool:
    """Whether it is a side of a tray or a case, as in "26 cm long by 17.5", "length 41, depth 17.5"."""
    near = [scene.word(item.start - 1), scene.word(item.start - 2), scene.word(item.end)]
    if not SIZES & set(near):
        return False
    lengths = any(other.dim in ("LENGTH", "INCH", "MM") for other in scene.items[max(0, item.at - 6) : item.at + 7])
    crossed = near[0] in CROSSED and item.at > 1 and scene.items[item.at - 2].dim == "NUM"  # "33.2 x 17.5"
    return crossed or lengths or bool({"depth", "width", "height"} & set(near))


def _falls(scene: Scene, item: Item) -> bool:
    """Whether a bare number is what volts fall to; "group 24 -> 27" falls nowhere."""
    return falls_to(scene, item) and (item.at < 2 or scene.items[item.at - 2].dim != "GROUP")
