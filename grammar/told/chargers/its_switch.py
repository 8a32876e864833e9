"""A charger's switch told with "it": "the charger is wrong, I bet. It says AGM", "and it's in WET, should've said"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

IT = frozenset({"it", "its", "that", "thats", "which"})
SAYS = frozenset({"says", "reads", "shows", "said"})
AT = frozenset({"in", "on", "at"})
STANDS = frozenset({"is", "stands", "sits", "was", "points", "still", "stuck", "s"})
BACK = 4  # words
LABELLED = frozenset({"battery", "batteries", "lid", "label", "sticker", "case"})
JOINERS = frozenset({"/", "or", "and", "&", "+"})


def its_switch(scene: Scene, item: Item) -> bool:
    """Whether "it" is a charger, and the kind what its switch says or stands on."""
    after = scene.after(item)
    if after is not None and (after.name in JOINERS or after.head == "battery"):
        return False
    if scene.word(item.end) == "on" and LABELLED & {scene.word(at) for at in range(item.end, item.end + BACK)}:
        return False  # "it says AGM on the battery"
    last, before = scene.word(item.start - 1), [scene.word(item.start - back) for back in range(2, BACK + 1)]
    if last in SAYS:
        return before[0] in IT and _of_charger(scene, item)
    at = last in AT and (before[0] in IT or (before[0] in STANDS and bool(IT & set(before))))
    return at and (_of_charger(scene, item) or _of_that_charger(scene, item))


def _of_charger(scene: Scene, item: Item) -> bool:
    """Whether a charger was named last before it."""
    heads = [head.head for head in scene.head_items if head.end <= item.start and head.head != "meter"]
    return heads[-1:] == ["charger"]


def _of_that_charger(scene: Scene, item: Item) -> bool:
    """Whether a charger was told of before, and a battery of another kind."""
    charged = any(old.fact.startswith("charger.") for old in scene.said)
    others = any(old.fact == "battery.chemistry" and old.value != item.name for old in scene.said)
    return charged and others and not scene.heads - {"charger"}
