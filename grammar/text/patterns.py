"""Regular expressions that are compiled when they are first asked.

A command asks one question, and most of the several hundred expressions are never looked up for it; to compile them all
takes longer than to read and to answer.
"""

from __future__ import annotations

import re
from typing import Any, cast


def regex(text: str, flags: int = 0) -> re.Pattern[str]:
    """What `re.compile` gives, compiled later.

    A mistake in it raises re.error when it is first asked, not here; tests/test_patterns.py asks them all.
    """
    return cast("re.Pattern[str]", Later(text, flags))


class Later:
    """Stands for a compiled expression; what is once looked up of that is its own from then on."""

    def __init__(self, text: str, flags: int) -> None:
        self.told = text, flags

    def __getattr__(self, name: str) -> Any:
        """What the compiled expression has by this name."""
        if name.startswith("__"):  # copying and pickling ask for more than an expression has
            raise AttributeError(name)
        if "compiled" not in self.__dict__:
            self.__dict__["compiled"] = re.compile(*self.told)
        found = self.__dict__[name] = getattr(self.__dict__["compiled"], name)
        return found
