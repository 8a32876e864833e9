"""Regular expressions that are compiled when they are first needed, and only asked where they can match.

A command asks one question, and most of the several hundred expressions are never looked up for it; to compile them all
takes longer than to read and to answer. In a long mail most of them would be tried in vain at each of its letters.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import cached_property
from typing import Any, cast

from grammar.text.needed import folded, needed


def regex(text: str, flags: int = 0) -> re.Pattern[str]:
    """What `re.compile` gives, compiled later.

    A mistake in it raises re.error when it is first asked, not here; tests/test_patterns.py asks them all.
    """
    return cast("re.Pattern[str]", Later(text, flags))


class Later:
    """Stands for a compiled expression, which is made for the first text that it may match."""

    def __init__(self, text: str, flags: int) -> None:
        self.told = text, flags

    @cached_property
    def _compiled(self) -> re.Pattern[str]:
        return re.compile(*self.told)

    @cached_property
    def _pieces(self) -> frozenset[str] | None:
        return needed(*self.told)

    def __getattr__(self, name: str) -> Any:
        """What the compiled expression has by this name, besides what is here."""
        if name.startswith("__"):  # copying and pickling ask for more than an expression has
            raise AttributeError(name)
        return getattr(self._compiled, name)

    def search(self, text: str, *within: int) -> re.Match[str] | None:
        """The first match, as all of these do what those of a compiled expression do."""
        return self._compiled.search(text, *within) if within or self._may_match(text) else None

    def match(self, text: str, *within: int) -> re.Match[str] | None:
        """A match at the beginning."""
        return self._compiled.match(text, *within) if within or self._may_match(text) else None

    def fullmatch(self, text: str, *within: int) -> re.Match[str] | None:
        """A match of all of it."""
        return self._compiled.fullmatch(text, *within) if within or self._may_match(text) else None

    def finditer(self, text: str, *within: int) -> Iterator[re.Match[str]]:
        """Every match, one after the other."""
        return self._compiled.finditer(text, *within) if within or self._may_match(text) else iter(())

    def findall(self, text: str, *within: int) -> list[Any]:
        """The texts of all matches."""
        return self._compiled.findall(text, *within) if within or self._may_match(text) else []

    def sub(self, new: str | Callable[[re.Match[str]], str], text: str, count: int = 0) -> str:
        """The text with something else for its matches."""
        return self._compiled.sub(new, text, count) if self._may_match(text) else text

    def _may_match(self, text: str) -> bool:  # to look through a text again for each of its stretches does not pay
        pieces = self._pieces
        return pieces is None or any(map(folded(text).__contains__, pieces))
