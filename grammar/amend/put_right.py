"""A figure with its unit that puts one of before right: "takes 6 A. Meant 60 mA", "50 mA, typo"."""

from __future__ import annotations

import re

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

SLIP = r"(?:sorry|oops|whoops|typo|i mean|i meant|my (?:mistake|bad))"
MEANT = regex(  # not "it is meant for 80 A", not "what is meant by 80 A"
    r"(?:^|[.,;:?!()/-] ?|\b(?:i|we|oops|sorry|of course|obviously) )"
    r"(?:meant|should (?:read|say|have (?:read|said)))(?: to (?:say|write|type|put))?:? (?:it was |about |only )?$",
    re.IGNORECASE,
)
SLIPPED = regex(rf"[ ,.;:(!-]*\b{SLIP}(?: sorry)?(?=\W*$| ?[.,;:!?)])", re.IGNORECASE)
CHOICE = regex(r"\bor\b|\bbetween\b", re.IGNORECASE)
NEAR = 24  # characters
RIVALS = {"drain.current": "load.current", "load.current": "drain.current"}


def put_right(scene: Scene, item: Stated, kept: dict[str, list[Stated]]) -> None:
    """Drops what a figure stands in place of: those of its fact before it, or the one of a fact of its like."""
    rival = RIVALS.get(item.fact, item.fact)
    before = kept.get(item.fact) or kept.get(rival) or []
    if before and isinstance(item.value, float) and _puts_right(scene, item, before[-1]):
        before.clear()


def _puts_right(scene: Scene, item: Stated, before: Stated) -> bool:
    start, end = item.span
    if MEANT.search(scene.ahead(start)):
        return True
    slipped = SLIPPED.match(scene.text[end : end + NEAR])
    return slipped is not None and CHOICE.search(scene.text[before.span[1] : start]) is None
