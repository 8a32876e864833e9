"""How two batteries are joined, in the words of a coast or a trade: "plus tae plus", "minus wi plus"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene

LAYOUT = "bank.layout"
PLUS, MINUS = r"(?:plus(?:es)?|pos(?:itives?)?|reds?)", r"(?:minus(?:es)?|neg(?:atives?)?|blacks?)"
TO = r"(?:tae|til|till|on ?to|intae|wi|wae|unto|against|by|met(?:s|ting)? with|meets)(?: (?:the|t'))?"
ALIKE = re.compile(rf"\b{PLUS} {TO} {PLUS}\b", re.IGNORECASE)
CROSSED = re.compile(rf"\b{PLUS} {TO} {MINUS}\b|\b{MINUS} {TO} {PLUS}\b", re.IGNORECASE)


def joined_so(scene: Scene, stated: list[Stated]) -> Iterator[Stated]:
    """The layout that such words tell, where no closer word does."""
    if any(item.fact == LAYOUT for item in stated):
        return
    alike, crossed = ALIKE.search(scene.text), CROSSED.search(scene.text)
    found = alike or crossed
    if found is not None and not (alike and crossed):  # of both it is asked which
        yield Stated(LAYOUT, "parallel" if alike else "series", "", found[0], found.span(), how="default")
