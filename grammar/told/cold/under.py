"""Degrees told without their unit: "eight under", "by minus ten", "min 18", "locker about 15"."""

from __future__ import annotations

from grammar.scene.claims import UNSURE, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene

BARE = frozenset({"NUM", "COUNT"})
LOWEST, WARMEST = 45.0, 40.0  # degrees below zero, above it
ZERO = frozenset({"zero", "nought", "nil", "freezing", "celsius"})
UNDER = frozenset({"under", "below"})
COLD = frozenset(
    {
        "forecast",
        "frost",
        "frosts",
        "frosty",
        "ice",
        "icy",
        "cold",
        "colder",
        "winter",
        "winters",
        "unheated",
        "barn",
        "shed",
        "garage",
    }
    | {
        "night",
        "nights",
        "tonight",
        "overnight",
        "freeze",
        "freezes",
        "frozen",
        "outside",
        "outdoors",
        "snow",
        "liquid",
    }
    | {"weather", "dawn", "thermometer", "mercury", "temperature", "temps", "january", "february", "december"}
)
GOES_ON = frozenset(
    {"", "in", "at", "by", "out", "outside", "here", "and", "tonight", "overnight", "with", "when", "now"}
)
BY = frozenset({"by", "at", "on", "in", "to", "of", "is", "its", "for", "bij", "bei", "", ".", ","})
OUT = frozenset({"outside", "outdoors", "overnight", "tonight"})
SCALES = frozenset({"thermometer", "mercury"})
PLACES = frozenset(
    {"locker", "shed", "barn", "cabin", "garage", "forepeak", "workshop", "cellar", "boathouse", "saloon", "bench"}
)
SHOWS = frozenset({"says", "reads", "shows", "at", "on"})
ABOUT = frozenset({"about", "around", "at", "near", "is", "stays", "roughly", "say"})


def told_under(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of bare numbers that are degrees."""
    bare = [
        item for item in scene.measured if item.dim in BARE and claims.get(item.at) in (None, Claim("-", "grammar"))
    ]
    found = {item.at for item in bare if _is_of_degrees(scene, item)}
    loose = [item for item in scene.quantities(*BARE) if item.at in claims and claims[item.at].how in UNSURE]
    found |= {item.at for item in loose if is_under(scene, item)}
    return {at: Claim("ambient.temperature", "role") for at in found}


def _is_of_degrees(scene: Scene, item: Item) -> bool:
    return is_under(scene, item) or _is_zero(scene, item) or _is_minus(item) or _is_of_a_place(scene, item)


def is_under(scene: Scene, item: Item) -> bool:
    """Whether degrees are so many under zero: "forecast eight under", "five under zero", "by min 18"."""
    value = item.quantity.value
    if isinstance(value, str) or not 0 < value <= LOWEST or value % 1:
        return False
    if [scene.word(item.start - 2), scene.word(item.start - 1)] == ["frost", "of"] and item.dim in BARE:
        return True
    if scene.word(item.end) in UNDER:
        follows = scene.word(item.end + 1)
        mark = scene.after(item)
        after = scene.after(mark) if mark is not None else None
        ends = after is None or after.kind == "mark" or follows in GOES_ON
        return follows in ZERO or (scene.word(item.end) == "under" and ends and bool(COLD & scene.vocabulary))
    before = scene.at_word[item.start - 2] if item.start > 1 else None
    least = scene.word(item.start - 1) == "min" and item.dim in BARE and scene.word(item.start - 2) in BY
    after = scene.after(item)
    ends = after is None or after.kind == "mark" or after.name in ("how", "what", "will", "and", "in")
    return least and ends and (before is None or not before.dim)


def _is_zero(scene: Scene, item: Item) -> bool:
    """Whether it is zero out there: "when it's zero outside", "zero overnight"."""
    return item.quantity.value == 0 and scene.word(item.end) in OUT


def _is_minus(item: Item) -> bool:
    """Whether it has a minus of its own: "640 CCA by minus ten"."""
    value = item.quantity.value
    return (
        not isinstance(value, str) and -LOWEST <= value < 0 and not value % 1 and "minus" in item.quantity.text.lower()
    )


def _is_of_a_place(scene: Scene, item: Item) -> bool:
    """Whether it tells how warm a place is: "nothing connected, locker about 15", "the shed is around 12"."""
    value = item.quantity.value
    if isinstance(value, str) or not 0 <= value <= WARMEST or value % 1 or scene.quantities("MM", "INCH", "LENGTH"):
        return False
    before = [scene.word(item.start - back) for back in range(1, 7)]
    shown = before[0] in SHOWS and SCALES & set(before)
    if not shown and (before[0] not in ABOUT or not PLACES & set(before[1:3])):
        return False
    if scene.about("word:fit"):
        return False
    after = scene.after(item)
    return (after is None or after.kind == "mark") and item.dim == "NUM"
