"""Fresh water that stands around a battery: rain in its locker, a burst tank; none that goes into its cells."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

SPACE = r"(?:compartment|locker|box|tray|bay|bin|hold|bilge|battery space|battery well)"
WATER = (
    r"(?:rain[- ]?water|fresh[- ]?water|tap[- ]?water|melt[- ]?water|tank[- ]?water|water|rain)"
    r"(?! (?:pump|tank|heater|hose|system|maker|filter|pipe|tap)s?)"
)
IN_IT = r"(?:in|into|inside|under|around|onto|through)"
STANDS = regex(
    rf"\b{WATER}\b[^.?!;]{{0,24}}\b{IN_IT} (?:the |my |our |his |its )?(?:\w+ ){{0,2}}{SPACE}\b"
    rf"|\b{SPACE}\b[^.?!;]{{0,16}}\b(?:full of|flooded with|filled with|under|got) {WATER}\b"
    rf"|\bbatter(?:y|ies)\b[^.?!;]{{0,16}}\b(?:stand|stood|standing|sat|sit|sitting)s? in {WATER}\b",
    re.IGNORECASE,
)
FRESH = regex(r"\b(?:rain\w*|fresh\w*|tap|melt\w*|tank|not (?:sea|salt)\w*|no salt)\b", re.IGNORECASE)
FILLS = regex(
    r"\b(?:top(?:ped|ping|s)?[- ]?up|fill(?:ing|s)?|distilled|deionised|(?:the|each|my) cells?|drain hole)\b",
    re.IGNORECASE,
)


def stands(text: str) -> bool:
    """Whether fresh water is told to stand around a battery.

    >>> stands("rain water got into the battery locker"), stands("fresh water: what goes in the cells?")
    (True, False)
    >>> stands("may the fresh water pump go in the battery compartment")
    False
    """
    return bool(STANDS.search(text) and FRESH.search(text)) and FILLS.search(text) is None
