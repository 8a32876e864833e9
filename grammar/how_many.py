"""Batteries counted apart from their name: "the 25 kg wets (two)", and of the conversation's: "same, two of"."""

from __future__ import annotations

from grammar.items import Item
from grammar.scene import Scene

DESCRIBED = frozenset({"battery.chemistry", "battery.duty", "battery.nominal"})
FIGURES = frozenset({"VOLT", "AH", "CCA", "CA", "RC", "GROUP", "WH", "WEIGHT"})


def bracketed(scene: Scene, item: Item) -> bool:
    """Whether the number stands in brackets behind batteries: "the 25 kg wets (two)", "gel batteries (4)"; where other
    brackets hold numbers too, they are a list's."""
    near = scene.items[max(0, item.at - 2) : item.at + 2]
    if item.at < 2 or len(near) < 4 or near[1].name != "(" or near[3].name != ")":
        return False
    others = (other for other in scene.quantities("NUM", "COUNT") if other is not item)
    listed = any(scene.word(other.start - 1) == "(" and scene.word(other.end) == ")" for other in others)
    return not listed and (near[0].head == "battery" or near[0].fact in DESCRIBED or near[0].dim in FIGURES)


def so_many_of(scene: Scene, item: Item) -> bool:
    """Whether there are so many of the battery of the conversation: "same, two of", "two of the same, parallel"."""
    if not any(fact.fact.startswith("battery.") for fact in scene.said) or scene.heads - {"battery"}:
        return False
    of, follows = scene.word(item.end), [scene.word(item.end + 1), scene.word(item.end + 2)]
    if of not in ("of", "off"):
        return False
    ends = not follows[0][:1].isalnum()
    return ends or (of == "of" and ("same" in follows[:1] or follows == ["the", "same"]))
