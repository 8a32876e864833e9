"""Sizes that are to be put into the other measure, a list behind a colon: "mm2 to AWG: 16, 35"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from grammar.facts import facts
from grammar.reading import Stated
from grammar.text.patterns import regex
from grammar.text.standard import METRIC_SIZES

AREA, GAUGE = "cable.area", "cable.gauge"
LISTED = regex(
    r"\b(?:mm ?2|mm²|mm sq|sq\.? ?mm|square mm|square millimetres?|metric)"
    r" ?(?:to|into|in|as|->|→) ?(?:awg|gauges?|american)\b[ :,-]+"
    r"(?P<sizes>\d{1,3}(?:[.,]\d)?(?:(?:, ?| and | or | & |/)\d{1,3}(?:[.,]\d)?)*)(?! ?(?:awg|ga\b|gauge))\b",
    re.IGNORECASE,
)
SIZE = regex(r"\d{1,3}(?:\.\d)?")
MOST = 2  # of a fact that a message states


def sizes_listed(text: str, stated: Sequence[Stated]) -> list[Stated]:
    """The facts, with square millimetres that are to be told as gauges, which a label before them made gauges."""
    found = LISTED.search(text)
    start, end = found.span("sizes") if found else (0, 0)
    if found is None or any(item.fact == AREA and not start <= item.span[0] < end for item in stated):
        return list(stated)
    sizes = [(float(one[0]), one.span()) for one in SIZE.finditer(text, start, end)]
    if not all(size in METRIC_SIZES for size, _ in sizes):
        return list(stated)
    kept = [item for item in stated if not (item.fact == GAUGE or start <= item.span[0] < end)]
    told, unit = sizes[:MOST], facts()[AREA].unit
    return kept + [Stated(AREA, size, unit, text[slice(*span)], span, of) for of, (size, span) in enumerate(told, 1)]
