"""A fuse that shows heat without having blown: "it is whole, but has a brown mark"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

MARK = r"\b(?:brown(?:ish|ed)?|dark|tan|yellow(?:ish|ed)?|heat) (?:mark|spot|patch|ring|tinge|tint|stain|shade)s?\b"
OF_ANOTHER = (
    r"(?! (?:on|in|at|near|round|around|over) (?!it\b|(?:the |its |my |one )(?:fuse|body|window|glass|side|end)))"
)
MARKED = regex(
    rf"\bfuse(?:link)?s?\b(?:(?!\b(?:cable|wire|battery|lug|post|terminal|case|label)s?\b)[^?]){{0,120}}?"
    rf"{MARK}{OF_ANOTHER}"
    rf"|{MARK} on (?:the|my|its|that|this) (?:\w+ )?fuse\b",
    re.IGNORECASE,
)


def marked(text: str) -> bool:
    """Whether the fuse bears a mark of heat."""
    return MARKED.search(text) is not None
