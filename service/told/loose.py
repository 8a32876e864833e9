"""A battery that moves about: told, it is today's matter, whatever else is asked."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

BATTERY = r"\b(?:batter(?:y|ies)|accus?|agms?|gels?|lithiums?|the\ bank)\b"
MOVES = regex(
    BATTERY
    + r"""[^.?!;]{0,80}\b
    (?:sl(?:id|ides?|iding)|shift(?:s|ed|ing)?|roll(?:s|ed|ing)?|mov(?:es?|ed|ing)|bounc(?:es?|ed|ing)
    |skid(?:s|ded|ding)?|skat(?:es?|ed|ing)|tipped|topples?|toppled)\b\ (?:
    (?:about|around|across|to\ and\ fro|back\ and\ forth|over)\b
    |(?:in|on|along)\ (?:the|its|our|my)\ (?:\w+\ )?(?:locker|floor|tray|box|bilge|shelf|sole|compartment)\b
    |(?:in|when)\b[^.?!]{0,30}\b(?:swell|seaway|sea|waves|chop|heel\w*|wind|blows)\b)""",
    re.IGNORECASE | re.VERBOSE,
)
LOOSE = regex(
    BATTERY
    + r"""[^.?!;,]{0,30}\b(?:stand(?:s|ing)?|stood|is|are|sits?|sat|came|come|lies|lying|lay)
    (?:\ (?:quite|all|just|only))?\ (?:loose|unsecured|unfastened|untied|unstrapped)\b""",
    re.IGNORECASE | re.VERBOSE,
)
MOVED = regex(  # most texts have no such word, and the search from every battery on is slow
    r"\b(?:sl[ai]d|shift|roll|mov|bounc|skid|skat|tipp|toppl|loose|un(?:secured|fastened|tied|strapped))", re.IGNORECASE
)
OF_WIRING = regex(
    r"\b(?:terminals?|clamps?|lugs?|cables?|posts?|nuts?|connections?|connectors?|wires?|leads?|caps?)\b", re.IGNORECASE
)
HELD_NOW = regex(
    r"\b(?:now|since|meanwhile|then) (?:strapped|fastened|fixed|held|bolted|secured|tied|clamped)\b", re.IGNORECASE
)
IN_GENERAL = regex(r"\bhow (?:do|can|could|should|to|does)\b[^.?!;]{0,20}\b(?:stop|keep|prevent)\b", re.IGNORECASE)


def spoken_of(text: str) -> bool:
    """Whether a battery that moves about is spoken of, told or in general."""
    if not MOVED.search(text):
        return False
    found = (match for pattern in (MOVES, LOOSE) for match in pattern.finditer(text))
    return any(not OF_WIRING.search(match[0]) for match in found)


def moves(text: str) -> bool:
    """Whether a battery is told to stand loose or to have moved, and not to have been fastened since."""
    return spoken_of(text) and not HELD_NOW.search(text) and not IN_GENERAL.search(text)
