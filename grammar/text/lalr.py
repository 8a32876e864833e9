"""Builds a LALR parser and keeps its tables in the user's cache: building them takes longer than reading a message."""

from __future__ import annotations

import contextlib
from typing import TYPE_CHECKING, Any

from grammar.files import cache_dir

if TYPE_CHECKING:
    from lark import Lark


def parser(name: str, grammar: str, transformer: object, **options: Any) -> Lark:
    """The parser of a grammar, from the cache where it stands there."""
    from lark import Lark

    options |= {"parser": "lalr", "transformer": transformer, "maybe_placeholders": False}
    with contextlib.suppress(OSError):
        cache_dir().mkdir(parents=True, exist_ok=True)
        return Lark(grammar, cache=str(cache_dir() / f"{name}.lark.cache"), **options)
    return Lark(grammar, **options)
