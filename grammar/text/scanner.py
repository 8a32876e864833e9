"""Lark's lexer, with the expressions of its states cut so that most are shared: compiling them slows a cold start."""

from __future__ import annotations

import re
from itertools import groupby

from lark.lexer import BasicLexer, ContextualLexer, Scanner, TerminalDef

SPACE, UNIT, BEGINS = 1000, 990, 900  # ranks: of space, of the units, and from which down a terminal may begin a part


class _Shared(Scanner):
    """Tries space, units, what else may only follow a number, then all that may begin a part, which most states have.

    The order is that of the ranks, as in one expression for them all; `re` keeps what was compiled before.
    """

    def _build_mres(self, terminals: list[TerminalDef], max_size: int) -> list[re.Pattern[str]]:
        groups = groupby(
            terminals, key=lambda terminal: sum(terminal.priority >= rank for rank in (SPACE, UNIT, BEGINS + 1))
        )
        return [re.compile("|".join(map(_named, group)), self.g_regex_flags) for _, group in groups]


def _named(terminal: TerminalDef) -> str:
    return f"(?P<{terminal.name}>{terminal.pattern.to_regexp()})"


class _State(BasicLexer):
    def _build_scanner(self) -> Scanner:
        self.callback = dict(self.user_callbacks)
        return _Shared(self.terminals, self.g_regex_flags, self.re, self.use_bytes)  # type: ignore[no-untyped-call]


class SharingLexer(ContextualLexer):
    """A contextual lexer for a grammar whose terminals are all expressions, with a rank each."""

    BasicLexer = _State
