"""Which water a battery stood in: rain, a tap or a river, or the sea."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

FRESH = regex(
    r"\b(?:rain(?: ?water)?|fresh ?water|tap ?water|(?:river|lake|canal|bilge|drinking) water|water tank|hose)\b"
    r"|\bwater\b[^.?!;]{0,30}\bfresh\b",
    re.IGNORECASE,
)
SALT = regex(
    r"(?<!not )(?<!no )\b(?:sea|salt\w*|brine|brackish|harbou?r|tide|tidal|waves?|surf|ocean)\b", re.IGNORECASE
)
BILGE = regex(r"\bbilge water\b", re.IGNORECASE)


def is_fresh(text: str) -> bool:
    """Whether fresh water is named, and no salt; what stands in a bilge may be either.

    >>> is_fresh("rain water in the battery box"), is_fresh("only a splash of rain water, not sea")
    (True, True)
    >>> is_fresh("sea water, then I rinsed it with fresh water"), is_fresh("bilge water over the agm")
    (False, False)
    """
    return FRESH.search(text) is not None and SALT.search(text) is None and BILGE.search(text) is None
