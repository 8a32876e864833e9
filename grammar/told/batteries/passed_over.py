"""A kind that was thought of and passed over for one that is told: "lithium is too dear, so we stay with gel"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from grammar.reading import Span
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

KIND = r"(?:lithiums?|li(?:fe)?po4|lfp|agms?|gels?|wets?|flooded|lead(?:[- ]acid)?)\b"
DEAR = (
    r"\b(?:prices?|cost(?:s|ing)?|dear(?:er)?|expensive|pric(?:e)?y|afford|budget|money|quotes?|quoted|fortune|steep"
    r"|against|talked|ruled|gave up|given up|giving up)\b"
)
WITH = r"(?: (?:with|to|on|at|by|the|our|my|an?|same|old|plain|good))*"
KEPT = rf"\b(?P<kept>keep(?:ing)?|kept|stay(?:ing|ed)?|stick(?:ing)?|stuck){WITH} {KIND}"
TAKEN = (
    r"\bso (?:\w+ ){0,4}(?:bought|chose|got|took|fitted|ordered"
    r"|(?:went|go|going|opted|settled|settling) (?:for|with|on))"
    rf"{WITH} {KIND}"
)
TOO_DEAR = rf"(?:(?P<gone>{KIND})[^.?!;:]{{0,40}}{DEAR}|{DEAR}[^.?!;:]{{0,30}}\b(?P<gone_after>{KIND}))"
PASSED_OVER = (
    regex(rf"\b{TOO_DEAR}(?:(?!\bbut\b)[^?!]){{0,40}}?(?:{KEPT}|{TAKEN}|\b{KIND} it (?:is|stays)\b)", re.IGNORECASE),
    regex(rf"{KEPT}[^.?!;:]{{0,40}}\b{TOO_DEAR}", re.IGNORECASE),
    regex(  # a plain no; another kind is told elsewhere
        r"\b(?:(?:decided|advised \w+) against|talked (?:\w+ )?out of|ruled out|can(?:['’]?t|not) afford"
        r"|g[ai]ven? up on)"
        rf"(?: the| a| any)? (?P<gone>{KIND})",
        re.IGNORECASE,
    ),
)
ASKED = regex(  # what stands before a keeping that is no deed yet: "should we be keeping AGM", "or stay with gel"
    r"\b(?:is|are|would|should|shall|could|do|does|or|whether|if|worth|about|better|wise|why)"
    r"(?: (?:i|we|he|she|they|you|it|be|just|to|not|then))*$",
    re.IGNORECASE,
)


def is_passed_over(scene: Scene, item: Item) -> bool:
    """Whether this kind is one that they did not take, and another is told."""
    if item.fact != "battery.chemistry" or len(scene.names_of(item.fact)) < 2:
        return False
    start, end = scene.span(item.start, item.end)
    return any(start < after and before < end for before, after in _gone(scene.text))


@lru_cache(maxsize=4)  # asked for each kind of a text
def _gone(text: str) -> tuple[Span, ...]:
    """Where the kinds stand that are passed over."""
    return tuple(_found(text))


def _found(text: str) -> Iterator[Span]:
    for pattern in PASSED_OVER:
        for match in pattern.finditer(text):
            groups = match.groupdict()
            if groups.get("kept") and ASKED.search(text[: match.start("kept")].rstrip()):
                continue
            yield match.span("gone" if groups["gone"] else "gone_after")
