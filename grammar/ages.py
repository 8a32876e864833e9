"""Which bare numbers are years: "8 old", "turned four", "five winters", "mine's 9, buy a new one?"."""

from __future__ import annotations

from grammar.items import Item
from grammar.scene import Scene

OLD = frozenset({"old", "yo", "yrs", "winters", "summers", "seasons"})
TURNED = frozenset({"turned", "turns", "turn", "turning", "age", "aged"})
OLDEST = 20.0  # said without a word for years
VOLTS = frozenset({6.0, 12.0})
ITS = frozenset({"shes", "ours", "mine", "mines", "batterys", "agms", "gels", "ones"})  # "mine's", "the battery's"
IS = frozenset({"is", "its", "theyre"})
IT = frozenset({"it", "battery", "batt", "agm", "gel", "one", "mine", "which", "they"})
GOES_ON = frozenset({"so", "should", "is", "swap", "do", "can", "now", "already", "time", "finished", "and"})
WORN = frozenset(
    {
        *("swap", "replace", "replacing", "replaced", "another", "life", "age", "finished", "renew", "old", "older"),
        *("past", "done", "scrap", "keep", "chuck", "bin", "dump"),
    }
)
NEW = frozenset({"new", "buy"})


def is_age(scene: Scene, item: Item) -> bool:
    """Whether a bare number is of years."""
    before = scene.word(item.start - 1)
    going_on = before == "on" and scene.word(item.start - 2) in ("going", "coming")
    after = scene.after(item)
    by_now = before in ITS and (scene.word(item.end), scene.word(item.end + 1)) == ("by", "now")
    if by_now:
        return True
    they_are = before == "theyre" and (after is None or after.kind == "mark")
    return scene.word(item.end) in OLD or before in TURNED or going_on or they_are or _is_told(scene, item)


def _is_told(scene: Scene, item: Item) -> bool:
    """ "The AGM is 6, swap it?", "the old one's seven": a number that ends what is said, where wear is spoken of."""
    value = item.quantity.value
    if isinstance(value, str) or not 1 < value <= OLDEST or value * 2 != int(value * 2) or value in VOLTS - {6.0}:
        return False
    after, before = scene.after(item), scene.word(item.start - 1)
    if after is not None and after.kind != "mark" and after.name not in GOES_ON:
        return False
    its = before in ITS or (before in IS and ({before, scene.word(item.start - 2)} & IT or before != "is"))
    words = scene.vocabulary
    worn = words & WORN or (words >= NEW)
    return bool(its and worn and not scene.heads - {"battery", "boat", "meter"})
