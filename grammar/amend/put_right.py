"""A figure with its unit that puts one of before right: "takes 6 A. Meant 60 mA", "50 mA, typo", "I was about to say
50 mm2, but it is 35 mm2"."""

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
NEARLY = (  # "I was going to say", "I nearly wrote"
    r"(?:(?:was|were) (?:going|about|tempted|meaning)|wanted|meant|(?:had|have|['’]d|['’]ve) (?:nearly|almost)"
    r"|nearly|almost) (?:to )?(?:say|write|type|put|tell you|said|wrote|written|typed|told you)"
)
BELIEVED = (  # "I thought it was", "I'd have sworn we had"; not "I thought it would be", "I thought 70 was enough"
    r"(?:thought|believed|assumed|guessed|remembered|recalled|have sworn|would swear)\b[^.?!;,\d]{0,30}"
    r"\b(?:was|were|had|drew|pulled|measured|said|showed)"
)
SUPPOSED = regex(rf"\b(?:{NEARLY}|{BELIEVED})\b[^.?!;,\d]{{0,20}}$", re.IGNORECASE)
YET = regex(r"\b(?:but|turn(?:s|ed) out|it(?:['’]?s| is) (?:really|actually|in fact))\b", re.IGNORECASE)
CHOICE = regex(r"\b(?:or|between|also|another|other|second)\b", re.IGNORECASE)
NEAR = 24  # characters
RIVALS = {"drain.current": "load.current", "load.current": "drain.current"}


def put_right(scene: Scene, item: Stated, kept: dict[str, list[Stated]]) -> None:
    """Drops what a figure stands in place of: those of its fact before it, or the one of a fact of its like."""
    rival = RIVALS.get(item.fact, item.fact)
    before = kept.get(item.fact) or kept.get(rival) or []
    if not before:
        return
    puts_right = isinstance(item.value, float) and _puts_right(scene, item, before[-1])
    if puts_right or _was_supposed(scene, item, before[-1]):
        before.clear()


def _was_supposed(scene: Scene, item: Stated, before: Stated) -> bool:
    """Whether the one before was only nearly said, or believed till the one that is told now."""
    between = scene.text[before.span[1] : item.span[0]]
    supposed = item.fact == before.fact and SUPPOSED.search(scene.ahead(before.span[0])) is not None
    return supposed and YET.search(between) is not None and CHOICE.search(between) is None and "?" not in between


def _puts_right(scene: Scene, item: Stated, before: Stated) -> bool:
    start, end = item.span
    if MEANT.search(scene.ahead(start)):
        return True
    slipped = SLIPPED.match(scene.text[end : end + NEAR])
    return slipped is not None and CHOICE.search(scene.text[before.span[1] : start]) is None
