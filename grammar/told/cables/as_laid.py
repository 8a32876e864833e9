"""The way a cable is laid beside the straight one: "7 metres, 9 with the curves". The way it is laid counts."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from grammar.reading import Stated
from grammar.text.patterns import regex

LENGTH, FOOT, LONGEST = "cable.length", 0.3048, 3.0  # metres of a foot; times the straight way
BENDS = r"(?:curves?|bends?|corners?|turns?|twists?|slack|detours?|ups and downs|zig[- ]?zags?)"
WAY = (
    rf"(?:with (?:all )?(?:the |its |some )?{BENDS}|(?:counting|including|allowing for) (?:all )?(?:the |its )?{BENDS}"
    r"|(?:along|round|around|through|following|by|via) (?:the|its|my|our) (?:\w+ )?"
    r"(?:hull|side|route|bilge|lockers?|cupboards?|bulkheads?|frames?|stringers?|trunking|conduit|duct|engine|keel|deck"
    r"|way round)"
    r"|as (?:it(?: is|['’]s)?|they are|the cable(?: is)?) (?:laid|run|runs|routed|lies|goes)"
    r"|(?:if|when) (?:i|we|it|you) (?:follows?|goes|go) (?:along |round |around )?(?:the|its)"
    r"|the way (?:it|the cable) (?:goes|runs|is laid))"
)
NUMBER = r"(?P<{0}>\d{{1,3}}(?:[.,]\d{{1,2}})?) ?(?P<u{0}>m|metres?|meters?|ft|feet|foot)?"
LAID = regex(
    rf"(?<![\d.,]){NUMBER.format('before')},? (?:of cable |or so |in all |really )?{WAY}\b"
    rf"|\b{WAY},? (?:it(?: is|['’]s) |makes |more like |about |rather )*{NUMBER.format('after')}(?![\w.,]*\d)",
    re.IGNORECASE,
)


def way_laid(text: str, stated: Sequence[Stated]) -> list[Stated]:
    """The facts with the length of a cable as it is laid, where the straight way is told as well."""
    told = [item for item in stated if item.fact == LENGTH]
    straight = next((item for item in told if item.of == 1), None)
    found = LAID.search(text)
    if straight is None or found is None:
        return list(stated)
    name = "before" if found["before"] else "after"
    unit = (found[f"u{name}"] or straight.text).lower()
    feet = bool(re.search(r"\b(?:\d+ ?)?(?:ft|feet|foot)\b|\d'", unit))
    metres = float(found[name].replace(",", ".")) * (FOOT if feet else 1.0)
    if not float(straight.value) < metres <= LONGEST * float(straight.value):
        return list(stated)
    start, end = found.start(name), max(found.end(name), found.end(f"u{name}"))
    laid = replace(straight, value=metres, text=text[start:end], span=(start, end), low=None, high=None)
    return [laid, *(item for item in stated if item.fact != LENGTH)]
