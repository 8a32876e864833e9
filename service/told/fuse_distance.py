"""How far a fuse sits from the battery, as the customer tells it."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

UNITS = {"mm": 0.001, "cm": 0.01, "m": 1.0, "ft": 0.3048, "in": 0.0254}
SPELT = {"metre": "m", "meter": "m", "foot": "ft", "feet": "ft", "inch": "in", "inche": "in", '"': "in", "'": "ft"}
WORDS = {"a": 1.0, "an": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "half a": 0.5}
AMOUNT = r"(\d+(?:[.,]\d+)?|half a|an?|one|two|three|four)"
UNIT = r"(mm|cm|m|metres?|meters?|ft|feet|foot|in|inch(?:es)?|\"|')"
WHOSE = r"(?:the |my |our |its |a )?(?:house |thruster |bow )?"
FROM = rf"(?: away| along| off)* (?:from|of) {WHOSE}(?:batter|batt\b|bank|plus|positive)"
TOLD = regex(
    rf"\b(?:fuse|breaker|anl|mrbf|class t)\b([^.?!;]{{0,60}}?)\b{AMOUNT} ?{UNIT}( and a half)?{FROM}", re.IGNORECASE
)
INSTEAD = regex(  # "within 7 inches impossible, 14 inches ok?"
    rf"\bwithin 7 ?(?:in|inch(?:es)?|\")\b([^.?!;]{{0,40}}?)\b{AMOUNT} ?{UNIT}( and a half)?(?! (?:of|from) )",
    re.IGNORECASE,
)
BETWEEN = regex(r"\b(?:thruster|motor|windlass|winch|cable|charger|for|to)\b", re.IGNORECASE)


def metres(text: str) -> float | None:
    """Metres between the fuse and the battery, None where they are not told.

    >>> metres("a 250 A ANL about a metre and a half from the battery"), metres("fuse 6 in from the battery plus")
    (1.5, 0.1524)
    >>> metres("fuse within 7 inches is impossible, 14 inches ok?")
    0.3556
    >>> metres("what fuse for a thruster 6 m from the battery")
    """
    found = TOLD.search(text) or INSTEAD.search(text)
    if not found or BETWEEN.search(found.group(1)):
        return None
    amount, unit = found.group(2).lower(), found.group(3).lower()
    scale = UNITS.get(unit) or UNITS[SPELT[unit.rstrip("s") if unit != "s" else unit]]
    number = WORDS[amount] if amount in WORDS else float(amount.replace(",", "."))
    return round((number + (0.5 if found.group(4) else 0.0)) * scale, 4)
