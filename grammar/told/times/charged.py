"""How long a charge went on before a reading: "after charging 8 hours", "ten hours on the charger"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

CHARGER = r"(?:(?:the|its|my|our|a|an) )?(?:\w+ )?charg(?:e|er)"
BEFORE = regex(
    rf"\b(?:charg(?:ed|ing)(?: (?:it|them|her|both|up|(?:the|my) \w+))?"
    rf"|on {CHARGER}|charger (?:ran|was (?:on|running)|had run|has been (?:on|running)))"
    r"(?: (?:for|over|all|about|around|some|a|an|the|good|full|whole|another|nearly|only|now))* $",
    re.IGNORECASE,
)
AFTER = regex(rf"^ ?(?:long )?(?:on {CHARGER}\b|of (?:a )?charg(?:e|ing)\b)", re.IGNORECASE)
PAST = regex(r"^ ?(?:ago|later|since|back|before|earlier|after|off|old)\b", re.IGNORECASE)  # then it is a rest


def is_charge(before: str, after: str) -> bool:
    """Whether a time between these words is how long a charge went on, and no rest after it.

    >>> is_charge("after charging for ", ", 12.4 V"), is_charge("12.5 V after ", " on the charger")
    (True, True)
    >>> is_charge("12.6 V, charged ", " ago"), is_charge("12.6 V, ", " after charging")
    (False, False)
    """
    return PAST.match(after) is None and (BEFORE.search(before) or AFTER.match(after)) is not None
