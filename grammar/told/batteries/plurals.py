"""Batteries told in the plural of their size or volts: "the same 100s", "two hundreds", "out of 12s"; and counted
after their kind: "they are wet, two"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value

COUNT, SIZE, NOMINAL = "battery.count", "battery.capacity", "battery.nominal"
FEW = "two|three|four|six|[2-46]"
SORT = (
    r"(?:same|old|new|used|equal|identical|wet|agm|gel|flooded|lithium|lead|spare|tired|good|more|of|the|these|those)"
)
SIZES = re.compile(
    rf"\b(?:(?P<count>{FEW}) )?(?:{SORT} )*(?P<size>[4-9][05]|1\d[05]|2[0-5]0)'?s\b(?! and \d)"
    r"(?! ?(?:on|off|burst|run|each time))",
    re.IGNORECASE,
)
HUNDREDS = re.compile(
    rf"\b(?P<count>{FEW}|(?:a |the )?(?:pair|couple) of|both) (?:{SORT} )*"
    r"(?P<size>hundreds|nineties|eighties|seventies)\b"
    r"(?! (?:of|amps?|times|miles|quid|pounds)\b)",
    re.IGNORECASE,
)
TENS = {"hundreds": 100.0, "nineties": 90.0, "eighties": 80.0, "seventies": 70.0}
VOLTS = re.compile(
    rf"\b(?:(?P<count>{FEW}) |(?:from|of|with|using|our|my|his|her|some|have|got) )(?:{SORT} )*(?P<volts>6|12)'?s\b"
    r"(?! ?(?:on|off|burst|run|each time))",
    re.IGNORECASE,
)
AFTER_KIND = re.compile(
    r"\b(?:they|these|those|both)(?:'re| are) (?:wets?|flooded|agms?|gels?|lithiums?|lead)[,;] "
    rf"(?P<count>{FEW})(?: of (?:them|those|these))?(?=\s*(?:[.;:?!,]|$))",
    re.IGNORECASE,
)
JOINED = re.compile(
    rf"\b(?:joined|linked|coupled|wired|strung|connected|hooked up|tied|married) (?P<count>{FEW})"
    r"(?= (?:of them|in|together|up|plus|nose|side|end|for)\b|\s*[,;])",
    re.IGNORECASE,
)
TAKEN_FOR = frozenset({"load.time", "load.burst", "storage.time", "reading.rest_time", "battery.group"})
JOINING = re.compile(r"\b(?:series|parallel|side by side|join|link|string|connect|wire|bank|24|nose to tail)\w*", re.I)
SECONDS = re.compile(r"\b(?:seconds?|secs?|bursts?|pushe?s?|press\w*)\b", re.IGNORECASE)


def plurals(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with those of batteries in the plural; what "100s" was taken for is no time."""
    found = list(_found(scene, {item.fact for item in stated}))
    if not found:
        return stated
    told = {item.fact for item in found}
    spans = [item.span for item in found]
    kept = [item for item in stated if not (item.fact in TAKEN_FOR and any(a <= item.span[0] < b for a, b in spans))]
    return [*(item for item in kept if item.fact not in told), *found]


def _found(scene: Scene, told: set[str]) -> Iterator[Stated]:
    text = scene.text
    if JOINING.search(text) and not SECONDS.search(text):
        if match := HUNDREDS.search(text):
            yield Stated(SIZE, TENS[match["size"].lower()], "ampere_hour", match[0], match.span(), how="default")
            yield from _count(match)
            return
        if SIZE not in told and (match := SIZES.search(text)) and SIZES.search(text, match.end()) is None:
            yield Stated(SIZE, float(match["size"]), "ampere_hour", match[0], match.span(), how="default")
            if COUNT not in told:
                yield from _count(match)
            return
        if NOMINAL not in told and (match := VOLTS.search(text)):
            yield Stated(NOMINAL, float(match["volts"]), "volt", match[0], match.span(), how="default")
            if COUNT not in told:
                yield from _count(match)
            return
    layout = "bank.layout" in told
    if COUNT not in told and (match := AFTER_KIND.search(text) or (JOINED.search(text) if layout else None)):
        yield from _count(match)


def _count(match: re.Match[str]) -> Iterator[Stated]:
    if many := match["count"]:
        number = 2.0 if many[-2:].lower() in ("of", "th") else value(many.lower())  # "a pair of", "both"
        yield Stated(COUNT, number, "", many, match.span("count"), how="default")
