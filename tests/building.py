"""Cases by hand, for tests of rules and topics that need no reading."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

import service.rules  # noqa: F401  (declares the rules)
from service import say
from service.case import Case, Known, Value
from service.house import load


def case(facts: Mapping[str, Value | tuple[Value, Value]], cues: Iterable[str] = (), text: str = "") -> Case:
    """A case with these facts stated, under the demo house. A pair states a fact of two batteries."""
    first = {name: value[0] if isinstance(value, tuple) else value for name, value in facts.items()}
    second = {name: value[1] for name, value in facts.items() if isinstance(value, tuple)}
    return Case(
        {name: Known(name, value, "message", say.symbol(name)) for name, value in first.items()},
        house=load(),
        second={name: Known(name, value, "message", say.symbol(name), of=2) for name, value in second.items()},
        cues=frozenset(cues),
        text=text,
        show=say.fact,
    )
