"""Two sizes that are put as a choice: "35 or 50 mm2", "a fuse of 250 or 350 A"; a range of them would be neither."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from grammar.reading import Stated
from grammar.text.patterns import regex

CHOSEN = frozenset({"cable.area", "fuse.rating"})
OR = regex(r"\bor\b", re.IGNORECASE)


def each_size(stated: Iterable[Stated]) -> Iterator[Stated]:
    """The facts, those of a choice as two; where a second one is told already the choice stays as it is."""
    known = list(stated)
    twice = {item.fact for item in known if item.of > 1}
    for item in known:
        ends = {end for end in (item.low, item.high) if end is not None}
        if item.fact not in CHOSEN - twice or len(ends) < 2 or not OR.search(item.text):
            yield item
            continue
        for place, size in enumerate(sorted(ends), 1):
            yield replace(item, value=size, low=None, high=None, of=place)
