"""Which way up a battery stands: on one of its short ends, which its makers judge apart from its long sides."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

ON_END = regex(
    r"\b(?:on (?:its |their |the |an |one )?(?:short |narrow )?ends?\b(?! of)|end[- ]up\b|upended|on end\b)",
    re.IGNORECASE,
)


def on_end(text: str) -> bool:
    """Whether it is to stand on an end.

    >>> on_end("AGM stood on its end"), on_end("AGM on its side at the end of the locker")
    (True, False)
    """
    return bool(ON_END.search(text))
